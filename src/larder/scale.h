// A dish made larger or smaller: for more portions, for another tin, or by what there is of the
// scarcest ingredient.
//
// "Scones for 8 with 900 g of flour: four times, 32 scones." Amounts stay exact fractions until
// they are shown; every line says what its rounding adds or takes away. What is "to taste" stays
// so.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/problem.h"
#include "kitchen/dish.h"
#include "kitchen/foods.h"
#include "larder/scale_round.h"

namespace larder {

inline constexpr int kMostPortions = 1000;

/// Errors: scale.portions (1 to kMostPortions).
base::Result<Ratio> factor_for_portions(const kitchen::Dish&, int portions);

/// What there is of one ingredient: "flour 900 g".
struct Have {
  std::string ingredient;
  Quantity amount;
  friend bool operator==(const Have&, const Have&) = default;
};
/// "flour 900 g", "900 g flour", "eggs 10". Errors: scale.have.
base::Result<Have> read_have(std::string_view words);

/// The dish as often as all of `have` allow, and which of them is the scarcest.
struct Scarcest {
  Ratio factor = 1;
  int ingredient = 0;  ///< index into Dish::ingredients
};
/// Several ingredients of one name ("butter", "butter for scones") share what there is.
/// Errors: scale.no_ingredient, scale.no_amount (to taste in the dish), weigh.*, all at once.
base::Result<Scarcest> factor_for_have(const kitchen::Dish&, const std::vector<Have>&,
                                       const kitchen::Foods&);

enum class Eggs : std::int8_t {
  kWhole,         ///< the nearest whole number
  kBeatenWeight,  ///< beaten, strained and weighed
};

struct ScaledLine {
  int ingredient = 0;
  Shown amount;
  std::string note;  ///< "1 1/2 eggs, beaten, weigh 75 g"; empty when there is nothing to say
  friend bool operator==(const ScaledLine&, const ScaledLine&) = default;
};

struct Scaled {
  Ratio factor = 1;
  std::vector<ScaledLine> lines;  ///< one for each ingredient, in order
  std::vector<std::string> warnings;
  friend bool operator==(const Scaled&, const Scaled&) = default;
};

/// `factor` > 0. Warns of amounts too small to measure and of eggs that a whole number misses by a
/// quarter or more. A line's exact amount is the dish's amount times the factor.
Scaled scale(const kitchen::Dish&, const Ratio& factor, const kitchen::Foods&,
             Eggs eggs = Eggs::kWhole);

/// The dish with its amounts as they are shown, to judge again what rounding did to its ratios
/// (kitchen/ratios/judge.h). Portions go with the factor, at least 1.
kitchen::Dish as_shown(const kitchen::Dish&, const Scaled&);
/// The same without rounding.
kitchen::Dish as_exact(const kitchen::Dish&, const Scaled&);

}  // namespace larder
