#include "safety/kit_order.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <numeric>

#include "sample.h"

namespace {

using namespace safety;

std::vector<ThingUse> any_uses(int most) {
  std::vector<ThingUse> out;
  for (int n = *rc::gen::inRange(1, most); n > 0; --n)
    out.push_back({*rc::gen::inRange(0U, 8U), *rc::gen::inRange(0U, 8U)});
  return out;
}

int cleans_of(const std::vector<ThingUse>& uses, const std::vector<int>& order) {
  int cleans = 0;
  std::uint32_t dirt = 0;
  for (const int u : order) {
    const ThingUse& use = uses[static_cast<std::size_t>(u)];
    if ((dirt & use.minds) != 0) {
      ++cleans;
      dirt = 0;
    }
    dirt |= use.brings;
  }
  return cleans;
}

std::uint32_t minded_by(const std::vector<ThingUse>& uses) {
  std::uint32_t out = 0;
  for (const ThingUse& use : uses) out |= use.minds;
  return out;
}

RC_GTEST_PROP(KitOrder, FreeFromUsesComeBeforeAllOthers, ()) {
  const auto uses = any_uses(20);
  const UseOrder order = free_from_first(uses);
  bool other_seen = false;
  for (std::size_t i = 0; i < order.order.size(); ++i) {
    const bool free = (uses[static_cast<std::size_t>(order.order[i])].brings & minded_by(uses)) ==
                      0;
    if (free) {
      RC_ASSERT(!other_seen);
      RC_ASSERT(!order.clean_before[i]);
    }
    other_seen = other_seen || !free;
  }
}

RC_GTEST_PROP(KitOrder, NobodyMeetsWhatTheyMindWithoutACleanAndEachUseComesOnce, ()) {
  const auto uses = any_uses(20);
  const UseOrder order = free_from_first(uses);
  std::vector<int> sorted = order.order;
  std::sort(sorted.begin(), sorted.end());
  std::vector<int> all(uses.size());
  std::iota(all.begin(), all.end(), 0);
  RC_ASSERT(sorted == all);
  RC_ASSERT(order.cleans() == cleans_of(uses, order.order));
}

RC_GTEST_PROP(KitOrder, NoOrderNeedsFewerCleans, ()) {
  const auto uses = any_uses(7);
  std::vector<int> order(uses.size());
  std::iota(order.begin(), order.end(), 0);
  int best = 1000;
  do {
    best = std::min(best, cleans_of(uses, order));
  } while (std::next_permutation(order.begin(), order.end()));
  RC_ASSERT(free_from_first(uses).cleans() == best);
}

TEST(KitOrder, TwoWhoEachBringWhatTheOtherMindsNeedOneClean) {
  EXPECT_EQ(free_from_first({{1, 2}, {2, 1}}).cleans(), 1);
  EXPECT_EQ(free_from_first({{1, 0}, {0, 1}}).order, (std::vector<int>{1, 0}));
}

TEST(KitOrder, TheAllergicCookIsFirstAtTableAndProcessor) {
  kitchen::Dish cheese = samples::dish("Macaroni", {"cheddar"});
  samples::add_step(cheese, "Grate.", {0}, {"food processor"});
  kitchen::Dish salad = samples::dish("Salad", {"carrot"});
  samples::add_step(salad, "Grate.", {0}, {"food processor"});
  auto lesson = samples::lesson({cheese, salad}, {{0}, {0}, {1}});
  lesson.cooks[2].avoids = {kitchen::Allergen::kMilk};
  const auto needs = needs_in(lesson);
  const auto order = order_at_things(lesson, needs, samples::evidence());
  ASSERT_EQ(order.size(), 2U);
  EXPECT_EQ(order[0].thing, "ingredients table");
  EXPECT_EQ(order[1].thing, "food processor");
  for (const ThingOrder& thing : order) {
    EXPECT_EQ(thing.turns.front().cooks, std::vector<int>{2});
    EXPECT_EQ(thing.turns.size(), 2U);
    EXPECT_FALSE(thing.turns[1].clean_before);
  }
}

TEST(KitOrder, NothingIsSaidWhereNobodyCanMeetAnything) {
  auto lesson = samples::lesson({samples::dish("Salad", {"carrot"})}, {{0}, {0}});
  lesson.cooks[0].avoids = {kitchen::Allergen::kMilk};
  EXPECT_TRUE(order_at_things(lesson, needs_in(lesson), samples::evidence()).empty());
}

}  // namespace
