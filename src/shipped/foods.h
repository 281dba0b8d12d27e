// The table of foods that travels inside the program.
#pragma once

#include "kitchen/foods.h"

namespace shipped {

/// Read once.
const kitchen::Foods& foods();

}  // namespace shipped
