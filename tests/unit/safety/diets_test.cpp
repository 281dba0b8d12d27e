#include "safety/diets.h"

#include <gtest/gtest.h>

#include "sample.h"

namespace {

using namespace safety;
using samples::evidence;
using samples::of_food;

Stated stated(const std::string& food, Diet diet) {
  return statement(of_food(food), {diet, Reach::kEat}, evidence()).stated;
}

TEST(Diets, WhatHidesIsFound) {
  EXPECT_EQ(stated("marshmallows", Diet::kNoGelatine), Stated::kContains);
  EXPECT_EQ(stated("marshmallows", Diet::kNoPork), Stated::kCheckLabel);
  EXPECT_EQ(stated("parmesan", Diet::kNoRennet), Stated::kContains);
  EXPECT_EQ(stated("cheddar", Diet::kNoRennet), Stated::kCheckLabel);
  EXPECT_EQ(stated("worcestershire_sauce", Diet::kVegetarian), Stated::kContains);
  EXPECT_EQ(stated("curry_paste", Diet::kVegetarian), Stated::kCheckLabel);
  EXPECT_EQ(stated("beef_suet_shredded", Diet::kNoBeef), Stated::kContains);
  EXPECT_EQ(stated("lard", Diet::kNoPork), Stated::kContains);
  EXPECT_EQ(stated("vanilla_extract", Diet::kNoAlcohol), Stated::kContains);
  EXPECT_EQ(stated("wine_vinegar", Diet::kNoAlcohol), Stated::kCheckLabel);
  EXPECT_EQ(stated("chicken_stock_cube", Diet::kVegetarian), Stated::kContains);
}

TEST(Diets, WhatIsAllowedFromTheRightSourceIsAskedNeverAssumed) {
  EXPECT_EQ(stated("chicken_breast", Diet::kHalal), Stated::kCheckLabel);
  EXPECT_EQ(stated("pork_mince", Diet::kHalal), Stated::kContains);
  EXPECT_EQ(stated("gelatine", Diet::kNoPork), Stated::kCheckLabel);
  EXPECT_EQ(stated("prawns_raw", Diet::kKosherStyle), Stated::kContains);
  EXPECT_EQ(stated("carrot", Diet::kHalal), Stated::kNotListed);
}

TEST(Diets, AVegetarianMayHaveMilkAndAVeganMayNot) {
  EXPECT_EQ(stated("whole_milk", Diet::kVegetarian), Stated::kNotListed);
  EXPECT_EQ(stated("whole_milk", Diet::kVegan), Stated::kContains);
  EXPECT_EQ(stated("honey", Diet::kVegan), Stated::kContains);
}

TEST(Diets, CoeliacIsGluten) {
  EXPECT_EQ(stated("plain_flour", Diet::kCoeliac), Stated::kContains);
  EXPECT_EQ(stated("baking_powder", Diet::kCoeliac), Stated::kCheckLabel);
}

TEST(Diets, MeatAndMilkMeetOnlyWithinADish) {
  const Need kosher{Diet::kKosherStyle, Reach::kEat};
  const auto milk_is_found = [&](const kitchen::Dish& dish) {
    for (const Finding& f : findings(dish, kosher, evidence())) {
      if (f.ingredient == 0 && f.statement.stated == Stated::kContains) return true;
    }
    return false;
  };
  EXPECT_TRUE(milk_is_found(samples::dish("Lasagne", {"whole_milk", "beef_mince_5"})));
  EXPECT_FALSE(milk_is_found(samples::dish("Sauce", {"whole_milk", "plain_flour"})));
}

TEST(Diets, AFoodInNoTableIsNotKnownForAnyDiet) {
  kitchen::Ingredient what;
  what.name = "xqzv";
  for (const auto& each : kDietWords)
    EXPECT_EQ(statement(what, {each.value, Reach::kEat}, evidence()).stated, Stated::kUnknown)
        << each.word;
}

TEST(Diets, ThingsAreAskedForAsWellAsIngredients) {
  const auto has = [](const std::vector<ThingRule>& rules, Thing thing) {
    for (const ThingRule& rule : rules) {
      if (rule.thing == thing) return true;
    }
    return false;
  };
  for (const Diet diet : {Diet::kVegetarian, Diet::kHalal, Diet::kNoPork, Diet::kKosherStyle}) {
    for (const Thing thing : {Thing::kBoard, Thing::kPan, Thing::kOil, Thing::kShelf})
      EXPECT_TRUE(has(own_things({diet, Reach::kEat}), thing));
  }
  EXPECT_TRUE(has(own_things({Diet::kCoeliac, Reach::kEat}), Thing::kToaster));
  EXPECT_EQ(own_things({Allergen::kMilk, Reach::kEat}).front().says, "own board (purple)");
}

// Columns and hidden rows: whatever the table calls pork, beef, alcohol or gelatine is found by the
// diet that forbids it.
TEST(Diets, NoColumnOfTheTableIsOverruled) {
  for (const kitchen::Food& food : tests::shipped_foods().all()) {
    const auto at_least = [&](kitchen::Known column, Diet diet) {
      if (column == kitchen::Known::kYes) {
        EXPECT_EQ(stated(food.key, diet), Stated::kContains) << food.key;
      }
      if (column == kitchen::Known::kCheckLabel) {
        EXPECT_GE(stated(food.key, diet), Stated::kCheckLabel) << food.key;
      }
    };
    at_least(food.pork, Diet::kNoPork);
    at_least(food.beef, Diet::kNoBeef);
    at_least(food.alcohol, Diet::kNoAlcohol);
    at_least(food.gelatine, Diet::kNoGelatine);
    if (food.vegetarian != kitchen::Known::kYes) {
      EXPECT_GE(stated(food.key, Diet::kVegetarian), Stated::kCheckLabel) << food.key;
    }
    if (food.vegan != kitchen::Known::kYes) {
      EXPECT_GE(stated(food.key, Diet::kVegan), Stated::kCheckLabel) << food.key;
    }
  }
}

TEST(Hidden, EveryRowSaysWhyAndFromWhere) {
  ASSERT_GE(samples::shipped_hidden().size(), 100U);
  for (const HiddenIn& row : samples::shipped_hidden()) {
    EXPECT_FALSE(row.why.empty());
    EXPECT_EQ(row.source, "common practice, no source");
  }
}

}  // namespace
