// Versions of a dish side by side: what they hold, their colours, five a day, allergens, minutes
// and money.
//
// "With oil for butter: saturates 9.2 g less a portion and amber instead of red; no milk; 4p
// dearer." Minutes and money are the caller's: this layer plans and costs nothing.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "kitchen/dish.h"
#include "nutrition/five_a_day.h"
#include "nutrition/front_of_pack.h"
#include "nutrition/label.h"

namespace nutrition {

/// The fourteen as they stand in a dish and in the foods its ingredients are.
struct DishAllergens {
  kitchen::Allergens contains;
  kitchen::Allergens check_for;  ///< vary by brand: the label decides; never the same as "none"
  std::vector<std::string> not_known;  ///< ingredients of which no food is known, or whose label is
                                       ///< unread
};
DishAllergens allergens_of(const kitchen::Dish&, const std::vector<const kitchen::Food*>& foods);

struct Version {
  std::string name;
  DishNutrients nutrients;
  DishAllergens allergens;
  FiveADayCount five_a_day;
  std::optional<double> minutes;  ///< to make it; nothing when not asked
  std::optional<double> pence;    ///< a portion; nothing when not known
};

struct ComparedLine {
  std::string name, unit;
  Rounding rounding = Rounding::kGrams;
  std::vector<Figure> portion, per_100_g;  ///< one a version
  /// Difference of a portion to the first version; nothing when either is not whole.
  std::vector<std::optional<double>> change;
};

struct Comparison {
  std::vector<ComparedLine> lines;                 ///< as the lines of a label
  std::vector<std::array<ColourLine, 4>> colours;  ///< one a version
  std::vector<kitchen::Allergens> gained, lost;    ///< against the first version
};

/// At least one version; the first is what the others are compared with.
Comparison compare(const std::vector<Version>&, bool drink = false);

}  // namespace nutrition
