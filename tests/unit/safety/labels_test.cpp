#include "safety/labels.h"

#include <gtest/gtest.h>

#include "sample.h"

namespace {

using namespace safety;

TEST(Labels, ATableOfReadingsIsReadWhole) {
  const auto read = read_labels(
      "food,pack,read_on,contains,may_contain,in_use\n"
      "curry_paste,the red jar,2026-11-02,fish,crustaceans molluscs,\n"
      "gf_plain_flour,old bag,2026-09-01,,,no\n",
      "labels.csv", tests::shipped_foods());
  ASSERT_TRUE(read);
  ASSERT_EQ(read.value().size(), 2U);
  EXPECT_EQ(read.value()[0].contains, kitchen::Allergens{kitchen::Allergen::kFish});
  EXPECT_EQ(readings(read.value(), "curry_paste").size(), 1U);
  EXPECT_TRUE(readings(read.value(), "gf_plain_flour").empty());
}

TEST(Labels, AReadingWithoutPacketDateOrKnownFoodIsRefused) {
  const auto read = read_labels(
      "food,pack,read_on,contains,may_contain\n"
      "curry_past,jar,2026-11-02,fishes,\n"
      "salt,,,,\n",
      "labels.csv", tests::shipped_foods());
  ASSERT_FALSE(read);
  std::vector<std::string> told;
  for (const auto& p : read.problems()) told.push_back(p.code + " " + p.where);
  EXPECT_EQ(told, (std::vector<std::string>{
                      "labels.food line 2, food", "labels.value line 2, contains",
                      "labels.value line 3, pack", "labels.value line 3, read_on"}));
  EXPECT_NE(read.problems()[0].remedy.find("curry_paste"), std::string::npos);
}

TEST(Labels, AListThatSaysNothingOfContentsIsNotTakenAsEmpty) {
  const auto read = read_labels("food,pack,read_on\nsalt,drum,today\n", "l.csv",
                                tests::shipped_foods());
  ASSERT_FALSE(read);
  EXPECT_EQ(read.problems().size(), 2U);
  EXPECT_EQ(read.problems()[0].code, "labels.column");
}

}  // namespace
