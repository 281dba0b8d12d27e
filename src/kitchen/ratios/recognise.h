// Which base preparations a dish holds: "leek soup with cheese scones" holds scone dough; a quiche
// holds shortcrust pastry and a custard filling.
//
// Judged by the ingredients that go together in the method, their amounts, the method's words and
// the dish's name. It is a reading, not a fact: every find says how sure it is and why.
#pragma once

#include <string>
#include <vector>

#include "kitchen/dish.h"
#include "kitchen/ratios/counted.h"

namespace kitchen {

struct FoundPreparation {
  std::string key;        ///< "scones"
  std::string name;       ///< "scone dough"
  double confidence = 0;  ///< above 0.5, to 1
  std::vector<std::string> why;
  std::vector<int> ingredients;  ///< indices into Dish::ingredients, ascending
  std::vector<int> steps;        ///< indices into Dish::method where it is made, ascending
  friend bool operator==(const FoundPreparation&, const FoundPreparation&) = default;
};

/// The surest first. `counted` is counted(dish, foods).
std::vector<FoundPreparation> recognise(const Dish&, const std::vector<CountedIngredient>& counted);

}  // namespace kitchen
