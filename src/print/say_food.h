// A food as a teacher looks it up: what it holds, weighs and is kept like, and where every figure
// was learnt. Unknown is said, never left out.
#pragma once

#include <string>
#include <vector>

#include "kitchen/foods.h"

namespace print {

std::string say_food(const kitchen::Food&);
/// What might have been meant, likeliest first.
std::string say_found(const std::vector<kitchen::FoundFood>&);
/// How many foods there are, by kind.
std::string say_foods(const kitchen::Foods&);

}  // namespace print
