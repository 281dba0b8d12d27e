// Programming errors in a problem: indices out of range, sizes that do not match.
#pragma once

#include "scheduler/problem.h"

namespace scheduler {

/// Errors: std::invalid_argument naming the first malformed part.
void validate(const Problem& problem);

}  // namespace scheduler
