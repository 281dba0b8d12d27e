// The table of working ratios that travels inside the program.
#pragma once

#include "kitchen/ratios/preparations.h"

namespace app {

/// Read once.
const kitchen::Preparations& shipped_ratios();

}  // namespace app
