#include "larder/stock.h"

#include <gmock/gmock.h>

#include "made.h"

namespace {

using namespace larder;
using kitchen::Quantity;
using kitchen::Ratio;
using kitchen::Unit;
using tests::line;
using tests::shipped_foods;

Week butter_week() {
  Week week;
  week.lessons = {tests::lesson("9K", "2026-11-17", 10, {line("butter", 30, "g")}),
                  tests::lesson("8B", "2026-11-19", 10, {line("butter", 30, "g")})};
  return week;
}

TEST(Stock, PlannedUseIsTakenOffFirstExpiredFirst) {
  const Week week = butter_week();
  const Needs needs = needs_of(week, shipped_foods());
  const auto lots = tests::stores("butter,500 g,2026-12-01,,\nbutter,250 g,2026-11-18,yes,\n").lots;
  const StockAfter after = deduct(lots, needs, week, shipped_foods(), tests::day("2026-11-16"),
                                  tests::day("2026-11-17"));
  // 300 g on Tuesday: 250 g of the one that ends on the 18th, 50 g of the other.
  ASSERT_EQ(after.lots.size(), 1U);
  EXPECT_EQ(after.lots[0].amount, Quantity::of(450, Unit::kGram));
  EXPECT_TRUE(after.warnings.empty());
}

TEST(Stock, AShortfallWarnsAndStopsNothing) {
  const Week week = butter_week();
  const Needs needs = needs_of(week, shipped_foods());
  const auto lots = tests::stores("butter,500 g,2026-11-18,,\n").lots;
  const StockAfter after = deduct(lots, needs, week, shipped_foods(), tests::day("2026-11-16"),
                                  tests::day("2026-11-20"));
  // Thursday's 300 g may not come from a lot that ended on Wednesday, and that lot is told.
  ASSERT_EQ(after.warnings.size(), 2U);
  EXPECT_EQ(after.warnings[0].lesson, 1);
  EXPECT_THAT(after.warnings[0].text, testing::HasSubstr("300 g short of the 300 g planned"));
  EXPECT_THAT(after.warnings[1].text, testing::HasSubstr("do not use it"));
}

TEST(Stock, OnlyWhatIsWrongIsCorrected) {
  const auto
      lots = tests::stores(
                 "butter,500 g,2026-12-01,,\nbutter,250 g,2026-11-18,,\nmilk,1 l,2026-11-18,,\n")
                 .lots;
  const auto key = lots[0].food;
  const auto less = corrected(lots, {{key, std::nullopt, Quantity::of(600, Unit::kGram)}},
                              shipped_foods());
  ASSERT_TRUE(less);
  ASSERT_EQ(less.value().size(), 3U);  // 150 g less, of the first to expire
  EXPECT_EQ(less.value()[0].amount, Quantity::of(100, Unit::kGram));
  const auto more = corrected(lots, {{key, std::nullopt, Quantity::of(1, Unit::kKilogram)}},
                              shipped_foods());
  EXPECT_EQ(more.value()[2].amount, Quantity::of(750, Unit::kGram));
  const auto none = corrected(lots, {{key, std::nullopt, Quantity::of(0, Unit::kGram)}},
                              shipped_foods());
  EXPECT_EQ(none.value().size(), 1U);
}

TEST(Stock, TheRoundIsShortAndSoonestFirst) {
  std::string rows;
  for (int i = 0; i < 30; ++i) rows += "milk,1 l,2026-11-" + std::to_string(10 + i % 20) + ",,\n";
  const auto look = to_look_at(tests::stores(rows).lots, tests::day("2026-11-16"));
  EXPECT_EQ(look.size(), 20U);
  EXPECT_EQ(look.front().use_by, tests::day("2026-11-10"));
}

TEST(Stock, WrittenAndReadAgainIsTheSame) {
  const auto lots = tests::stores(
                        "butter,500 g,2026-12-01,yes,fridge 1\neggs,12 eggs,2026-11-20,,\n")
                        .lots;
  const auto again = read_stock(write_stock(lots, shipped_foods()), "s", shipped_foods());
  ASSERT_TRUE(again);
  EXPECT_EQ(again.value().lots, lots);
}

}  // namespace
