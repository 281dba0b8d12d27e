// The tables of yields and of vitamins left after cooking that travel inside the program.
#pragma once

#include "nutrition/cooking.h"

namespace shipped {

/// Read once.
const nutrition::CookingTables& cooking();

}  // namespace shipped
