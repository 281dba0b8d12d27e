#include "print/say_ratios.h"

#include <gmock/gmock.h>

#include "../../support/shipped_foods.h"
#include "../../support/shipped_ratios.h"
#include "../kitchen_ratios/samples.h"
#include "print/say_scale.h"

namespace {

using testing::HasSubstr;
using testing::Not;
using tests::shipped_foods;
using tests::shipped_ratios;

kitchen::Dish scones() {
  return samples::dish("Plain scones",
                       {{"plain flour", 225},
                        {"baking powder", 11},
                        {"butter", 50},
                        {"milk", 140, "ml"},
                        {"salt", 0, ""}},
                       {"Rub the butter into the flour and baking powder.",
                        "Stir in the milk and cut out.", "Bake."});
}

TEST(SayRatios, SaysWhereEachFigureLiesInItsBand) {
  const auto judged = kitchen::judge(scones(), shipped_foods(), shipped_ratios());
  const std::string said = print::say_ratios(scones(), judged, false);
  EXPECT_THAT(said, HasSubstr("fat, % of flour weight: 22.22, within 16 to 30\n"));
  EXPECT_THAT(said, HasSubstr("common practice"));
  EXPECT_THAT(said, Not(HasSubstr("DR037")));
}

TEST(SayRatios, DetailsOpenEveryFigure) {
  const auto judged = kitchen::judge(scones(), shipped_foods(), shipped_ratios());
  const std::string said = print::say_ratios(scones(), judged, true);
  EXPECT_THAT(said, HasSubstr("DR037"));
  EXPECT_THAT(said, HasSubstr("butter: 50 g"));
  EXPECT_THAT(said, HasSubstr("plain flour: 225 g"));
  EXPECT_THAT(said, HasSubstr("from memory"));
  EXPECT_THAT(said, HasSubstr("the dish's name says so"));
}

TEST(SayRatios, ADishWithoutOneIsFree) {
  const auto salad = samples::dish("Salad", {{"lettuce", 100}}, {"Wash it."});
  EXPECT_THAT(print::say_ratios(salad, {}, false), HasSubstr("free"));
}

TEST(SayRatios, AChangeIsSaidWithItsReason) {
  const auto verdict = kitchen::judge_change(
      scones(), kitchen::read_change("leave out the baking powder").value(), shipped_foods(),
      shipped_ratios());
  const std::string said = print::say_change(verdict.value(), "leave out the baking powder");
  EXPECT_THAT(said, HasSubstr("will fail"));
  EXPECT_THAT(said, HasSubstr("flat"));
}

TEST(SayScale, EveryLineSaysWhatItsRoundingDoes) {
  const auto scaled = larder::scale(scones(), {1, 4}, shipped_foods());
  const std::string said = print::say_scaled(scones(), scaled, "a quarter");
  EXPECT_THAT(said, HasSubstr("55 g"));  // 56.25 g
  EXPECT_THAT(said, HasSubstr("rounded down by 1.25 g"));
  EXPECT_THAT(said, HasSubstr("to taste"));
}

TEST(SayScale, SetsShowTrayAndTotal) {
  const auto order = larder::order_of_sets(scones(), {12, true, 1}, 1, shipped_foods());
  const std::string said = print::say_sets(scones(), order.value());
  EXPECT_THAT(said, HasSubstr("14 sets"));
  EXPECT_THAT(said, HasSubstr("3.15 kg"));  // 14 x 225 g
}

}  // namespace
