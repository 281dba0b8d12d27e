// The table of foods that travels inside the program, with the school's own over it.
#pragma once

#include <string>

#include "base/problem.h"
#include "kitchen/foods.h"

namespace app {

/// The shipped table, read once.
const kitchen::Foods& shipped_foods();

/// The shipped table with the school's own file over it; the shipped one alone when `own_file` is
/// empty. Problems: those of the file and of kitchen::read_foods().
base::Result<kitchen::Foods> foods_with(const std::string& own_file);

}  // namespace app
