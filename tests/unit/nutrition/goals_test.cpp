#include "nutrition/goals.h"

#include <gtest/gtest.h>

#include "../../support/nutrition_tables.h"

namespace {

using namespace nutrition;

Goal one(std::string_view words) { return read_goal(words, 80).value().at(0); }

TEST(Goals, AreReadAsTheyAreSaid) {
  EXPECT_EQ(one("fibre at least 6 g a portion").of, GoalOf::kFibre);
  EXPECT_FALSE(one("fibre at least 6 g a portion").at_most);
  EXPECT_DOUBLE_EQ(one("Free sugars at most 2.5").amount, 2.5);
  EXPECT_EQ(one("free sugars at most 2.5").of, GoalOf::kFreeSugars);
  EXPECT_EQ(one("sugars at most 5 g in 100 g").per, GoalPer::kHundred);
  EXPECT_EQ(one("energy at most 400 kcal").of, GoalOf::kKilocalories);
  EXPECT_EQ(one("energy at most 1700 kJ").of, GoalOf::kKilojoules);
}

TEST(Goals, OfAColourAreItsThresholds) {
  EXPECT_DOUBLE_EQ(one("salt not high").amount, 1.5);
  EXPECT_DOUBLE_EQ(one("saturates low").amount, 1.5);
  EXPECT_DOUBLE_EQ(one("saturates green").amount, 1.5);
  const auto large = read_goal("salt not red", 250).value();
  ASSERT_EQ(large.size(), 2U);
  EXPECT_DOUBLE_EQ(large[1].amount, 1.8);
  EXPECT_EQ(large[1].per, GoalPer::kPortion);
}

TEST(Goals, NotUnderstoodAreRefusedWithWhatIs) {
  for (const char* words : {"", "tasty", "salt", "salt at least", "fibre low", "energy at most 400",
                            "salt at most -1", "salt at most 1 g a bucket"}) {
    const auto read = read_goal(words, 100);
    ASSERT_FALSE(read) << words;
    EXPECT_EQ(read.problems().front().code, "goal.words");
    EXPECT_NE(read.problems().front().remedy.find("salt not high"), std::string::npos);
  }
}

TEST(Goals, AtMostIsKeptOnlyWhenTheWorstKeepsIt) {
  // 2 g five-spice without figures may be 2 g of saturates.
  const auto held = tests::calculated(
      tests::stirred({tests::ingredient("onion", 100), tests::ingredient("five_spice", 2)}));
  EXPECT_FALSE(kept(one("saturates at most 1"), held));
  EXPECT_TRUE(kept(one("saturates at most 3"), held));
  EXPECT_TRUE(kept(one("fibre at least 1.7"), held));
}

}  // namespace
