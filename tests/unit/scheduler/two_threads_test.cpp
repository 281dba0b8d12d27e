// Two threads on one problem, one for schedules and one for bounds, come to what one comes to.
#include <gtest/gtest.h>

#include <stdexcept>
#include <thread>

#include "random_problem.h"
#include "scheduler/exchange.h"
#include "scheduler/solve.h"

namespace scheduler::testing {
namespace {

Options two() {
  Options options;
  options.threads = 2;
  return options;
}

TEST(two_threads, prove_the_optimum_that_one_thread_proves) {
  int infeasible = 0;
  for (std::uint64_t seed = 1; seed <= 150; ++seed) {
    const Problem problem = random_problem(seed, Recipe{});
    const Outcome alone = solve(problem, {});
    const Outcome together = solve(problem, two());
    ASSERT_TRUE(alone.status == Status::kOptimal || alone.status == Status::kInfeasible);
    EXPECT_EQ(together.status, alone.status) << "seed " << seed;
    infeasible += alone.status == Status::kInfeasible ? 1 : 0;
    if (alone.status != Status::kOptimal) continue;
    EXPECT_TRUE(check(problem, together.best).empty()) << "seed " << seed;
    EXPECT_EQ(evaluate(problem, together.best), together.values) << "seed " << seed;
    // With bands several values may be the best; the first level has one.
    EXPECT_EQ(together.bounds.front(), alone.bounds.front()) << "seed " << seed;
  }
  EXPECT_GT(infeasible, 5);
}

TEST(two_threads, call_the_callers_functions_from_the_callers_thread_alone) {
  const std::thread::id mine = std::this_thread::get_id();
  int elsewhere = 0;
  const auto look = [&] { elsewhere += std::this_thread::get_id() != mine ? 1 : 0; };
  Options options = two();
  options.on_better = [&](const Schedule&, const std::vector<std::int64_t>&) { look(); };
  options.on_bound = [&](const std::vector<std::int64_t>&) { look(); };
  options.stop = [&] {
    look();
    return false;
  };
  for (std::uint64_t seed = 1; seed <= 20; ++seed) solve(random_problem(seed, Recipe{}), options);
  EXPECT_EQ(elsewhere, 0);
}

TEST(two_threads, both_end_when_the_caller_says_stop) {
  Options options = two();
  options.seconds = 3600;
  Recipe recipe;
  recipe.activities = 30;
  recipe.horizon = 120;
  int stopped = 0;
  for (std::uint64_t seed = 1; seed <= 10; ++seed) {
    int asked = 0;
    options.stop = [&asked] { return ++asked > 3; };
    const Outcome outcome = solve(random_problem(seed, recipe), options);
    stopped += asked > 3 ? 1 : 0;
    EXPECT_LT(outcome.seconds, 3600);
  }
  EXPECT_GT(stopped, 0);
}

TEST(two_threads, say_the_same_faults_as_one) {
  Problem problem = random_problem(1, Recipe{});
  problem.activities[0].duration_min = -1;
  EXPECT_THROW(solve(problem, two()), std::invalid_argument);
  Options three;
  three.threads = 3;
  EXPECT_THROW(solve(random_problem(1, Recipe{}), three), std::invalid_argument);
}

/// One activity of one minute that wants to start early, then at 3, then at 2.
Problem early_then_at_three_then_at_two() {
  Problem problem;
  problem.horizon = 10;
  Activity activity;
  activity.duration_min = activity.duration_max = 1;
  problem.activities.push_back(activity);
  Term start;
  start.high = {{0, Side::kStart}};
  const auto moved_from = [](Time at) {
    Term term;
    term.kind = Term::Kind::kMoved;
    term.at = at;
    return term;
  };
  problem.goals = {
      {"early", {start}, 0}, {"at 3", {moved_from(3)}, 0}, {"at 2", {moved_from(2)}, 0}};
  return problem;
}

Schedule starting_at(Time minute) {
  Placement placement;
  placement.start = minute;
  placement.duration = 1;
  return {placement};
}

using Values = std::vector<std::int64_t>;

// "No start at 2 when it starts at 3" says nothing of a schedule that has given up the 3.
TEST(exchange, forgets_a_bound_when_a_level_before_it_got_worse) {
  const Problem problem = early_then_at_three_then_at_two();
  const Options options;
  scheduler::Run late(problem, options), early(problem, options), learns(problem, options);
  ASSERT_TRUE(late.offer(starting_at(3), {3, 0, 1}));
  late.raise({0, 0, 1});
  Exchange exchange;
  exchange.tell(late);
  exchange.take(learns);
  EXPECT_EQ(learns.bounds(), (Values{0, 0, 1}));
  ASSERT_TRUE(early.offer(starting_at(2), {2, 1, 0}));
  exchange.tell(early);
  exchange.take(learns);
  EXPECT_EQ(learns.values(), (Values{2, 1, 0}));
  EXPECT_EQ(learns.bounds(), (Values{0, 0, 0}));
  // Told once more by who has not heard of it.
  exchange.tell(late);
  exchange.take(learns);
  EXPECT_EQ(learns.bounds(), (Values{0, 0, 0}));
}

TEST(exchange, is_over_when_the_bounds_of_one_meet_the_schedule_of_another) {
  const Problem problem = early_then_at_three_then_at_two();
  const Options options;
  scheduler::Run finds(problem, options), bounds(problem, options);
  ASSERT_TRUE(finds.offer(starting_at(0), {0, 1, 1}));
  Exchange exchange;
  exchange.tell(finds);
  EXPECT_FALSE(exchange.over());
  exchange.take(bounds);
  bounds.raise({0, 1, 1});
  exchange.tell(bounds);
  EXPECT_TRUE(exchange.over());
  exchange.take(finds);
  EXPECT_TRUE(finds.closed());
}

}  // namespace
}  // namespace scheduler::testing
