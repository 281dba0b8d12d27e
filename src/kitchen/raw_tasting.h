// Tasting before cooking: which steps say to taste while raw egg, flour, meat or fish is still in
// the mixture, for the house rule that bars it (rule Y11).
#pragma once

#include <string>
#include <vector>

#include "kitchen/dish.h"

namespace kitchen {

/// What is raw in a dish and makes people ill when it is licked off a spoon: of "egg", "flour",
/// "meat", "fish"; "meat or fish" when a step is marked raw and no name tells what it is. Raw flour
/// counts as egg does: it is not heated before it is sold (Food Standards Agency's advice, from
/// memory).
std::vector<std::string> raw_in(const Dish&);

/// Whether the step's sentence tells the cook to taste or lick: "taste and season", not "season to
/// taste" or "do not taste".
bool says_to_taste(const Step&);

/// Whether something raw comes in with the step: it is marked raw, or names egg or flour among what
/// it uses.
bool brings_raw(const Dish&, int step);

/// Whether the dish has egg or flour that no step names: it may be in from the beginning.
bool has_unnamed_raw(const Dish&);

/// Steps that say to taste before what is raw has been on a ring, in an oven or under a grill, by
/// the waits of the method; indices into Dish::method, in its order.
std::vector<int> tasted_raw(const Dish&);

}  // namespace kitchen
