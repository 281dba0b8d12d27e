#include "larder/money.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "larder/cost.h"

namespace {

using namespace larder;

TEST(Money, IsReadAsPeopleWriteIt) {
  for (const char* text :
       {"1.20", "\u00a31.20", "1,20", "1.2", "120p", " \u00a3 1.20 ", "GBP 1.20"})
    EXPECT_EQ(pence_in(text), 120) << text;
  EXPECT_EQ(pence_in(".85"), 85);
  EXPECT_EQ(pence_in("3"), 300);
}

TEST(Money, IsRefusedWhenItCouldMeanTwoThings) {
  for (const char* text : {"", "1,200", "1.205", "-1.20", "1.2.0", "about 3", "\u00a3120p", "."})
    EXPECT_FALSE(pence_in(text)) << text;
}

TEST(Money, IsWrittenInPoundsWithTwoFigures) {
  EXPECT_EQ(pounds_text(Pence{5}), "\u00a30.05");
  EXPECT_EQ(pounds_text(Pence{-120}), "-\u00a31.20");
}

RC_GTEST_PROP(Money, IsSharedOutToThePenny, ()) {
  const auto whole = *rc::gen::inRange<std::int64_t>(0, 100000);
  auto weights = *rc::gen::nonEmpty(
      rc::gen::container<std::vector<int>>(rc::gen::inRange(0, 1000)));
  weights.push_back(1);
  std::vector<base::Ratio> ratios(weights.begin(), weights.end());
  std::int64_t sum = 0, total = 0;
  const auto shares = shared_out(whole, ratios);
  for (const int w : weights) total += w;
  for (std::size_t i = 0; i < shares.size(); ++i) {
    sum += shares[i];
    // No share is a whole penny away from its exact part.
    RC_ASSERT(std::abs(shares[i] * total - whole * weights[i]) < total);
  }
  RC_ASSERT(sum == whole);
}

}  // namespace
