#include "kitchen/ratios/recognise.h"

#include <gmock/gmock.h>

#include "../../support/shipped_foods.h"
#include "../../support/shipped_ratios.h"
#include "kitchen/ratios/judge.h"
#include "samples.h"

namespace {

using namespace kitchen;
using samples::dish;
using tests::shipped_foods;
using tests::shipped_ratios;

std::vector<std::string> found(const Dish& dish) {
  std::vector<std::string> keys;
  for (const auto& each : recognise(dish, counted(dish, shipped_foods()))) keys.push_back(each.key);
  return keys;
}

Dish quiche() {
  return dish("Cheese quiche",
              {{"plain flour", 150},
               {"butter", 75},
               {"water", 30, "ml"},
               {"eggs", 2, "eggs"},
               {"milk", 200, "ml"},
               {"cheddar", 80}},
              {"Rub the butter into the flour and bind the pastry with water.",
               "Beat the eggs into the milk and pour over the cheddar.", "Bake the quiche."});
}

TEST(Recognise, ADishMayHoldSeveralPreparations) {
  EXPECT_THAT(found(quiche()), testing::UnorderedElementsAre("shortcrust", "quiche_filling"));
}

TEST(Recognise, WhatIsNotWorkedTogetherIsNotOnePreparation) {
  const Dish two = quiche();
  for (const auto& each : recognise(two, counted(two, shipped_foods()))) {
    if (each.key == "quiche_filling") {
      EXPECT_THAT(each.ingredients, testing::ElementsAre(3, 4, 5));
    }
  }
}

TEST(Recognise, ASaladOrASoupHoldsNone) {
  EXPECT_THAT(found(dish("Green salad", {{"lettuce", 100}, {"cucumber", 80}},
                         {"Wash and slice the lettuce and the cucumber."})),
              testing::IsEmpty());
  EXPECT_THAT(
      found(dish(
          "Carrot soup",
          {{"carrots", 300}, {"onion", 1, "onion"}, {"vegetable stock", 500, "ml"}, {"butter", 20}},
          {"Soften onion and carrots in butter.", "Add stock and simmer."})),
      testing::IsEmpty());
}

TEST(Recognise, ButterForTheSauceIsNotInThePastry) {
  const Dish pie = dish(
      "Chicken pie",
      {{"plain flour", 200},
       {"butter", 100},
       {"cold water", 40, "ml"},
       {"butter for sauce", 25},
       {"plain flour for sauce", 25},
       {"milk", 300, "ml"},
       {"chicken breast", 300}},
      {"Rub the butter into the flour.", "Add cold water and bring the pastry together.",
       "Dice the chicken.",
       "Melt the butter for sauce, stir in the flour for sauce, add milk and stir until thick.",
       "Stir the chicken into the sauce.", "Bake the pie."});
  const auto all = recognise(pie, counted(pie, shipped_foods()));
  ASSERT_EQ(all.size(), 2U);
  EXPECT_EQ(all[0].key, "shortcrust");
  EXPECT_THAT(all[0].ingredients, testing::ElementsAre(0, 1, 2));
  EXPECT_EQ(all[1].key, "coating_sauce");
  EXPECT_THAT(all[1].ingredients, testing::ElementsAre(3, 4, 5));
}

TEST(Recognise, WhatIsMixedBeforehandComesAlong) {
  EXPECT_THAT(found(dish("Banana muffins",
                         {{"self-raising flour", 250},
                          {"caster sugar", 100},
                          {"eggs", 2, "eggs"},
                          {"milk", 150, "ml"},
                          {"rapeseed oil", 100, "ml"},
                          {"bananas", 200}},
                         {"Mash the bananas.", "Whisk eggs, milk and oil.",
                          "Stir the wet into the flour and sugar until just mixed.", "Bake."})),
              testing::ElementsAre("muffins"));
}

TEST(Recognise, TheIcingIsNotInTheCake) {
  const Dish cake = dish("Lemon drizzle cake",
                         {{"butter", 175},
                          {"caster sugar", 175},
                          {"eggs", 175},
                          {"self-raising flour", 175},
                          {"icing sugar", 100}},
                         {"Cream the butter and caster sugar.", "Beat in the eggs.",
                          "Fold in the flour.", "Bake.", "Pour the icing sugar in water over."});
  const auto all = recognise(cake, counted(cake, shipped_foods()));
  ASSERT_EQ(all.size(), 1U);
  EXPECT_EQ(all[0].key, "creamed_cake");
  EXPECT_THAT(all[0].ingredients, testing::ElementsAre(0, 1, 2, 3));
}

TEST(Recognise, AMethodThatNamesNothingMeansEverything) {
  EXPECT_THAT(found(dish("Naan", {{"self-raising flour", 250}, {"natural yogurt", 150}},
                         {"Mix to a dough and knead.", "Roll and cook on a griddle."})),
              testing::ElementsAre("flatbread"));
}

TEST(Recognise, AFindSaysHowSureItIsAndWhy) {
  const Dish two = quiche();
  for (const auto& each : recognise(two, counted(two, shipped_foods()))) {
    EXPECT_GT(each.confidence, 0.5);
    EXPECT_LE(each.confidence, 1);
    EXPECT_FALSE(each.why.empty());
  }
}

TEST(Judge, EveryFigureNamesWhatWasCounted) {
  const Dish two = quiche();
  for (const auto& prepared : judge(two, shipped_foods(), shipped_ratios())) {
    for (const auto& ratio : prepared.ratios) {
      if (!ratio.value) {
        EXPECT_FALSE(ratio.why_unknown.empty()) << ratio.row.id;
        continue;
      }
      EXPECT_FALSE(ratio.denominator.empty()) << ratio.row.id;
      Ratio top = 0, bottom = 0;
      for (const auto& part : ratio.numerator) top += part.amount;
      for (const auto& part : ratio.denominator) bottom += part.amount;
      EXPECT_EQ(*ratio.value, ratio.row.per * top / bottom) << ratio.row.id;
    }
  }
}

TEST(Judge, WhatIsNotOnTheListIsUnknownAndNotNothing) {
  const Dish couscous = dish("Couscous", {{"couscous", 120}}, {"Cover the couscous and leave it."});
  const auto judged = judge(couscous, shipped_foods(), shipped_ratios());
  ASSERT_EQ(judged.size(), 1U);
  EXPECT_EQ(judged[0].ratios[0].standing, Standing::kUnknown);
  EXPECT_THAT(judged[0].ratios[0].why_unknown, testing::HasSubstr("water"));
}

TEST(Judge, BoundsForTheOptimiserSayTheSameAsTheRatios) {
  const Dish two = quiche();
  const auto weights = counted(two, shipped_foods());
  const auto bounds = ratio_bounds(two, shipped_foods(), shipped_ratios());
  EXPECT_FALSE(bounds.empty());
  const auto sum = [&](const std::vector<RatioBound::Term>& terms) {
    Ratio out = 0;
    for (const auto& term : terms)
      out += *weights[static_cast<std::size_t>(term.ingredient)].grams * term.factor;
    return out;
  };
  for (const auto& prepared : judge(two, shipped_foods(), shipped_ratios())) {
    for (const auto& ratio : prepared.ratios) {
      if (!ratio.value) continue;
      const auto bound = std::find_if(bounds.begin(), bounds.end(), [&](const RatioBound& b) {
        return b.row == ratio.row.id && b.preparation == prepared.found.key;
      });
      ASSERT_NE(bound, bounds.end()) << ratio.row.id;
      EXPECT_EQ(sum(bound->numerator) / sum(bound->denominator), *ratio.value) << ratio.row.id;
    }
  }
}

}  // namespace
