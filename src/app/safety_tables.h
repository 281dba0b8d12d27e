// The shipped tables of hidden things and substitutes, read once.
#pragma once

#include "safety/substitutes.h"

namespace app {

const safety::Hidden& shipped_hidden();
const safety::Substitutes& shipped_substitutes();

}  // namespace app
