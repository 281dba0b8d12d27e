// What is missing of a dish's figures, and every figure opened: how each ingredient was weighed and
// cooked and what it brings. Not for use outside print/.
#pragma once

#include <string>
#include <vector>

#include "nutrition/dish_nutrients.h"

namespace print {

/// One sentence for each ingredient of which something is missing.
std::vector<std::string> missing_words(const nutrition::DishNutrients&);
/// Ingredient by ingredient, then figure by figure.
std::string details_words(const nutrition::DishNutrients&);

}  // namespace print
