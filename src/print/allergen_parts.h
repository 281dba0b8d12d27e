// The parts and words of the sheets of allergens, on the terminal and on paper.
#pragma once

#include "print/paper.h"
#include "print/say_allergens.h"

namespace print {

/// Each dish with its statements and diets, then the table.
void say_dishes(Paper&, const std::vector<kitchen::Dish>&, const safety::Evidence&, bool details);
/// Fourteen rows in words, a column for each dish, as many side by side as fit.
void say_allergen_table(Paper&, const std::vector<kitchen::Dish>&, const safety::Evidence&);

/// "milk, may not eat; no pork, may not touch".
std::string needs_words(const safety::CookNeeds&);
/// "Own board and knife; own cloth"; empty when nothing must be their own.
std::string own_things_words(const safety::CookNeeds&);
/// "Daisy; then Aisha and Ben; full clean; then everybody else".
std::string turns_words(const kitchen::Lesson&, const safety::ThingOrder&);

}  // namespace print
