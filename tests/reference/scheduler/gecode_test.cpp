// Outside opinion: Gecode on random small problems, one kind of rule at a time and all together.
#include <gtest/gtest.h>

#include <algorithm>
#include <cstdlib>
#include <iostream>

#include "../../unit/scheduler/random_problem.h"
#include "gecode_model.h"
#include "scheduler/solve.h"

namespace scheduler::testing {
namespace {

/// A kind; a minute for all kinds in a release build. BENCHBELL_GECODE asks for another number.
int instances() {
  const char* named = std::getenv("BENCHBELL_GECODE");
  return named == nullptr ? 500 : std::max(1, std::atoi(named));
}

Recipe plain() {
  Recipe recipe;
  recipe.activities = 6;
  recipe.horizon = 16;
  recipe.elastic = recipe.modes = recipe.settings = recipe.optional = recipe.soil = recipe.spans =
      false;
  return recipe;
}

/// `least_feasible` of 500 must have a schedule, or the generator has drifted.
void compare(const char* kind, const Recipe& recipe, std::uint64_t first_seed, int least_feasible) {
  const int count = instances();
  int feasible = 0;
  std::int64_t ticks = 0;
  for (int k = 0; k < count; ++k) {
    const std::uint64_t seed = first_seed + static_cast<std::uint64_t>(k);
    const Problem problem = random_problem(seed, recipe);
    const auto expected = gecode_optimum(problem);
    Options options;
    options.seconds = 60;
    options.decide_pairs = k % 2 == 0;
    const Outcome outcome = solve(problem, options);
    ticks += outcome.ticks;
    ASSERT_EQ(outcome.status, expected ? Status::kOptimal : Status::kInfeasible) << "seed " << seed;
    if (!expected) continue;
    ++feasible;
    ASSERT_EQ(outcome.values, *expected) << "seed " << seed;
    ASSERT_EQ(outcome.bounds, *expected) << "seed " << seed;
  }
  EXPECT_GE(feasible, least_feasible * count / 500);
  std::cout << kind << ": " << count << " instances, " << feasible << " with a schedule, "
            << count - feasible << " without, the same in both solvers; " << ticks << " ticks\n";
}

TEST(gecode, least_and_greatest_lags_have_the_same_optimum) {
  Recipe recipe = plain();
  recipe.lag_chance = 90;
  recipe.max_lag_chance = 75;
  recipe.extra_lags = 3;
  compare("lags", recipe, 10000, 250);
}

TEST(gecode, change_over_between_settings_has_the_same_optimum) {
  Recipe recipe = plain();
  recipe.settings = true;
  recipe.oven_chance = 85;
  recipe.door_chance = 0;
  recipe.lag_chance = 25;
  compare("change-over", recipe, 20000, 250);
}

TEST(gecode, alternative_modes_have_the_same_optimum) {
  Recipe recipe = plain();
  recipe.modes = true;
  recipe.mode_chance = 80;
  recipe.settings = true;
  compare("modes", recipe, 30000, 250);
}

TEST(gecode, ovens_with_settings_doors_and_shelves_have_the_same_optimum) {
  Recipe recipe = plain();
  recipe.settings = recipe.elastic = true;
  recipe.oven_chance = 80;
  recipe.door_chance = 60;
  recipe.shelves_chance = 50;
  recipe.lag_chance = 25;
  recipe.activities = 5;
  compare("ovens", recipe, 40000, 250);
}

TEST(gecode, attention_held_from_event_to_event_has_the_same_optimum) {
  Recipe recipe = plain();
  recipe.spans = recipe.modes = recipe.elastic = true;
  recipe.span_chance = 100;
  recipe.most_spans = 2;
  recipe.activities = 5;
  recipe.horizon = 14;
  compare("attention", recipe, 50000, 200);
}

TEST(gecode, absence_and_exactly_one_of_some_have_the_same_optimum) {
  Recipe recipe = plain();
  recipe.optional = recipe.modes = recipe.crowded = true;
  recipe.horizon = 12;
  compare("absence", recipe, 60000, 250);
}

TEST(gecode, soil_and_cleaning_have_the_same_optimum) {
  Recipe recipe = plain();
  recipe.soil = recipe.optional = true;
  recipe.soil_chance = 80;
  recipe.activities = 5;
  compare("soil", recipe, 70000, 250);
}

TEST(gecode, uses_that_may_be_empty_have_the_same_optimum) {
  Recipe recipe;
  recipe.activities = 5;
  recipe.horizon = 12;
  recipe.empty_chance = 60;
  recipe.lag_chance = 30;
  recipe.oven_chance = recipe.soil_chance = 60;
  recipe.door_chance = 50;
  compare("empty uses", recipe, 90000, 250);
}

TEST(gecode, every_kind_of_rule_together_has_the_same_optimum) {
  Recipe recipe;
  recipe.activities = 5;
  recipe.horizon = 13;
  recipe.most_spans = 2;
  recipe.door_chance = 40;
  compare("all together", recipe, 80000, 200);
}

}  // namespace
}  // namespace scheduler::testing
