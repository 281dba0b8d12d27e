#include "nutrition/compare.h"

#include <gtest/gtest.h>

#include "../../support/nutrition_tables.h"

namespace {

using namespace nutrition;

Version version(const std::string& name, const kitchen::Dish& dish) {
  const auto foods = foods_of(dish, tests::shipped_foods());
  Version out{name,        tests::calculated(dish), allergens_of(dish, foods), {}, std::nullopt,
              std::nullopt};
  out.five_a_day = five_a_day(out.nutrients, tests::cooking_tables());
  return out;
}

TEST(Compare, VersionsStandSideBySideAgainstTheFirst) {
  kitchen::Dish with_oil = tests::macaroni();
  with_oil.ingredients[2] = tests::ingredient("rapeseed_oil", 20);
  const Comparison compared = compare(
      {version("butter", tests::macaroni()), version("oil", with_oil)});
  ASSERT_EQ(compared.lines.size(), 9U);
  const ComparedLine& saturates = compared.lines[3];
  ASSERT_TRUE(saturates.change[1]);
  EXPECT_LT(*saturates.change[1], -4);
  EXPECT_DOUBLE_EQ(*saturates.change[0], 0);
  EXPECT_TRUE(compared.lost[1].empty());  // the cheddar still brings milk
  EXPECT_EQ(compared.colours.size(), 2U);
}

TEST(Compare, AllergensGainedAndLostAreNamed) {
  const Comparison compared = compare(
      {version("flour", tests::stirred({tests::ingredient("plain_flour", 100)})),
       version("almonds", tests::stirred({tests::ingredient("almonds_ground", 100)}))});
  EXPECT_EQ(compared.gained[1], kitchen::Allergens{kitchen::Allergen::kNuts});
  EXPECT_EQ(compared.lost[1], kitchen::Allergens{kitchen::Allergen::kGluten});
}

TEST(Compare, AnIngredientOfUnknownFoodIsNeverFreeOfAnything) {
  auto stranger = tests::ingredient("", 50);
  stranger.name = "dragon scales";
  stranger.food.clear();
  const auto dish = tests::stirred({stranger});
  EXPECT_EQ(allergens_of(dish, foods_of(dish, tests::shipped_foods())).not_known,
            std::vector<std::string>{"dragon scales"});
}

}  // namespace
