// Ingredients told in sentences, in a text that has no list of them: "I peeled 1 onion and 2
// carrots", "Each pupil brings two salmon fillets, 300 g of potatoes and one lemon."
#pragma once

#include <string>
#include <vector>

#include "kitchen/reading/draft.h"
#include "kitchen/reading/food_matcher.h"

namespace kitchen {

struct Measures;

/// The ingredients a tidied line tells of, in order: those with an amount first, then foods that
/// are only named and that none of `known` or those found is. The words stay where they stood.
std::vector<IngredientDraft> told_foods(const std::string& tidied_line, const FoodMatcher&,
                                        const Measures&, std::vector<IngredientDraft> known,
                                        bool named_only);

}  // namespace kitchen
