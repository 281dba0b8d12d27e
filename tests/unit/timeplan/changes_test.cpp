// The changes offered when a lesson does not fit: each does what it says and nothing else.
#include "timeplan/changes.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <numeric>

#include "sample.h"

namespace {

std::optional<kitchen::Lesson> changed(const kitchen::Lesson& lesson, const std::string& code) {
  for (const timeplan::Change& c : timeplan::changes(lesson)) {
    if (c.code == code) return c.apply(lesson);
  }
  ADD_FAILURE() << "no change " << code;
  return std::nullopt;
}

int pupils(const kitchen::Lesson& lesson) {
  return std::accumulate(lesson.cooks.begin(), lesson.cooks.end(), 0,
                         [](int sum, const kitchen::Cook& c) { return sum + c.people; });
}

TEST(trios, seat_the_same_pupils_in_fewer_sets) {
  const kitchen::Lesson lesson = sample::lesson({sample::soup()}, 12, 1, 4, 4, 60);
  const auto threes = changed(lesson, "trios");
  ASSERT_TRUE(threes);
  EXPECT_EQ(threes->cooks.size(), 4U);
  EXPECT_EQ(pupils(*threes), pupils(lesson));
}

TEST(trios, are_not_offered_to_those_who_are_three_already) {
  EXPECT_FALSE(changed(sample::lesson({sample::soup()}, 12, 3, 4, 4, 60), "trios"));
}

TEST(trays, are_not_offered_where_they_stand_already) {
  kitchen::Lesson lesson = sample::lesson({sample::soup()}, 12, 2, 4, 4, 60);
  ASSERT_TRUE(changed(lesson, "trays set out"));
  lesson.trays_at_places = true;
  EXPECT_FALSE(changed(lesson, "trays set out"));
}

TEST(carry_over, is_only_offered_for_a_dish_with_a_halfway_point) {
  kitchen::Dish dish = sample::crumble();
  EXPECT_FALSE(changed(sample::lesson({dish}, 4, 2, 2, 2, 60), "carry over"));
  kitchen::Split split;
  split.name = "after rubbing in";
  dish.splits = {split};
  const auto carried = changed(sample::lesson({dish}, 4, 2, 2, 2, 60), "carry over");
  ASSERT_TRUE(carried);
  EXPECT_EQ(carried->carry.size(), 1U);
}

TEST(stop_and_gates, turn_into_each_other) {
  kitchen::Dish dish = sample::crumble();
  dish.method[0].gate = kitchen::Gate{"fine crumbs", base::minutes(1), base::minutes(5)};
  const auto stop = changed(sample::lesson({dish}, 12, 2, 6, 6, 60), "stop together");
  ASSERT_TRUE(stop);
  ASSERT_EQ(stop->windows.size(), 1U);
  EXPECT_FALSE(stop->dishes[0].method[0].gate);
  const auto gates = changed(*stop, "gate cooker by cooker");
  ASSERT_TRUE(gates);
  EXPECT_TRUE(gates->windows.empty());
  EXPECT_TRUE(gates->dishes[0].method[0].gate);
}

TEST(an_oven_next_door, is_within_reach_of_every_place_and_only_for_those_who_bake) {
  EXPECT_FALSE(changed(sample::lesson({sample::soup()}, 4, 2, 2, 2, 60), "oven next door"));
  const auto more = changed(sample::lesson({sample::crumble()}, 4, 2, 2, 2, 60), "oven next door");
  ASSERT_TRUE(more);
  const int next_door = static_cast<int>(more->room.cookers.size()) - 1;
  for (const kitchen::Place& p : more->room.places) EXPECT_EQ(p.cookers.back(), next_door);
}

}  // namespace
