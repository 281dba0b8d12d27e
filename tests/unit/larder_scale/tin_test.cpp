#include <gmock/gmock.h>

#include "larder/scale_tin.h"

namespace {

using namespace larder;

TEST(Tin, IsReadAsItIsSaid) {
  const Tin two = read_tin("two round 18 cm tins").value();
  EXPECT_EQ(two.count, 2);
  EXPECT_EQ(two.length, Ratio(18));
  EXPECT_EQ(read_tin("2 round 18").value(), two);
  const Tin loaf = read_tin("loaf 23x13x7").value();
  EXPECT_EQ(loaf.width, Ratio(13));
  EXPECT_EQ(loaf.depth, Ratio(7));
  EXPECT_EQ(read_tin("round 8 in").value().length, Ratio(2032, 100));
  EXPECT_EQ(tin_text(loaf), "a rectangular tin of 23 x 13 cm, 7 cm deep");
}

TEST(Tin, WhatIsNoTinIsRefusedWithExamples) {
  for (const char* words : {"", "round", "20", "heart 20", "rectangle 30", "round 0", "round 500",
                            "round 20 x 5 x 3", "round minus 20"}) {
    const auto tin = read_tin(words);
    ASSERT_FALSE(tin) << words;
    EXPECT_EQ(tin.problems()[0].code, "scale.tin");
    EXPECT_THAT(tin.problems()[0].remedy, testing::HasSubstr("round 20"));
  }
}

TEST(Tin, ThereAndBackIsOnce) {
  const Tin a = read_tin("round 20 x 5").value(), b = read_tin("rectangle 30 x 20 x 4").value();
  EXPECT_EQ(tin_factor(a, b) * tin_factor(b, a), Ratio(1));
  EXPECT_EQ(tin_factor(a, a), Ratio(1));
}

TEST(Tin, DepthCountsOnlyWhenBothSayIt) {
  EXPECT_EQ(tin_factor(read_tin("round 20 x 4").value(), read_tin("round 20 x 6").value()),
            Ratio(3, 2));
  EXPECT_EQ(tin_factor(read_tin("round 20 x 4").value(), read_tin("round 20").value()), Ratio(1));
}

}  // namespace
