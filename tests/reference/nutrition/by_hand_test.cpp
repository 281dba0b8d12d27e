// The dish worked out step by step in docs/methods/nutrition.md from the rows of USDA SR26 20499,
// 11282, 01001 and 01009, the yields DY018 and DY030 and the shares of vitamins left.
#include <gtest/gtest.h>

#include "../../support/nutrition_tables.h"
#include "nutrition/label.h"

namespace {

using namespace nutrition;
using kitchen::Nutrient;

TEST(ByHand, MacaroniWithOnionsAndCheeseHoldsWhatThePageSays) {
  const DishNutrients dish = tests::calculated(tests::macaroni());
  // Weight: 150 x 2.2 + 100 x 0.55 + 20 + 60.
  EXPECT_NEAR(dish.served_grams, 465, 1e-9);
  EXPECT_DOUBLE_EQ(dish.raw_grams, 330);
  EXPECT_DOUBLE_EQ(dish.coverage, 1);
  EXPECT_NEAR(dish.whole(Nutrient::kFat).amount, 38.471, 1e-9);
  EXPECT_NEAR(dish.whole(Nutrient::kSaturates).amount, 23.3863, 1e-9);
  EXPECT_NEAR(dish.whole(Held::kCarbohydrate).amount, 115.625, 1e-9);
  EXPECT_NEAR(dish.whole(Nutrient::kSugars).amount, 8.569, 1e-9);
  EXPECT_NEAR(dish.whole(Nutrient::kFibre).amount, 6.5, 1e-9);
  EXPECT_NEAR(dish.whole(Held::kLabelProtein).amount, 37.3495, 1e-4);
  EXPECT_NEAR(dish.whole(Nutrient::kSodium).amount, 514.2, 1e-9);
  EXPECT_NEAR(dish.whole(Nutrient::kCalcium).amount, 491.9, 1e-9);
  EXPECT_NEAR(dish.whole(Nutrient::kVitaminC).amount, 5.18, 1e-9);   // 7.4 x 0.70
  EXPECT_NEAR(dish.whole(Nutrient::kThiamin).amount, 0.1483, 1e-9);  // 0.135 x 0.7 + 0.047 x 0.8 +
                                                                     // 0.0162
  EXPECT_NEAR(kilojoules(dish).amount, 4075.99, 0.01);
  EXPECT_NEAR(kilocalories(dish).amount, 971.14, 0.01);
}

TEST(ByHand, ItsLabelReadsAsThePageSays) {
  const Label label = label_of(tests::calculated(tests::macaroni()));
  const std::vector<std::vector<std::string>> expected = {
      {"energy", "kJ", "2038", "877"},   {"energy", "kcal", "486", "209"},
      {"fat", "g", "19", "8.3"},         {"of which saturates", "g", "12", "5.0"},
      {"carbohydrate", "g", "58", "25"}, {"of which sugars", "g", "4.3", "1.8"},
      {"fibre", "g", "3.3", "1.4"},      {"protein", "g", "19", "8.0"},
      {"salt", "g", "0.64", "0.28"}};
  ASSERT_EQ(label.lines.size(), expected.size());
  for (std::size_t i = 0; i < expected.size(); ++i) {
    const LabelLine& line = label.lines[i];
    EXPECT_EQ(
        (std::vector<std::string>{line.name, line.unit, label_number(line.portion, line.rounding),
                                  label_number(line.per_100_g, line.rounding)}),
        expected[i]);
  }
}

}  // namespace
