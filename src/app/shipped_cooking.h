// The tables of yields and of vitamins left after cooking that travel inside the program.
#pragma once

#include "nutrition/cooking.h"

namespace app {

/// Read once.
const nutrition::CookingTables& shipped_cooking();

}  // namespace app
