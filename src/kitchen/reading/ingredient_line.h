// One line of a list of ingredients as an IngredientDraft: how much, of which food, prepared how.
//
// "2 large carrots, peeled and diced" is 2 pieces of the food carrot, quality "large", preparation
// "peeled and diced". "Salt and pepper" is two ingredients. "Zest and juice of 1 lemon" is one
// lemon with that preparation (one lemon must be bought); "juice of half a lemon" is lemon juice,
// half a lemon's. Nothing here knows where in a text the line stood.
#pragma once

#include <string_view>
#include <vector>

#include "kitchen/reading/amounts.h"
#include "kitchen/reading/draft.h"
#include "kitchen/reading/food_matcher.h"

namespace kitchen {

/// One draft, or one for each food of a line that names several ("salt and pepper", "1 tsp each
/// cumin and coriander"). The line must be UTF-8; a line without letters gives nothing. `group` and
/// `line_number` are left to the caller.
std::vector<IngredientDraft> read_ingredient_line(std::string_view line, const FoodMatcher&,
                                                  const Measures&);

/// The line without its bullet, box to tick or list number ("- ", "[ ] ", "* ").
std::string_view without_bullet(std::string_view tidied);

}  // namespace kitchen
