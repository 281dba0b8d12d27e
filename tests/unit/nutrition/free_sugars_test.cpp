#include "nutrition/free_sugars.h"

#include <gtest/gtest.h>

#include "../../support/nutrition_tables.h"
#include "nutrition/per_food.h"

namespace {

using namespace nutrition;

FreeSugars of(const char* key) { return free_sugars(*tests::shipped_foods().find(key)); }

TEST(FreeSugars, AreAllOfSugarSyrupHoneyJamAndJuice) {
  for (const char* key : {"caster_sugar", "honey", "jam", "maple_syrup", "orange_juice_fresh",
                          "tomato_puree", "cola"})
    EXPECT_EQ(of(key).share, 1.0) << key;
}

TEST(FreeSugars, AreNoneOfWholeFruitVegetablesMilkAndDriedFruit) {
  for (const char* key : {"apple_eating", "carrot", "whole_milk", "natural_yogurt", "raisins",
                          "plain_flour", "onion"})
    EXPECT_EQ(of(key).share, 0.0) << key;
}

TEST(FreeSugars, AreUnknownWhereTheTableMixesBothKinds) {
  for (const char* key : {"fruit_yogurt", "milk_chocolate", "baked_beans", "tomato_ketchup"}) {
    EXPECT_FALSE(of(key).share) << key;
    const kitchen::Food& food = *tests::shipped_foods().find(key);
    EXPECT_FALSE(per_100_g(food, Held::kFreeSugars)) << key;
    EXPECT_EQ(per_100_g(food, Held::kFreeSugarsMost), food.nutrients[kitchen::Nutrient::kSugars])
        << key;
  }
}

TEST(FreeSugars, OfEveryFoodSayHowTheyWereJudged) {
  for (const kitchen::Food& food : tests::shipped_foods().all())
    EXPECT_FALSE(free_sugars(food).why.empty()) << food.key;
}

}  // namespace
