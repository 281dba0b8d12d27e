// The allergens of the table of foods, carried into dishes, so that the planner's rules for kit
// (K2) and for nuts (Y11) hold for what the dish file forgot to say.
//
// A dish that lists "Pesto, green" without a word on allergens gets milk, and nuts and eggs too,
// because its label is not read: an unread label counts as all that it might say.
#pragma once

#include <string>
#include <vector>

#include "safety/statements.h"

namespace safety {

/// The dish with what the table of foods and the labels in use say added to what each ingredient
/// contains. "Check the label" and "may contain" count as contained; a reading of the label in use
/// takes the table's "check the label" away. Only a food key or exactly a food's name counts;
/// nothing the dish declares is ever removed, and a food in no table is left as declared.
kitchen::Dish with_food_allergens(kitchen::Dish, const kitchen::Foods&, const Labels& = {});

/// True when it changes what a plan must keep: a cook avoids an allergen, or nuts are not allowed.
bool allergens_matter(const kitchen::Lesson&);

/// For the plan's notes: which labels were taken as containing what they might, of the allergens
/// that matter in the lesson. Empty when none was.
std::vector<std::string> notes_on_labels(const kitchen::Lesson& as_written, const kitchen::Foods&,
                                         const Labels& = {});

}  // namespace safety
