#include "kitchen/weigh.h"

#include <gmock/gmock.h>

#include "../../support/shipped_foods.h"

namespace {

using namespace kitchen;
using tests::shipped_foods;

const Food& food(std::string_view key) { return *shipped_foods().find(key); }

TEST(Weigh, AMassIsExact) {
  EXPECT_EQ(weigh(Quantity::of(Ratio(1, 2), Unit::kOunce), food("plain_flour")).value().grams,
            Ratio(45359237, 3200000));
}

TEST(Weigh, AVolumeGoesThroughTheDensityAndSaysSo) {
  // USDA SR26 WEIGHT 20481 seq 1: 1 cup = 125 g, so 0.53 g a ml of 236.6 ml; 15 ml weigh 7.95 g.
  const auto spoon = weigh(Quantity::of(Ratio(1), Unit::kTablespoon), food("plain_flour"));
  EXPECT_EQ(spoon.value().grams, Ratio(795, 100));
  EXPECT_THAT(spoon.value().how, testing::HasSubstr("0.53"));
}

TEST(Weigh, APieceGoesThroughItsWeight) {
  // USDA SR26 WEIGHT 11215 seq 3: 1 clove = 3 g.
  EXPECT_EQ(weigh(Quantity::pieces(Ratio(2), "clove"), food("garlic")).value().grams, Ratio(6));
  EXPECT_EQ(weigh(Quantity::pieces(Ratio(2), "carrot"), food("carrot")).value().grams, Ratio(122));
  EXPECT_EQ(weigh(Quantity::pieces(Ratio(3), ""), food("egg_whole")).value().grams, Ratio(150));
}

TEST(Weigh, ALargeOneIsCountedAsLarge) {
  const double large = std::find_if(food("potato").pieces.begin(), food("potato").pieces.end(),
                                    [](const PieceWeight& p) { return p.piece == "large"; })
                           ->grams;
  EXPECT_EQ(weigh(Quantity::pieces(Ratio(2), "large potato"), food("potato")).value().grams.value(),
            2 * large);
}

TEST(Weigh, WhatCannotBeKnownIsRefusedWithTheReason) {
  const auto bucket = weigh(Quantity::pieces(Ratio(1), "bucket"), food("carrot"));
  ASSERT_FALSE(bucket);
  EXPECT_EQ(bucket.problems()[0].code, "weigh.no_piece");
  Food unknown;
  unknown.name = "Something";
  EXPECT_EQ(weigh(Quantity::of(Ratio(1), Unit::kCup), unknown).problems()[0].code,
            "weigh.no_density");
  EXPECT_EQ(weigh({}, unknown).problems()[0].code, "weigh.no_amount");
}

TEST(Weigh, TheUnitWordOfAnIngredientIsAUnitOrCounts) {
  Ingredient i;
  i.name = "onion";
  i.amount = 1;
  i.unit = "onion";
  EXPECT_EQ(quantity_of(i), Quantity::pieces(Ratio(1), "onion"));
  i.unit = "tortillas";
  EXPECT_EQ(quantity_of(i).piece, "tortilla");
  i.unit = "ml";
  EXPECT_EQ(quantity_of(i), Quantity::of(Ratio(1), Unit::kMillilitre));
  i.amount = 0;
  EXPECT_FALSE(quantity_of(i).stated());
}

}  // namespace
