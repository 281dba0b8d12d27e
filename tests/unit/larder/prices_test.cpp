#include "larder/prices.h"

#include <gmock/gmock.h>

#include "made.h"

namespace {

using namespace larder;
using kitchen::Quantity;
using kitchen::Ratio;
using kitchen::Unit;
using tests::shipped_foods;

TEST(Sizes, AreReadAsPacketsSayThem) {
  EXPECT_EQ(size_in("500 g"), Quantity::of(500, Unit::kGram));
  EXPECT_EQ(size_in("1.5kg"), Quantity::of(Ratio(3, 2), Unit::kKilogram));
  EXPECT_EQ(size_in("1 l"), Quantity::of(1, Unit::kLitre));
  EXPECT_EQ(size_in("400 g tin"), Quantity::of(400, Unit::kGram));
  EXPECT_EQ(size_in("6 x 400 g"), Quantity::of(2400, Unit::kGram));
  EXPECT_EQ(size_in("12 eggs"), Quantity::pieces(12, "egg"));
  EXPECT_EQ(size_in("each"), Quantity::pieces(1, ""));
  for (const char* wrong : {"", "0 g", "g", "500 g 250 ml", "-5 g", "lots"})
    EXPECT_FALSE(size_in(wrong)) << wrong;
}

TEST(Prices, KeepGoodRowsAndTellTheOthersWithTheirLine) {
  const auto list = tests::prices(
      "plain flour,North,bag,1.5 kg,1.20,,,,\n"
      "plane flower,North,bag,1.5 kg,1.20,,,,\n"  // nobody sells these
      "red lentils,North,bag,,0.95,,,,\n"
      "caster sugar,North,bag,1 kg,1,25,,,,\n"  // a decimal comma without quotation marks
      "caster sugar,North,bag,5 kg,5,80,,no,300,100\n"
      "caster sugar,North,bag,1 kg,\"1,25\",,,,\n"
      "butter,North,block,0 g,1.79,,,,\n"
      "milk,North,bottle,2 l,soon,,,,\n"
      "eggs,North,tray,30 eggs,,,,,\n");
  ASSERT_EQ(list.packs.size(), 3U);
  EXPECT_EQ(list.packs[1].price, 125);
  EXPECT_FALSE(list.packs[2].price);  // not known is not nothing
  std::vector<std::string> codes;
  for (const auto& p : list.faults) {
    codes.push_back(p.code);
    EXPECT_FALSE(p.remedy.empty());
    EXPECT_THAT(p.where, testing::StartsWith("line "));
  }
  EXPECT_THAT(codes, testing::UnorderedElementsAre("table.row_long", "prices.food", "prices.size",
                                                   "prices.usable", "prices.size", "prices.price"));
}

TEST(Prices, AnUnknownFoodIsToldWithTheNearestNames) {
  const auto list = tests::prices("tined chickpeas,North,tin,400 g,0.49,,,,\n");
  ASSERT_EQ(list.faults.size(), 1U);
  EXPECT_THAT(list.faults[0].remedy, testing::HasSubstr("hickpeas"));
}

TEST(Prices, AreReadInTheEncodingsOfSchoolComputers) {
  // Windows-1252: 0xA3 is the pound sign, 0xE8 and 0xEE letters with accents.
  const auto old = read_prices(
      "food;size;price\ncr\xe8me fra\xee"
      "che;500 g;\xa3"
      "1,20\n",
      "p.csv", shipped_foods());
  ASSERT_TRUE(old);
  ASSERT_EQ(old.value().packs.size(), 1U) << old.value().faults[0].message;
  EXPECT_EQ(old.value().packs[0].price, 120);
}

TEST(Prices, WithoutItsColumnsAListIsRefused) {
  const auto none = read_prices("name,cost\nflour,1\n", "p.csv", shipped_foods());
  ASSERT_FALSE(none);
  EXPECT_EQ(none.problems().size(), 3U);
  EXPECT_EQ(none.problems()[0].code, "prices.column");
}

TEST(Prices, MoreCannotBeUsedThanThePackHolds) {
  EXPECT_EQ(tests::prices("tinned chickpeas,N,tin,400 g,0.49,500 g,,,\n").faults.at(0).code,
            "prices.usable");
}

TEST(Prices, WhereTheListIsSilentKeepingIsAssumedAndSaysSo) {
  const auto list = tests::prices("milk,N,bottle,2 l,1.35,,,,\nmilk,N,bottle,1 l,0.85,,,7,3\n");
  EXPECT_TRUE(keeping_of(list.packs[0], *shipped_foods().find(list.packs[0].food)).assumed);
  const Keeping said = keeping_of(list.packs[1], *shipped_foods().find(list.packs[1].food));
  EXPECT_EQ(said.closed, 7);
  EXPECT_FALSE(said.assumed);
}

TEST(Prices, OfTheDemoAreAllReadable) {
  const auto demo = read_prices(tests::text_of("demo/stores/prices.csv"), "prices.csv",
                                shipped_foods());
  ASSERT_TRUE(demo);
  for (const auto& p : demo.value().faults) ADD_FAILURE() << p.where << " " << p.message;
  EXPECT_GE(demo.value().packs.size(), 120U);
}

}  // namespace
