#include "nutrition/label.h"

#include <gmock/gmock.h>

#include "../../support/nutrition_tables.h"

namespace {

using namespace nutrition;
using tests::calculated;
using tests::ingredient;
using tests::stirred;

TEST(Label, FiguresAreRoundedAsTheGuidanceOfDecember2012Says) {
  // From memory: energy to 1; grams from 10 to 1, below to 0.1, 0.5 and less "<0.5"; saturates 0.1;
  // salt as below.
  const std::vector<std::tuple<double, Rounding, std::string>> cases = {
      {1484.84, Rounding::kEnergy, "1485"},
      {0, Rounding::kEnergy, "0"},
      {12.4, Rounding::kGrams, "12"},
      {12.5, Rounding::kGrams, "13"},
      {9.96, Rounding::kGrams, "10.0"},
      {3.14, Rounding::kGrams, "3.1"},
      {0.51, Rounding::kGrams, "0.5"},
      {0.5, Rounding::kGrams, "<0.5"},
      {0, Rounding::kGrams, "0"},
      {0.5, Rounding::kSaturates, "0.5"},
      {0.1, Rounding::kSaturates, "<0.1"},
      {1.6075, Rounding::kSalt, "1.6"},
      {0.8575, Rounding::kSalt, "0.86"},
      {0.125, Rounding::kSalt, "0.13"},
      {0.0125, Rounding::kSalt, "<0.01"},
      {0, Rounding::kSalt, "0"},
      {123.4, Rounding::kThreeFigures, "123"},
      {1.234, Rounding::kTwoFigures, "1.2"},
      {0.0456, Rounding::kTwoFigures, "0.046"}};
  for (const auto& [value, rounding, text] : cases)
    EXPECT_EQ(label_number(value, rounding), text) << value;
}

TEST(Label, WhatIsMissingIsSaidInTheFigure) {
  EXPECT_EQ(label_number(Figure::exactly(3.14), Rounding::kGrams), "3.1");
  EXPECT_EQ(label_number(Figure{3.14, std::nullopt, Sureness::kAtLeast}, Rounding::kGrams),
            "at least 3.1");
  EXPECT_EQ(label_number(Figure{0.004, std::nullopt, Sureness::kAtLeast}, Rounding::kSalt),
            "not known");
  EXPECT_EQ(label_number(Figure{3.14, 4.0, Sureness::kAtLeast}, Rounding::kGrams), "3.1 to 4.0");
  EXPECT_EQ(label_number(Figure{3.14, 3.149, Sureness::kAtLeast}, Rounding::kGrams), "3.1");
  EXPECT_EQ(label_number(Figure{3.14, std::nullopt, Sureness::kUnsure}, Rounding::kGrams),
            "about 3.1");
}

TEST(Label, StandsInTheOrderOfTheLaw) {
  std::vector<std::string> names;
  for (const LabelLine& line : label_of(calculated(tests::macaroni())).lines)
    names.push_back(line.name);
  EXPECT_THAT(names,
              testing::ElementsAre("energy", "energy", "fat", "of which saturates", "carbohydrate",
                                   "of which sugars", "fibre", "protein", "salt"));
}

TEST(Label, NamesOnlyVitaminsInSignificantAmounts) {
  // Calcium of cheddar: 721 mg in 100 g, 90 % of 800; of butter: 24 mg, 3 %.
  const auto has_calcium = [](const char* food) {
    const Label label = label_of(calculated(stirred({ingredient(food, 100)})));
    return std::any_of(label.vitamins.begin(), label.vitamins.end(),
                       [](const LabelLine& line) { return line.name == "calcium"; });
  };
  EXPECT_TRUE(has_calcium("cheddar"));
  EXPECT_FALSE(has_calcium("butter_salted"));
}

TEST(Label, EnergyOfWineIsOnlyAtLeast) {
  const auto held = calculated(stirred({ingredient("red_wine", 100)}));
  EXPECT_FALSE(kilojoules(held).whole());
  EXPECT_TRUE(kilojoules(held).most);
}

}  // namespace
