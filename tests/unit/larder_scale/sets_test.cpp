#include "larder/sets.h"

#include <gmock/gmock.h>
#include <rapidcheck/gtest.h>

#include "../../support/shipped_foods.h"
#include "../kitchen_ratios/samples.h"

namespace {

using namespace larder;
using tests::shipped_foods;

TEST(Sets, AreCooksAndTheDemonstrationAndSpares) {
  EXPECT_EQ(set_count({12, true, 1}).value(), 14);
  EXPECT_EQ(set_count({0, true, 0}).value(), 1);
  EXPECT_EQ(set_count({0, false, 0}).problems()[0].code, "sets.count");
  EXPECT_FALSE(set_count({201, false, 0}));
  EXPECT_FALSE(set_count({5, true, -1}));
  EXPECT_FALSE(set_count({2147483647, true, 2147483647}));
}

TEST(Sets, ABeginnersPotatoIsWeighedOutWithWhatHeWastes) {
  // 250 g at 82 / 72 % (rows DY041, DY042: common practice, memory) = 284.7 g, 285 g on the scales.
  kitchen::Dish mash = samples::dish(
      "Mash", {{"potatoes", 250}, {"carrot", 1, "carrot"}, {"butter", 20}}, {"Peel the potatoes."});
  mash.ingredients[0].food = "potato";
  const auto order = order_of_sets(mash, {12, true, 1}, 1, shipped_foods());
  ASSERT_TRUE(order);
  EXPECT_EQ(order.value().lines[0].tray.text, "285 g");
  EXPECT_FALSE(order.value().lines[0].waste.source.empty());
  EXPECT_EQ(order.value().lines[1].tray.text, "1 carrot");
  EXPECT_EQ(order.value().lines[2].waste.factor, Ratio(1));
  EXPECT_EQ(
      order_of_sets(mash, {12, true, 1}, 1, shipped_foods(), false).value().lines[0].tray.text,
      "250 g");
}

RC_GTEST_PROP(Sets, TheOrderIsTheSumOfTheTrays, ()) {
  const int cooks = *rc::gen::inRange(1, 40);
  const double grams = *rc::gen::inRange(1, 4000) / 4.0;
  const kitchen::Dish dish = samples::dish(
      "Something", {{"potatoes", grams}, {"milk", 145, "ml"}, {"salt", 0, ""}}, {"Mix."});
  const auto order = order_of_sets(dish, {cooks, true, 1}, 1, shipped_foods()).value();
  for (const SetLine& line : order.lines) {
    if (!line.tray.exact.stated()) {
      RC_ASSERT(!line.order.stated());
      continue;
    }
    Ratio sum = 0;
    for (int tray = 0; tray < order.sets; ++tray) sum += line.tray.shown.middle();
    RC_ASSERT(line.order.middle() == sum);
  }
}

}  // namespace
