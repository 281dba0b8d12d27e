#include "nutrition/per_food.h"

#include <algorithm>

#include "nutrition/free_sugars.h"

namespace nutrition {

using kitchen::Food;
using kitchen::Known;
using kitchen::Match;

namespace {

// Regulation (EU) No 1169/2011, Annex I point 8: protein = total Kjeldahl nitrogen x 6.25.
constexpr double kLabelFactor = 6.25;

std::optional<double> of_table(const Food& food, Nutrient n) {
  if (const auto value = food.nutrients[n]) return value;
  const auto none = [&](Nutrient whole) {
    const auto value = food.nutrients[whole];
    return value && *value == 0;
  };
  const bool of_carbohydrate = n == Nutrient::kSugars || n == Nutrient::kFibre;
  if (of_carbohydrate && none(Nutrient::kCarbohydrateTotal)) return 0.0;
  if (n == Nutrient::kSaturates && none(Nutrient::kFat)) return 0.0;
  return std::nullopt;
}

std::optional<double> label_protein(const Food& food) {
  const auto protein = food.nutrients[Nutrient::kProtein];
  // Without a factor nothing can be re-based; most such rows were made with 6.25 (release notes of
  // the table).
  if (!protein || !food.nitrogen_factor || *food.nitrogen_factor <= 0) return protein;
  return *protein * kLabelFactor / *food.nitrogen_factor;
}

std::optional<double> carbohydrate(const Food& food) {
  const auto total = food.nutrients[Nutrient::kCarbohydrateTotal];
  const auto fibre = of_table(food, Nutrient::kFibre);
  if (!total || !fibre) return std::nullopt;
  return std::max(0.0, *total - *fibre);
}

std::optional<double> alcohol(const Food& food) {
  // The table has no column for it, so a food with alcohol is unknown rather than free of it.
  if (food.alcohol == Known::kNo) return 0.0;
  return std::nullopt;
}

}  // namespace

bool has_figures(const Food& food) {
  return food.match != Match::kNone && food.match != Match::kPoor;
}

std::optional<double> per_100_g(const Food& food, What what) {
  if (what == Held::kAlcohol) return alcohol(food);
  if (!has_figures(food)) return std::nullopt;
  if (what.of_table()) return of_table(food, what.nutrient());
  if (what == Held::kLabelProtein) return label_protein(food);
  if (what == Held::kCarbohydrate) return carbohydrate(food);
  const FreeSugars free = free_sugars(food);
  if (free.share && *free.share == 0) return 0.0;  // however many sugars there are
  const auto sugars = of_table(food, Nutrient::kSugars);
  if (!sugars) return std::nullopt;
  if (free.share) return *sugars * *free.share;
  return what == Held::kFreeSugarsMost ? sugars : std::nullopt;
}

std::optional<double> most_per_100_g(What what) {
  if (what == Nutrient::kSodium)
    return 39'340.0;  // of sodium chloride, by atomic weights 22.990 and 35.453
  if (what == Nutrient::kEnergyKcal) return 900.0;  // all fat, Annex XIV
  if (unit_of(what) == "g") return 100.0;
  return std::nullopt;
}

std::optional<double> most_per_100_g(const Food& food, What what) {
  const auto most = most_per_100_g(what);
  if (!most || !has_figures(food)) return most;
  const auto total = food.nutrients[Nutrient::kCarbohydrateTotal];
  const auto sugars = of_table(food, Nutrient::kSugars), fibre = of_table(food, Nutrient::kFibre);
  std::optional<double> within;
  // Sugars and fibre are parts of the carbohydrate that do not overlap.
  if (what == Nutrient::kSugars && total) within = *total - fibre.value_or(0);
  if (what == Nutrient::kFibre && total) within = *total - sugars.value_or(0);
  if (what == Held::kCarbohydrate) within = total;
  if (what == Held::kFreeSugars || what == Held::kFreeSugarsMost)
    within = sugars ? sugars : most_per_100_g(food, Nutrient::kSugars);
  if (what == Nutrient::kSaturates) within = food.nutrients[Nutrient::kFat];
  return std::max(0.0, std::min(*most, within.value_or(*most)));
}

double least_per_100_g(const Food& food, What what) {
  if (!has_figures(food) || what != Held::kCarbohydrate) return 0;
  return of_table(food, Nutrient::kSugars).value_or(0);
}

std::string_view name_of(What what) {
  if (what.of_table()) return kitchen::kNutrientNames[what.index()].name;
  switch (static_cast<Held>(what.index() - kitchen::kNutrients)) {
    case Held::kLabelProtein:
      return "protein (N x 6.25)";
    case Held::kCarbohydrate:
      return "carbohydrate";
    case Held::kFreeSugars:
      return "free sugars";
    case Held::kFreeSugarsMost:
      return "free sugars at most";
    case Held::kAlcohol:
      return "alcohol";
    case Held::kCount:
      break;
  }
  return "";
}

std::string_view unit_of(What what) {
  if (!what.of_table()) return "g";
  switch (kitchen::kNutrientNames[what.index()].unit) {
    case kitchen::NutrientUnit::kKcal:
      return "kcal";
    case kitchen::NutrientUnit::kGrams:
      return "g";
    case kitchen::NutrientUnit::kMilligrams:
      return "mg";
    case kitchen::NutrientUnit::kMicrograms:
      return "µg";
  }
  return "";
}

}  // namespace nutrition
