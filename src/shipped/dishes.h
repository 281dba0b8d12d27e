// The dishes that travel inside the program.
#pragma once

#include <string>
#include <vector>

#include "kitchen/dish.h"

namespace shipped {

struct Dish {
  std::string key;   ///< "lentil-dhal"
  std::string text;  ///< the file
  kitchen::Dish dish;
  std::vector<std::string> variants;
};

/// All of them, by key.
std::vector<Dish> dishes();

}  // namespace shipped
