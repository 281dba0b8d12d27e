#include "kitchen/reading/footprint.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace {

using namespace kitchen;

TEST(Footprint, ALineIsAWholeDish) {
  const auto read = read_footprint(
      "chop 10 min, one ring 20 min, mixer 5 min, oven 180 °C 25 min, fridge 1 h", "Own pie", 2);
  ASSERT_TRUE(read) << read.problems().front().message;
  const Dish& dish = read.value();
  EXPECT_EQ(dish.name, "Own pie");
  std::vector<Step> steps;
  std::copy_if(dish.method.begin(), dish.method.end(), std::back_inserter(steps),
               [](const Step& s) { return !s.added; });
  ASSERT_EQ(steps.size(), 5U);
  EXPECT_EQ(steps[0].attention, Attention::kHands);
  EXPECT_EQ(steps[1].heat->with, HeatKind::kRing);
  EXPECT_EQ(steps[1].least, base::minutes(20));
  EXPECT_EQ(steps[2].kit, (std::vector<KitNeed>{{"mixer", 1}}));
  EXPECT_EQ(steps[3].heat->setting.celsius, 180);
  EXPECT_EQ(steps[4].least, base::minutes(60));
  EXPECT_EQ(steps[4].fridge_tenths, 2);
}

TEST(Footprint, OvensAreSetInAnyScale) {
  const auto celsius = [](const char* text) {
    const auto read = read_footprint(text, "x", 1);
    if (!read) return read.problems().front().message;
    return std::to_string(read.value().method[0].heat->setting.celsius);
  };
  EXPECT_EQ(celsius("oven 180 25 min"), "180");
  EXPECT_EQ(celsius("25 min oven 200C"), "200");
  EXPECT_EQ(celsius("oven gas mark 6 for 25 min"), "200");
  EXPECT_EQ(celsius("oven 350F 25 min"), "180");
  EXPECT_EQ(celsius("oven fan 160 °C 25-30 minutes"), "160");
}

TEST(Footprint, EveryPartThatIsNotUnderstoodIsTold) {
  const auto read = read_footprint("oven 25 min, ring, 20 min, oven 180 20 min", "x", 1);
  ASSERT_FALSE(read);
  std::vector<std::string> codes;
  for (const auto& problem : read.problems()) {
    codes.push_back(problem.code);
    EXPECT_NE(problem.remedy.find("oven 180 C 25 min"), std::string::npos);
  }
  EXPECT_EQ(codes,
            (std::vector<std::string>{"footprint.celsius", "footprint.minutes", "footprint.part"}));
  EXPECT_FALSE(read_footprint("", "x", 1));
  EXPECT_FALSE(read_footprint(" , ;", "x", 1));
  EXPECT_FALSE(read_footprint("oven 900 C 20 min", "x", 1));
}

}  // namespace
