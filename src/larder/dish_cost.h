// What the ingredients of a dish cost by the price list, as amounts used and not as packs bought:
// for choosing dishes, before there is a lesson.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "kitchen/foods.h"
#include "larder/measure.h"
#include "larder/money.h"
#include "larder/prices.h"

namespace larder {

struct IngredientCost {
  int ingredient = 0;          ///< index into Dish::ingredients
  std::optional<Ratio> pence;  ///< for the whole dish; nothing: not known
  std::string how;             ///< "150 g of a 1.5 kg bag at £3.45", or why it is not known
  friend bool operator==(const IngredientCost&, const IngredientCost&) = default;
};

struct DishCost {
  std::vector<IngredientCost> lines;  ///< one for each ingredient with an amount
  Ratio known = 0;                    ///< pence of those that are known
  bool complete = true;               ///< every line is known
  friend bool operator==(const DishCost&, const DishCost&) = default;
};

/// By the cheapest pack of each food. "To taste" and tap water cost nothing here.
DishCost dish_cost(const kitchen::Dish&, const PriceList&, const kitchen::Foods&);

}  // namespace larder
