#include "base/ratio.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace {

using base::Ratio;

TEST(Ratio, TwoThirdsThreeTimesIsTwo) { EXPECT_EQ(Ratio(2, 3) * Ratio(3), Ratio(2)); }

TEST(Ratio, IsKeptInLowestTermsWithAPositiveDenominator) {
  EXPECT_EQ(Ratio(6, -8).numerator(), -3);
  EXPECT_EQ(Ratio(6, -8).denominator(), 4);
  EXPECT_EQ(Ratio(0, 7), Ratio(0));
}

TEST(Ratio, ReadsADecimalExactly) {
  EXPECT_EQ(Ratio::in("0.125"), Ratio(1, 8));
  EXPECT_EQ(Ratio::in("-3"), Ratio(-3));
  EXPECT_EQ(Ratio::in(".5"), Ratio(1, 2));
  EXPECT_EQ(Ratio::in("1,5"), std::nullopt);
  EXPECT_EQ(Ratio::in("."), std::nullopt);
  EXPECT_EQ(Ratio::in("99999999999999999999"), std::nullopt);
}

TEST(Ratio, RoundsHalvesAwayFromNothing) {
  EXPECT_EQ(Ratio(5, 2).round(), 3);
  EXPECT_EQ(Ratio(-5, 2).round(), -3);
  EXPECT_EQ(Ratio(-5, 2).floor(), -3);
  EXPECT_EQ(Ratio(-5, 2).ceil(), -2);
  EXPECT_EQ(base::rounded_to(Ratio(262), Ratio(5)), Ratio(260));
  EXPECT_EQ(base::rounded_to(Ratio(525, 2), Ratio(5)), Ratio(265));
}

TEST(Ratio, IsWrittenAsAPersonWrites) {
  EXPECT_EQ(base::fraction_text(Ratio(3, 2)), "1 1/2");
  EXPECT_EQ(base::fraction_text(Ratio(2, 3)), "2/3");
  EXPECT_EQ(base::fraction_text(Ratio(7, 20)), "0.35");
  EXPECT_EQ(base::fraction_text(Ratio(250)), "250");
  EXPECT_EQ(base::decimal_text(Ratio(2, 3)), "0.67");
}

TEST(Ratio, BeyondItsRangeItIsTheNearestItCanHold) {
  const Ratio large(4'000'000'000'000'000'000);
  EXPECT_GT(large * large, Ratio(1'000'000'000'000));
  const Ratio tiny = Ratio(1, 3'000'000'019) * Ratio(1, 3'000'000'019);
  EXPECT_EQ(tiny, Ratio(0));
}

RC_GTEST_PROP(Ratio, AddingAndTakingAwayGivesWhatWasThere, ()) {
  const auto part = [] {
    return Ratio(*rc::gen::inRange<std::int64_t>(-100000, 100000),
                 *rc::gen::inRange<std::int64_t>(1, 1000));
  };
  const Ratio a = part(), b = part();
  RC_ASSERT(a + b - b == a);
  RC_ASSERT((a < b) == (a.value() < b.value() || (a.value() == b.value() && a < b)));
  if (b != Ratio(0)) RC_ASSERT(a * b / b == a);
}

}  // namespace
