#include "scheduler/queue_bound.h"

#include <gtest/gtest.h>

#include "scheduler/solve.h"

namespace scheduler::testing {
namespace {

/// `count` uses of `length` at a queue of `places`, all to end before (or start after) activity 0,
/// a moment.
Problem queue(int count, Time length, int places, bool before, Side measured, Time allowance) {
  Problem problem;
  problem.horizon = 2 * count * length;
  Resource table;
  table.capacity = places;
  problem.resources.push_back(table);
  problem.activities.resize(static_cast<std::size_t>(count + 1));
  problem.activities[0].duration_min = problem.activities[0].duration_max = 0;
  problem.goals.push_back({"waiting", {}, 0});
  for (int i = 1; i <= count; ++i) {
    Activity& activity = problem.activities[static_cast<std::size_t>(i)];
    activity.duration_min = activity.duration_max = length;
    activity.modes[0].uses.emplace_back();
    Term term;
    term.allowance = allowance;
    const Event moment{0, Side::kStart}, event{i, measured};
    if (before) {
      problem.lags.push_back({{i, Side::kEnd}, moment, 0, kNoLimit, -1});
      term.high = {moment};
      term.low = {event};
    } else {
      problem.lags.push_back({moment, {i, Side::kStart}, 0, kNoLimit, -1});
      term.high = {event};
      term.low = {moment};
    }
    problem.goals[0].terms.push_back(term);
  }
  return problem;
}

TEST(queue_bound, twenty_four_at_a_table_for_three_wait_ninety_minutes_in_all) {
  // 2 minutes each, 4 minutes free of charge: 9 come within the 4 minutes, then three more every 2
  // minutes: 15 + 15 + 12 + 12 + 9 + 9 + 6 + 6 + 3 + 3 = 90.
  const Problem problem = queue(24, 2, 3, true, Side::kEnd, 4);
  EXPECT_EQ(queue_bound(problem, problem.goals[0]), 90);
}

TEST(queue_bound, never_exceeds_what_a_schedule_reaches_and_is_tight_for_a_lone_queue) {
  for (int count = 1; count <= 3; ++count) {
    for (Time length = 1; length <= 3; ++length) {
      for (int places = 1; places <= 2; ++places) {
        for (const bool before : {true, false}) {
          for (const Side side : {Side::kStart, Side::kEnd}) {
            for (Time allowance = 0; allowance <= 3; ++allowance) {
              const Problem problem = queue(count, length, places, before, side, allowance);
              // A second copy of each term's high event changes nothing but hides the queue from
              // the bound, so that the search has to find the optimum without it.
              Problem hidden = problem;
              for (Term& term : hidden.goals[0].terms) term.high.push_back(term.high[0]);
              ASSERT_EQ(queue_bound(hidden, hidden.goals[0]), 0);
              const Outcome outcome = solve(hidden, {});
              ASSERT_EQ(outcome.status, Status::kOptimal);
              EXPECT_EQ(queue_bound(problem, problem.goals[0]), outcome.values[0])
                  << count << " of " << length << " at " << places
                  << (before ? " before" : " after");
            }
          }
        }
      }
    }
  }
}

}  // namespace
}  // namespace scheduler::testing
