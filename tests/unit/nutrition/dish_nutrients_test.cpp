#include "nutrition/dish_nutrients.h"

#include <gmock/gmock.h>
#include <rapidcheck/gtest.h>

#include "../../support/nutrition_tables.h"
#include "nutrition/label.h"

namespace {

using namespace nutrition;
using tests::calculated;
using tests::ingredient;
using tests::stirred;

TEST(DishNutrients, ABlankOfTheTableIsMissingAndTheTotalSaysAtLeast) {
  // SR26 12118, canned coconut milk: no sugars, no fibre in the table; 2.81 g carbohydrate bound
  // both.
  const auto held = calculated(
      stirred({ingredient("coconut_milk", 200), ingredient("caster_sugar", 10)}));
  const Figure sugars = held.whole(Nutrient::kSugars);
  EXPECT_EQ(sugars.sure, Sureness::kAtLeast);
  EXPECT_NEAR(sugars.amount, 9.98, 1e-9);
  ASSERT_TRUE(sugars.most);
  EXPECT_NEAR(*sugars.most, 9.98 + 2 * 2.81, 1e-9);
  EXPECT_THAT(held.total(Nutrient::kSugars).missing, testing::ElementsAre(0));
  EXPECT_NEAR(held.total(Nutrient::kSugars).coverage, 10.0 / 210, 1e-9);
  EXPECT_TRUE(held.whole(Nutrient::kFat).whole());
}

TEST(DishNutrients, ASugarWhoseFibreIsBlankIsStillSugar) {
  // Demerara: sugars known, fibre blank; carbohydrate lies between its sugars and its total.
  kitchen::Food demerara = *tests::shipped_foods().find("demerara_sugar");
  demerara.nutrients.set(Nutrient::kFibre, std::nullopt);
  demerara.nutrients.set(Nutrient::kCarbohydrateTotal, 98.0);
  demerara.nutrients.set(Nutrient::kSugars, 97.0);
  const auto held = dish_nutrients(stirred({ingredient("demerara_sugar", 100)}), {&demerara},
                                   tests::cooking_tables());
  EXPECT_DOUBLE_EQ(held.whole(Held::kCarbohydrate).amount, 97);
  EXPECT_DOUBLE_EQ(*held.whole(Held::kCarbohydrate).most, 98);
  EXPECT_DOUBLE_EQ(*held.whole(Nutrient::kFibre).most, 1);
}

TEST(DishNutrients, SaltToTasteMakesOnlyTheSaltUncertain) {
  const auto held = calculated(stirred({ingredient("potato", 200), ingredient("salt", 0, "")}));
  EXPECT_EQ(held.whole(Nutrient::kSodium).sure, Sureness::kAtLeast);
  EXPECT_FALSE(held.whole(Nutrient::kSodium).most);
  EXPECT_TRUE(held.whole(Nutrient::kFat).whole());
  EXPECT_TRUE(held.whole(Held::kLabelProtein).whole());
}

TEST(DishNutrients, AFoodWithoutFiguresIsBoundedByItsWeight) {
  // Five-spice has no row: 2 g of it are at most 2 g of fat.
  const auto held = calculated(stirred({ingredient("onion", 100), ingredient("five_spice", 2)}));
  EXPECT_NEAR(held.whole(Nutrient::kFat).amount, 0.1, 1e-9);
  EXPECT_NEAR(*held.whole(Nutrient::kFat).most, 2.1, 1e-9);
  EXPECT_NEAR(held.coverage, 100.0 / 102, 1e-9);
}

TEST(DishNutrients, AnIngredientNobodyKnowsIsNamedAndNothingIsMadeUp) {
  auto stranger = ingredient("", 50);
  stranger.name = "dragon scales";
  stranger.food.clear();
  const auto held = calculated(stirred({ingredient("onion", 50), stranger}));
  EXPECT_THAT(held.lines[1].problem, testing::HasSubstr("dragon scales"));
  EXPECT_DOUBLE_EQ(held.coverage, 0.5);
  for (std::size_t w = 0; w < kWhats; ++w) EXPECT_EQ(held.totals[w].whole.sure, Sureness::kAtLeast);
}

TEST(DishNutrients, APepperThatIsCountedIsTheVegetable) {
  kitchen::Ingredient pepper = ingredient("", 1, "pepper");
  pepper.name = "pepper";
  pepper.food.clear();
  const auto held = calculated(stirred({pepper}));
  ASSERT_NE(held.lines[0].food, nullptr);
  EXPECT_EQ(held.lines[0].food->category, "veg");
  EXPECT_GT(held.lines[0].grams.value_or(0), 50);
}

TEST(DishNutrients, WithoutAWeightAHundredGramsAreUnsure) {
  auto bucket = ingredient("onion", 1, "bucket");
  const auto held = calculated(stirred({bucket, ingredient("carrot", 100)}));
  EXPECT_FALSE(held.weight_known);
  EXPECT_EQ(held.per_100_g(Nutrient::kFat).sure, Sureness::kUnsure);
  EXPECT_EQ(held.portion(Nutrient::kFat).sure, Sureness::kAtLeast);
}

TEST(DishNutrients, TheScalesWinOverEveryTable) {
  const auto held = calculated(tests::macaroni(), {.weighed = 400.0});
  EXPECT_DOUBLE_EQ(held.served_grams, 400);
  EXPECT_TRUE(held.weighed_by_hand);
  EXPECT_DOUBLE_EQ(held.whole(Nutrient::kFat).amount,
                   calculated(tests::macaroni()).whole(Nutrient::kFat).amount);
}

TEST(DishNutrients, OnlyAMassAsBoughtLosesWhatIsNotEaten) {
  // SR26 09040: refuse of a banana is 36 %.
  auto bought = ingredient("banana", 100);
  bought.preparation = "as bought";
  EXPECT_DOUBLE_EQ(*calculated(stirred({bought})).lines[0].grams, 64);
  EXPECT_DOUBLE_EQ(*calculated(stirred({ingredient("banana", 100)})).lines[0].grams, 100);
}

TEST(DishNutrients, EveryTotalIsTheSumOfWhatCanBeOpened) {
  const auto held = calculated(tests::macaroni());
  for (const Total& total : held.totals) {
    double sum = 0;
    for (const Contribution& part : total.parts) sum += part.least;
    EXPECT_DOUBLE_EQ(sum, total.whole.amount);
    EXPECT_EQ(total.parts.size(), held.lines.size());
  }
}

RC_GTEST_PROP(DishNutrients, TwiceOfEverythingForTwiceAsManyIsTheSamePortion, ()) {
  const auto grams = *rc::gen::container<std::vector<int>>(4, rc::gen::inRange(1, 500));
  const std::vector<std::string> keys = {"plain_flour", "butter_salted", "coconut_milk",
                                         "spinach_fresh"};
  std::vector<kitchen::Ingredient> once, twice;
  for (std::size_t i = 0; i < keys.size(); ++i) {
    once.push_back(ingredient(keys[i], grams[i]));
    twice.push_back(ingredient(keys[i], 2 * grams[i]));
  }
  const auto one = calculated(stirred(once, 3)), two = calculated(stirred(twice, 6));
  for (std::size_t w = 0; w < kWhats; ++w) {
    const What what = What::at(w);
    RC_ASSERT(std::abs(one.portion(what).amount - two.portion(what).amount) <
              1e-9 * (1 + one.portion(what).amount));
    RC_ASSERT(one.portion(what).sure == two.portion(what).sure);
  }
}

RC_GTEST_PROP(DishNutrients, WhatIsKnownLiesBetweenAtLeastAndAtMost, ()) {
  const auto& all = tests::shipped_foods().all();
  const auto picks = *rc::gen::container<std::vector<std::size_t>>(
      5, rc::gen::inRange<std::size_t>(0, all.size()));
  std::vector<kitchen::Ingredient> list;
  for (const std::size_t pick : picks) list.push_back(ingredient(all[pick].key, 50));
  const auto held = calculated(stirred(list));
  for (const Total& total : held.totals) {
    if (total.whole.most) RC_ASSERT(*total.whole.most >= total.whole.amount - 1e-9);
    RC_ASSERT(total.coverage >= 0 && total.coverage <= 1 + 1e-9);
    RC_ASSERT(total.missing.empty() == total.whole.whole());
  }
  const Figure kj = kilojoules(held);
  RC_ASSERT(!kj.most || (*kj.most >= kj.amount - 1e-9 && kj.amount <= 250 * 37.01));
}

}  // namespace
