// A food: one line of the store cupboard, with what is known of it and where that was learnt.
//
// "Red lentils, dry: 25 g protein in 100 g (USDA SR26 16069), no allergens as an ingredient, check
// the label for gluten." A dish's ingredient names one of these; what it weighs, contains, counts
// for and how it is kept is looked up here. A food knows nothing of dishes, prices or pupils.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "kitchen/dish.h"
#include "kitchen/nutrients.h"

namespace kitchen {

/// How near the row of the source table is to the food meant.
enum class Match : std::int8_t {
  kExact,
  kNear,   ///< the same kind, a small named difference
  kPoor,   ///< a pointer only; use the label
  kNone,   ///< no row: the figures are unknown until a label is entered
  kLabel,  ///< the figures are from a packet label of the school's
};

/// Whether something is so: "check label" never counts as either.
enum class Known : std::int8_t { kNo, kYes, kCheckLabel };

enum class FiveADay : std::int8_t {
  kNo,
  kFresh,   ///< 80 g fresh, frozen, cooked or tinned
  kDried,   ///< 30 g
  kJuice,   ///< 150 ml, once a day
  kPulses,  ///< 80 g cooked, once a day
};

enum class Storage : std::int8_t {
  kAmbient,
  kAmbientThenChilled,  ///< chilled once opened
  kChilled,
  kFrozen,
};

/// What one counted piece weighs, without what is thrown away.
struct PieceWeight {
  std::string piece;  ///< singular: "clove"; "each" for the food itself
  double grams = 0;   ///< > 0
  std::string source;
  friend bool operator==(const PieceWeight&, const PieceWeight&) = default;
};

struct Food {
  std::string key;   ///< small letters, digits, underscores: "red_lentils_dry"
  std::string name;  ///< as a British school writes it: "Red split lentils, dry"
  std::vector<std::string> other_names;
  std::string category;
  Match match = Match::kNone;
  std::string source;   ///< "USDA SR26 16069: Lentils, pink or red, raw", or the packet's words
  Nutrients nutrients;  ///< for 100 g of the edible part
  std::optional<double> nitrogen_factor;  ///< grams of protein a gram of nitrogen in `nutrients`
  std::optional<double> edible;           ///< share of what is bought, above 0 to 1
  std::string edible_source;
  std::optional<double> density;  ///< grams a millilitre; none = do not turn volumes into weights
  std::string density_source;
  std::vector<PieceWeight> pieces;
  Allergens contains;   ///< always or practically always present
  Allergens check_for;  ///< varies by brand: the label decides
  Known vegetarian = Known::kCheckLabel, vegan = Known::kCheckLabel;
  Known pork = Known::kCheckLabel, beef = Known::kCheckLabel;
  Known alcohol = Known::kCheckLabel, gelatine = Known::kCheckLabel;
  FiveADay five_a_day = FiveADay::kNo;
  Storage storage = Storage::kAmbient;
  std::string note;
  bool schools_own = false;  ///< from the school's own file, which wins over the shipped one
  friend bool operator==(const Food&, const Food&) = default;
};

}  // namespace kitchen
