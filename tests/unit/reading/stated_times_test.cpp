#include "kitchen/reading/stated_times.h"

#include <gtest/gtest.h>

namespace {

using namespace kitchen;

std::string time_of(const std::string& text) {
  const auto time = stated_time(line_tokens(tidied_line(text)));
  if (!time) return "none";
  const auto minutes = [](Seconds s) { return base::Ratio(s.count(), 60); };
  const std::string least = base::decimal_text(minutes(time->least));
  const std::string most = base::decimal_text(minutes(time->most));
  return least == most ? least : least + " to " + most;
}

std::string oven_of(const std::string& text) {
  const auto oven = stated_oven(line_tokens(tidied_line(text)));
  if (!oven) return "none";
  return std::to_string(oven->celsius) + (oven->kind == OvenKind::kFan ? " fan" : "");
}

TEST(StatedTimes, AreReadInTheUsualNotations) {
  EXPECT_EQ(time_of("Fry for 5 minutes"), "5");
  EXPECT_EQ(time_of("Fry for 5-7 mins until soft"), "5 to 7");
  EXPECT_EQ(time_of("simmer for 20 to 25 minutes"), "20 to 25");
  EXPECT_EQ(time_of("bake 1½ hours"), "90");
  EXPECT_EQ(time_of("bake for 1 hour 20 minutes"), "80");
  EXPECT_EQ(time_of("leave for an hour and a half"), "90");
  EXPECT_EQ(time_of("leave for half an hour"), "30");
  EXPECT_EQ(time_of("simmer for quarter of an hour"), "15");
  EXPECT_EQ(time_of("simmer for a quarter of an hour"), "15");
  EXPECT_EQ(time_of("bake for three quarters of an hour"), "45");
  EXPECT_EQ(time_of("bake for three-quarters of an hour"), "45");
  EXPECT_EQ(time_of("bake for an hour and a quarter"), "75");
  EXPECT_EQ(time_of("bake 1hr 20 until set"), "80");
  EXPECT_EQ(time_of("cut into quarters and fry for 5 minutes"), "5");
  EXPECT_EQ(time_of("cook for a further ten minutes"), "10");
  EXPECT_EQ(time_of("stir for 30 seconds"), "0.5");
  EXPECT_EQ(time_of("fry for a couple of minutes"), "2");
  EXPECT_EQ(time_of("soak overnight"), "720");
  EXPECT_EQ(time_of("for about twenty minutes"), "20");
  EXPECT_EQ(time_of("fry for 4 more minutes"), "4");
  EXPECT_EQ(time_of("add the peas for the last 3 minutes"), "3");
}

TEST(StatedTimes, BothSidesTakeTwiceAsLong) {
  EXPECT_EQ(time_of("Grill for 4 minutes on each side"), "8");
  EXPECT_EQ(time_of("fry 2-3 minutes per side"), "4 to 6");
}

TEST(StatedTimes, SeveralInOneStepAddUp) {
  EXPECT_EQ(time_of("cook for 5 minutes then 10 minutes more"), "15");
}

TEST(StatedTimes, WhatIsNotTheStepsOwnTimeDoesNotCount) {
  EXPECT_EQ(time_of("stirring every 5 minutes"), "none");
  EXPECT_EQ(time_of("boil for 12 minutes, with the peas for the last 3 minutes"), "12");
  EXPECT_EQ(time_of("turn after 10 minutes"), "none");
  EXPECT_EQ(time_of("take out 20 minutes before serving"), "none");
  EXPECT_EQ(time_of("add 2 onions"), "none");
}

TEST(StatedTimes, TheOvenIsReadInEveryScale) {
  EXPECT_EQ(oven_of("Heat the oven to 180°C/160°C fan/gas 4."), "180");
  EXPECT_EQ(oven_of("Preheat oven to 200C (180C fan)"), "200");
  EXPECT_EQ(oven_of("Set the oven to 190 degrees"), "190");
  EXPECT_EQ(oven_of("oven at fan 160"), "none");  // no scale, no degree: not guessed at
  EXPECT_EQ(oven_of("oven to 160°C fan"), "160 fan");
  EXPECT_EQ(oven_of("simmer for 20 minutes at gas mark 6"), "200");
  EXPECT_EQ(oven_of("Preheat the oven to 350°F"), "180");
  EXPECT_EQ(oven_of("425 F"), "220");
  EXPECT_EQ(oven_of("bake in a hot oven"), "220");
  EXPECT_EQ(oven_of("use 200 g flour"), "none");
}

TEST(StatedTimes, GasMarksAreTheUsualBritishTable) {
  // d_conversions of the reference tables, rows of gas marks (memory; seen tables differ by 10 °C
  // at 1/2 and 3): 1 140, 2 150, 3 170, 4 180, 5 190, 6 200, 7 220, 8 230, 9 240 °C.
  const char* marks[] = {"140", "150", "170", "180", "190", "200", "220", "230", "240"};
  for (int m = 1; m <= 9; ++m) EXPECT_EQ(oven_of("gas mark " + std::to_string(m)), marks[m - 1]);
}

}  // namespace
