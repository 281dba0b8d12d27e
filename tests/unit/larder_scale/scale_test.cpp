#include "larder/scale.h"

#include <gmock/gmock.h>
#include <rapidcheck/gtest.h>

#include "../../support/shipped_foods.h"
#include "../kitchen_ratios/samples.h"
#include "kitchen/weigh.h"
#include "larder/scale_times.h"

namespace {

using namespace larder;
using kitchen::Dish;
using kitchen::Unit;
using testing::HasSubstr;
using tests::shipped_foods;

Dish scones() {
  return samples::dish("Scones",
                       {{"self-raising flour", 225},
                        {"butter", 50},
                        {"caster sugar", 25},
                        {"milk", 145, "ml"},
                        {"eggs", 1, "egg"},
                        {"salt", 0, ""}},
                       {"Rub in.", "Mix."});
}

// Amounts as dishes have them: halves and quarters, up to two kilograms.
rc::Gen<Dish> any_dish() {
  using namespace rc;
  const auto amount = gen::map(gen::inRange(1, 8000), [](int quarters) { return quarters / 4.0; });
  const auto unit = gen::element<std::string>("g", "ml", "tsp", "tbsp", "egg", "clove", "kg", "oz");
  const auto one = gen::map(gen::pair(amount, unit), [](const std::pair<double, std::string>& p) {
    return samples::Amount{"flour", p.first, p.second};
  });
  return gen::map(gen::nonEmpty(gen::container<std::vector<samples::Amount>>(one)),
                  [](std::vector<samples::Amount> amounts) {
                    amounts.push_back({"salt", 0, ""});
                    return samples::dish("Something", amounts, {"Mix."});
                  });
}
rc::Gen<Ratio> any_factor() {
  return rc::gen::map(rc::gen::pair(rc::gen::inRange(1, 60), rc::gen::inRange(1, 12)),
                      [](std::pair<int, int> p) { return Ratio(p.first, p.second); });
}

RC_GTEST_PROP(Scale, DoublingDoublesEveryIngredientExceptTheOneMarkedToTaste, ()) {
  const Dish dish = *any_dish();
  const Scaled once = scale(dish, 1, shipped_foods()), twice = scale(dish, 2, shipped_foods());
  for (std::size_t i = 0; i < once.lines.size(); ++i) {
    const Quantity &a = once.lines[i].amount.exact, &b = twice.lines[i].amount.exact;
    RC_ASSERT(b.stated() == a.stated());
    if (a.stated()) RC_ASSERT(b == kitchen::times(a, 2));
  }
  RC_ASSERT(!twice.lines.back().amount.exact.stated());
}

RC_GTEST_PROP(Scale, ScalingDownAndUpAgainReturns, ()) {
  const Dish dish = *any_dish();
  const Ratio factor = *any_factor();
  const Scaled there = scale(dish, factor, shipped_foods());
  const Scaled once = scale(dish, 1, shipped_foods());
  for (std::size_t i = 0; i < once.lines.size(); ++i) {
    if (!once.lines[i].amount.exact.stated()) continue;
    RC_ASSERT(kitchen::times(there.lines[i].amount.exact, Ratio(1) / factor) ==
              once.lines[i].amount.exact);
  }
}

RC_GTEST_PROP(Scale, RoundingIsNeverOffByMoreThanHalfAStepAndNeverLeavesNothing, ()) {
  const Dish dish = *any_dish();
  for (const ScaledLine& line : scale(dish, *any_factor(), shipped_foods()).lines) {
    const Shown& amount = line.amount;
    if (!amount.exact.stated()) continue;
    RC_ASSERT(amount.error == amount.shown.middle() - amount.exact.middle());
    RC_ASSERT(amount.error * Ratio(2) <= amount.step);
    RC_ASSERT(Ratio(0) - amount.error * Ratio(2) <= amount.step);
    RC_ASSERT(amount.shown.middle() > Ratio(0));
    if (amount.step != Ratio(0)) RC_ASSERT((amount.shown.middle() / amount.step).whole());
  }
}

TEST(Scale, ByPortionsTheFactorIsExact) {
  Dish dish = scones();
  dish.portions = 8;
  EXPECT_EQ(factor_for_portions(dish, 12).value(), Ratio(3, 2));
  EXPECT_FALSE(factor_for_portions(dish, 0));
  EXPECT_EQ(factor_for_portions(dish, 1001).problems()[0].code, "scale.portions");
}

TEST(Scale, EveryLineShowsWhatItsRoundingAdds) {
  // 225 g / 4 = 56.25 g, shown 55 g: 1.25 g less. 145 ml / 4 = 36.25 ml, shown 35 ml.
  const Scaled quarter = scale(scones(), {1, 4}, shipped_foods());
  EXPECT_EQ(quarter.lines[0].amount.text, "55 g");
  EXPECT_EQ(quarter.lines[0].amount.error, Ratio(-5, 4));
  EXPECT_EQ(quarter.lines[1].amount.text, "13 g");  // 12.5 g on scales that show 1 g
  EXPECT_EQ(quarter.lines[3].amount.text, "35 ml");
  EXPECT_EQ(quarter.lines[5].amount.text, "to taste");
}

TEST(Scale, AQuarterOfAnEggIsToldAndBeatenEggIsWeighed) {
  const Scaled whole = scale(scones(), {3, 2}, shipped_foods());
  EXPECT_EQ(whole.lines[4].amount.text, "2 eggs");
  EXPECT_THAT(whole.warnings, testing::Contains(HasSubstr("1 1/2")));
  // 1 1/2 eggs of 50 g (USDA SR26 WEIGHT 01123 seq 1) are 75 g.
  const Scaled beaten = scale(scones(), {3, 2}, shipped_foods(), Eggs::kBeatenWeight);
  EXPECT_EQ(beaten.lines[4].amount.text, "75 g");
  EXPECT_THAT(beaten.warnings, testing::IsEmpty());
}

TEST(Scale, SpoonsAreSaidAsSpoonsAndLargeAmountsInLargeUnits) {
  using kitchen::Quantity;
  EXPECT_EQ(shown(Quantity::of({5, 4}, Unit::kTablespoon)).text, "1 tbsp + 3/4 tsp");
  EXPECT_EQ(shown(Quantity::of({1, 3}, Unit::kTeaspoon)).text, "1/4 tsp");
  EXPECT_EQ(shown(Quantity::of(6, Unit::kTablespoon)).text, "90 ml");
  EXPECT_EQ(shown(Quantity::of(Ratio(15, 2), Unit::kMillilitre)).text, "7.5 ml (1 1/2 tsp)");
  EXPECT_EQ(shown(Quantity::of(1234, Unit::kGram)).text, "1.235 kg");
  EXPECT_EQ(shown(Quantity::of({1, 4}, Unit::kGram)).too_small, true);
  EXPECT_EQ(shown(Quantity::pieces({5, 3}, "onion")).shown.middle(), Ratio(3, 2));
  EXPECT_EQ(shown(Quantity::pieces({1, 4}, "lemon")).shown.middle(), Ratio(1, 4));
}

TEST(Scale, TheScarcestIngredientDecides) {
  // 900 g of flour make the 225 g dish four times; 100 g of butter only twice.
  const Have flour = read_have("flour 900 g").value(), butter = read_have("100g butter").value();
  EXPECT_EQ(factor_for_have(scones(), {flour}, shipped_foods()).value().factor, Ratio(4));
  const auto both = factor_for_have(scones(), {flour, butter}, shipped_foods());
  EXPECT_EQ(both.value().factor, Ratio(2));
  EXPECT_EQ(both.value().ingredient, 1);
  EXPECT_EQ(
      factor_for_have(scones(), {read_have("eggs 10").value()}, shipped_foods()).value().factor,
      Ratio(10));
}

TEST(Scale, IngredientsOfOneNameShareWhatThereIs) {
  const Dish soup = samples::dish("Soup", {{"butter", 20}, {"butter for scones", 30}}, {"Mix."});
  EXPECT_EQ(
      factor_for_have(soup, {read_have("butter 100 g").value()}, shipped_foods()).value().factor,
      Ratio(2));
}

TEST(Scale, WhatThereIsMustBeInTheDishAndHaveAnAmount) {
  const auto wrong = factor_for_have(
      scones(), {read_have("yeast 10 g").value(), read_have("salt 10 g").value()}, shipped_foods());
  ASSERT_FALSE(wrong);
  ASSERT_EQ(wrong.problems().size(), 2U);
  EXPECT_EQ(wrong.problems()[0].code, "scale.no_ingredient");
  EXPECT_EQ(wrong.problems()[1].code, "scale.no_amount");
  for (const char* words : {"", "flour", "900 g", "flour 0 g"})
    EXPECT_FALSE(read_have(words)) << words;
}

TEST(Scale, ARoundedDishKeepsItsToTasteAndItsUnits) {
  const Scaled scaled = scale(scones(), {3, 2}, shipped_foods());
  const Dish rounded = as_shown(scones(), scaled);
  EXPECT_EQ(rounded.ingredients[0].amount, 340);  // 337.5 g
  EXPECT_EQ(as_exact(scones(), scaled).ingredients[0].amount, 337.5);
  EXPECT_EQ(quantity_of(rounded.ingredients[4]), kitchen::Quantity::pieces(2, "egg"));
  EXPECT_EQ(rounded.ingredients[5].amount, 0);
}

TEST(ScaleTimes, OneBatchFourTimesAsLargeCrowdsThePanAndFillsTheOven) {
  Dish dish = samples::dish("Stew", {{"beef mince", 200}, {"onion", 1, "onion"}},
                            {"Peel and dice the onion.", "Fry the mince until brown.", "Bake."});
  dish.method[1].uses = {0};
  dish.method[1].heat = kitchen::Heat{};
  dish.method[2].heat = kitchen::Heat{};
  dish.method[2].heat->with = kitchen::HeatKind::kOven;
  dish.method[2].attention = kitchen::Attention::kLeave;
  dish.ingredients[0].food = "beef_mince_12";
  const auto warnings = times_that_do_not_scale(dish, 4, 1, shipped_foods());
  ASSERT_EQ(warnings.size(), 3U);
  EXPECT_THAT(warnings[0].says, HasSubstr("handwork"));
  EXPECT_THAT(warnings[1].says, HasSubstr("800 g at once"));  // 4 x 200 g
  EXPECT_THAT(warnings[2].says, HasSubstr("4 shelves"));
  EXPECT_THAT(times_that_do_not_scale(dish, 1, 1, shipped_foods()), testing::IsEmpty());
}

TEST(ScaleTimes, ADeeperTinTakesLongerThanItsDepthSays) {
  Dish dish = samples::dish("Cake", {{"flour", 100}}, {"Bake."});
  dish.method[0].heat = kitchen::Heat{};
  dish.method[0].heat->with = kitchen::HeatKind::kOven;
  const auto warnings = times_that_do_not_scale(dish, 2, 2, shipped_foods());
  ASSERT_EQ(warnings.size(), 1U);
  EXPECT_THAT(warnings[0].says, HasSubstr("more than in step"));
}

}  // namespace
