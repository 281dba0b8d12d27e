// Ends of many who need the same resource cannot all be early.
#include "scheduler/flow_bound.h"

#include <gtest/gtest.h>

#include "random_problem.h"
#include "scheduler/solve.h"

namespace scheduler::testing {
namespace {

std::int64_t flow_bound(const Problem& problem, const GoalLevel& level) {
  return FlowBound(problem).of(level);
}

/// `count` cooks fry for `length` at a pan for `places`, then wash up for `after`; their ends
/// count.
Problem frying(int count, Time length, int places, Time after) {
  Problem problem;
  problem.horizon = count * length + after + 1;
  Resource pan;
  pan.capacity = places;
  problem.resources.push_back(pan);
  problem.goals.push_back({"early", {}, 0});
  for (int i = 0; i < count; ++i) {
    Activity fry, wash;
    fry.duration_min = fry.duration_max = length;
    fry.modes[0].uses.emplace_back();
    wash.duration_min = wash.duration_max = after;
    problem.activities.push_back(fry);
    problem.activities.push_back(wash);
    problem.lags.push_back({{2 * i, Side::kEnd}, {2 * i + 1, Side::kStart}, 0, kNoLimit, -1});
    Term term;
    term.high = {{2 * i + 1, Side::kEnd}};
    problem.goals[0].terms.push_back(term);
  }
  return problem;
}

TEST(flow_bound, twenty_four_who_fry_two_at_a_time_end_one_after_the_other) {
  // Twelve pairs of places: ends at 14, 22, ... 102, each twice: 24 * (14 + 102) / 2 = 1392.
  const Problem problem = frying(24, 8, 2, 6);
  EXPECT_EQ(flow_bound(problem, problem.goals[0]), 1392);
}

TEST(flow_bound, is_what_the_best_schedule_reaches_when_there_is_nothing_but_the_queue) {
  for (int count = 2; count <= 6; ++count) {
    for (int places = 1; places <= 3; ++places) {
      const Problem problem = frying(count, 3, places, 2);
      const Outcome outcome = solve(problem, {});
      ASSERT_EQ(outcome.status, Status::kOptimal);
      EXPECT_EQ(flow_bound(problem, problem.goals[0]), outcome.values[0])
          << count << " at " << places;
    }
  }
}

TEST(flow_bound, counts_the_shortest_first) {
  // Lengths 5, 1 and 3 at one place: through at 1, 4 and 9.
  Problem problem = frying(3, 5, 1, 0);
  problem.activities[2].duration_min = problem.activities[2].duration_max = 1;
  problem.activities[4].duration_min = problem.activities[4].duration_max = 3;
  EXPECT_EQ(flow_bound(problem, problem.goals[0]), 14);
}

TEST(flow_bound, counts_a_limit_on_a_hazard_as_a_resource) {
  Problem problem = frying(4, 5, 4, 0);
  problem.resources[0].limits.push_back({7, 1});
  for (std::size_t a = 0; a < problem.activities.size(); a += 2)
    problem.activities[a].modes[0].uses[0].hazard = 7;
  EXPECT_EQ(flow_bound(problem, problem.goals[0]), 5 + 10 + 15 + 20);
}

TEST(flow_bound, knows_that_two_hands_do_one_thing_after_another) {
  // Two cooks, each with three jobs of 4 in any order before washing up for 2; hands of their own.
  Problem problem;
  problem.horizon = 40;
  problem.resources.resize(2);
  problem.goals.push_back({"early", {}, 0});
  for (int cook = 0; cook < 2; ++cook) {
    const int wash = 4 * cook + 3;
    for (int k = 0; k < 4; ++k) {
      Activity job;
      job.duration_min = job.duration_max = k == 3 ? 2 : 4;
      job.modes[0].uses.emplace_back();
      job.modes[0].uses[0].resource = cook;
      problem.activities.push_back(job);
      if (k < 3)
        problem.lags.push_back({{4 * cook + k, Side::kEnd}, {wash, Side::kStart}, 0, kNoLimit, -1});
    }
    Term term;
    term.high = {{wash, Side::kEnd}};
    problem.goals[0].terms.push_back(term);
  }
  EXPECT_EQ(flow_bound(problem, problem.goals[0]), 2 * 14);
}

/// Every activity's end counts, some several times, some only beyond an allowance.
GoalLevel ends_of(const Problem& problem, std::uint64_t seed) {
  GoalLevel level{"ends", {}, 0};
  for (int a = 0; a < static_cast<int>(problem.activities.size()); ++a) {
    Term term;
    term.high = {{a, Side::kEnd}};
    term.weight = 1 + static_cast<int>((seed + static_cast<std::uint64_t>(a)) % 3);
    term.allowance = static_cast<Time>((seed / 3 + static_cast<std::uint64_t>(a)) % 4);
    level.terms.push_back(term);
  }
  return level;
}

/// The same with ends counted from a moment at 0, which the bound does not look through.
Problem hidden_from_the_bound(Problem problem) {
  Activity zero;
  zero.duration_min = zero.duration_max = 0;
  zero.latest_end = 0;
  problem.activities.push_back(zero);
  for (Term& term : problem.goals[0].terms)
    term.low = {{static_cast<int>(problem.activities.size()) - 1, Side::kStart}};
  return problem;
}

TEST(flow_bound, never_exceeds_what_a_schedule_reaches) {
  int compared = 0, tight = 0;
  for (std::uint64_t seed = 1; seed <= 600; ++seed) {
    Problem problem = random_problem(seed, Recipe{});
    problem.goals = {ends_of(problem, seed)};
    const Problem hidden = hidden_from_the_bound(problem);
    ASSERT_EQ(flow_bound(hidden, hidden.goals[0]), 0);
    const Outcome best = solve(hidden, {});
    if (best.status != Status::kOptimal) continue;
    const std::int64_t bound = flow_bound(problem, problem.goals[0]);
    EXPECT_LE(bound, best.values[0]) << "seed " << seed;
    ++compared;
    tight += bound == best.values[0] ? 1 : 0;
  }
  EXPECT_GT(compared, 200);
  EXPECT_GT(tight, 20);
}

}  // namespace
}  // namespace scheduler::testing
