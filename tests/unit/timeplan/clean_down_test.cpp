// What a schedule says of cleaning down, said as a plan (H3).
#include <gtest/gtest.h>

#include "sample.h"
#include "timeplan/brief.h"
#include "timeplan/trial.h"

namespace {

using scheduler::Event;
using scheduler::Side;
using timeplan::TaskKind;
using timeplan::Trial;

kitchen::Step at_board(const std::string& id, kitchen::Hygiene hygiene,
                       std::vector<kitchen::Follows> follows) {
  kitchen::Step s = sample::step(id, 4, kitchen::Attention::kHands, std::move(follows));
  s.hygiene = hygiene;
  return s;
}

/// One cook, two dishes: raw mince; raw chicken, then unwashed leaves, then plating.
kitchen::Lesson raw_twice() {
  kitchen::Dish patties;
  patties.name = "Mince patties";
  patties.tag = "MP";
  patties.method = {at_board("shape", kitchen::Hygiene::kRaw, {})};
  kitchen::Dish salad;
  salad.name = "Chicken salad";
  salad.tag = "CS";
  salad.method = {at_board("cut", kitchen::Hygiene::kRaw, {}),
                  at_board("trim", kitchen::Hygiene::kUnwashed, {sample::after(0)}),
                  at_board("plate", kitchen::Hygiene::kReadyToEat, {sample::after(1)})};
  for (kitchen::Dish* dish : {&patties, &salad}) {
    dish->portions = 1;
    dish->wash_after = 0;
  }
  return sample::lesson({patties, salad}, 1, 1, 2, 2, 90);
}

int activity_of(const Trial& trial, TaskKind kind, int dish, int step) {
  for (std::size_t n = 0; n < trial.net.nodes.size(); ++n) {
    const timeplan::Task& t = trial.net.nodes[n].task;
    if (t.kind == kind && t.dish == dish && t.step == step) return trial.brief.activity_of_node[n];
  }
  return -1;
}

// Both raw steps, one long clean-down, the leaves, the other long clean-down, the plate: a
// schedule the engine may well come up with, though the second one has only leaves to clear away.
TEST(clean_down, after_raw_food_that_was_cleaned_away_before_is_as_long_as_after_unwashed_food) {
  const kitchen::Lesson lesson = raw_twice();
  Trial trial = timeplan::prepare(lesson, {0}, {});
  scheduler::Problem& problem = trial.brief.problem;
  const int shape = activity_of(trial, TaskKind::kStep, 0, 0);
  const int trim = activity_of(trial, TaskKind::kStep, 1, 1);
  const int plate = activity_of(trial, TaskKind::kStep, 1, 2);
  const int first = activity_of(trial, TaskKind::kCleanDown, 1, 0);
  const int second = activity_of(trial, TaskKind::kCleanDown, 0, 0);
  const int light = activity_of(trial, TaskKind::kCleanDown, 1, 1);
  for (const int a : {shape, trim, plate, first, second, light}) ASSERT_GE(a, 0);
  const auto before = [&](int a, int b) {
    problem.lags.push_back({{a, Side::kEnd}, {b, Side::kStart}, 0, scheduler::kNoLimit, -1});
  };
  problem.activities[static_cast<std::size_t>(first)].optional = false;
  problem.activities[static_cast<std::size_t>(second)].optional = false;
  problem.activities[static_cast<std::size_t>(light)].latest_end = 0;
  before(shape, first);
  before(first, trim);
  before(trim, second);
  before(second, plate);
  timeplan::solve(trial, {});
  ASSERT_TRUE(trial.found());
  const timeplan::Plan plan = timeplan::plan_from(lesson, trial.net, trial.brief,
                                                  trial.outcome.best, trial.wave_of_cook);
  std::vector<timeplan::Seconds> lengths;
  for (const timeplan::Task& t : plan.tasks) {
    if (t.kind == TaskKind::kCleanDown) lengths.push_back(t.end - t.start);
  }
  ASSERT_EQ(lengths.size(), 2U);
  EXPECT_EQ(lengths[0], base::grid_up(lesson.rules.clean_after_raw));
  EXPECT_EQ(lengths[1], base::grid_up(lesson.rules.clean_after_unwashed));
  for (const timeplan::Violation& v : timeplan::verify(lesson, plan))
    EXPECT_NE(v.rule, "H3") << v.message;
}

}  // namespace
