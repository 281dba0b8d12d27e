// A bound for sums of waiting times at one queue. Of n equal uses before (or after) a common moment
// only so many can be within b minutes of it; each further one waits longer: sum >= sum over b of
// (n - most within b). Example: 24 cooks collect for 2 minutes at a table for three, and more than
// 4 minutes before the first step count as waiting.
#pragma once

#include <cstdint>

#include "scheduler/problem.h"

namespace scheduler {

/// A value no schedule of the whole problem goes below at this level. O(terms * lags); 0 where no
/// queue is found.
std::int64_t queue_bound(const Problem& problem, const GoalLevel& level);

}  // namespace scheduler
