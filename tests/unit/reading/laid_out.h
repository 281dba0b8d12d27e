// The layout of a text, by the shipped foods.
#pragma once

#include <string_view>

#include "../../support/shipped_foods.h"
#include "kitchen/reading/layout.h"

namespace tests {

inline kitchen::Layout laid_out(std::string_view text) {
  static const kitchen::FoodMatcher foods(shipped_foods());
  return kitchen::lay_out(text, foods);
}

}  // namespace tests
