// Outside source: USDA National Nutrient Database for Standard Reference, Release 26 (2013),
// abbreviated file; its rows for 72 foods stand in tests/data/nutrition/sr26_rows.csv as the file
// has them.
#include <gtest/gtest.h>

#include <cmath>
#include <map>

#include "../../support/nutrition_tables.h"
#include "base/csv.h"
#include "base/text.h"
#include "check_values.h"
#include "nutrition/per_food.h"

namespace {

using kitchen::Food;
using kitchen::Nutrient;
using namespace tests;

const std::map<std::string, Nutrient> kNamesOfGroupA = {
    {"energy", Nutrient::kEnergyKcal},
    {"protein", Nutrient::kProtein},
    {"fat", Nutrient::kFat},
    {"saturates", Nutrient::kSaturates},
    {"carbohydrate_by_difference", Nutrient::kCarbohydrateTotal},
    {"sugars_total", Nutrient::kSugars},
    {"fibre_total_dietary", Nutrient::kFibre},
    {"sodium", Nutrient::kSodium},
    {"water", Nutrient::kWater},
    {"calcium", Nutrient::kCalcium},
    {"iron", Nutrient::kIron},
    {"potassium", Nutrient::kPotassium},
    {"vitamin_c", Nutrient::kVitaminC},
    {"vitamin_d", Nutrient::kVitaminD},
    {"vitamin_e_alpha_tocopherol", Nutrient::kVitaminE},
};

TEST(Composition, EveryCheckedFigureOfTheTableIsTheFoods) {
  int compared = 0, not_held = 0;
  for (const CheckValue& row : check_values("A SR values")) {
    const Food& food = food_of_code(row.code);
    const auto colon = row.quantity.rfind(": ");
    std::string what = row.quantity.substr(colon + 2);
    what = what.substr(0, what.find(' '));
    if (what == "refuse") {
      ASSERT_TRUE(food.edible) << row.id;
      EXPECT_NEAR(*food.edible * 100, 100 - row.number(), 1e-9) << row.id;
    } else if (!kNamesOfGroupA.contains(what)) {
      ++not_held;  // cholesterol, monounsaturates and RAE are not in our table
      continue;
    } else if (row.value == "missing") {
      EXPECT_FALSE(food.nutrients[kNamesOfGroupA.at(what)]) << row.id << ' ' << row.quantity;
    } else {
      ASSERT_TRUE(food.nutrients[kNamesOfGroupA.at(what)]) << row.id << ' ' << row.quantity;
      EXPECT_DOUBLE_EQ(*food.nutrients[kNamesOfGroupA.at(what)], row.number())
          << row.id << ' ' << row.quantity;
    }
    ++compared;
  }
  EXPECT_EQ(compared, 54);
  EXPECT_EQ(not_held, 3);
}

const std::vector<std::pair<Nutrient, std::string>> kColumns = {
    {Nutrient::kEnergyKcal, "energy_kcal"},
    {Nutrient::kProtein, "protein_g"},
    {Nutrient::kFat, "fat_g"},
    {Nutrient::kSaturates, "saturates_g"},
    {Nutrient::kSugars, "sugars_total_g"},
    {Nutrient::kCarbohydrateTotal, "carbohydrate_by_difference_g"},
    {Nutrient::kSodium, "sodium_mg"},
    {Nutrient::kFibre, "fibre_total_dietary_g"},
    {Nutrient::kWater, "water_g"},
    {Nutrient::kCalcium, "calcium_mg"},
    {Nutrient::kIron, "iron_mg"},
    {Nutrient::kMagnesium, "magnesium_mg"},
    {Nutrient::kPhosphorus, "phosphorus_mg"},
    {Nutrient::kPotassium, "potassium_mg"},
    {Nutrient::kZinc, "zinc_mg"},
    {Nutrient::kCopper, "copper_mg"},
    {Nutrient::kSelenium, "selenium_ug"},
    {Nutrient::kThiamin, "thiamin_mg"},
    {Nutrient::kRiboflavin, "riboflavin_mg"},
    {Nutrient::kNiacin, "niacin_mg"},
    {Nutrient::kVitaminB6, "vitamin_b6_mg"},
    {Nutrient::kFolate, "folate_total_ug"},
    {Nutrient::kVitaminB12, "vitamin_b12_ug"},
    {Nutrient::kVitaminC, "vitamin_c_mg"},
    {Nutrient::kVitaminD, "vitamin_d_ug"},
    {Nutrient::kVitaminE, "vitamin_e_alpha_tocopherol_mg"},
};

TEST(Composition, SeventyTwoFoodsHoldWhatTheRawTableSaysBlanksIncluded) {
  const auto table = base::read_csv(text_of("tests/data/nutrition/sr26_rows.csv"), "sr26_rows.csv");
  ASSERT_TRUE(table);
  int foods = 0, figures = 0, blanks = 0;
  for (const auto& row : table.value().rows) {
    const auto cell = [&](const std::string& column) {
      return base::number_in(row.cells[*table.value().column(column)]);
    };
    const Food* food = shipped_foods().find(row.cells[0]);
    ASSERT_NE(food, nullptr) << row.cells[0];
    for (const auto& [nutrient, column] : kColumns) {
      const auto raw = cell(column);
      // Our table writes the 0 that a blank can only be: no sugars or fibre without carbohydrate.
      const bool of_carbohydrate = nutrient == Nutrient::kSugars || nutrient == Nutrient::kFibre;
      const bool can_only_be_none = !raw && of_carbohydrate &&
                                    cell("carbohydrate_by_difference_g") == std::optional(0.0);
      EXPECT_EQ(food->nutrients[nutrient], can_only_be_none ? std::optional(0.0) : raw)
          << food->key << ' ' << column;
      ++(raw ? figures : blanks);
    }
    // Retinol equivalents as the United Kingdom counts them: retinol + beta-carotene / 6 + the
    // others / 12.
    const auto retinol = cell("retinol_ug"), beta = cell("beta_carotene_ug");
    if (retinol && beta && food->nutrients[Nutrient::kVitaminA]) {
      const double equivalents = *retinol + *beta / 6 +
                                 (cell("alpha_carotene_ug").value_or(0) +
                                  cell("beta_cryptoxanthin_ug").value_or(0)) /
                                     12;
      EXPECT_NEAR(*food->nutrients[Nutrient::kVitaminA], equivalents, 0.51) << food->key;
    }
    ++foods;
  }
  EXPECT_EQ(foods, 72);
  EXPECT_GT(figures, 1500);
  EXPECT_GT(blanks, 10);
}

TEST(Composition, VitaminAIsCountedAsRetinolEquivalents) {
  for (const CheckValue& row : check_values("B vitamin A")) {
    const auto vitamin_a = food_of_code(row.code).nutrients[Nutrient::kVitaminA];
    ASSERT_TRUE(vitamin_a) << row.id;
    EXPECT_NEAR(*vitamin_a, row.number(), 0.51) << row.quantity;  // the table rounds to 1 µg
  }
}

}  // namespace
