// How a dish is found by what somebody types.
#pragma once

#include <string>

#include "base/problem.h"
#include "kitchen/dish.h"

namespace app {

/// A dish file, a shipped dish by key or by words of its name ("dhal"), each with ": variant" if
/// wanted.
/// Problems: dish.unknown with the nearest names; dish.several when the words fit more than one; those of the reader.
base::Result<kitchen::Dish> find_dish(const std::string& asked);

}  // namespace app
