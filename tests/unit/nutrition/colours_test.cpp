#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "../../support/nutrition_tables.h"
#include "nutrition/front_of_pack.h"
#include "nutrition/needs.h"
#include "nutrition/profile.h"

namespace {

using namespace nutrition;
using tests::calculated;
using tests::ingredient;
using tests::stirred;

TEST(Colours, ALargePortionIsHighThoughItsHundredGramsAreNot) {
  // 10 g sugars in 100 g are medium; 300 g of it hold 30 g, over 27 (N217).
  EXPECT_EQ(colour(Coloured::kSugars, 10, 100, false), Colour::kAmber);
  EXPECT_EQ(colour(Coloured::kSugars, 10, 300, false), Colour::kRed);
  EXPECT_EQ(colour(Coloured::kSugars, 9, 300, false), Colour::kAmber);  // exactly 27 g
}

TEST(Colours, AreNotGivenWhileWhatIsMissingCouldChangeThem) {
  const auto lines = colours(
      calculated(stirred({ingredient("potato", 200), ingredient("salt", 0, "")})));
  EXPECT_EQ(lines[0].colour, Colour::kGreen);
  EXPECT_FALSE(lines[3].colour);
  EXPECT_EQ(lines[3].at_least, Colour::kGreen);
}

TEST(Colours, AreGivenWhenEvenTheWorstDoesNotChangeThem) {
  // 2 g of five-spice without figures in 500 g of potato: at most 0.4 g of anything in 100 g.
  const auto lines = colours(
      calculated(stirred({ingredient("potato", 498), ingredient("five_spice", 2)})));
  EXPECT_EQ(lines[0].colour, Colour::kGreen);
  EXPECT_EQ(lines[1].colour, Colour::kGreen);
}

RC_GTEST_PROP(Colours, MoreIsNeverLower, ()) {
  const Coloured what = kColoured[*rc::gen::inRange<std::size_t>(0, 4)];
  const bool drink = *rc::gen::arbitrary<bool>();
  const double a = *rc::gen::inRange(0, 3000) / 100.0, more = *rc::gen::inRange(0, 1000) / 100.0;
  const double portion = *rc::gen::inRange(1, 600);
  RC_ASSERT(colour(what, a, portion, drink) <= colour(what, a + more, portion, drink));
}

TEST(Profile, FruitVegetablesAndNutsAreCountedByWeightDriedTwice) {
  // 100 g apple, 50 g raisins (twice), 100 g flour: (100 + 100) / 300.
  const auto held = calculated(stirred({ingredient("apple_eating", 100), ingredient("raisins", 50),
                                        ingredient("plain_flour", 100)}));
  EXPECT_NEAR(fruit_veg_nuts_percent(held), 66.67, 0.01);
  EXPECT_DOUBLE_EQ(fruit_veg_nuts_percent(calculated(stirred({ingredient("potato", 100)}))), 0);
  EXPECT_DOUBLE_EQ(fruit_veg_nuts_percent(calculated(stirred({ingredient("almonds_whole", 100)}))),
                   100);
}

TEST(Profile, IsUnsureWhenWhatIsMissingCouldChangeTheScore) {
  EXPECT_FALSE(
      profile_of(calculated(stirred({ingredient("potato", 200), ingredient("salt", 0, "")}))).sure);
  EXPECT_TRUE(profile_of(calculated(tests::macaroni())).sure);
}

TEST(Needs, ASharesOfADayAreOfAPortion) {
  // 6.5 g fibre in two portions: 3.25 of 25 g.
  for (const NeedShare& share : shares_of_day(calculated(tests::macaroni()), Band::kGirls11)) {
    if (share.need->name == "fibre") {
      EXPECT_NEAR(share.share, 3.25 / 25, 1e-9);
    }
    EXPECT_NE(share.need->name, "iodine");
  }
}

}  // namespace
