// Versions of a dish side by side.
#pragma once

#include <string>
#include <vector>

#include "nutrition/compare.h"

namespace print {

/// At least one version; the first is what the others are compared with. Minutes and money stand
/// there when given.
std::string say_compared(const std::vector<nutrition::Version>&, bool drink = false);

}  // namespace print
