#include "larder/week.h"

#include <gmock/gmock.h>

#include <set>

#include <nlohmann/json.hpp>

#include "larder/needs.h"
#include "larder/week_fields.h"
#include "made.h"

namespace {

using namespace larder;
using kitchen::Ratio;
using nlohmann::json;
using tests::line;
using tests::shipped_foods;

TEST(Week, OfTheDemoIsReadWithItsLessons) {
  const auto week = read_week(tests::text_of("demo/weeks/week-47.json"), "demo/weeks/week-47.json",
                              tests::load);
  ASSERT_TRUE(week) << week.problems()[0].message;
  EXPECT_EQ(week.value().lessons.size(), 6U);
  EXPECT_EQ(week.value().lessons[0].pupils, 24);
  // 23 cooks make plain scones, the commonest dish, and one set more is for the demonstration.
  EXPECT_EQ(week.value().lessons[0].dishes[1].sets, Ratio(24));
  EXPECT_EQ(day_text(week.value().lessons[0].date), "Tue 17 Nov");
  EXPECT_EQ(week.value().suppliers[0].minimum, 4000);
}

TEST(Week, TellsAllItsFaultsAtOnce) {
  const auto week = read_week(
      R"({"kind":"week","version":1,"suppliers":[{"name":"N","delivery":"lots"}],
          "lessons":[{"title":"a","date":"2026-02-30","dishes":[{"dish":"soup"}]},{"lesso":"x"}]})",
      "w.json", tests::load);
  ASSERT_FALSE(week);
  std::set<std::string> codes;
  for (const auto& p : week.problems()) codes.insert(p.code);
  EXPECT_THAT(codes, testing::IsSupersetOf({"week.money", "week.date", "week.dish"}));
  EXPECT_GE(week.problems().size(), 4U);
}

TEST(Week, SchemaKnowsExactlyTheFieldsTheReaderAccepts) {
  const json schema = json::parse(tests::text_of("schemas/week.schema.json"));
  const auto same = [&](const char* pointer, auto& fields) {
    std::set<std::string> in_schema, read(std::begin(fields), std::end(fields));
    for (const auto& [key, value] :
         schema.at(json::json_pointer(std::string(pointer) + "/properties")).items())
      in_schema.insert(key);
    EXPECT_EQ(in_schema, read) << pointer;
  };
  same("", kWeekFields);
  same("/$defs/lesson", kWeekLessonFields);
  same("/$defs/dish", kDishUseFields);
  same("/$defs/supplier", kSupplierFields);
  same("/$defs/van", kVanFields);
  same("/$defs/budget", kBudgetFields);
}

TEST(Needs, AreSummedAcrossClassesWithWhereTheyComeFrom) {
  Week week;
  week.lessons = {tests::lesson("9K", "2026-11-17", 13, {line("red lentils", 120, "g")}),
                  tests::lesson("8B", "2026-11-19", 12, {line("red lentils", 100, "g")})};
  const Needs needs = needs_of(week, shipped_foods());
  ASSERT_EQ(needs.foods.size(), 1U);
  // 13 x 120 g and 12 x 100 g are 2760 g.
  EXPECT_EQ(needs.foods[0].total(), Ratio(2760));
  EXPECT_EQ(needs.foods[0].parts[1].lesson, 1);
}

TEST(Needs, WaterToTasteAndWhatFamiliesBringAreNotOrdered) {
  Week week;
  week.lessons = {tests::lesson(
      "9K", "2026-11-17", 10,
      {line("water", 500, "ml"), line("salt", 0, ""), line("plain flour", 100, "g")})};
  week.lessons[0].dishes[0].from_home = {2};
  EXPECT_TRUE(needs_of(week, shipped_foods()).foods.empty());
  week.lessons[0].dishes[0].school_sets = Ratio(3);
  EXPECT_EQ(needs_of(week, shipped_foods()).foods.at(0).total(), Ratio(300));
}

TEST(Needs, WhatIsNotSettledIsToldAndNeverZero) {
  Week week;
  week.lessons = {tests::lesson("9K", "2026-11-17", 10, {line("moon dust", 5, "g")}),
                  tests::lesson("8B", "2026-11-18", 10, {})};
  week.lessons[1].dishes.clear();
  week.lessons[1].unanswered = 2;
  std::vector<std::string> codes;
  for (const auto& p : needs_of(week, shipped_foods()).unsettled) codes.push_back(p.code);
  EXPECT_THAT(codes, testing::UnorderedElementsAre("needs.unknown_food", "needs.no_dish",
                                                   "needs.unanswered"));
}

TEST(Amounts, AreRoundedUpSoThatNobodyIsShort) {
  const Measure grams{MeasureKind::kGrams, ""}, sheets{MeasureKind::kPieces, "sheet"};
  EXPECT_EQ(amount_text(Ratio(1, 3), grams), "0.4 g");
  EXPECT_EQ(amount_text(Ratio(1001, 2), grams), "501 g");
  EXPECT_EQ(amount_text(Ratio(2760), grams), "2.76 kg");
  EXPECT_EQ(amount_text(Ratio(6), sheets), "6 sheets");
}

}  // namespace
