// Schedule generation, justification and the population, on small random projects and on one worked
// by hand.
#include <gtest/gtest.h>

#include <algorithm>

#include "base/index.h"
#include "scheduler/justification.h"
#include "scheduler/list_problem.h"
#include "scheduler/population.h"
#include "scheduler/random.h"
#include "scheduler/solve.h"

namespace scheduler::testing {
namespace {

int add(Problem& problem, Time length, const std::vector<int>& amounts) {
  Activity activity;
  activity.name = "activity " + std::to_string(problem.activities.size());
  activity.duration_min = activity.duration_max = length;
  for (std::size_t r = 0; r < amounts.size(); ++r) {
    if (amounts[r] == 0) continue;
    Use use;
    use.resource = static_cast<int>(r);
    use.amount = amounts[r];
    activity.modes[0].uses.push_back(use);
  }
  problem.activities.push_back(activity);
  problem.horizon += length;
  return static_cast<int>(problem.activities.size()) - 1;
}

void follow(Problem& problem, int first, int second, Time least = 0) {
  problem.lags.push_back({{first, Side::kEnd}, {second, Side::kStart}, least, kNoLimit, -1});
  problem.horizon += least;
}

void end_early(Problem& problem) {
  Term term;
  for (int i = 0; i < static_cast<int>(problem.activities.size()); ++i)
    term.high.push_back({i, Side::kEnd});
  problem.goals.push_back({"end", {term}, 0});
}

Problem random_project(std::uint64_t seed, int count, int resources) {
  Random random(seed);
  Problem problem;
  problem.resources.resize(static_cast<std::size_t>(resources));
  for (Resource& resource : problem.resources) resource.capacity = 4 + random.below(3);
  for (int i = 0; i < count; ++i) {
    std::vector<int> amounts;
    for (int r = 0; r < resources; ++r) amounts.push_back(random.below(5));
    add(problem, random.below(8), amounts);
  }
  for (int i = 0; i < count; ++i) {
    for (int j = i + 1; j < count; ++j) {
      // Backwards in number, so that the renumbering has something to do.
      if (random.below(count) < 2) follow(problem, j, i, random.below(6) == 0 ? 2 : 0);
    }
  }
  end_early(problem);
  return problem;
}

ListProblem list_of(const Problem& problem) {
  std::optional<ListProblem> list = list_problem(problem, {});
  EXPECT_TRUE(list.has_value());
  EXPECT_TRUE(list->plain);
  return *list;
}

/// Any order that respects the lags.
std::vector<int> random_order(const ListProblem& list, Random& random) {
  std::vector<int> order, missing, ready;
  for (int i = 0; i < list.count; ++i) {
    missing.push_back(list.in_begin[base::at(i + 1)] - list.in_begin[base::at(i)]);
    if (missing.back() == 0) ready.push_back(i);
  }
  while (!ready.empty()) {
    random.shuffle(ready);
    const int i = ready.back();
    ready.pop_back();
    order.push_back(i);
    for (int a = list.out_begin[base::at(i)]; a < list.out_begin[base::at(i + 1)]; ++a) {
      const int next = list.out[base::at(a)].other;
      if (--missing[base::at(next)] == 0) ready.push_back(next);
    }
  }
  return order;
}

/// x beside y is what is begun without waiting; it holds up z, which the last one follows.
Problem worth_waiting() {
  Problem problem;
  problem.resources.resize(1);
  problem.resources[0].capacity = 2;
  add(problem, 3, {1});  // x
  const int y = add(problem, 1, {1});
  const int z = add(problem, 3, {2});
  const int last = add(problem, 3, {1});
  follow(problem, y, z);
  follow(problem, z, last);
  end_early(problem);
  return problem;
}

TEST(schedule_generation, the_serial_scheme_may_wait_where_the_parallel_one_does_not) {
  const Problem problem = worth_waiting();
  const ListProblem list = list_of(problem);
  ScheduleGeneration generation(list);
  std::vector<Time> starts(base::at(list.count));
  std::vector<int> order;  // y, z, last, x, the goal
  for (const int activity : {1, 2, 3, 0, -1}) {
    order.push_back(static_cast<int>(
        std::find(list.original.begin(), list.original.end(), activity) - list.original.begin()));
  }
  generation.serial(order, starts);
  EXPECT_EQ(starts[base::at(list.goal)], 7);
  generation.parallel(order, starts);
  EXPECT_EQ(starts[base::at(list.goal)], 9);
}

TEST(schedule_generation, every_schedule_of_both_schemes_keeps_every_rule) {
  for (std::uint64_t seed = 1; seed <= 60; ++seed) {
    const Problem problem = random_project(seed, 12, 1 + static_cast<int>(seed % 9));
    const ListProblem list = list_of(problem);
    ScheduleGeneration generation(list);
    Random random(seed);
    std::vector<Time> starts(base::at(list.count));
    for (int again = 0; again < 5; ++again) {
      const std::vector<int> order = random_order(list, random);
      for (const bool parallel : {false, true}) {
        if (parallel)
          generation.parallel(order, starts);
        else
          generation.serial(order, starts);
        const Schedule schedule = to_schedule(problem, list, starts);
        ASSERT_EQ(check(problem, schedule), std::vector<std::string>{}) << "seed " << seed;
        ASSERT_EQ(evaluate(problem, schedule)[0], starts[base::at(list.goal)]);
        ASSERT_EQ(to_starts(list, schedule), starts);
      }
    }
  }
}

TEST(list_problem, turned_round_twice_it_is_what_it_was) {
  for (std::uint64_t seed = 1; seed <= 20; ++seed) {
    const ListProblem list = list_of(random_project(seed, 10, 6));
    const ListProblem back = mirrored(mirrored(list));
    EXPECT_EQ(back.original, list.original);
    EXPECT_EQ(back.earliest, list.earliest);
    EXPECT_EQ(back.latest, list.latest);
    EXPECT_EQ(back.demand, list.demand);
    EXPECT_EQ(back.in_begin, list.in_begin);
    EXPECT_EQ(back.goal, list.goal);
    for (std::size_t a = 0; a < list.out.size(); ++a)
      EXPECT_EQ(back.out[a].least, list.out[a].least);
  }
}

TEST(list_problem, what_lists_cannot_say_is_left_to_the_exact_core) {
  const Problem plain = worth_waiting();
  Problem elastic = plain;
  elastic.activities[0].duration_max = 5;
  EXPECT_FALSE(list_problem(elastic, {}).has_value());
  Problem optional = plain;
  optional.activities[0].optional = true;
  EXPECT_FALSE(list_problem(optional, {}).has_value());
  Problem two_levels = plain;
  two_levels.goals.push_back(plain.goals[0]);
  EXPECT_FALSE(list_problem(two_levels, {}).has_value());
  Problem blocked = plain;
  blocked.blocked.push_back({1, 2, {0}, -1});
  EXPECT_FALSE(list_problem(blocked, {}).has_value());
  Options fixing;
  fixing.fixed.resize(plain.activities.size());
  fixing.fixed[0] = Placement{};
  EXPECT_FALSE(list_problem(plain, fixing).has_value());
  Problem too_much = plain;
  too_much.resources[0].capacity = 1;
  EXPECT_FALSE(list_problem(too_much, {}).has_value());
}

TEST(list_problem, a_maximum_lag_or_a_latest_end_is_not_plain) {
  Problem close = worth_waiting();
  close.lags[0].max = 2;
  EXPECT_FALSE(list_problem(close, {})->plain);
  Problem limited = worth_waiting();
  limited.activities[0].latest_end = 9;
  EXPECT_FALSE(list_problem(limited, {})->plain);
  Problem impossible = worth_waiting();
  impossible.activities[2].latest_end = 3;
  EXPECT_FALSE(list_problem(impossible, {}).has_value());
}

TEST(justification, a_schedule_is_never_longer_afterwards_and_keeps_every_rule) {
  int shorter = 0;
  for (std::uint64_t seed = 1; seed <= 60; ++seed) {
    const Problem problem = random_project(seed, 20, 1 + static_cast<int>(seed % 5));
    const ListProblem list = list_of(problem);
    const ListProblem backwards = mirrored(list);
    Justification justification(list, backwards);
    Random random(seed);
    std::vector<Time> starts(base::at(list.count));
    justification.forward().serial(random_order(list, random), starts);
    const Time before = starts[base::at(list.goal)];
    EXPECT_GE(justification.improve(starts), 1);
    const Time after = starts[base::at(list.goal)];
    EXPECT_LE(after, before) << "seed " << seed;
    shorter += after < before ? 1 : 0;
    EXPECT_EQ(check(problem, to_schedule(problem, list, starts)), std::vector<std::string>{});
  }
  EXPECT_GE(shorter, 20);
}

TEST(population, small_projects_reach_the_optimum_the_exact_core_proves) {
  for (std::uint64_t seed = 1; seed <= 40; ++seed) {
    const Problem problem = random_project(seed, 9, 2);
    const ListProblem list = list_of(problem);
    Population population(list, seed);
    population.run(200000);
    const Outcome exact = solve(problem, {});
    ASSERT_EQ(exact.status, Status::kOptimal);
    EXPECT_EQ(population.best_value(), exact.values[0]) << "seed " << seed;
  }
}

TEST(population, a_better_schedule_that_joins_is_kept) {
  const Problem problem = random_project(5, 40, 4);
  const ListProblem list = list_of(problem);
  Population strong(list, 1), weak(list, 2);
  strong.run(400000);
  weak.run(1);
  ASSERT_LT(strong.best_value(), weak.best_value());
  weak.join(strong.best());
  EXPECT_LE(weak.best_value(), strong.best_value());
}

TEST(population, a_run_repeats_exactly_under_a_work_limit) {
  const Problem problem = random_project(7, 60, 4);
  Options options;
  options.seconds = 1000;
  options.work_limit = 3000000;
  options.seed = 3;
  const Outcome one = solve(problem, options);
  const Outcome two = solve(problem, options);
  EXPECT_FALSE(one.best.empty());
  EXPECT_EQ(one.best, two.best);
  EXPECT_EQ(one.bounds, two.bounds);
  EXPECT_EQ(one.ticks, two.ticks);
}

}  // namespace
}  // namespace scheduler::testing
