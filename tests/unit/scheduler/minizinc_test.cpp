// The problem as a MiniZinc model: what it says of every kind of rule, and, where the program is
// installed, that Gecode behind it finds the engine's optimum.
#include "scheduler/minizinc.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <stdexcept>

#include "minizinc_run.h"
#include "random_problem.h"
#include "scheduler/level_weights.h"
#include "scheduler/solve.h"

namespace scheduler::testing {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;

constexpr std::uint64_t kProblems = 10;

Activity task(const std::string& name, Time least, Time most, std::vector<Use> uses) {
  Activity a;
  a.name = name;
  a.duration_min = least;
  a.duration_max = most;
  a.modes = {Mode{std::move(uses)}};
  return a;
}

Use use_of(int resource, int amount) {
  Use use;
  use.resource = resource;
  use.amount = amount;
  return use;
}

/// An oven that is set to one of two heats by `bake`, and a tin that stays in it, at the same heat,
/// until `lift` has ended; `grill` needs the third heat.
Problem tin_in_the_oven() {
  Problem problem;
  problem.horizon = 20;
  Resource oven{"oven", ResourceKind::kSettings, 2, {}, {}, std::nullopt, -1};
  oven.change = {{0, 4, 6}, {4, 0, 2}, {6, 2, 0}};
  oven.initial = 2;
  problem.resources = {oven};
  Use bake = use_of(0, 1), grill = use_of(0, 1);
  bake.settings = {0, 1};
  grill.settings = {2};
  grill.door_shut = 2;
  problem.activities = {task("bake", 3, 3, {bake}), task("lift", 1, 1, {}),
                        task("grill", 2, 2, {grill})};
  problem.lags = {{{0, Side::kEnd}, {1, Side::kStart}, 2, 5, -1}};
  Span tin{{0, Side::kEnd}, {1, Side::kEnd}, 0, {{use_of(0, 1)}}, {}, -1};
  problem.spans = {tin};
  Term end;
  end.high = {{0, Side::kEnd}, {1, Side::kEnd}, {2, Side::kEnd}};
  problem.goals = {{"end", {end}, 0}};
  return problem;
}

/// One of each rule that `tin_in_the_oven` has not.
Problem place_and_hands() {
  Problem problem;
  problem.horizon = 30;
  problem.resources = {
      {"hands", ResourceKind::kCumulative, 10, {{3, 1}}, {}, std::nullopt, -1},
      {"place", ResourceKind::kSoiling, 2, {}, {}, std::nullopt, -1},
  };
  Use watched = use_of(0, 8), raw = use_of(1, 1), salad = use_of(1, 1);
  watched.hazard = 3;
  raw.soil = 1;
  raw.overlaps_not = 2;
  salad.minds = 1;
  salad.kind_bit = 2;
  Activity chop = task("chop", 2, 2, {watched});
  chop.modes.push_back(Mode{{use_of(0, 4)}});
  Activity simmer = task("simmer", 5, 9, {});
  simmer.earliest = 3;
  simmer.latest_end = 25;
  Activity wipe = task("wipe", 1, 1, {});
  wipe.optional = true;
  wipe.cleans = 1;
  wipe.cleans_bits = 1;
  Activity skip = task("skip", 1, 1, {});
  skip.optional = true;
  problem.activities = {chop, simmer, task("meat", 2, 2, {raw}), task("leaves", 2, 2, {salad}),
                        wipe, skip};
  problem.activities.push_back(chop);
  problem.lags = {{{0, Side::kEnd}, {1, Side::kStart}, 1, 7, -1}};
  problem.spans = {{{0, Side::kStart}, {1, Side::kEnd}, std::nullopt, {{use_of(0, 1)}}, {6}, -1}};
  problem.blocked = {{11, 13, {3}, -1}};
  problem.same_mode = {{0, 6}};
  problem.exactly_one = {{4, 5}};
  Term late, present, moved, order, mode;
  late.high = {{1, Side::kEnd}};
  late.low = {{4, Side::kStart}};
  late.allowance = 2;
  present = {Term::Kind::kPresent, 1, {}, {}, 0, 5, 0, 0, 0, -1};
  moved = {Term::Kind::kMoved, 3, {}, {}, 0, 2, 0, 4, 1, -1};
  order = {Term::Kind::kOutOfOrder, 2, {}, {}, 0, 3, 2, 0, 0, -1};
  mode = {Term::Kind::kMode, 1, {}, {}, 0, 0, 0, 1, 0, -1};
  problem.goals = {{"late", {late, present}, 0}, {"calm", {moved, order, mode}, 0}};
  return problem;
}

TEST(minizinc, says_every_kind_of_rule) {
  const std::string model = minizinc(place_and_hands(), 0, {});
  const std::vector<std::pair<const char*, const char*>> rules{
      {"fixed duration", "constraint e[0] - s[0] = 2;"},
      {"elastic duration", "constraint e[1] - s[1] in 5..9;"},
      {"window", "constraint s[1] >= 3 /\\ e[1] <= 25;"},
      {"always there", "constraint p[0];"},
      {"absence", "constraint not p[4] -> (s[4] = 0 /\\ e[4] = 0 /\\ m[4] = 0);"},
      {"least wait", "constraint s[1] - e[0] >= 1;"},
      {"greatest wait", "constraint s[1] - e[0] <= 7;"},
      {"blocked", "constraint s[3] = e[3] \\/ e[3] <= 11 \\/ s[3] >= 13;"},
      {"same mode", "constraint m[0] = m[6];"},
      {"exactly one", "constraint sum([bool2int(p[4]), bool2int(p[5])]) = 1;"},
      {"a mode's use", "var bool: on1 = m[0] = 1;"},
      {"a span is held", "constraint s[0] <= e[1];"},
      {"a span excludes", "s[6] = e[6] \\/ e[6] + 0 <= s[0] \\/ e[1] + 0 <= s[6];"},
      {"capacity", "constraint cumulative([s[0], s[0], s[6], s[6], s[0]],"},
      {"a hazard at most once", "[1 * bool2int(on0), 1 * bool2int(on4)], 1);"},
      {"apart", "(on2 /\\ on3) -> (e[2] + 0 <= s[3] \\/ e[3] + 0 <= s[2]);"},
      {"soil", "e[3] <= s[2] \\/ (p[4] /\\ s[4] >= e[2] /\\ e[4] <= s[3])"},
      {"excess", "max(0, (e[1]) - (if p[4] then s[4] else 63 endif) - 2)"},
      {"present", "1 * bool2int(p[5])"},
      {"moved", "3 * bool2int(abs(s[2] - 4) > 1)"},
      {"order", "2 * bool2int(s[3] > s[2])"},
      {"mode", "1 * bool2int(m[0] != 1)"},
  };
  for (const auto& [rule, words] : rules) EXPECT_THAT(model, HasSubstr(words)) << rule;
}

TEST(minizinc, says_what_an_oven_is_set_to_and_how_long_a_change_takes) {
  const std::string model = minizinc(tin_in_the_oven());
  const std::vector<std::pair<const char*, const char*>> rules{
      {"choice", "var {0, 1}: z0;"},
      {"first setting", "(on0 /\\ z0 = 0) -> (s[0] >= 6);"},
      {"change", "(on0 /\\ on1 /\\ z0 = 1 /\\ z1 = 2) -> (e[0] + 2 <= s[2] \\/ e[2] + 2 <= s[0]);"},
      {"shut door", "(on1 /\\ on0) -> (s[0] <= s[2] \\/ s[0] >= s[2] + 2);"},
      {"the tin has the setting of its bake",
       "(on1 /\\ on2 /\\ z1 = 2 /\\ z0 = 0) -> (e[2] + 6 <= e[0] \\/ e[1] + 6 <= s[2]);"},
  };
  for (const auto& [rule, words] : rules) EXPECT_THAT(model, HasSubstr(words)) << rule;
}

TEST(minizinc, the_level_and_what_the_levels_before_may_be_stand_at_the_top) {
  const Problem problem = random_problem(1, Recipe{});
  ASSERT_GE(problem.goals.size(), 2u);
  const std::string model = minizinc(problem, 1, {7});
  EXPECT_THAT(model, HasSubstr("int: level = 2;\narray[int] of int: at_most = [7];\n"));
}

TEST(minizinc, a_level_that_is_not_there_or_has_no_values_before_it_is_refused) {
  const Problem problem = random_problem(1, Recipe{});
  EXPECT_THROW((void)minizinc(problem, problem.goals.size(), {1, 2, 3}), std::invalid_argument);
  EXPECT_THROW((void)minizinc(problem, 1, {}), std::invalid_argument);
}

TEST(minizinc, one_unit_of_a_level_weighs_more_than_all_that_comes_after_it) {
  const Problem problem = place_and_hands();
  // Late: 25 - 0 - 2 and one presence; calm: 3 + 2 + 1.
  EXPECT_EQ(most_of_levels(problem), (std::vector<std::int64_t>{24, 6}));
  EXPECT_EQ(level_weights(problem, 1000), (std::vector<std::int64_t>{7, 1}));
  EXPECT_TRUE(level_weights(problem, 24 * 7 + 6).has_value());
  EXPECT_FALSE(level_weights(problem, 24 * 7 + 5).has_value());
}

TEST(minizinc, levels_that_no_sum_can_order_are_refused_together_and_not_one_by_one) {
  Problem large = place_and_hands();
  large.goals[0].terms[0].weight = 20'000'000;
  EXPECT_THROW((void)minizinc(large), std::invalid_argument);
  EXPECT_THAT(minizinc(large, 0, {}), Not(HasSubstr("weight")));
  Problem banded = place_and_hands();
  banded.goals[0].band = 1;
  EXPECT_THROW((void)minizinc(banded), std::invalid_argument);
}

void expect_same_optimum(const Problem& problem, const std::string& what) {
  const Outcome outcome = solve(problem, {});
  const MinizincAnswer answer = minizinc_answer(minizinc(problem));
  EXPECT_EQ(answer.refuted, outcome.status == Status::kInfeasible) << what << ": " << answer.said;
  if (answer.refuted) return;
  EXPECT_TRUE(answer.proved) << what << ": " << answer.said;
  EXPECT_EQ(answer.levels, outcome.values) << what;
}

TEST(minizinc, a_general_purpose_solver_finds_the_same_optimum) {
  if (!minizinc_installed()) GTEST_SKIP() << "minizinc is not installed: nothing was compared";
  expect_same_optimum(tin_in_the_oven(), "tin in the oven");
  expect_same_optimum(place_and_hands(), "place and hands");
  for (std::uint64_t seed = 1; seed <= kProblems; ++seed)
    expect_same_optimum(random_problem(seed, Recipe{}), "seed " + std::to_string(seed));
}

}  // namespace
}  // namespace scheduler::testing
