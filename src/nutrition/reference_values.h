// The reference values of Regulation (EU) No 1169/2011 as kept in UK law: what labels compare with.
//
// Calcium 120 mg is 15 % of the nutrient reference value of 800 mg: a significant amount.
// Source: Annex XIII, Part A point 1 and Part B; from memory, matching a full list of the
// regulation.
#pragma once

#include <array>
#include <optional>
#include <string_view>

#include "nutrition/what.h"

namespace nutrition {

/// A daily nutrient reference value of an adult.
struct ReferenceValue {
  std::string_view name;
  double value;
  std::string_view unit;
  std::optional<Nutrient> nutrient;  ///< none = the table of foods does not hold it
  int figures;  ///< significant figures on a label (guidance of December 2012, from memory)
};

inline constexpr std::array<ReferenceValue, 27> kReferenceValues = {{
    {"vitamin A", 800, "µg", Nutrient::kVitaminA, 3},
    {"vitamin D", 5, "µg", Nutrient::kVitaminD, 2},
    {"vitamin E", 12, "mg", Nutrient::kVitaminE, 2},
    {"vitamin K", 75, "µg", std::nullopt, 2},
    {"vitamin C", 80, "mg", Nutrient::kVitaminC, 2},
    {"thiamin", 1.1, "mg", Nutrient::kThiamin, 2},
    {"riboflavin", 1.4, "mg", Nutrient::kRiboflavin, 2},
    {"niacin", 16, "mg", Nutrient::kNiacin, 2},
    {"vitamin B6", 1.4, "mg", Nutrient::kVitaminB6, 2},
    {"folic acid", 200, "µg", Nutrient::kFolate, 3},
    {"vitamin B12", 2.5, "µg", Nutrient::kVitaminB12, 2},
    {"biotin", 50, "µg", std::nullopt, 2},
    {"pantothenic acid", 6, "mg", std::nullopt, 2},
    {"potassium", 2000, "mg", Nutrient::kPotassium, 3},
    {"chloride", 800, "mg", std::nullopt, 3},
    {"calcium", 800, "mg", Nutrient::kCalcium, 3},
    {"phosphorus", 700, "mg", Nutrient::kPhosphorus, 3},
    {"magnesium", 375, "mg", Nutrient::kMagnesium, 3},
    {"iron", 14, "mg", Nutrient::kIron, 2},
    {"zinc", 10, "mg", Nutrient::kZinc, 2},
    {"copper", 1, "mg", Nutrient::kCopper, 2},
    {"manganese", 2, "mg", std::nullopt, 2},
    {"fluoride", 3.5, "mg", std::nullopt, 2},
    {"selenium", 55, "µg", Nutrient::kSelenium, 2},
    {"chromium", 40, "µg", std::nullopt, 2},
    {"molybdenum", 50, "µg", std::nullopt, 2},
    {"iodine", 150, "µg", std::nullopt, 3},
}};

/// Share of the reference value in 100 g or 100 ml that counts as significant. Annex XIII Part A
/// point 2.
inline constexpr double kSignificantFood = 0.15;
inline constexpr double kSignificantDrink = 0.075;

/// Reference intakes of an average adult, a day. Annex XIII Part B.
struct ReferenceIntakes {
  double energy_kj = 8400, energy_kcal = 2000, fat = 70, saturates = 20, carbohydrate = 260,
         sugars = 90, protein = 50, salt = 6;
};
inline constexpr ReferenceIntakes kReferenceIntakes{};

}  // namespace nutrition
