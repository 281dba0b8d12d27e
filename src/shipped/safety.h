// The shipped tables of hidden things and of substitutes.
#pragma once

#include "safety/substitutes.h"

namespace shipped {

/// Each read once.
const safety::Hidden& hidden();
const safety::Substitutes& substitutes();

}  // namespace shipped
