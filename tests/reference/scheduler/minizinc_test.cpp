// Outside opinion by way of the written model: MiniZinc with Gecode on random small problems, all
// goal levels at once, nothing told of the engine's answer.
#include <gtest/gtest.h>

#include <iostream>

#include "../../unit/scheduler/minizinc_run.h"
#include "../../unit/scheduler/random_problem.h"
#include "scheduler/minizinc.h"
#include "scheduler/solve.h"

namespace scheduler::testing {
namespace {

constexpr int kFeasible = 40;  // of each kind

void compare(const char* kind, const Recipe& recipe, std::uint64_t first_seed) {
  int feasible = 0, refuted = 0;
  for (std::uint64_t seed = first_seed; feasible < kFeasible; ++seed) {
    ASSERT_LT(refuted, 10 * kFeasible) << "hardly any problem has a schedule";
    const Problem problem = random_problem(seed, recipe);
    Options options;
    options.seconds = 60;
    const Outcome outcome = solve(problem, options);
    const MinizincAnswer answer = minizinc_answer(minizinc(problem));
    ASSERT_TRUE(answer.proved || answer.refuted) << "seed " << seed << ": " << answer.said;
    ASSERT_EQ(outcome.status, answer.refuted ? Status::kInfeasible : Status::kOptimal)
        << "seed " << seed << ": " << answer.said;
    ++(answer.refuted ? refuted : feasible);
    if (!answer.refuted) {
      ASSERT_EQ(outcome.values, answer.levels) << "seed " << seed;
    }
  }
  std::cout << kind << ": " << feasible << " with a schedule, " << refuted
            << " without, the same in both solvers\n";
}

Recipe small() {
  Recipe recipe;
  recipe.activities = 5;
  recipe.horizon = 13;
  return recipe;
}

class Minizinc : public ::testing::Test {
 protected:
  void SetUp() override {
    if (!minizinc_installed()) GTEST_SKIP() << "minizinc is not installed: nothing was compared";
  }
};

TEST_F(Minizinc, has_the_same_optimum_with_lags_and_modes) {
  Recipe recipe = small();
  recipe.lag_chance = 90;
  recipe.mode_chance = 80;
  recipe.soil = recipe.spans = recipe.settings = false;
  compare("lags and modes", recipe, 110000);
}

TEST_F(Minizinc, has_the_same_optimum_with_ovens) {
  Recipe recipe = small();
  recipe.oven_chance = 85;
  recipe.door_chance = 50;
  recipe.shelves_chance = 40;
  recipe.lag_chance = 25;
  recipe.soil = recipe.spans = false;
  compare("ovens", recipe, 120000);
}

TEST_F(Minizinc, has_the_same_optimum_with_spans) {
  Recipe recipe = small();
  recipe.span_chance = 100;
  recipe.most_spans = 2;
  compare("spans", recipe, 130000);
}

TEST_F(Minizinc, has_the_same_optimum_with_soil_and_absence) {
  Recipe recipe = small();
  recipe.soil_chance = 80;
  recipe.crowded = true;
  compare("soil and absence", recipe, 140000);
}

TEST_F(Minizinc, has_the_same_optimum_with_every_kind_of_rule) {
  compare("all together", small(), 150000);
}

}  // namespace
}  // namespace scheduler::testing
