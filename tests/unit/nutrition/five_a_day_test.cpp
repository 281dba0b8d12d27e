#include "nutrition/five_a_day.h"

#include <gtest/gtest.h>

#include "../../support/nutrition_tables.h"

namespace {

using namespace nutrition;
using tests::calculated;
using tests::cooking_tables;
using tests::ingredient;
using tests::stirred;

double portions(std::vector<kitchen::Ingredient> list, int of = 1) {
  return five_a_day(calculated(stirred(std::move(list), of)), cooking_tables()).portions();
}

TEST(FiveADay, FreshFoodCountsByEightyGramsAndPotatoesNever) {
  EXPECT_DOUBLE_EQ(portions({ingredient("tomato", 160)}), 2);
  EXPECT_DOUBLE_EQ(portions({ingredient("tomato", 160)}, 4), 0.5);
  EXPECT_DOUBLE_EQ(portions({ingredient("potato", 800)}), 0);
}

TEST(FiveADay, DriedFruitJuiceAndPulsesCountOnce) {
  EXPECT_DOUBLE_EQ(portions({ingredient("raisins", 15)}), 0.5);
  EXPECT_DOUBLE_EQ(portions({ingredient("raisins", 300)}), 1);
  EXPECT_DOUBLE_EQ(portions({ingredient("apple_juice", 600, "ml")}), 1);
  EXPECT_DOUBLE_EQ(portions({ingredient("chickpeas_tinned", 400)}), 1);
}

TEST(FiveADay, DryPulsesCountAsCooked) {
  // DY024: red lentils weigh 2.6 times as much cooked; 15.38 g dry are 40 g, half a portion.
  EXPECT_NEAR(portions({ingredient("red_lentils_dry", 40 / 2.6)}), 0.5, 1e-5);
}

TEST(FiveADay, WhatHasNoWeightIsNamed) {
  const auto count = five_a_day(
      calculated(stirred({ingredient("onion", 1, "bucket"), ingredient("leek", 80)})),
      cooking_tables());
  EXPECT_EQ(count.unknown, std::vector<std::size_t>{0});
  EXPECT_DOUBLE_EQ(count.portions(), 1);
}

}  // namespace
