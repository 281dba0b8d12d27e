// How much: amounts with their units, exact until somebody weighs them.
//
// "1 1/2 tbsp" is {3/2, 3/2, tablespoon}; "2 to 3 cloves" is {2, 3, piece "clove"}; "a pinch" is
// {1, 1, piece "pinch"}. What a spoonful or a clove weighs depends on the food: kitchen/weigh.h.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "base/ratio.h"

namespace kitchen {

using base::Ratio;

enum class Unit : std::int8_t {
  kMilligram,
  kGram,
  kKilogram,
  kOunce,  ///< avoirdupois
  kPound,
  kMillilitre,
  kCentilitre,
  kDecilitre,
  kLitre,
  kTeaspoon,      ///< 5 ml
  kDessertspoon,  ///< 10 ml
  kTablespoon,    ///< 15 ml
  kCup,           ///< metric, 250 ml
  kFluidOunce,    ///< imperial
  kPint,          ///< imperial
  kAmericanCup,   ///< 236.5882365 ml
  kAmericanFluidOunce,
  kAmericanPint,
  kPiece,    ///< counted: eggs, cloves, tins, pinches; the word says which
  kToTaste,  ///< no amount
};

enum class Dimension : std::int8_t { kMass, kVolume, kCount, kNone };

Dimension dimension(Unit);
/// Grams in one of a mass unit, millilitres in one of a volume unit, 1 for a count, 0 for "to
/// taste". Exact by definition. Source: the Units of Measurement Regulations 1995 (ounce, pound,
/// fluid ounce, pint), the US definitions by the inch for American measures, common practice for
/// spoons and the metric cup (rows of d_conversions in the reference tables).
Ratio in_base_units(Unit);
/// As it is written after a number: "g", "tbsp", "cups"; empty for pieces and "to taste".
std::string_view unit_word(Unit);
/// The unit a word names, in any usual spelling and number ("grams", "Tbsp.", "fl oz", "lbs");
/// nothing for a word that counts pieces. "T" and "t" are told apart.
std::optional<Unit> unit_named(std::string_view word);

/// From `least` to `most` of a unit; equal unless the dish gives a range.
struct Quantity {
  Ratio least = 0, most = 0;
  Unit unit = Unit::kToTaste;
  std::string piece;  ///< for pieces: singular, lower case: "clove", "tin", "pinch"; empty = each

  static Quantity of(Ratio amount, Unit unit) { return {amount, amount, unit, {}}; }
  static Quantity pieces(Ratio amount, std::string piece) {
    return {amount, amount, Unit::kPiece, std::move(piece)};
  }
  bool stated() const { return unit != Unit::kToTaste; }
  Ratio middle() const { return (least + most) / Ratio(2); }
  friend bool operator==(const Quantity&, const Quantity&) = default;
};

/// Of the same unit, so many times as much.
Quantity times(const Quantity&, const Ratio&);
/// In another unit of the same dimension; nothing between dimensions.
std::optional<Quantity> converted(const Quantity&, Unit);
/// As a person writes it: "250 g", "1 1/2 tbsp", "2 to 3 cloves", "2", "to taste".
std::string quantity_text(const Quantity&);

}  // namespace kitchen
