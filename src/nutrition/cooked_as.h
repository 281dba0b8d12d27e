// What cooking leaves of each ingredient's weight: which row of the yields applies, and why; or why
// none does.
//
// "Macaroni: boiled and drained, takes up water that is not among the ingredients: 2.2 times its
// dry weight (DY018)."
#pragma once

#include <string>
#include <vector>

#include "kitchen/dish.h"
#include "nutrition/cooking.h"
#include "nutrition/method_heat.h"

namespace nutrition {

struct CookedAs {
  std::vector<Cooking> heats;  ///< in the order of the method; empty = raw
  std::vector<int> steps;      ///< the steps that heat it, indices into Dish::method
  double weight = 1;           ///< weight as served / weight that went in
  std::string yield_id;        ///< row of yields.csv; empty when none was applied
  std::string why;             ///< one sentence

  /// The share of a nutrient that is left: the lowest of its heats.
  double kept(const CookingTables&, kitchen::Nutrient) const;
};

/// One an ingredient, in the order of the dish.
/// Rules, first that fits: poured-away water weighs nothing; a dry food that swells takes up water
/// of its own unless its pan holds liquid that is eaten (then that liquid's weight already counts);
/// a dough or batter (a fifth of what is in the oven is flour) loses as a whole; a food cooked in
/// one way, or boiled first, by its own row; anything in liquid that is eaten loses nothing, for
/// what leaves it stays in the pan. Evaporation from an open pan has no figure.
std::vector<CookedAs> cooked_as(const kitchen::Dish&, const std::vector<Weighted>&,
                                const CookingTables&);

}  // namespace nutrition
