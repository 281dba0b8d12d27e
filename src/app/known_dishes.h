// Every variant of every dish that is at hand, for who asks what would settle an allergy.
#pragma once

#include <string>
#include <vector>

#include "kitchen/dish.h"

namespace app {

/// All variants of a dish file; none of another kind of file or of one that cannot be read, which
/// is told where the lesson or dish itself is read.
std::vector<kitchen::Dish> variants_in(const std::string& text, const std::string& file);

/// Those of the shipped dishes and of the dish files a lesson names.
std::vector<kitchen::Dish> known_dishes(const std::string& lesson_file);

}  // namespace app
