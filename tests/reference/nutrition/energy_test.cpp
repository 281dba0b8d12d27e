// Outside sources: Regulation (EU) No 1169/2011, Annexes I, XIII, XIV; arithmetic on rows of USDA
// SR26 (groups B to D).
#include <gtest/gtest.h>

#include <map>

#include "../../support/nutrition_tables.h"
#include "check_values.h"
#include "nutrition/label.h"

namespace {

using namespace nutrition;
using namespace tests;

TEST(Energy, TheFactorsAreThoseOfTheRegulation) {
  const std::map<std::string, EnergyGrams> kOneGram = {
      {"carbohydrate (except polyols)", {.carbohydrate = 1}},
      {"polyols", {.polyols = 1}},
      {"protein", {.protein = 1}},
      {"fat", {.fat = 1}},
      {"alcohol (ethanol)", {.alcohol = 1}},
      {"organic acid", {.organic_acids = 1}},
      {"fibre", {.fibre = 1}}};
  int compared = 0;
  for (const CheckValue& row : check_values("B Annex XIV")) {
    const auto one = kOneGram.find(row.quantity.substr(std::string("energy factor: ").size()));
    if (one == kOneGram.end()) continue;  // salatrims and erythritol are in no kitchen of ours
    EXPECT_DOUBLE_EQ(row.unit == "kJ/g" ? kilojoules(one->second) : kilocalories(one->second),
                     row.number())
        << row.id;
    ++compared;
  }
  EXPECT_EQ(compared, 14);
}

TEST(Energy, OfAHundredGramsIsWorkedOutFromTheGrams) {
  int compared = 0;
  for (const CheckValue& row : check_values("B energy recomputed")) {
    if (row.code.empty()) continue;
    const kitchen::Food& food = food_of_code(row.code);
    const DishNutrients dish = calculated(stirred({ingredient(food.key, 100)}));
    // The rows take the table's protein, not N x 6.25.
    double value = 0;
    if (row.unit == "g")
      value = dish.whole(Held::kCarbohydrate).amount;
    else if (row.unit == "kJ")
      value = kilojoules(dish, Protein::kTable).amount;
    else
      value = kilocalories(dish, Protein::kTable).amount;
    EXPECT_NEAR(value, row.number(), 0.0051) << row.id << ' ' << row.quantity;
    ++compared;
  }
  EXPECT_EQ(compared, 54);
}

TEST(Energy, OfAShortcrustIsTheSumOfItsParts) {
  // N130, N131: 200 g flour, 100 g unsalted butter, 50 g water hold 5986.2 kJ, 1710.3 kJ in 100 g.
  const DishNutrients dish = calculated(
      stirred({ingredient("plain_flour", 200), ingredient("butter_unsalted", 100),
               ingredient("water", 50)}));
  EXPECT_NEAR(kilojoules(dish, Protein::kTable).amount, 5986.2, 0.1);
  EXPECT_NEAR(label_of(dish, false, Protein::kTable).lines[0].per_100_g.amount, 1710.3, 0.1);
  EXPECT_DOUBLE_EQ(dish.served_grams, 350);
}

TEST(Energy, ProteinOnALabelIsNitrogenTimesSixAndAQuarter) {
  const auto rows = check_values("B protein");
  EXPECT_EQ(rows.size(), 9U);
  for (const CheckValue& row : rows)
    EXPECT_NEAR(*per_100_g(food_of_code(row.code), Held::kLabelProtein), row.number(), 0.0051)
        << row.quantity;
}

TEST(Energy, SaltIsSodiumTimesTwoAndAHalf) {
  const auto rows = check_values("C salt");
  EXPECT_EQ(rows.size(), 5U);
  for (const CheckValue& row : rows)
    EXPECT_NEAR(salt_of_sodium(*food_of_code(row.code).nutrients[kitchen::Nutrient::kSodium]),
                row.number(), 1e-4)
        << row.quantity;
}

TEST(Energy, ReferenceValuesAreThoseOfAnnexThirteen) {
  int compared = 0;
  for (const CheckValue& row : check_values("D NRV")) {
    if (row.quantity.starts_with("significant")) {
      const double share = row.quantity.find("food other") != std::string::npos ? kSignificantFood
                                                                                : kSignificantDrink;
      EXPECT_DOUBLE_EQ(share * 100, row.number()) << row.id;
      ++compared;
      continue;
    }
    const std::string name = row.quantity.substr(
        std::string("adult nutrient reference value: ").size());
    for (const ReferenceValue& value : kReferenceValues) {
      if (value.name != name) continue;
      EXPECT_DOUBLE_EQ(value.value, row.number()) << row.id;
      EXPECT_EQ(value.unit, row.unit == "microgram" ? "µg" : row.unit) << row.id;
      ++compared;
    }
  }
  EXPECT_EQ(compared, 29);
}

TEST(Energy, ReferenceIntakesAreThoseOfAnnexThirteen) {
  const ReferenceIntakes day;
  const std::map<std::string, double> kDay = {
      {"total fat", day.fat},   {"saturates", day.saturates},
      {"sugars", day.sugars},   {"carbohydrate", day.carbohydrate},
      {"protein", day.protein}, {"salt", day.salt}};
  const auto rows = check_values("D reference intakes");
  EXPECT_EQ(rows.size(), 8U);
  for (const CheckValue& row : rows) {
    const std::string name = row.quantity.substr(std::string("adult reference intake: ").size());
    const double value = name != "energy"                           ? kDay.at(name)
                         : row.unit.find("kJ") != std::string::npos ? day.energy_kj
                                                                    : day.energy_kcal;
    EXPECT_DOUBLE_EQ(value, row.number()) << row.id;
  }
}

}  // namespace
