// Outside source: Department of Health, Nutrient Profiling Technical Guidance (January 2011): its
// tables, its worked example 4, and scores of rows of USDA SR26 (group F).
#include "nutrition/profile.h"

#include <gtest/gtest.h>

#include "../../support/nutrition_tables.h"
#include "base/text.h"
#include "check_values.h"
#include "nutrition/per_food.h"

namespace {

using namespace nutrition;
using namespace tests;

// The points one thing gets at a value.
int points_of(const std::string& name, double value) {
  ProfileInput in;
  if (name == "energy") in.energy_kj = value;
  if (name == "saturated fat") in.saturates = value;
  if (name == "total sugars") in.sugars = value;
  if (name == "sodium") in.sodium_mg = value;
  if (name == "AOAC fibre" || name == "NSP fibre") in.fibre = value;
  in.nsp_fibre = name == "NSP fibre";
  if (name == "protein") in.protein = value;
  if (name == "fruit, vegetables and nuts") in.fruit_veg_nuts_percent = value;
  const Profile p = profile(in);
  return p.a_points() + p.fruit_veg_nuts + p.fibre + p.protein;
}

TEST(Profile, EveryPointIsGivenJustAboveItsLimit) {
  int compared = 0;
  for (const char* group : {"F NPM A", "F NPM C"}) {
    for (const CheckValue& row : check_values(group)) {
      const std::string name = row.quantity.substr(0, row.quantity.find(": "));
      const int points = std::stoi(between(row.quantity, ": ", " point"));
      EXPECT_EQ(points_of(name, row.number() + 0.001), points) << row.id << ' ' << row.quantity;
      EXPECT_LT(points_of(name, row.number()), points) << row.id << ' ' << row.quantity;
      ++compared;
    }
  }
  EXPECT_EQ(compared, 58);
}

TEST(Profile, TheRulesOfTheModelAreKept) {
  const auto rules = check_values("F NPM rule");
  ASSERT_EQ(rules.size(), 3U);
  // Energy 8 points and sodium 3: 11; energy 7 and sodium 3: 10.
  ProfileInput eleven{.energy_kj = 2700, .sodium_mg = 300, .protein = 9}, ten = eleven;
  ten.energy_kj = 2500;
  ASSERT_EQ(profile(eleven).a_points(), static_cast<int>(rules[0].number()));
  EXPECT_FALSE(profile(eleven).protein_counts);
  EXPECT_TRUE(profile(ten).protein_counts);
  eleven.fruit_veg_nuts_percent = 81;
  EXPECT_TRUE(profile(eleven).protein_counts);
  for (const bool drink : {false, true}) {
    const int limit = static_cast<int>(rules[drink ? 2 : 1].number());
    ProfileInput in{.sodium_mg = 90.0 * limit + 1, .drink = drink};
    EXPECT_TRUE(profile(in).less_healthy());
    in.sodium_mg = 90.0 * limit;
    EXPECT_FALSE(profile(in).less_healthy());
  }
}

ProfileInput input_of_row(const std::string& basis) {
  const auto number = [&](const std::string& from, const std::string& to) {
    return *base::number_in(between(basis, from, to));
  };
  return {.energy_kj = number("energy ", " kJ"),
          .saturates = number("sat ", " g"),
          .sugars = number("sugars ", " g"),
          .sodium_mg = number("sodium ", " mg"),
          .fruit_veg_nuts_percent = number("FVN ", " %"),
          .fibre = number("AOAC fibre ", " g"),
          .protein = number("protein ", " g")};
}

TEST(Profile, EveryWorkedScoreIsReached) {
  const std::string table = text_of("tests/data/nutrition/check_values.csv");
  int compared = 0;
  for (const CheckValue& row : check_values("F NPM worked")) {
    const std::string line = between(table, row.id + ",", "\n");
    ProfileInput in = input_of_row(line);
    in.drink = row.quantity.find("(drink)") != std::string::npos;
    const bool a_points = row.quantity.find("A points") != std::string::npos;
    EXPECT_EQ(a_points ? profile(in).a_points() : profile(in).score(),
              static_cast<int>(row.number()))
        << row.id << ' ' << row.quantity;
    ++compared;
  }
  EXPECT_EQ(compared, 11);
}

TEST(Profile, AWholeDishOfCheddarScoresAsTheRowOfTheTable) {
  const DishProfile scored = profile_of(calculated(stirred({ingredient("cheddar", 250)})));
  ASSERT_TRUE(scored.profile);
  EXPECT_EQ(scored.profile->score(), 20);
  EXPECT_TRUE(scored.sure);
  EXPECT_TRUE(scored.profile->less_healthy());
}

}  // namespace
