// What a school can measure: scales that show 5 g (1 g below 20 g), a jug with 5 ml lines, a set of
// spoons down to a quarter teaspoon, and halves of an onion.
//
// 187 1/2 g flour becomes 190 g and says that it is 2 1/2 g more. The rounding is the last thing
// that happens to an amount, and happens once.
#pragma once

#include <string>

#include "kitchen/quantity.h"

namespace larder {

using kitchen::Quantity;
using kitchen::Ratio;

/// An amount as it is measured out. `shown` and `exact` are in the same unit: grams, millilitres or
/// pieces. |error| is never more than half a step.
struct Shown {
  Quantity exact, shown;
  Ratio step = 0;          ///< 0 = left as it is: to taste, or too little to measure
  Ratio error = 0;         ///< shown - exact
  std::string text;        ///< "190 g", "1 tbsp + 1/2 tsp"
  bool too_small = false;  ///< less than half of what can be measured: a pinch, or weigh more at
                           ///< once and share it out
  friend bool operator==(const Shown&, const Shown&) = default;
};

/// `whole_pieces`: only whole ones make sense (eggs). Ranges are taken at their middle. Steps are
/// those of usual school scales, jugs and spoons: common practice, no source.
Shown shown(const Quantity&, bool whole_pieces = false);

}  // namespace larder
