// What an amount of a food weighs, and how that is known; or why it cannot be.
#pragma once

#include <optional>
#include <string>

#include "base/problem.h"
#include "kitchen/food.h"
#include "kitchen/quantity.h"

namespace kitchen {

struct Weighed {
  Ratio grams;       ///< of the edible part
  std::string how;   ///< "2 cloves at 3 g (SR WEIGHT 11215 seq 3)"; empty when it was a mass
  bool sure = true;  ///< a definition or a measured row; false for common practice and for ranges
};

/// The middle of a range. Errors: weigh.no_density, weigh.no_piece, weigh.no_amount.
base::Result<Weighed> weigh(const Quantity&, const Food&);
/// Errors as weigh(); volume of a mass or a piece needs the density too.
base::Result<Ratio> millilitres(const Quantity&, const Food&);

/// The amount of an ingredient as a quantity: its unit word is a unit or counts pieces ("clove",
/// the food's own name, nothing at all).
Quantity quantity_of(const Ingredient&);
/// The food an ingredient is: by its key, else by its name; nothing if neither is known.
class Foods;
const Food* food_of(const Ingredient&, const Foods&);

}  // namespace kitchen
