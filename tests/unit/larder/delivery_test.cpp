#include "larder/delivery.h"

#include <gmock/gmock.h>

#include "larder/bring_list.h"
#include "made.h"

namespace {

using namespace larder;
using kitchen::Allergen;
using kitchen::Ratio;
using tests::line;
using tests::Made;

Made ordered() {
  Made made;
  made.week.suppliers = {
      {"North", 0, 0, false, {{tests::day("2026-11-13"), tests::day("2026-11-16")}}}};
  made.week.lessons = {tests::lesson("9K", "2026-11-17", 10, {line("red lentils", 120, "g")}),
                       tests::lesson("8B", "2026-11-19", 10, {line("red lentils", 90, "g")})};
  made.prices = tests::prices("red lentils,North,bag,500 g,0.95,,,300,100\n");
  made.plan();
  return made;
}

Ticked tick(int came) {
  Ticked out;
  out.came = came;
  return out;
}

TEST(Delivery, WhatCameIsPutAwayWithItsUseByDate) {
  const Made made = ordered();
  Ticked all = tick(5);
  all.use_by = tests::day("2027-02-01");
  const auto out = take_in(made.in(), made.order, {all}, {}, tests::day("2026-11-16"));
  ASSERT_EQ(out.lots.size(), 1U);
  EXPECT_EQ(out.lots[0].use_by, tests::day("2027-02-01"));
  EXPECT_EQ(out.lots[0].amount, kitchen::Quantity::of(2500, kitchen::Unit::kGram));
  EXPECT_TRUE(out.missing.empty() && out.rechecks.empty() && out.not_ticked.empty());
}

TEST(Delivery, AShortLineNamesTheLessonsItHits) {
  const Made made = ordered();
  const auto out = take_in(made.in(), made.order, {tick(3)}, {}, tests::day("2026-11-16"));
  ASSERT_EQ(out.missing.size(), 1U);
  // 1 kg is missing, 400 g would have been left: Thursday is 600 g short.
  ASSERT_EQ(out.missing[0].hits.size(), 1U);
  EXPECT_EQ(out.missing[0].hits[0].lesson, 1);
  EXPECT_EQ(out.missing[0].hits[0].amount, Ratio(600));
}

TEST(Delivery, ASwapReopensTheAllergenCheckOfEveryLessonWithTheFood) {
  const Made made = ordered();
  Ticked swap = tick(5);
  swap.swapped = swap.label_read = true;
  swap.product = "lentils packed beside wheat";
  swap.contains = {Allergen::kGluten};
  const std::vector<Avoids> avoids = {{1, "Cara", {Allergen::kGluten}},
                                      {0, "Dev", {Allergen::kMilk}}};
  const auto out = take_in(made.in(), made.order, {swap}, avoids, tests::day("2026-11-16"));
  ASSERT_EQ(out.rechecks.size(), 2U);
  EXPECT_TRUE(out.rechecks[0].cooks.empty());
  EXPECT_EQ(out.rechecks[1].cooks, std::vector<std::string>{"Cara"});
}

TEST(Delivery, AnUnreadLabelCountsAsAllFourteen) {
  const Made made = ordered();
  Ticked swap = tick(5);
  swap.swapped = true;
  const auto out = take_in(made.in(), made.order, {swap}, {{0, "Dev", {Allergen::kMilk}}},
                           tests::day("2026-11-16"));
  EXPECT_EQ(out.rechecks.at(0).more.size(), 14U);
  EXPECT_EQ(out.rechecks[0].cooks, std::vector<std::string>{"Dev"});
}

TEST(Delivery, FoodPastItsDateIsNotPutAway) {
  const Made made = ordered();
  Ticked old = tick(5);
  old.use_by = tests::day("2026-11-01");
  const auto out = take_in(made.in(), made.order, {old, old}, {}, tests::day("2026-11-16"));
  EXPECT_TRUE(out.lots.empty());
  EXPECT_EQ(out.faults.at(0).code, "delivery.use_by");
  EXPECT_EQ(out.faults.at(1).code, "delivery.twice");
}

TEST(BringList, AsksForShopPacksInPlainWords) {
  WeekLesson at = tests::lesson(
      "7B", "2026-11-20", 12,
      {line("tinned chopped tomatoes", 400, "g"), line("carrot", 1, "carrot")});
  at.dishes[0].from_home = {0, 1};
  const auto list = tests::prices(
      "tinned chopped tomatoes,S,tin,400 g,0.55,,,,\ntinned chopped tomatoes,S,case,6 x 400 "
      "g,2.30,,,,\n"
      "carrot,S,,each,0.12,,yes,,\n");
  const BringList bring = bring_list(at.dishes[0], list, tests::shipped_foods());
  EXPECT_EQ(bring.lines.at(0).text, "1 tin of tinned chopped tomatoes (400 g)");
  EXPECT_EQ(bring.lines.at(0).pence, 55);
  EXPECT_EQ(bring.lines.at(1).text, "1 carrot");
}

TEST(BringList, IsTheSameWhoeverTheSchoolSupplies) {
  WeekLesson at = tests::lesson("7B", "2026-11-20", 12, {line("carrot", 1, "carrot")});
  at.dishes[0].from_home = {0};
  const BringList before = bring_list(at.dishes[0], {}, tests::shipped_foods());
  at.dishes[0].school_sets = Ratio(5);
  EXPECT_EQ(bring_text(bring_list(at.dishes[0], {}, tests::shipped_foods()), at.date),
            bring_text(before, at.date));
}

}  // namespace
