// What is counted in a food, for 100 g of what is eaten. Unknown is kept apart from none.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string_view>

namespace kitchen {

/// Energy (kcal) here is the table's own figure, for comparison only: labels compute theirs from
/// the grams (nutrition/label.h).
enum class Nutrient : std::int8_t {
  kEnergyKcal,
  kProtein,
  kFat,
  kSaturates,
  kCarbohydrateTotal,  ///< by difference, fibre included
  kSugars,
  kFibre,
  kSodium,
  kWater,
  kCalcium,
  kIron,
  kMagnesium,
  kPhosphorus,
  kPotassium,
  kZinc,
  kCopper,
  kSelenium,
  kVitaminA,  ///< retinol equivalents: retinol + beta-carotene/6 + other carotenes/12
  kThiamin,
  kRiboflavin,
  kNiacin,  ///< preformed only; the table has no tryptophan
  kVitaminB6,
  kFolate,
  kVitaminB12,
  kVitaminC,
  kVitaminD,
  kVitaminE,
  kCount
};
inline constexpr std::size_t kNutrients = static_cast<std::size_t>(Nutrient::kCount);

enum class NutrientUnit : std::int8_t { kKcal, kGrams, kMilligrams, kMicrograms };

struct NutrientName {
  Nutrient nutrient;
  std::string_view column;  ///< of foods.csv: "protein_g"
  std::string_view name;    ///< "protein"
  NutrientUnit unit;
};

/// In the order of the enumeration.
inline constexpr std::array<NutrientName, kNutrients> kNutrientNames = {{
    {Nutrient::kEnergyKcal, "energy_kcal", "energy", NutrientUnit::kKcal},
    {Nutrient::kProtein, "protein_g", "protein", NutrientUnit::kGrams},
    {Nutrient::kFat, "fat_g", "fat", NutrientUnit::kGrams},
    {Nutrient::kSaturates, "saturates_g", "saturates", NutrientUnit::kGrams},
    {Nutrient::kCarbohydrateTotal, "carbohydrate_total_g", "total carbohydrate",
     NutrientUnit::kGrams},
    {Nutrient::kSugars, "sugars_g", "sugars", NutrientUnit::kGrams},
    {Nutrient::kFibre, "fibre_g", "fibre", NutrientUnit::kGrams},
    {Nutrient::kSodium, "sodium_mg", "sodium", NutrientUnit::kMilligrams},
    {Nutrient::kWater, "water_g", "water", NutrientUnit::kGrams},
    {Nutrient::kCalcium, "calcium_mg", "calcium", NutrientUnit::kMilligrams},
    {Nutrient::kIron, "iron_mg", "iron", NutrientUnit::kMilligrams},
    {Nutrient::kMagnesium, "magnesium_mg", "magnesium", NutrientUnit::kMilligrams},
    {Nutrient::kPhosphorus, "phosphorus_mg", "phosphorus", NutrientUnit::kMilligrams},
    {Nutrient::kPotassium, "potassium_mg", "potassium", NutrientUnit::kMilligrams},
    {Nutrient::kZinc, "zinc_mg", "zinc", NutrientUnit::kMilligrams},
    {Nutrient::kCopper, "copper_mg", "copper", NutrientUnit::kMilligrams},
    {Nutrient::kSelenium, "selenium_ug", "selenium", NutrientUnit::kMicrograms},
    {Nutrient::kVitaminA, "vitamin_a_re_ug", "vitamin A", NutrientUnit::kMicrograms},
    {Nutrient::kThiamin, "thiamin_mg", "thiamin", NutrientUnit::kMilligrams},
    {Nutrient::kRiboflavin, "riboflavin_mg", "riboflavin", NutrientUnit::kMilligrams},
    {Nutrient::kNiacin, "niacin_mg", "niacin", NutrientUnit::kMilligrams},
    {Nutrient::kVitaminB6, "vitamin_b6_mg", "vitamin B6", NutrientUnit::kMilligrams},
    {Nutrient::kFolate, "folate_ug", "folate", NutrientUnit::kMicrograms},
    {Nutrient::kVitaminB12, "vitamin_b12_ug", "vitamin B12", NutrientUnit::kMicrograms},
    {Nutrient::kVitaminC, "vitamin_c_mg", "vitamin C", NutrientUnit::kMilligrams},
    {Nutrient::kVitaminD, "vitamin_d_ug", "vitamin D", NutrientUnit::kMicrograms},
    {Nutrient::kVitaminE, "vitamin_e_mg", "vitamin E", NutrientUnit::kMilligrams},
}};

/// Figures for 100 g of the edible part; what is not known is not 0.
class Nutrients {
 public:
  std::optional<double> operator[](Nutrient n) const { return per_100_g_[index(n)]; }
  void set(Nutrient n, std::optional<double> value) { per_100_g_[index(n)] = value; }
  friend bool operator==(const Nutrients&, const Nutrients&) = default;

 private:
  static constexpr std::size_t index(Nutrient n) { return static_cast<std::size_t>(n); }
  std::array<std::optional<double>, kNutrients> per_100_g_;
};

}  // namespace kitchen
