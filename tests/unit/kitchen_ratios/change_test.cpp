#include "kitchen/ratios/change.h"

#include <gmock/gmock.h>

#include "../../support/shipped_foods.h"
#include "../../support/shipped_ratios.h"
#include "samples.h"

namespace {

using namespace kitchen;
using samples::dish;
using testing::HasSubstr;

Dish scones() {
  return dish("Scones",
              {{"plain flour", 225},
               {"baking powder", 11},
               {"butter", 50},
               {"caster sugar", 25},
               {"milk", 140, "ml"},
               {"mixed spice", 1}},
              {"Rub the butter into the flour and baking powder.",
               "Stir in the sugar, mixed spice and milk.", "Cut out the scones.", "Bake them."});
}
Dish sponge() {
  return dish("Whisked sponge", {{"eggs", 3, "eggs"}, {"caster sugar", 75}, {"plain flour", 75}},
              {"Whisk the eggs and sugar to a trail.", "Fold in the flour.", "Bake."});
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
Dish burgers() {
  return dish("Beef burgers", {{"beef mince", 400}, {"egg", 1, "egg"}, {"breadcrumbs", 40}},
              {"Mix beef mince, egg and breadcrumbs and shape burgers.", "Grill them."});
}

ChangeVerdict judged(const Dish& dish, const std::string& words) {
  const auto change = read_change(words);
  if (!change) throw std::runtime_error(change.problems()[0].message);
  const auto verdict = judge_change(dish, change.value(), tests::shipped_foods(),
                                    tests::shipped_ratios());
  if (!verdict) throw std::runtime_error(verdict.problems()[0].message);
  return verdict.value();
}

std::string said(const ChangeVerdict& verdict) {
  std::string out;
  for (const Reason& reason : verdict.reasons)
    out += reason.preparation + ": " + reason.says + "\n";
  return out;
}

TEST(Change, LeavingOutTheEggOfAQuicheFailsBecauseNothingSetsTheCustard) {
  const ChangeVerdict verdict = judged(quiche(), "leave out the eggs");
  EXPECT_EQ(verdict.outcome, Outcome::kFails);
  EXPECT_THAT(said(verdict), HasSubstr("nothing sets the custard"));
}

TEST(Change, ABindingEggIsNotAFoamingEgg) {
  EXPECT_EQ(judged(burgers(), "leave out the egg").outcome, Outcome::kWorks);
  EXPECT_EQ(judged(burgers(), "swap egg for egg replacer").outcome, Outcome::kWorks);
  EXPECT_EQ(judged(sponge(), "leave out the eggs").outcome, Outcome::kFails);
  const ChangeVerdict verdict = judged(sponge(), "swap eggs for egg replacer");
  EXPECT_EQ(verdict.outcome, Outcome::kFails);
  EXPECT_THAT(said(verdict), HasSubstr("does not foam"));
  // Aquafaba foams, but a sponge must also set; a meringue only dries.
  EXPECT_EQ(judged(sponge(), "swap eggs for aquafaba").outcome, Outcome::kFails);
  EXPECT_EQ(judged(dish("Meringues", {{"egg whites", 99}, {"caster sugar", 165}},
                        {"Whisk the egg whites until stiff, whisk in sugar."}),
                   "swap egg whites for aquafaba")
                .outcome,
            Outcome::kWorksBut);
}

TEST(Change, FlavouringsAreFree) {
  for (const char* words : {"leave out mixed spice", "swap mixed spice for cinnamon",
                            "double the mixed spice", "add 2 g nutmeg"}) {
    EXPECT_EQ(judged(scones(), words).outcome, Outcome::kWorks) << words;
  }
}

TEST(Change, LeavingOutTheRaisingAgentFails) {
  EXPECT_EQ(judged(scones(), "no baking powder").outcome, Outcome::kFails);
  EXPECT_THAT(said(judged(scones(), "no baking powder")), HasSubstr("flat"));
}

TEST(Change, OilForButterInRubbedInDoughWorksWithAButAndInARouxWithout) {
  EXPECT_EQ(judged(scones(), "swap butter for rapeseed oil").outcome, Outcome::kWorksBut);
  const Dish sauce = dish("White sauce", {{"butter", 25}, {"plain flour", 25}, {"milk", 300, "ml"}},
                          {"Melt the butter, stir in the flour.",
                           "Add the milk and stir until it boils and coats a spoon."});
  EXPECT_EQ(judged(sauce, "swap butter for rapeseed oil").outcome, Outcome::kWorks);
  EXPECT_EQ(judged(sauce, "swap plain flour for 12 g cornflour").outcome, Outcome::kWorksBut);
}

TEST(Change, MoreOfSomethingIsJudgedByItsBand) {
  // 225 g flour: 50 g butter are 22.2 %, 60 g 26.7 % (within 16 to 30), 100 g 44.4 % (far above).
  EXPECT_EQ(judged(scones(), "10 g more butter").outcome, Outcome::kWorks);
  const ChangeVerdict verdict = judged(scones(), "double the butter");
  EXPECT_EQ(verdict.outcome, Outcome::kFails);
  EXPECT_THAT(said(verdict), HasSubstr("44.4"));
  EXPECT_EQ(judged(scones(), "15 g less butter").outcome, Outcome::kWorksBut);  // 15.6 %
  EXPECT_EQ(judged(scones(), "20 g more butter").outcome, Outcome::kWorksBut);  // 31.1 %
}

TEST(Change, WhatIsAddedWithoutAnAmountIsAskedFor) {
  EXPECT_EQ(judged(scones(), "add milk").outcome, Outcome::kCannotTell);
  EXPECT_EQ(judged(scones(), "add 100 ml milk").outcome, Outcome::kFails);
}

TEST(Change, AnAllergenTheDishDidNotHoldIsNamed) {
  EXPECT_THAT(judged(scones(), "swap milk for soya drink").cautions,
              testing::Contains(HasSubstr("soya")));
  // Buttermilk brings milk, but the butter is milk already.
  EXPECT_THAT(judged(scones(), "swap milk for buttermilk").cautions,
              testing::Not(testing::Contains(HasSubstr("brings milk"))));
}

TEST(Change, WordsThatSayNoChangeAreRefusedWithExamples) {
  const auto change = read_change("make it nicer");
  ASSERT_FALSE(change);
  EXPECT_EQ(change.problems()[0].code, "change.words");
  EXPECT_THAT(change.problems()[0].remedy, HasSubstr("swap butter for oil"));
  for (const char* words : {"", "swap butter", "swap for oil", "leave out ", "5 g"})
    EXPECT_FALSE(read_change(words)) << words;
}

TEST(Change, AnIngredientTheDishLacksIsRefusedWithTheNearest) {
  const auto verdict = judge_change(scones(), read_change("leave out buter").value(),
                                    tests::shipped_foods(), tests::shipped_ratios());
  ASSERT_FALSE(verdict);
  EXPECT_EQ(verdict.problems()[0].code, "change.no_ingredient");
  EXPECT_THAT(verdict.problems()[0].remedy, HasSubstr("butter"));
}

TEST(Change, MoreCannotBeTakenAwayThanThereIs) {
  const auto verdict = judge_change(scones(), read_change("60 g less butter").value(),
                                    tests::shipped_foods(), tests::shipped_ratios());
  ASSERT_FALSE(verdict);
  EXPECT_EQ(verdict.problems()[0].code, "change.no_amount");
}

TEST(Change, TheWordsOfAChangeAreReadAsTheyAreSaid) {
  EXPECT_EQ(read_change("Swap the butter for 40g oil").value().amount,
            Quantity::of(40, Unit::kGram));
  EXPECT_EQ(read_change("swap 1 egg for 60 g apple sauce").value().what, "egg");
  EXPECT_EQ(read_change("2 tbsp less milk").value().amount, Quantity::of(-2, Unit::kTablespoon));
  EXPECT_EQ(read_change("halve the sugar").value().times, Ratio(1, 2));
}

}  // namespace
