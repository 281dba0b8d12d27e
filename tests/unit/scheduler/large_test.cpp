// Problems of many teams: construction, neighbourhoods and bounds by clusters.
#include <gtest/gtest.h>

#include "../../../bench/scheduler/classroom.h"
#include "random_problem.h"
#include "scheduler/budget.h"
#include "scheduler/clusters.h"
#include "scheduler/level_bounds.h"
#include "scheduler/levels.h"
#include "scheduler/model.h"
#include "scheduler/random.h"
#include "scheduler/solve.h"

namespace scheduler::testing {
namespace {

bench::ClassroomOptions nine_cooks() {
  bench::ClassroomOptions options;
  options.cooks = 9;
  options.finish_level = true;
  return options;
}

TEST(clusters, three_cooks_at_one_cooker_belong_together) {
  const Problem problem = bench::classroom(nine_cooks());
  const Clusters clusters(problem);
  // Nine cooks, three to a cooker; the adult and the demonstration join all of them and make no
  // cluster.
  ASSERT_EQ(clusters.count(), 3);
  EXPECT_EQ(clusters.members(0).size(), 3u * 19u);
  EXPECT_EQ(clusters.shared(), (std::vector<int>{0}));
  EXPECT_EQ(clusters.neighbours(0), (std::vector<int>{1, 2}));
  EXPECT_EQ(clusters.of_term(problem.goals[0].terms[0]), 0);
  EXPECT_EQ(clusters.of_term(problem.goals[1].terms[0]), -1);
}

TEST(large, a_class_gets_a_schedule_and_bounds_below_its_values) {
  const Problem problem = bench::classroom(nine_cooks());
  Options options;
  options.seconds = 1000;
  options.work_limit = 12000000;
  const Outcome outcome = solve(problem, options);
  ASSERT_FALSE(outcome.best.empty());
  EXPECT_EQ(check(problem, outcome.best), std::vector<std::string>{});
  EXPECT_EQ(evaluate(problem, outcome.best), outcome.values);
  for (std::size_t l = 0; l < outcome.values.size(); ++l) {
    EXPECT_LE(outcome.bounds[l], outcome.values[l]);
  }
  EXPECT_GT(outcome.bounds[0], 0);
}

TEST(large, a_run_with_neighbourhoods_repeats_exactly_under_a_work_limit) {
  const Problem problem = bench::classroom(nine_cooks());
  Options options;
  options.seconds = 1000;
  options.work_limit = 6000000;
  options.seed = 3;
  const Outcome one = solve(problem, options);
  const Outcome two = solve(problem, options);
  EXPECT_EQ(one.best, two.best);
  EXPECT_EQ(one.bounds, two.bounds);
  EXPECT_EQ(one.ticks, two.ticks);
}

TEST(large, the_first_schedule_is_enough_when_asked_for) {
  const Problem problem = bench::classroom(nine_cooks());
  Options options;
  options.first_only = true;
  const Outcome outcome = solve(problem, options);
  EXPECT_EQ(outcome.status, Status::kFeasible);
  EXPECT_EQ(check(problem, outcome.best), std::vector<std::string>{});
}

TEST(large, a_schedule_to_start_from_is_never_made_worse) {
  const Problem problem = bench::classroom(nine_cooks());
  Options options;
  options.first_only = true;
  const Outcome first = solve(problem, options);
  options.first_only = false;
  options.seconds = 1000;
  options.work_limit = 3000000;
  options.start_from = first.best;
  const Outcome better = solve(problem, options);
  EXPECT_LE(better.values, first.values);
}

// What is fixed in a neighbourhood was right as it stood; that need not be so when what cleaned
// between two fixed uses is free to move or to be left out.
TEST(large, a_neighbourhood_keeps_every_rule_whatever_is_free_in_it) {
  Recipe recipe;
  recipe.soil_chance = 80;
  int neighbourhoods = 0, better = 0;
  for (std::uint64_t seed = 1; seed <= 400; ++seed) {
    Problem problem = random_problem(seed, recipe);
    Term fewer;
    fewer.kind = Term::Kind::kPresent;
    GoalLevel level;
    for (int i = 0; i < static_cast<int>(problem.activities.size()); ++i) {
      if (!problem.activities[static_cast<std::size_t>(i)].cleans) continue;
      fewer.activity = i;
      level.terms.push_back(fewer);
    }
    problem.goals = {level};
    Problem all_cleaned = problem;
    for (const Term& term : level.terms)
      all_cleaned.activities[static_cast<std::size_t>(term.activity)].optional = false;
    Options options;
    options.first_only = true;
    const Outcome first = solve(all_cleaned, options);
    if (first.best.empty()) continue;
    const std::vector<std::int64_t> values = evaluate(problem, first.best);
    Random random(seed);
    Scope scope;
    const std::vector<std::int64_t> least = level_bounds(problem);
    scope.fixed = &first.best;
    scope.trust_fixed = true;
    scope.least = &least;
    for (std::size_t i = 0; i < problem.activities.size(); ++i)
      scope.roles.push_back(problem.activities[i].cleans || random.below(4) == 0 ? Role::kFree
                                                                                 : Role::kFixed);
    Budget budget(10, -1, {});
    Model model(problem, scope, budget);
    LevelSearch levels(
        problem, model, [&](const Schedule& schedule, const std::vector<std::int64_t>&) {
          EXPECT_EQ(check(problem, schedule), std::vector<std::string>{}) << "seed " << seed;
          ++better;
        });
    levels.start_from(first.best, values);
    levels.round(500);
    ++neighbourhoods;
  }
  EXPECT_GT(neighbourhoods, 100);
  EXPECT_GT(better, 10);
}

}  // namespace
}  // namespace scheduler::testing
