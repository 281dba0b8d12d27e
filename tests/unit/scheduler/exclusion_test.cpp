// Sets of activities of which no two can overlap, though no one resource says so.
#include "scheduler/exclusion.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "random_problem.h"
#include "scheduler/solve.h"

namespace scheduler::testing {
namespace {

Use use(int resource, int amount) {
  Use result;
  result.resource = resource;
  result.amount = amount;
  return result;
}

Activity activity(Time length, std::vector<Use> uses) {
  Activity result;
  result.duration_min = result.duration_max = length;
  result.modes[0].uses = std::move(uses);
  return result;
}

/// `cooks` of one bay with ten tenths of hands each (resources 1, 2, ...) and one sink (resource
/// 0): three steps that all do together, and for each cook a wash of `wash` minutes at the sink
/// that may come at any time.
Problem bay(int cooks, Time wash, Time horizon) {
  Problem problem;
  problem.horizon = horizon;
  problem.resources.resize(static_cast<std::size_t>(cooks) + 1);
  std::vector<Use> all_hands;
  for (int cook = 1; cook <= cooks; ++cook) {
    problem.resources[static_cast<std::size_t>(cook)].capacity = 10;
    all_hands.push_back(use(cook, 8));
  }
  for (const Time length : {6, 4, 5}) problem.activities.push_back(activity(length, all_hands));
  for (int cook = 1; cook <= cooks; ++cook)
    problem.activities.push_back(activity(wash, {use(0, 1), use(cook, 8)}));
  return problem;
}

TEST(exclusive_sets, those_who_work_in_step_and_share_a_sink_are_one_machine) {
  const auto sets = exclusive_sets(bay(3, 7, 40));
  ASSERT_EQ(sets.size(), 1U);
  EXPECT_EQ(sets[0], (std::vector<InMode>{{0, 0}, {1, 0}, {2, 0}, {3, 0}, {4, 0}, {5, 0}}));
}

TEST(exclusive_sets, a_bay_that_cannot_be_through_is_known_without_search) {
  // Three steps of 15 minutes and three washes of 21 need 36.
  const Outcome outcome = solve(bay(3, 7, 35), {});
  EXPECT_EQ(outcome.status, Status::kInfeasible);
  EXPECT_LE(outcome.conflicts, 1);
  EXPECT_EQ(solve(bay(3, 7, 36), {}).status, Status::kOptimal);
}

TEST(exclusive_sets, a_set_with_time_to_spare_is_not_worth_it) {
  EXPECT_TRUE(exclusive_sets(bay(3, 7, 60)).empty());
  EXPECT_EQ(exclusive_sets(bay(3, 7, 60), 60).size(), 1U);
}

TEST(exclusive_sets, what_waits_for_another_is_apart_from_it_unless_the_other_may_be_left_out) {
  // Two that fill a resource, two of half of it after one another, between them a third without.
  Problem problem;
  problem.horizon = 30;
  problem.resources.resize(1);
  problem.resources[0].capacity = 2;
  for (const int amount : {2, 2, 1, 1, 1})
    problem.activities.push_back(activity(5, {use(0, amount)}));
  for (const int first : {2, 3})
    problem.lags.push_back({{first, Side::kEnd}, {first + 1, Side::kStart}, 0, kNoLimit, -1});
  const auto sets = exclusive_sets(problem, 0);
  ASSERT_EQ(sets.size(), 1U);
  EXPECT_EQ(sets[0].size(), 5U);
  problem.activities[3].optional = true;
  EXPECT_TRUE(exclusive_sets(problem, 0).empty());
}

TEST(exclusive_sets, no_two_of_a_set_overlap_in_any_schedule) {
  int sets = 0, schedules = 0;
  Recipe recipe;
  recipe.activities = 9;
  recipe.horizon = 40;
  for (std::uint64_t seed = 1; seed <= 600; ++seed) {
    recipe.crowded = seed % 2 == 0;
    const Problem problem = random_problem(seed, recipe);
    const auto found = exclusive_sets(problem, 0);
    sets += static_cast<int>(found.size());
    if (found.empty()) continue;
    Options options;
    options.work_limit = 2000000;
    options.on_better = [&](const Schedule& schedule, const std::vector<std::int64_t>&) {
      ++schedules;
      for (const std::vector<InMode>& set : found) {
        std::vector<const Placement*> running;
        for (const InMode& member : set) {
          const Placement& p = schedule[static_cast<std::size_t>(member.activity)];
          if (p.present && p.mode == member.mode) running.push_back(&p);
        }
        for (const Placement* a : running) {
          for (const Placement* b : running) {
            EXPECT_TRUE(a == b || a->start + a->duration <= b->start ||
                        b->start + b->duration <= a->start)
                << "seed " << seed;
          }
        }
      }
    };
    solve(problem, options);
  }
  EXPECT_GT(sets, 100);
  EXPECT_GT(schedules, 200);
}

}  // namespace
}  // namespace scheduler::testing
