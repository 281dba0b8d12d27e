// A search in instalments comes to what a search in one go comes to.
#include <gtest/gtest.h>

#include <stdexcept>

#include "random_problem.h"
#include "scheduler/session.h"

namespace scheduler::testing {
namespace {

TEST(session, in_small_instalments_ends_with_the_outcome_of_one_run) {
  int several = 0;
  for (std::uint64_t seed = 1; seed <= 60; ++seed) {
    const Problem problem = random_problem(seed, Recipe{});
    const Outcome whole = solve(problem, {});
    Session session(problem, {});
    Outcome outcome, before;
    int instalments = 0;
    do {
      before = outcome;
      outcome = session.work(500, 5);
      ++instalments;
      ASSERT_LE(outcome.ticks, whole.ticks) << "seed " << seed;
    } while (outcome.ticks > before.ticks);
    several += instalments > 2;
    EXPECT_EQ(outcome.status, whole.status) << "seed " << seed;
    EXPECT_EQ(outcome.best, whole.best) << "seed " << seed;
    EXPECT_EQ(outcome.values, whole.values) << "seed " << seed;
    EXPECT_EQ(outcome.bounds, whole.bounds) << "seed " << seed;
    EXPECT_EQ(outcome.ticks, whole.ticks) << "seed " << seed;
    EXPECT_EQ(outcome.conflicts, whole.conflicts) << "seed " << seed;
  }
  EXPECT_GT(several, 20);
}

TEST(session, that_is_asked_again_after_its_end_says_the_same) {
  const Problem problem = random_problem(1, Recipe{});
  Session session(problem, {});
  const Outcome first = session.work(1000000000, 5), again = session.work(1000, 5);
  EXPECT_EQ(first.status, again.status);
  EXPECT_EQ(first.ticks, again.ticks);
  EXPECT_EQ(first.best, again.best);
}

TEST(session, can_be_given_up_before_it_begins_and_half_way) {
  Recipe recipe;
  recipe.activities = 12;
  recipe.horizon = 40;
  for (std::uint64_t seed = 1; seed <= 10; ++seed) {
    const Session unused(random_problem(seed, recipe), {});
    Session begun(random_problem(seed, recipe), {});
    const Outcome outcome = begun.work(100, 5);
    EXPECT_LE(outcome.ticks, 100 + 20000) << "seed " << seed;
  }
}

TEST(session, of_a_problem_that_makes_no_sense_throws_what_a_run_throws) {
  Problem problem = random_problem(1, Recipe{});
  problem.activities[0].duration_min = -1;
  EXPECT_THROW((void)solve(problem, {}), std::invalid_argument);
  Session session(problem, {});
  EXPECT_THROW((void)session.work(1000, 5), std::invalid_argument);
}

TEST(session, two_at_a_time_do_not_disturb_each_other) {
  const Problem a = random_problem(3, Recipe{}), b = random_problem(4, Recipe{});
  Session first(a, {}), second(b, {});
  Outcome x, y;
  for (int i = 0; i < 400; ++i) {
    x = first.work(500, 5);
    y = second.work(700, 5);
  }
  EXPECT_EQ(x.values, solve(a, {}).values);
  EXPECT_EQ(y.values, solve(b, {}).values);
}

}  // namespace
}  // namespace scheduler::testing
