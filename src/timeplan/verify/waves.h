// Lines of cooks in step, and the steps that are queued for instead (rules Y1, Y2).
#pragma once

#include <vector>

#include "timeplan/verify/case.h"

namespace timeplan::judge {

/// For each step of a dish: is it done in call order instead of all at once (rule Y2)?
std::vector<bool> queued_steps(const Case&, int dish);

}  // namespace timeplan::judge
