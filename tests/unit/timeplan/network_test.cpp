// The lesson as a network: which tasks there are, how long they are planned, which of them queue.
#include "timeplan/network.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "sample.h"
#include "timeplan/network_methods.h"

namespace {

using kitchen::Attention;
using timeplan::Network;
using timeplan::Node;
using timeplan::TaskKind;

long count(const Network& net, TaskKind kind) {
  return std::count_if(net.nodes.begin(), net.nodes.end(), [&](const Node& n) {
    return n.task.kind == kind && (kind != TaskKind::kStep || n.task.step >= 0);
  });
}

TEST(planned_length, of_a_hands_on_step_is_the_mean_and_not_the_median) {
  // 6 min median, sigma 0.4: mean 6 * exp((0.16 + 0.0225 + 0.0064) / 2) = 6 * 1.0991 = 6.59 min, up
  // to 7.
  kitchen::Step s = sample::step("dice", 6, Attention::kHands, {});
  s.spread = 0.4;
  EXPECT_EQ(timeplan::planned_length(s, 1.0).first, base::minutes(7));
  EXPECT_EQ(timeplan::planned_length(s, 1.0), timeplan::planned_length(s, 1.0));
}

TEST(planned_length, of_a_slow_cook_is_longer) {
  const kitchen::Step s = sample::step("dice", 6, Attention::kHands, {});
  EXPECT_GT(timeplan::planned_length(s, 1.5).first, timeplan::planned_length(s, 1.0).first);
}

TEST(planned_length, of_a_passive_step_is_as_stated_whatever_the_pace) {
  kitchen::Step s = sample::step("simmer", 20, Attention::kGlance, {});
  s.most = base::minutes(30);
  s.spread = 0.4;
  EXPECT_EQ(timeplan::planned_length(s, 2.0), std::make_pair(base::minutes(20), base::minutes(30)));
}

TEST(parts, twelve_minutes_that_can_be_put_down_are_three_times_four) {
  // Rule P1 and the seed 44-prep-in-parts: 12 min of peeling are planned as parts of 4.
  kitchen::Step s = sample::step("peel", 12, Attention::kHands, {});
  s.can_put_down = true;
  EXPECT_EQ(timeplan::parts(s, base::minutes(12)), std::make_pair(3, base::minutes(4)));
}

TEST(parts, ten_minutes_stay_whole) {
  kitchen::Step s = sample::step("peel", 10, Attention::kHands, {});
  s.can_put_down = true;
  EXPECT_EQ(timeplan::parts(s, base::minutes(10)).first, 1);
}

TEST(network, gives_every_cook_hands_collecting_steps_and_washing_up) {
  const kitchen::Lesson lesson = sample::lesson({sample::soup()}, 8, 2, 4, 4, 60);
  const Network net = timeplan::network(lesson, std::vector<int>(4, 0));
  EXPECT_EQ(count(net, TaskKind::kApronAndHands), 4);
  EXPECT_EQ(count(net, TaskKind::kCollectIngredients), 4);
  EXPECT_EQ(count(net, TaskKind::kStep), 12);
  EXPECT_EQ(count(net, TaskKind::kWashUp), 8);  // ten minutes for a pair, in two parts of five
  EXPECT_EQ(net.serves.size(), 4U);
}

TEST(network, has_nobody_collect_when_trays_stand_at_the_places) {
  kitchen::Lesson lesson = sample::lesson({sample::soup()}, 8, 2, 4, 4, 60);
  lesson.trays_at_places = true;
  const Network net = timeplan::network(lesson, std::vector<int>(4, 0));
  EXPECT_EQ(count(net, TaskKind::kCollectIngredients), 0);
}

TEST(network, puts_cooks_of_one_wave_and_one_menu_on_one_line) {
  const kitchen::Lesson lesson = sample::lesson({sample::soup()}, 8, 2, 4, 4, 60);
  EXPECT_EQ(timeplan::network(lesson, {0, 0, 0, 0}).lines, 1);
  EXPECT_EQ(timeplan::network(lesson, {0, 1, 0, 1}).lines, 2);
}

TEST(network, lets_a_step_at_a_sink_queue_and_what_is_tied_closely_to_it) {
  kitchen::Dish dish = sample::soup();
  dish.method[2].sink = 1;  // drained within a minute of boiling
  const kitchen::Lesson lesson = sample::lesson({dish}, 8, 2, 4, 4, 60);
  const Network net = timeplan::network(lesson, {0, 0, 0, 0});
  for (const Node& n : net.nodes) {
    if (n.task.kind != TaskKind::kStep || n.task.step < 0) continue;
    EXPECT_EQ(n.queued, n.task.step > 0) << "step " << n.task.step;
  }
}

TEST(network, asks_for_one_hand_wash_after_a_run_of_raw_steps) {
  kitchen::Dish dish = sample::soup();
  dish.method[0].hygiene = kitchen::Hygiene::kRaw;
  const kitchen::Lesson lesson = sample::lesson({dish}, 4, 2, 2, 2, 60);
  EXPECT_EQ(count(timeplan::network(lesson, {0, 0}), TaskKind::kHandWash), 2);
}

TEST(network, cooks_only_the_half_of_a_dish_that_this_lesson_is_for) {
  kitchen::Dish dish = sample::crumble();
  kitchen::Split split;
  split.name = "after rubbing in";
  split.after_step = 0;
  split.longest = base::minutes(48 * 60);
  dish.splits = {split};
  kitchen::Lesson lesson = sample::lesson({dish}, 4, 2, 2, 2, 60);
  lesson.carry = {{0, 0, false}};
  const Network first = timeplan::network(lesson, {0, 0});
  EXPECT_EQ(count(first, TaskKind::kStep), 2);
  EXPECT_EQ(count(first, TaskKind::kStore), 2);
  lesson.carry = {{0, 0, true}};
  const Network second = timeplan::network(lesson, {0, 0});
  EXPECT_EQ(count(second, TaskKind::kStep), 4);
  EXPECT_EQ(count(second, TaskKind::kTakeOutOfStore), 2);
}

TEST(buffer, is_between_three_and_fifteen_minutes) {
  kitchen::Dish calm = sample::soup(), wild = sample::soup();
  for (kitchen::Step& s : wild.method) s.spread = 1.2;
  EXPECT_EQ(timeplan::buffer_of(sample::lesson({calm}, 2, 2, 1, 1, 60), 0, 1.0), base::minutes(3));
  EXPECT_EQ(timeplan::buffer_of(sample::lesson({wild}, 2, 2, 1, 1, 60), 0, 1.0), base::minutes(15));
}

}  // namespace
