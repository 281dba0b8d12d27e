// The dishes that travel inside the program, and how a dish is found by what somebody types.
#pragma once

#include <string>
#include <vector>

#include "base/problem.h"
#include "kitchen/dish.h"

namespace app {

struct ShippedDish {
  std::string key;   ///< "lentil-dhal"
  std::string text;  ///< the file
  kitchen::Dish dish;
  std::vector<std::string> variants;
};

/// All of them, by key.
std::vector<ShippedDish> shipped_dishes();

/// A dish file, a shipped dish by key or by words of its name ("dhal"), each with ": variant" if
/// wanted.
/// Problems: dish.unknown with the nearest names; dish.several when the words fit more than one; those of the reader.
base::Result<kitchen::Dish> find_dish(const std::string& asked);

}  // namespace app
