#include "safety/statements.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "sample.h"

namespace {

using namespace safety;
using samples::dish;
using samples::of_food;
using tests::shipped_foods;

Stated stated(const kitchen::Ingredient& i, Allergen a, const Labels& labels = {}) {
  return statements(i, shipped_foods(), labels)[at(a)].stated;
}

TEST(Statements, TheStrongerOfDishAndTableWinsAndBothAreNamed) {
  kitchen::Ingredient butter = of_food("butter_salted");
  EXPECT_EQ(stated(butter, Allergen::kMilk), Stated::kContains);
  butter.contains = {Allergen::kMilk, Allergen::kSoya};
  const Statements said = statements(butter, shipped_foods(), {});
  EXPECT_EQ(said[at(Allergen::kMilk)].from, "the dish and the table of foods");
  EXPECT_EQ(said[at(Allergen::kSoya)], (Statement{Stated::kContains, "the dish"}));
  EXPECT_EQ(said[at(Allergen::kFish)].stated, Stated::kNotListed);
}

TEST(Statements, WhatVariesByBrandIsToBeCheckedUntilTheLabelInUseIsRead) {
  const kitchen::Ingredient flour = of_food("gf_bread_flour");  // milk, lupin differ by brand
  EXPECT_EQ(stated(flour, Allergen::kMilk), Stated::kCheckLabel);
  LabelRead read{"gf_bread_flour", "the 1 kg bag", "2026-11-02", {}, {Allergen::kLupin}, true};
  EXPECT_EQ(stated(flour, Allergen::kMilk, {read}), Stated::kNotListed);
  EXPECT_EQ(stated(flour, Allergen::kLupin, {read}), Stated::kMayContain);
  read.in_use = false;  // the brand was swapped
  EXPECT_EQ(stated(flour, Allergen::kMilk, {read}), Stated::kCheckLabel);
}

TEST(Statements, AReadingSpeaksOfItsFoodAlone) {
  const LabelRead read{"gf_plain_flour", "the 1 kg bag", "2026-11-02", {}, {}, true};
  EXPECT_EQ(stated(of_food("gf_bread_flour"), Allergen::kMilk, {read}), Stated::kCheckLabel);
}

TEST(Statements, TwoBrandsInTheCupboardBothSpeak) {
  const LabelRead one{"gf_bread_flour", "one", "2026-11-02", {}, {}, true};
  const LabelRead two{"gf_bread_flour", "two", "2026-11-03", {Allergen::kMilk}, {}, true};
  EXPECT_EQ(stated(of_food("gf_bread_flour"), Allergen::kMilk, {one, two}), Stated::kContains);
}

TEST(Statements, ALabelNeverTakesAwayWhatDishOrTableSayIsThere) {
  kitchen::Ingredient milk = of_food("whole_milk");
  const LabelRead read{"whole_milk", "a bottle", "2026-11-02", {}, {}, true};
  EXPECT_EQ(stated(milk, Allergen::kMilk, {read}), Stated::kContains);
}

TEST(Statements, AFoodInNoTableIsNotKnownAndNothingNearItCounts) {
  kitchen::Ingredient what;
  what.name = "xqzv paste";
  EXPECT_EQ(stated(what, Allergen::kNuts), Stated::kUnknown);
  what.name = "Plain white flours for cakes";  // like a food's name, not it
  EXPECT_EQ(food_of(what, shipped_foods()), nullptr);
  what.name = "Plain white flour";
  what.food = "no_such_key";  // a wrong key is no reason to believe the name
  EXPECT_EQ(food_of(what, shipped_foods()), nullptr);
}

TEST(Statements, AnUnreadLabelOfTheDishIsNotKnownForAllFourteen) {
  kitchen::Ingredient salt = of_food("salt");
  salt.label_read = false;
  salt.contains = Allergens(kFourteen.begin(), kFourteen.end());  // as the reader sets it
  for (const Allergen a : kFourteen) EXPECT_EQ(stated(salt, a), Stated::kUnknown);
  const LabelRead read{"salt", "a drum", "2026-11-02", {}, {}, true};
  EXPECT_EQ(stated(salt, Allergen::kMilk, {read}), Stated::kNotListed);
}

TEST(Statements, ADishWithoutIngredientsIsNotKnown) {
  EXPECT_EQ(summary(dish("Nothing", {}), shipped_foods(), {})[at(Allergen::kMilk)],
            Stated::kUnknown);
}

TEST(Statements, AStepBringsWhatItUsesOrAllWhenItNamesNothing) {
  kitchen::Dish scones = dish("Scones", {"plain_flour", "butter_salted"});
  samples::add_step(scones, "Weigh the flour.", {0});
  samples::add_step(scones, "Mix.");
  const Summary weigh = summary_of_step(scones, 0, shipped_foods(), {});
  EXPECT_EQ(weigh[at(Allergen::kMilk)], Stated::kNotListed);
  EXPECT_EQ(summary_of_step(scones, 1, shipped_foods(), {})[at(Allergen::kMilk)],
            Stated::kContains);
}

TEST(Statements, PlaceAndLessonGatherTheirCooks) {
  auto lesson = samples::lesson({dish("Scones", {"butter_salted"}), dish("Salad", {"carrot"})},
                                {{0}, {1}});
  const auto milk = at(Allergen::kMilk);
  EXPECT_EQ(summary_of_cook(lesson, 1, shipped_foods(), {})[milk], Stated::kNotListed);
  EXPECT_EQ(summary_of_place(lesson, 0, shipped_foods(), {})[milk], Stated::kContains);
  EXPECT_EQ(summary_of_place(lesson, 1, shipped_foods(), {})[milk], Stated::kNotListed);
  EXPECT_EQ(summary_of_lesson(lesson, shipped_foods(), {})[milk], Stated::kContains);
}

kitchen::Ingredient any_ingredient() {
  const auto& foods = shipped_foods().all();
  kitchen::Ingredient out;
  out.name = "something";
  if (*rc::gen::inRange(0, 5) != 0)
    out = of_food(foods[*rc::gen::inRange<std::size_t>(0, foods.size())].key);
  out.label_read = *rc::gen::inRange(0, 6) != 0;
  for (const Allergen a : kFourteen) {
    if (*rc::gen::inRange(0, 20) == 0) out.contains.insert(a);
  }
  return out;
}

kitchen::Dish any_dish() {
  kitchen::Dish out;
  for (int n = *rc::gen::inRange(1, 8); n > 0; --n) out.ingredients.push_back(any_ingredient());
  return out;
}

Labels any_labels() {
  const auto& foods = shipped_foods().all();
  Labels out;
  for (int n = *rc::gen::inRange(0, 4); n > 0; --n) {
    LabelRead read;
    read.food = foods[*rc::gen::inRange<std::size_t>(0, foods.size())].key;
    read.pack = "a pack";
    read.read_on = "today";
    read.in_use = *rc::gen::arbitrary<bool>();
    out.push_back(read);
  }
  return out;
}

RC_GTEST_PROP(Statements, AddingAnIngredientNeverWeakensAStatement, ()) {
  kitchen::Dish d = any_dish();
  const Labels labels = any_labels();
  const Summary before = summary(d, shipped_foods(), labels);
  d.ingredients.push_back(any_ingredient());
  const Summary after = summary(d, shipped_foods(), labels);
  for (const Allergen a : kFourteen) RC_ASSERT(after[at(a)] >= before[at(a)]);
}

RC_GTEST_PROP(Statements, ADishIsNotListedExactlyWhenEveryIngredientIs, ()) {
  const kitchen::Dish d = any_dish();
  const Summary all = summary(d, shipped_foods(), {});
  for (const Allergen a : kFourteen) {
    bool every = true;
    for (const auto& i : d.ingredients) every = every && stated(i, a) == Stated::kNotListed;
    RC_ASSERT(may_be_there(all[at(a)]) == !every);
  }
}

RC_GTEST_PROP(Statements, SwappingTheAllergenOutFreesTheDishOnlyIfNothingElseHasIt, ()) {
  kitchen::Dish d = any_dish();
  const Allergen a = kFourteen[*rc::gen::inRange<std::size_t>(0, kAllergenCount)];
  const auto swapped = *rc::gen::inRange<std::size_t>(0, d.ingredients.size());
  bool others = false;
  for (std::size_t i = 0; i < d.ingredients.size(); ++i)
    others = others || (i != swapped && may_be_there(stated(d.ingredients[i], a)));
  d.ingredients[swapped] = of_food("carrot");  // none of the fourteen
  RC_ASSERT(may_be_there(summary(d, shipped_foods(), {})[at(a)]) == others);
}

// Unknown never becomes not listed but by a reading in use of that very food.
RC_GTEST_PROP(Statements, OnlyAReadingInUseTakesADoubtAway, ()) {
  const kitchen::Ingredient i = any_ingredient();
  const Labels labels = any_labels();
  const auto* food = food_of(i, shipped_foods());
  const bool read = food != nullptr && !readings(labels, food->key).empty();
  for (const Allergen a : kFourteen) {
    const bool doubt = may_be_there(stated(i, a));
    if (doubt && !read) RC_ASSERT(may_be_there(stated(i, a, labels)));
  }
}

}  // namespace
