// Properties of the engine on random small problems: explanations never exclude a known schedule,
// answers repeat, do not depend on the order of activities, and never get worse when a rule is
// taken away.
#include <gtest/gtest.h>

#include <algorithm>
#include <numeric>

#include "random_problem.h"
#include "scheduler/levels.h"
#include "scheduler/model.h"
#include "scheduler/random.h"
#include "scheduler/solve.h"

namespace scheduler::testing {
namespace {

constexpr std::int64_t kPlenty = 200000;

Scope everything_free(const Problem& problem) {
  Scope scope;
  scope.roles.assign(problem.activities.size(), Role::kFree);
  return scope;
}

/// Runs all levels to the end; every solution met on the way is planted into the rest of the run
/// and returned.
std::vector<std::vector<int>> run_planted(const Problem& problem,
                                          const std::vector<std::vector<int>>& known) {
  Budget budget(60.0, -1, {});
  const Scope scope = everything_free(problem);
  Model model(problem, scope, budget);
  const std::size_t variables = static_cast<std::size_t>(model.core().variable_count());
  for (const std::vector<int>& solution : known) model.core().plant(solution);
  model.core().plant_found_solutions();
  std::vector<std::vector<int>> found;
  LevelSearch levels(
      problem, model, [&](const Schedule& schedule, const std::vector<std::int64_t>&) {
        EXPECT_EQ(check(problem, schedule), std::vector<std::string>{});
        std::vector<int> values = model.core().solution();
        values.resize(variables);  // sums made by the bounding belong to this run only
        found.push_back(values);
      });
  if (levels.first(kPlenty) != Verdict::kSolution) return found;
  EXPECT_TRUE(levels.round(kPlenty));
  return found;
}

/// Number of problems with a schedule among `count`; each is run twice, the second time from
/// nothing but with the first run's schedules known from the start.
int run_all_planted(const Recipe& recipe, std::uint64_t first_seed, std::uint64_t count) {
  int solved = 0;
  for (std::uint64_t seed = first_seed; seed < first_seed + count; ++seed) {
    const Problem problem = random_problem(seed, recipe);
    if (contradiction(problem)) continue;
    SCOPED_TRACE("seed " + std::to_string(seed));
    const std::vector<std::vector<int>> found = run_planted(problem, {});
    const std::vector<std::vector<int>> again = run_planted(problem, found);
    EXPECT_EQ(found.empty(), again.empty());
    solved += found.empty() ? 0 : 1;
  }
  return solved;
}

TEST(explanations, no_learnt_clause_excludes_a_schedule_found_before) {
  Recipe recipe;
  recipe.activities = 9;
  recipe.horizon = 24;
  // The generator must not drift into infeasible problems only.
  EXPECT_GT(run_all_planted(recipe, 1, 400), 150);
}

TEST(explanations, no_learnt_clause_is_wrong_where_uses_depend_on_choices) {
  // Modes and absence crowd few resources: time tables that forget who may be absent are caught
  // here.
  Recipe recipe;
  recipe.activities = 12;
  recipe.horizon = 22;
  recipe.crowded = true;
  EXPECT_GT(run_all_planted(recipe, 1, 300), 100);
}

Problem permuted(const Problem& problem, const std::vector<int>& to) {
  Problem result = problem;
  const auto map = [&](int i) { return to[static_cast<std::size_t>(i)]; };
  const auto map_event = [&](Event& e) { e.activity = map(e.activity); };
  const auto map_list = [&](std::vector<int>& list) {
    for (int& i : list) i = map(i);
  };
  for (std::size_t i = 0; i < to.size(); ++i) {
    result.activities[static_cast<std::size_t>(to[i])] = problem.activities[i];
  }
  for (Lag& lag : result.lags) {
    map_event(lag.from);
    map_event(lag.to);
  }
  for (Span& span : result.spans) {
    map_event(span.from);
    map_event(span.to);
    if (span.like) span.like = map(*span.like);
    map_list(span.excludes);
  }
  for (Blocked& blocked : result.blocked) map_list(blocked.activities);
  for (auto& group : result.same_mode) map_list(group);
  for (auto& group : result.exactly_one) map_list(group);
  for (GoalLevel& level : result.goals) {
    for (Term& term : level.terms) {
      for (Event& e : term.high) map_event(e);
      for (Event& e : term.low) map_event(e);
      term.activity = map(term.activity);
      term.other = map(term.other);
    }
  }
  return result;
}

TEST(solve, the_order_of_activities_does_not_change_the_optimum) {
  for (std::uint64_t seed = 1; seed <= 120; ++seed) {
    const Problem problem = random_problem(seed, {});
    std::vector<int> to(problem.activities.size());
    std::iota(to.begin(), to.end(), 0);
    Random random(seed);
    random.shuffle(to);
    const Outcome one = solve(problem, {});
    const Outcome two = solve(permuted(problem, to), {});
    EXPECT_EQ(one.status, two.status) << "seed " << seed;
    EXPECT_EQ(one.values, two.values) << "seed " << seed;
  }
}

TEST(solve, taking_a_lag_away_never_makes_the_optimum_worse) {
  for (std::uint64_t seed = 1; seed <= 120; ++seed) {
    Problem problem = random_problem(seed, {});
    if (problem.lags.empty()) continue;
    const Outcome full = solve(problem, {});
    problem.lags.erase(problem.lags.begin() + static_cast<long>(seed % problem.lags.size()));
    const Outcome less = solve(problem, {});
    if (full.status != Status::kOptimal) continue;
    ASSERT_EQ(less.status, Status::kOptimal) << "seed " << seed;
    EXPECT_LE(less.values, full.values) << "seed " << seed;
  }
}

TEST(solve, a_run_repeats_exactly_under_a_work_limit) {
  Recipe recipe;
  recipe.activities = 14;
  recipe.horizon = 40;
  for (std::uint64_t seed = 1; seed <= 20; ++seed) {
    const Problem problem = random_problem(seed, recipe);
    Options options;
    options.seconds = 1000;
    options.work_limit = 30000;
    const Outcome one = solve(problem, options);
    const Outcome two = solve(problem, options);
    EXPECT_EQ(one.ticks, two.ticks) << "seed " << seed;
    EXPECT_EQ(one.best, two.best) << "seed " << seed;
    EXPECT_EQ(one.bounds, two.bounds) << "seed " << seed;
  }
}

TEST(solve, fixed_activities_stay_where_they_are) {
  int compared = 0;
  for (std::uint64_t seed = 1; seed <= 60; ++seed) {
    const Problem problem = random_problem(seed, {});
    const Outcome free = solve(problem, {});
    if (free.status != Status::kOptimal) continue;
    Options options;
    options.fixed.resize(problem.activities.size());
    for (std::size_t i = 0; i < options.fixed.size(); i += 2) options.fixed[i] = free.best[i];
    const Outcome half = solve(problem, options);
    // The optimum itself agrees with the fixed half, so nothing is lost.
    EXPECT_EQ(half.status, Status::kOptimal) << "seed " << seed;
    EXPECT_EQ(half.values, free.values) << "seed " << seed;
    for (std::size_t i = 0; i < options.fixed.size(); i += 2) EXPECT_EQ(half.best[i], free.best[i]);
    ++compared;
  }
  EXPECT_GT(compared, 20);
}

TEST(solve, bands_let_later_levels_gain_and_bounds_stay_below_values) {
  Recipe recipe;
  recipe.bands = true;
  for (std::uint64_t seed = 1; seed <= 120; ++seed) {
    const Problem banded = random_problem(seed, recipe);
    Problem strict = banded;
    for (GoalLevel& level : strict.goals) level.band = 0;
    const Outcome loose = solve(banded, {});
    const Outcome tight = solve(strict, {});
    ASSERT_EQ(loose.status, tight.status) << "seed " << seed;
    if (loose.status != Status::kOptimal) continue;
    EXPECT_LE(loose.values[0], tight.values[0] + banded.goals[0].band) << "seed " << seed;
    EXPECT_EQ(loose.bounds[0], tight.values[0]) << "seed " << seed;
    for (std::size_t l = 0; l < loose.values.size(); ++l)
      EXPECT_LE(loose.bounds[l], loose.values[l]);
  }
}

TEST(solve, a_term_whose_events_are_all_absent_costs_nothing_even_with_a_negative_allowance) {
  Problem problem;
  problem.horizon = 10;
  problem.activities.resize(1);
  problem.activities[0].optional = true;
  Term term;
  term.high = {{0, Side::kEnd}};
  term.allowance = -2;
  problem.goals.push_back({"late", {term}, 0});
  // Present it would cost its end 1 plus 2; absent the term has no event and is 0.
  const Outcome outcome = solve(problem, {});
  EXPECT_EQ(outcome.status, Status::kOptimal);
  EXPECT_EQ(outcome.values, (std::vector<std::int64_t>{0}));
  EXPECT_FALSE(outcome.best[0].present);
}

TEST(solve, a_stop_request_ends_the_run_with_what_is_there) {
  Recipe recipe;
  recipe.activities = 30;
  recipe.horizon = 200;
  recipe.optional = false;
  const Problem problem = random_problem(7, recipe);
  int asked = 0;
  Options options;
  options.seconds = 60;
  options.stop = [&] { return ++asked > 1; };
  const Outcome outcome = solve(problem, options);
  EXPECT_EQ(asked, 2);  // asked once more after the answer would mean that the run went on
  EXPECT_NE(outcome.status, Status::kOptimal);
  if (!outcome.best.empty()) {
    EXPECT_EQ(check(problem, outcome.best), std::vector<std::string>{});
  }
}

}  // namespace
}  // namespace scheduler::testing
