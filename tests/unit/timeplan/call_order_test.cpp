// The order in which bays are called (Y2): fixed where it makes no difference, free where it may.
#include <gtest/gtest.h>

#include <algorithm>

#include "sample.h"
#include "timeplan/trial.h"

namespace {

using timeplan::TaskKind;
using timeplan::Trial;

Trial one_wave(const kitchen::Lesson& lesson) {
  return timeplan::prepare(lesson, std::vector<int>(lesson.cooks.size(), 0), {});
}

bool is_call(const Trial& trial, const scheduler::Lag& lag) {
  const auto& nodes = trial.net.nodes;
  const auto node_of = [&](scheduler::Event e) -> const timeplan::Node* {
    for (std::size_t n = 0; n < nodes.size(); ++n) {
      if (trial.brief.activity_of_node[n] == e.activity) return &nodes[n];
    }
    return nullptr;
  };
  const timeplan::Node* from = node_of(lag.from);
  const timeplan::Node* to = node_of(lag.to);
  return from != nullptr && to != nullptr && from->task.cook != to->task.cook &&
         from->task.kind == to->task.kind && from->queued && to->queued &&
         lag.from.side == scheduler::Side::kStart && lag.to.side == scheduler::Side::kStart;
}

std::vector<std::pair<int, int>> calls_to(const Trial& trial, TaskKind kind) {
  std::vector<std::pair<int, int>> cooks;
  for (const scheduler::Lag& lag : trial.brief.problem.lags) {
    if (!is_call(trial, lag)) continue;
    int from = -1, to = -1;
    for (std::size_t n = 0; n < trial.net.nodes.size(); ++n) {
      if (trial.net.nodes[n].task.kind != kind) continue;
      if (trial.brief.activity_of_node[n] == lag.from.activity) from = trial.net.nodes[n].task.cook;
      if (trial.brief.activity_of_node[n] == lag.to.activity) to = trial.net.nodes[n].task.cook;
    }
    if (from >= 0 && to >= 0) cooks.emplace_back(from, to);
  }
  std::sort(cooks.begin(), cooks.end());
  return cooks;
}

using Cooks = std::vector<std::pair<int, int>>;

TEST(call_order, of_bays_that_could_change_places_is_the_order_of_the_lesson) {
  const kitchen::Lesson lesson = sample::lesson({sample::soup()}, 8, 2, 4, 4, 60);
  EXPECT_EQ(calls_to(one_wave(lesson), TaskKind::kCollectIngredients),
            (Cooks{{0, 1}, {1, 2}, {2, 3}}));
}

TEST(call_order, is_left_open_for_a_bay_that_is_different) {
  kitchen::Lesson lesson = sample::lesson({sample::soup()}, 8, 2, 4, 4, 60);
  lesson.cooks[1].leaves -= base::minutes(5);
  EXPECT_EQ(calls_to(one_wave(lesson), TaskKind::kCollectIngredients), (Cooks{{0, 2}, {2, 3}}));
}

// The outside of it: without the order the optimum of every level is the same.
TEST(call_order, takes_no_better_plan_away) {
  int optima = 0;
  for (const int sinks : {2, 3}) {
    for (const int pupils : {3, 6}) {
      for (const kitchen::Dish& dish : {sample::soup(), sample::crumble()}) {
        Trial ordered = one_wave(sample::lesson({dish}, pupils, 1, 3, sinks, 75));
        Trial open = ordered;
        std::erase_if(open.brief.problem.lags,
                      [&](const scheduler::Lag& lag) { return is_call(ordered, lag); });
        ASSERT_LT(open.brief.problem.lags.size(), ordered.brief.problem.lags.size());
        timeplan::TrialLimits limits;
        limits.seconds = 5;
        timeplan::solve(ordered, limits);
        timeplan::solve(open, limits);
        ASSERT_NE(open.outcome.status, scheduler::Status::kFeasible) << dish.name;
        ASSERT_EQ(ordered.outcome.status, open.outcome.status) << dish.name << ", " << sinks;
        optima += open.outcome.status == scheduler::Status::kOptimal;
        EXPECT_EQ(ordered.outcome.values, open.outcome.values) << dish.name << ", " << sinks;
      }
    }
  }
  EXPECT_GT(optima, 4);
}

}  // namespace
