// The table of working ratios that travels inside the program.
#pragma once

#include "kitchen/ratios/preparations.h"

namespace shipped {

/// Read once.
const kitchen::Preparations& ratios();

}  // namespace shipped
