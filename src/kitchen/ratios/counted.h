// Every ingredient of a dish with its role and what it weighs: the ground the ratios stand on.
//
// "145 ml milk: milk, 149.35 g (145 ml at 1.03 g a ml, ...)". What cannot be weighed keeps its
// reason; nothing is taken as 0.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "kitchen/dish.h"
#include "kitchen/foods.h"
#include "kitchen/quantity.h"
#include "kitchen/ratios/preparations.h"

namespace kitchen {

struct CountedIngredient {
  int ingredient = 0;          ///< index into Dish::ingredients
  const Food* food = nullptr;  ///< in the table given; nothing when no food is known
  Role role = Role::kOther;
  std::optional<Ratio> grams;  ///< of the edible part; nothing = not known
  std::string how;             ///< how it was weighed, or why it was not
  bool sure = true;
};

/// One for each ingredient, in order. `foods` must outlive the result.
std::vector<CountedIngredient> counted(const Dish&, const Foods& foods);

/// Of one ingredient, how many of `in` are in a gram of it (an egg's gram is 1/50 egg); nothing
/// when its density is not known.
std::optional<Ratio> in_a_gram(const CountedIngredient&, CountedIn in);

}  // namespace kitchen
