// Which heat reaches which ingredient: the method of a dish read for its pans, trays and pots.
//
// "Rub the butter into the flour", "cut out", "bake": the butter is baked, though the baking step
// does not name it.
#pragma once

#include <optional>
#include <vector>

#include "kitchen/dish.h"
#include "kitchen/food.h"
#include "nutrition/cooking.h"

namespace nutrition {

/// One ingredient as the method is read with it.
struct Weighted {
  const kitchen::Food* food = nullptr;  ///< null when not known
  std::optional<double> grams;
  bool liquid = false;  ///< water, milk, stock, tinned tomatoes: what pasta, rice and pulses can
                        ///< drink
};

/// What one step does to what is in its pan or tin.
struct Heating {
  int step = 0;  ///< index into Dish::method
  Cooking cooking = Cooking::kBaked;
  std::vector<int> contents;  ///< indices into Dish::ingredients, ascending
};

/// The heating steps in the order of the method.
/// A step holds what it uses (or, when it names nothing, what its sentence mentions) and what its
/// pan or tray already held. In the oven or under the grill it also holds what earlier steps mixed
/// with what it names, or, when it names nothing and its tray is new, all that the steps it follows
/// brought along. On a ring the words decide: "fry", "soften" fry, "boil", "simmer" boil; without
/// such a word a pan with liquid simmers. A pan that is drained boils in water that is thrown away.
std::vector<Heating> heatings(const kitchen::Dish&, const std::vector<Weighted>&);

/// What each step holds when it is done, indices ascending: for foods that swell without heat of
/// their own.
std::vector<std::vector<int>> contents_of_steps(const kitchen::Dish&);

}  // namespace nutrition
