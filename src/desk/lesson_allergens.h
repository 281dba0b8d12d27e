// What the table of foods knows of allergens put into a lesson before it is planned: it speaks for
// what the dishes forgot to say.
#pragma once

#include <string>
#include <vector>

#include "base/problem.h"
#include "kitchen/foods.h"
#include "kitchen/lesson.h"
#include "safety/labels.h"

namespace desk {

/// A lesson in which nobody avoids anything is planned as it is; it is only held against the house
/// rule on nuts. Gives the notes on labels, for the plan.
/// Errors: those of kitchen::check(), with what would settle an avoided allergen.
base::Result<std::vector<std::string>> add_allergens(kitchen::Lesson&, const kitchen::Foods&,
                                                     const safety::Labels&);

}  // namespace desk
