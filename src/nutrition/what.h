// What is summed over a dish: every nutrient of the table, and a few that are worked out food by
// food.
//
// What(kitchen::Nutrient::kFat) is fat; What(Held::kFreeSugars) the free sugars, which no table
// has.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <string_view>

#include "kitchen/nutrients.h"

namespace nutrition {

using kitchen::Nutrient;

enum class Held : std::int8_t {
  kLabelProtein,    ///< nitrogen x 6.25, grams (Regulation (EU) No 1169/2011, Annex I point 8)
  kCarbohydrate,    ///< available: total less fibre, grams
  kFreeSugars,      ///< grams; what is not known to be free or not is missing
  kFreeSugarsMost,  ///< grams; what is not known counts as free
  kAlcohol,         ///< grams; missing in foods that have some, for no table here holds it
  kCount
};

/// One of the things summed; an index into arrays of kWhats.
class What {
 public:
  constexpr What(Nutrient n) : index_(static_cast<std::size_t>(n)) {}
  constexpr What(Held h) : index_(kitchen::kNutrients + static_cast<std::size_t>(h)) {}
  static constexpr What at(std::size_t index) {
    What what(Nutrient::kEnergyKcal);
    what.index_ = index;
    return what;
  }
  constexpr std::size_t index() const { return index_; }
  /// Of the table itself, not worked out.
  constexpr bool of_table() const { return index_ < kitchen::kNutrients; }
  constexpr Nutrient nutrient() const { return static_cast<Nutrient>(index_); }
  friend constexpr bool operator==(What, What) = default;

 private:
  std::size_t index_;
};
inline constexpr std::size_t kWhats = kitchen::kNutrients + static_cast<std::size_t>(Held::kCount);

/// "protein", "free sugars".
std::string_view name_of(What);
/// "g", "mg", "µg", "kcal".
std::string_view unit_of(What);

}  // namespace nutrition
