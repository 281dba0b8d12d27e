// What a dish costs by the amounts it uses, against sums done by hand beside the check.
#include "larder/dish_cost.h"

#include <gtest/gtest.h>

#include "made.h"

namespace {

using base::Ratio;
using larder::dish_cost;
using larder::DishCost;
using tests::line;
using tests::shipped_foods;

kitchen::Dish dish(std::vector<kitchen::Ingredient> lines) {
  kitchen::Dish out;
  out.name = "Batter";
  out.portions = 4;
  out.ingredients = std::move(lines);
  return out;
}

const char* const kPrices =
    "plain flour,North,bag,1.5 kg,1.20,,,,\n"
    "milk,North,bottle,2 l,1.60,,,,\n"
    "eggs,North,box,12 eggs,2.40,,,,\n";

// Flour: 225 of 1500 g at 120p are 18p. Milk: 150 of 2000 ml at 160p are 12p. Eggs: 1 of 12 at 240p
// is 20p. Together 50p.
TEST(DishCost, IsTheSumOfWhatIsUsedOfEachPack) {
  const DishCost cost = dish_cost(
      dish({line("plain flour", 225, "g"), line("milk", 150, "ml"), line("eggs", 1, "egg")}),
      tests::prices(kPrices), shipped_foods());
  ASSERT_EQ(cost.lines.size(), 3U);
  EXPECT_TRUE(cost.complete);
  EXPECT_EQ(cost.lines[0].pence, Ratio(18));
  EXPECT_EQ(cost.lines[1].pence, Ratio(12));
  EXPECT_EQ(cost.lines[2].pence, Ratio(20));
  EXPECT_EQ(cost.known, Ratio(50));
  EXPECT_EQ(cost.lines[0].how, "225 g of 1.5 kg at £1.20");
}

// 100 g of 1.5 kg at 120p are 8p; of 5 kg at 300p they are 6p.
TEST(DishCost, TakesTheCheapestPack) {
  const DishCost cost = dish_cost(
      dish({line("plain flour", 100, "g")}),
      tests::prices(std::string(kPrices) + "plain flour,South,sack,5 kg,3.00,,,,\n"),
      shipped_foods());
  EXPECT_EQ(cost.known, Ratio(6));
}

// 1 of 3 g is a third; nothing is rounded before it is shown: 50 g of 1.5 kg at 100p are 10/3 p.
TEST(DishCost, RoundsNothing) {
  const DishCost cost = dish_cost(dish({line("plain flour", 50, "g")}),
                                  tests::prices("plain flour,North,bag,1.5 kg,1.00,,,,\n"),
                                  shipped_foods());
  EXPECT_EQ(cost.known, Ratio(10, 3));
}

TEST(DishCost, WhatIsToTasteOrFromTheTapCostsNothing) {
  const DishCost cost = dish_cost(
      dish({line("plain flour", 150, "g"), line("salt", 0, ""), line("water", 100, "ml")}),
      tests::prices(kPrices), shipped_foods());
  EXPECT_TRUE(cost.complete);
  EXPECT_EQ(cost.lines.size(), 2U);  // salt to taste has no line
  EXPECT_EQ(cost.known, Ratio(12));
}

TEST(DishCost, AnUnknownPriceIsNotNothing) {
  for (const auto& odd : {line("moon dust", 10, "g"), line("caster sugar", 100, "g")}) {
    const DishCost cost = dish_cost(dish({line("plain flour", 150, "g"), odd}),
                                    tests::prices(kPrices), shipped_foods());
    EXPECT_FALSE(cost.complete) << odd.name;
    EXPECT_FALSE(cost.lines[1].pence) << odd.name;
    EXPECT_FALSE(cost.lines[1].how.empty());
    EXPECT_EQ(cost.known, Ratio(12));
  }
}

TEST(DishCost, APackWithoutAPriceIsNeverTaken) {
  const DishCost cost = dish_cost(dish({line("milk", 100, "ml")}),
                                  tests::prices("milk,North,bottle,2 l,,,,,\n"), shipped_foods());
  EXPECT_FALSE(cost.complete);
}

}  // namespace
