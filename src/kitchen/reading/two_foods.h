// Lines that name two foods, and where the second begins.
#pragma once

#include <cstddef>
#include <optional>
#include <string>

#include "kitchen/reading/amounts.h"
#include "kitchen/reading/food_matcher.h"

namespace kitchen {

/// "4 tbsp mayonnaise and a squeeze of lemon juice", "lemon wedges and salad leaves, to serve": the
/// " and " at which the line is cut. Behind it stands an amount or, like before it, a food of the
/// table; what the table knows as one ("macaroni and cheese") stays one.
std::optional<std::size_t> second_food(const std::string& tidy, const FoodMatcher&,
                                       const Measures&);

/// "1 egg beaten with 2 tbsp milk", "chia seeds soaked in 120 ml water": where what is weighed
/// apart begins, told by an amount with a unit and a food of the table behind it.
std::optional<std::size_t> weighed_second(const std::string& tidy, const FoodMatcher&,
                                          const Measures&);

/// "self - raising flour": old print has spaces around its hyphens.
std::string hyphens_closed(std::string tidy);

}  // namespace kitchen
