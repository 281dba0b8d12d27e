// The colours of the United Kingdom's front-of-pack label: fat, saturates, sugars and salt, each
// low, medium or high.
//
// "Salt 1.6 g in 100 g: high (red)." A colour is always said with its word; it is never shown by
// colour alone. Source: UK guidance on front-of-pack nutrition labelling (Department of Health,
// 2013, updated 2016), as the check values of group E in tests/data/nutrition/check_values.csv
// state it.
#pragma once

#include <array>
#include <optional>
#include <string_view>

#include "nutrition/dish_nutrients.h"

namespace nutrition {

enum class Colour : std::int8_t { kGreen, kAmber, kRed };
/// "low", "medium", "high".
std::string_view level_of(Colour);
/// "green", "amber", "red".
std::string_view word_for(Colour);

enum class Coloured : std::int8_t { kFat, kSaturates, kSugars, kSalt };
inline constexpr std::array<Coloured, 4> kColoured = {Coloured::kFat, Coloured::kSaturates,
                                                      Coloured::kSugars, Coloured::kSalt};
std::string_view name_of(Coloured);

struct Thresholds {
  double green;    ///< up to this in 100 g or 100 ml it is low
  double red;      ///< above this it is high
  double portion;  ///< above this in a portion it is high, whatever 100 g hold, when the portion is
                   ///< large
};
/// Grams.
Thresholds thresholds(Coloured, bool drink);
/// A portion is large above this: grams of food, millilitres of a drink.
constexpr double large_portion(bool drink) { return drink ? 150 : 100; }

/// `portion` is the size of a portion in grams or millilitres. Unrounded amounts are compared.
Colour colour(Coloured, double grams_in_100, double portion, bool drink);

struct ColourLine {
  Coloured what = Coloured::kFat;
  Figure per_100_g, portion;
  std::optional<Colour> colour;    ///< nothing when what is missing could change it
  std::optional<Colour> at_least;  ///< the colour without what is missing; nothing when the weight
                                   ///< is not known
  bool by_portion = false;         ///< high because the portion is large, not by its 100 g
  std::optional<double> share_of_day;  ///< of an adult's reference intake, in a portion
};

/// One a nutrient, in the order of kColoured.
std::array<ColourLine, 4> colours(const DishNutrients&, bool drink = false);

}  // namespace nutrition
