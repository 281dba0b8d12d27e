#include "kitchen/ratios/preparations.h"

#include <gmock/gmock.h>

#include "../../support/shipped_ratios.h"
#include "kitchen/ratios/functions.h"
#include "kitchen/ratios/rules.h"

namespace {

using namespace kitchen;
using testing::HasSubstr;

constexpr const char* kHead =
    "id,preparation,quantity,kind,numerator,numerator_in,denominator,denominator_in,per,when,value,"
    "unit,band_low,band_high,below_band,above_band,source,confidence,note\n";

TEST(Preparations, EveryRatioOfTheTableBelongsToAPreparationThatCanBeRecognised) {
  const Preparations& table = tests::shipped_ratios();
  EXPECT_EQ(table.ratios.size() + table.notes.size(), 119U);  // 118 rows and the sugar of DR058
  for (const RatioRow& row : table.ratios) {
    EXPECT_NE(rule_of(row.preparation), nullptr) << row.id;
    EXPECT_FALSE(row.source.empty()) << row.id;
    EXPECT_FALSE(row.confidence.empty()) << row.id;
    EXPECT_FALSE(row.below.empty() || row.above.empty()) << row.id;
  }
}

TEST(Preparations, ARatioSaysItsSidesInRolesAndMeasures) {
  const auto rows = tests::shipped_ratios().ratios_of("scones");
  ASSERT_FALSE(rows.empty());
  EXPECT_EQ(rows[0]->id, "DR037");
  EXPECT_EQ(rows[0]->per, Ratio(100));
  EXPECT_EQ(rows[0]->least, Ratio(16));
  EXPECT_EQ(rows[0]->numerator.words, "fat");
  EXPECT_EQ(tests::shipped_ratios().notes_of("scones").size(), 1U);  // the dough's thickness
}

TEST(Preparations, AllFaultsOfATableAreToldAtOnce) {
  const auto read = read_preparations(
      std::string(kHead) +
          "X1,scones,a,ratio,sawdust,g,flour,cup,100,,22,%,16,30,dry,wet,s,c,\n"
          "X2,scones,b,ratio,fat,g,flour,g,100,,50,%,16,30,dry,wet,s,c,\n"
          "X2,scones,b,rumour,fat,g,flour,g,100,,22,%,16,30,dry,wet,s,c,\n",
      "mine.csv");
  ASSERT_FALSE(read);
  std::vector<std::string> codes;
  for (const base::Problem& p : read.problems()) {
    codes.push_back(p.code);
    EXPECT_FALSE(p.remedy.empty());
  }
  EXPECT_THAT(codes, testing::UnorderedElementsAre("ratios.word", "ratios.word", "ratios.value",
                                                   "ratios.word"));
  EXPECT_THAT(read.problems()[0].message, HasSubstr("sawdust"));
}

TEST(Preparations, AColumnThatIsMissingIsNamed) {
  const auto read = read_preparations("id,preparation\nX1,scones\n", "mine.csv");
  ASSERT_FALSE(read);
  EXPECT_EQ(read.problems()[0].code, "ratios.column");
  EXPECT_THAT(read.problems()[0].message, HasSubstr("quantity"));
}

TEST(Preparations, WhatIsMadeAroundAnIngredientFailsOrSuffersWithoutIt) {
  for (const Rule& rule : rules()) {
    bool any = false;
    for (const Role role : rule.needs.front()) any = any || !functions_of(rule.key, role).empty();
    EXPECT_TRUE(any) << rule.key;
  }
}

}  // namespace
