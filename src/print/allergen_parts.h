// The parts of the sheet of allergens; for say_allergens.cpp only.
#pragma once

#include "print/paper.h"
#include "print/say_allergens.h"

namespace print {

/// Each dish with its statements and diets, then the table.
void say_dishes(Paper&, const std::vector<kitchen::Dish>&, const safety::Evidence&, bool details);
/// Fourteen rows in words, a column for each dish, as many side by side as fit.
void say_allergen_table(Paper&, const std::vector<kitchen::Dish>&, const safety::Evidence&);

}  // namespace print
