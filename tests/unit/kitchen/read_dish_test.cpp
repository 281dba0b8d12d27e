#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "samples.h"

namespace {

using namespace kitchen;
using base::minutes;
using nlohmann::json;

json without_take_out() {
  json text = samples::dish();
  text["method"].erase(3);
  return text;
}

TEST(ReadDish, AMethodIsReadWithItsDefaults) {
  const Dish dish = samples::read_dish(samples::dish());
  ASSERT_EQ(dish.method.size(), 5U);
  const Step& weigh = dish.method[0];
  EXPECT_EQ(weigh.brief, "Weigh");
  EXPECT_EQ(weigh.least, minutes(3));
  EXPECT_EQ(weigh.attention, Attention::kHands);
  EXPECT_TRUE(weigh.at_table);
  EXPECT_TRUE(weigh.follows.empty());
  EXPECT_EQ(dish.method[1].follows, (std::vector<Follows>{{.step = 0, .most = {}}}));
  EXPECT_EQ(dish.method[4].follows[0].most, minutes(10));
  EXPECT_DOUBLE_EQ(dish.method[0].spread, 0.3);
  EXPECT_DOUBLE_EQ(dish.method[2].spread, 0.1);
}

TEST(ReadDish, FractionsOfMinutesAreKeptToTheSecond) {
  json text = samples::dish();
  text["method"][0]["minutes"] = 0.5;
  EXPECT_EQ(samples::read_dish(text).method[0].least, Seconds{30});
}

TEST(ReadDish, AttentionMayBeTheWordOrTheNumber) {
  json text = samples::dish();
  text["method"][0]["attention"] = 10;
  text["method"][1]["attention"] = "stand by";
  const Dish dish = samples::read_dish(text);
  EXPECT_EQ(dish.method[0].attention, Attention::kNothingElse);
  EXPECT_EQ(dish.method[1].attention, Attention::kStandBy);
}

TEST(ReadDish, AClosingStepComesWithinAMinuteOfTheBakeThoughItDoesNotSaySo) {
  const Dish dish = samples::read_dish(samples::dish());
  EXPECT_EQ(dish.method[3].closes, 2);
  EXPECT_EQ(dish.method[3].follows[0].most, minutes(1));
}

TEST(ReadDish, TheReaderTakesOutWhatNobodyTakesOut) {
  const Dish dish = samples::read_dish(without_take_out());
  ASSERT_EQ(dish.method.size(), 5U);
  const Step& added = dish.method[3];
  EXPECT_TRUE(added.added);
  EXPECT_EQ(added.id, "bake-out");
  EXPECT_EQ(added.says, "Take the tray out of the oven.");
  EXPECT_EQ(added.least, minutes(1));
  EXPECT_EQ(added.attention, Attention::kHands);
  EXPECT_EQ(added.closes, 2);
  EXPECT_EQ(added.follows, (std::vector<Follows>{{.step = 2, .most = minutes(1)}}));
  // What followed the bake now follows the taking out, as soon as before.
  EXPECT_EQ(dish.method[4].follows, (std::vector<Follows>{{.step = 3, .most = minutes(10)}}));
}

TEST(ReadDish, AnAddedClosingStepThatComesLastMakesTheDishReady) {
  json text = without_take_out();
  text["method"].erase(3);
  const Dish dish = samples::read_dish(text);
  EXPECT_EQ(last_step(dish), 3);
  EXPECT_TRUE(dish.method[3].added);
}

TEST(ReadDish, AnAddedClosingStepFindsAnIdOfItsOwn) {
  json text = without_take_out();
  text["method"][0]["id"] = "bake-out";
  EXPECT_EQ(samples::read_dish(text).method[3].id, "bake-out-2");
}

TEST(ReadDish, FryingWithBusyHandsNeedsNoClosingStep) {
  json text = without_take_out();
  text["method"][2]["attention"] = "nothing else";
  text["method"][2]["heat"] = {{"ring", "frying pan"}};
  EXPECT_EQ(samples::read_dish(text).method.size(), 4U);
}

TEST(ReadDish, OneVesselIsClosedOnceAfterItsLastStep) {
  json text = samples::dish();
  text["method"] = json::parse(R"([
    {"id": "soften", "do": "Soften.", "minutes": 5, "attention": "stand by", "heat": {"ring": "pan"}},
    {"id": "simmer", "do": "Simmer.", "minutes": {"least": 20, "most": 30}, "attention": "glance", "heat": {"ring": "pan"}},
    {"id": "toast", "do": "Toast the bread.", "minutes": 4, "attention": "watch", "follows": [], "heat": {"grill": "rack"}}])");
  text.erase("splits");
  text["variants"] = json::array();
  const Dish dish = samples::read_dish(text);
  ASSERT_EQ(dish.method.size(), 5U);
  EXPECT_EQ(dish.method[2].id, "simmer-out");
  EXPECT_EQ(dish.method[2].brief, "Off the ring");
  EXPECT_EQ(dish.method[4].id, "toast-out");
  EXPECT_EQ(dish.method[4].closes, 3);
  EXPECT_EQ(dish.method[1].most, minutes(30));
}

TEST(ReadDish, TheFirstWashingUpComesJustBeforeTheFirstLongWait) {
  EXPECT_EQ(samples::read_dish(samples::dish()).wash_after, 1);  // rubbing in, then the bake
  json text = samples::dish();
  text["wash_after"] = "take-out";
  EXPECT_EQ(samples::read_dish(text).wash_after, 3);
}

TEST(ReadDish, ATagIsMadeFromTheFirstTwoWords) {
  json text = samples::dish();
  text.erase("tag");
  EXPECT_EQ(samples::read_dish(text).tag, "CS");
  text["name"] = "Minestrone";
  EXPECT_EQ(samples::read_dish(text).tag, "MI");
}

TEST(ReadDish, AVariantSwapsIngredientsAlsoWhereStepsUseThem) {
  const auto dishes = read_dish_variants(samples::dish().dump(), "dish.json");
  ASSERT_TRUE(dishes) << samples::told(dishes.problems());
  ASSERT_EQ(dishes.value().size(), 2U);
  const Dish& variant = dishes.value()[1];
  EXPECT_EQ(variant.variant, "no dairy");
  EXPECT_EQ(allergens(variant), Allergens{Allergen::kGluten});
  EXPECT_EQ(variant.ingredients[1].name, "sunflower spread");
  EXPECT_EQ(variant.method[1].uses, std::vector<int>{1});
}

TEST(ReadDish, WhatFollowedADroppedStepFollowsWhatThatStepFollowed) {
  json text = samples::dish();
  text.erase("splits");
  text["variants"] = json::parse(
      R"([{"name": "ready mixed", "drop_steps": ["rub-in"], "steps": {"bake": {"minutes": 15}}}])");
  const auto dishes = read_dish_variants(text.dump(), "dish.json");
  ASSERT_TRUE(dishes) << samples::told(dishes.problems());
  const Dish& variant = dishes.value()[1];
  ASSERT_EQ(variant.method.size(), 4U);
  EXPECT_EQ(variant.method[1].id, "bake");
  EXPECT_EQ(variant.method[1].least, minutes(15));
  EXPECT_EQ(variant.method[1].follows[0].step, 0);
}

TEST(ReadDish, AFaultInAVariantPointsIntoTheVariant) {
  json text = samples::dish();
  text["variants"][0]["steps"] = {{"bake", {{"minutes", -1}}}};
  const auto problems = samples::problems_of("dish", text.dump());
  ASSERT_EQ(problems.size(), 1U) << samples::told(problems);
  EXPECT_EQ(problems[0].where, "/variants/0/steps/bake/minutes");
}

TEST(ReadDish, AllFaultsAreToldAtOnce) {
  json text = samples::dish();
  text["portions"] = 0;
  text["method"][0]["minutes"] = -1;
  text["method"][1]["hygene"] = "raw";
  text["hold"]["kind"] = "cold";
  EXPECT_EQ(samples::problems_of("dish", text.dump()).size(), 4U);
}

TEST(ReadDish, ASplitTakesItsClosingStepAlong) {
  json text = without_take_out();
  text["splits"][0]["after"] = "bake";
  EXPECT_EQ(samples::read_dish(text).splits[0].after_step, 3);  // the tray is out of the oven
}

}  // namespace
