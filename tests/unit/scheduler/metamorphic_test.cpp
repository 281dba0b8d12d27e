// Problems told another way have the same optimum, problems with less in them no worse one. Every
// run plants the schedules it finds, so a clause that excludes one is reported where it is learnt.
#include <gtest/gtest.h>

#include <numeric>

#include "planted.h"
#include "random_problem.h"
#include "scheduler/random.h"
#include "scheduler/solve.h"
#include "transform.h"

namespace scheduler::testing {
namespace {

constexpr std::uint64_t kSeeds = 300;

using Optimum = std::optional<std::vector<std::int64_t>>;

std::vector<int> some_order(std::size_t count, std::uint64_t seed) {
  std::vector<int> to(count);
  std::iota(to.begin(), to.end(), 0);
  Random random(seed);
  random.shuffle(to);
  return to;
}

/// Keeps the terms of one measure only, so that every level is a length or a count.
void keep_terms(Problem& problem, bool lengths) {
  for (GoalLevel& level : problem.goals) {
    std::erase_if(level.terms,
                  [&](const Term& term) { return (term.kind == Term::Kind::kExcess) != lengths; });
  }
}

/// Infeasible counts as worse than every schedule.
bool no_worse(const Optimum& one, const Optimum& two) { return !two || (one && *one <= *two); }

TEST(same_optimum, whatever_the_order_of_activities) {
  for (std::uint64_t seed = 1; seed <= kSeeds; ++seed) {
    const Problem problem = random_problem(seed, {});
    const Problem other = with_activities_permuted(problem,
                                                   some_order(problem.activities.size(), seed));
    EXPECT_EQ(planted_optimum(problem), planted_optimum(other)) << "seed " << seed;
  }
}

TEST(same_optimum, whatever_the_order_of_activities_through_the_front_door) {
  for (std::uint64_t seed = 1; seed <= 120; ++seed) {
    const Problem problem = random_problem(seed, {});
    const Outcome one = solve(problem, {});
    const Outcome two = solve(
        with_activities_permuted(problem, some_order(problem.activities.size(), seed)), {});
    EXPECT_EQ(one.status, two.status) << "seed " << seed;
    EXPECT_EQ(one.values, two.values) << "seed " << seed;
  }
}

TEST(same_optimum, whatever_the_order_of_resources) {
  for (std::uint64_t seed = 1; seed <= kSeeds; ++seed) {
    const Problem problem = random_problem(seed, {});
    const Problem other = with_resources_permuted(problem,
                                                  some_order(problem.resources.size(), seed));
    EXPECT_EQ(planted_optimum(problem), planted_optimum(other)) << "seed " << seed;
  }
}

TEST(same_optimum, times_three_when_every_time_is_three_times_as_long) {
  Recipe recipe;
  recipe.activities = 5;
  recipe.horizon = 14;
  for (std::uint64_t seed = 1; seed <= kSeeds; ++seed) {
    Problem problem = random_problem(seed, recipe);
    const bool lengths = seed % 3 != 0;
    keep_terms(problem, lengths);
    Optimum expected = planted_optimum(problem);
    if (expected && lengths) {
      for (std::int64_t& value : *expected) value *= 3;
    }
    EXPECT_EQ(planted_optimum(with_times_scaled(problem, 3)), expected) << "seed " << seed;
  }
}

TEST(same_optimum, backwards_in_time) {
  for (std::uint64_t seed = 1; seed <= kSeeds; ++seed) {
    const Problem problem = reversible(random_problem(seed, {}));
    EXPECT_EQ(planted_optimum(problem), planted_optimum(reversed(problem))) << "seed " << seed;
  }
}

TEST(same_optimum, some_minutes_later) {
  for (std::uint64_t seed = 1; seed <= kSeeds; ++seed) {
    Problem problem = random_problem(seed, {});
    for (Resource& resource : problem.resources) resource.initial.reset();
    const Time minutes = 1 + static_cast<Time>(seed % 7);
    EXPECT_EQ(planted_optimum(problem), planted_optimum(shifted(problem, minutes)))
        << "seed " << seed;
  }
}

TEST(same_optimum, with_rules_that_follow_from_the_others) {
  for (std::uint64_t seed = 1; seed <= kSeeds; ++seed) {
    const Problem problem = random_problem(seed, {});
    const Problem more = with_implied_rules(problem,
                                            static_cast<int>(seed % problem.resources.size()));
    EXPECT_EQ(planted_optimum(problem), planted_optimum(more)) << "seed " << seed;
  }
}

TEST(no_worse_optimum, with_one_rule_less) {
  int taken = 0;
  for (std::uint64_t seed = 1; seed <= 2 * kSeeds; ++seed) {
    Problem problem = random_problem(seed, {});
    const Optimum full = planted_optimum(problem);
    if (!take_one_rule(problem, seed * 7919)) continue;
    ++taken;
    EXPECT_TRUE(no_worse(planted_optimum(problem), full)) << "seed " << seed;
  }
  EXPECT_GT(taken, 500);
}

TEST(no_worse_optimum, with_more_time) {
  for (std::uint64_t seed = 1; seed <= kSeeds; ++seed) {
    Problem problem = random_problem(seed, {});
    const Optimum tight = planted_optimum(problem);
    problem.horizon += 5;
    EXPECT_TRUE(no_worse(planted_optimum(problem), tight)) << "seed " << seed;
  }
}

}  // namespace
}  // namespace scheduler::testing
