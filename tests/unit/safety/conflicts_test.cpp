#include "safety/conflicts.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>

#include "sample.h"

namespace {

using namespace safety;
using samples::dish;

std::vector<Conflict> found(const kitchen::Lesson& lesson, const LessonNeeds& needs,
                            const std::vector<kitchen::Dish>& known = {}) {
  return conflicts({lesson, needs, samples::evidence(), samples::shipped_substitutes(), known});
}

const Conflict* first(const std::vector<Conflict>& all, Why why) {
  const auto at = std::find_if(all.begin(), all.end(),
                               [&](const Conflict& c) { return c.why == why; });
  return at == all.end() ? nullptr : &*at;
}

bool has(const Conflict& c, Remedy::Kind kind) {
  return std::any_of(c.settled_by.begin(), c.settled_by.end(),
                     [&](const Remedy& r) { return r.kind == kind; });
}

TEST(Conflicts, AnAllergenInTheOwnDishMustBeChangedAndAVariantSettlesIt) {
  const kitchen::Dish scones = dish("Scones", {"plain_flour", "butter_salted"});
  kitchen::Dish variant = dish("Scones", {"plain_flour", "rapeseed_oil"});
  variant.variant = "with oil";
  auto lesson = samples::lesson({scones}, {{0}});
  const LessonNeeds needs = {{0, {{Allergen::kMilk, Reach::kEat}}}};
  const auto all = found(lesson, needs, {scones, variant});
  ASSERT_EQ(all.size(), 1U);
  EXPECT_EQ(all[0].why, Why::kOwnDish);
  EXPECT_EQ(all[0].seriousness, Seriousness::kStop);
  EXPECT_EQ(all[0].ingredient, 1);
  EXPECT_TRUE(has(all[0], Remedy::Kind::kVariant));
  EXPECT_EQ(all[0].settled_by.front().says, "Make the variant 'with oil'");
}

TEST(Conflicts, AVariantThatBringsAnotherOfTheCooksAllergensIsNotOffered) {
  const kitchen::Dish porridge = dish("Porridge", {"whole_milk"});
  kitchen::Dish variant = dish("Porridge", {"oat_drink"});
  variant.variant = "oat drink";
  auto lesson = samples::lesson({porridge}, {{0}});
  const LessonNeeds needs = {
      {0, {{Allergen::kMilk, Reach::kEat}, {Allergen::kGluten, Reach::kEat}}}};
  EXPECT_FALSE(has(found(lesson, needs, {variant})[0], Remedy::Kind::kVariant));
}

TEST(Conflicts, ASubstituteKeepsTheFunctionAndIsFreeOfAllTheCooksNeeds) {
  kitchen::Dish sponge = dish("Sponge", {"egg_whole"});
  sponge.ingredients[0].amount = 3;
  sponge.ingredients[0].unit = "eggs";
  samples::add_step(sponge, "Whisk eggs and sugar until pale and thick.", {0});
  auto lesson = samples::lesson({sponge}, {{0}});
  const auto all = found(lesson, {{0, {{Allergen::kEggs, Reach::kEat}}}});
  ASSERT_TRUE(has(all[0], Remedy::Kind::kSubstitute));
  for (const Remedy& r : all[0].settled_by) {
    EXPECT_EQ(r.says.find("Banana"), std::string::npos) << r.says;
    if (r.kind == Remedy::Kind::kSubstitute) {
      EXPECT_NE(r.says.find("foaming"), std::string::npos) << r.says;
    }
  }
}

TEST(Conflicts, ADoubtIsSettledByReadingNotIgnored) {
  auto lesson = samples::lesson({dish("Curry", {"curry_paste"})}, {{0}});
  const auto all = found(lesson, {{0, {{Allergen::kFish, Reach::kEat}}}});
  ASSERT_EQ(all.size(), 1U);
  EXPECT_EQ(all[0].seriousness, Seriousness::kSettle);
  EXPECT_TRUE(has(all[0], Remedy::Kind::kReadLabel));
}

TEST(Conflicts, WhatMayBeTouchedButNotEatenIsNotWhatMayNotBeTouched) {
  auto lesson = samples::lesson({dish("Burgers", {"pork_mince"})}, {{0}});
  const auto eat = found(lesson, {{0, {{Diet::kNoPork, Reach::kEat}}}});
  EXPECT_EQ(eat[0].seriousness, Seriousness::kSettle);
  EXPECT_TRUE(has(eat[0], Remedy::Kind::kAsk));
  const auto touch = found(lesson, {{0, {{Diet::kNoPork, Reach::kTouch}}}});
  EXPECT_EQ(touch[0].seriousness, Seriousness::kStop);
  EXPECT_FALSE(has(touch[0], Remedy::Kind::kAsk));
}

TEST(Conflicts, SharedKitIsFoundAsRuleK2Does) {
  kitchen::Dish cheese = dish("Macaroni", {"cheddar", "carrot"});
  samples::add_step(cheese, "Grate the cheese.", {0}, {"food processor"});
  samples::add_step(cheese, "Weigh the carrot.", {1}, {"scales"});
  kitchen::Dish salad = dish("Salad", {"carrot"});
  samples::add_step(salad, "Grate and weigh.", {0}, {"food processor", "scales"});
  auto lesson = samples::lesson({cheese, salad}, {{0}, {1}});
  const auto all = found(lesson, {{1, {{Allergen::kMilk, Reach::kEat}}}});
  const Conflict* kit = first(all, Why::kSharedKit);
  ASSERT_NE(kit, nullptr);
  EXPECT_EQ(kit->thing, "food processor");
  EXPECT_EQ(kit->others, std::vector<int>{0});
  EXPECT_TRUE(has(*kit, Remedy::Kind::kFirstInLine));
  EXPECT_FALSE(has(*kit, Remedy::Kind::kOwnKit));  // there is only one
  EXPECT_EQ(std::count_if(all.begin(), all.end(),
                          [](const Conflict& c) { return c.why == Why::kSharedKit; }),
            1);  // only carrots went on the scales
}

TEST(Conflicts, TheNeighbourIsNamedAndABayWithoutItIsOffered) {
  auto lesson = samples::lesson({dish("Scones", {"butter_salted"}), dish("Salad", {"carrot"})},
                                {{0}, {1}, {1}});
  const auto all = found(lesson, {{1, {{Allergen::kMilk, Reach::kEat}}}});
  const Conflict* bay = first(all, Why::kNeighbour);
  ASSERT_NE(bay, nullptr);
  EXPECT_EQ(bay->others, std::vector<int>{0});
  EXPECT_TRUE(has(*bay, Remedy::Kind::kMove));
  EXPECT_NE(bay->settled_by.back().says.find("B2"), std::string::npos);
}

TEST(Conflicts, FlourFliesInTheBayAndThroughTheRoomOnlyIfTheNeedReachesSoFar) {
  kitchen::Dish bread = dish("Bread", {"strong_white_flour"});
  samples::add_step(bread, "Sift the flour and knead.", {0});
  auto lesson = samples::lesson({bread, dish("Salad", {"carrot"})}, {{0}, {1}, {1}});
  EXPECT_NE(first(found(lesson, {{1, {{Diet::kCoeliac, Reach::kEat}}}}), Why::kAirborne), nullptr);
  EXPECT_EQ(first(found(lesson, {{2, {{Diet::kCoeliac, Reach::kEat}}}}), Why::kAirborne), nullptr);
  const auto room = found(lesson, {{2, {{Diet::kCoeliac, Reach::kRoom}}}});
  ASSERT_NE(first(room, Why::kAirborne), nullptr);
  EXPECT_EQ(first(room, Why::kAirborne)->seriousness, Seriousness::kStop);
  EXPECT_NE(first(room, Why::kInTheRoom), nullptr);
}

TEST(Conflicts, FryingOilOfTheBayIsNotShared) {
  kitchen::Dish fish = dish("Fish", {"cod_fillet"});
  samples::add_step(fish, "Fry.", {0}).hazard = kitchen::Hazard::kHotOil;
  kitchen::Dish chips = dish("Chips", {"potato"});
  samples::add_step(chips, "Fry.", {0}).hazard = kitchen::Hazard::kHotOil;
  auto lesson = samples::lesson({fish, chips}, {{0}, {1}});
  EXPECT_NE(first(found(lesson, {{1, {{Diet::kVegetarian, Reach::kEat}}}}), Why::kSharedOil),
            nullptr);
}

TEST(Conflicts, TheFreeDishOfACookComesBeforeTheOther) {
  auto lesson = samples::lesson({dish("Sausages", {"pork_sausage"}), dish("Salad", {"carrot"})},
                                {{0, 1}});
  const auto all = found(lesson, {{0, {{Diet::kVegetarian, Reach::kEat}}}});
  const Conflict* before = first(all, Why::kDishBefore);
  ASSERT_NE(before, nullptr);
  EXPECT_NE(before->settled_by.front().says.find("Make Salad first"), std::string::npos);
}

TEST(Conflicts, ACookWithoutADoubtHasNone) {
  auto lesson = samples::lesson({dish("Salad", {"carrot"})}, {{0}, {0}});
  EXPECT_TRUE(found(lesson, {{0, {{Allergen::kMilk, Reach::kRoom}}}}).empty());
}

RC_GTEST_PROP(Conflicts, EveryIngredientThatMayBringItIsInTheListWithARemedy, ()) {
  const auto& foods = tests::shipped_foods().all();
  kitchen::Dish d;
  d.name = "Anything";
  for (int n = *rc::gen::inRange(1, 6); n > 0; --n)
    d.ingredients.push_back(
        samples::of_food(foods[*rc::gen::inRange<std::size_t>(0, foods.size())].key));
  samples::add_step(d, "Mix.");
  const auto lesson = samples::lesson({d}, {{0}});
  const Need need{kFourteen[*rc::gen::inRange<std::size_t>(0, kAllergenCount)], Reach::kEat};
  const auto all = found(lesson, {{0, {need}}});
  RC_ASSERT(all.size() == findings(d, need, samples::evidence()).size());
  for (const Conflict& c : all) {
    RC_ASSERT(!c.settled_by.empty());
    RC_ASSERT(!sentence(lesson, c).empty());
    RC_ASSERT((c.stated == Stated::kContains) == (c.seriousness == Seriousness::kStop));
  }
}

}  // namespace
