// Small dishes for the ratios: a name, ingredients and sentences of a method, no more.
#pragma once

#include <string>
#include <vector>

#include "kitchen/dish.h"

namespace samples {

struct Amount {
  std::string name;
  double amount = 0;
  std::string unit = "g";
};

/// Each step follows the one before it; the uses of a step are what its sentence names.
inline kitchen::Dish dish(std::string name, const std::vector<Amount>& amounts,
                          const std::vector<std::string>& method) {
  kitchen::Dish out;
  out.name = std::move(name);
  for (const Amount& amount : amounts) {
    kitchen::Ingredient ingredient;
    ingredient.name = amount.name;
    ingredient.amount = amount.amount;
    ingredient.unit = amount.unit;
    out.ingredients.push_back(std::move(ingredient));
  }
  for (std::size_t i = 0; i < method.size(); ++i) {
    kitchen::Step step;
    step.id = "step-" + std::to_string(i);
    step.says = method[i];
    if (i > 0) {
      kitchen::Follows follows;
      follows.step = static_cast<int>(i) - 1;
      step.follows.push_back(follows);
    }
    out.method.push_back(std::move(step));
  }
  return out;
}

}  // namespace samples
