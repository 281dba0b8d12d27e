// A bound for sums of ends when many need the same resource: whoever is j-th to be through cannot
// be so before the resource has done the work of the j shortest, one behind the other (the rule of
// the shortest job first, W. Smith 1956, "Various optimizers for single-stage production"; from
// memory). Example: 24 cooks fry for 8 minutes, two at a time, and wash up for 6 minutes after it:
// the ends of washing up come to 2 * (14 + 22 + ... + 102) minutes at least. Bounds of single terms
// do not see this: each cook alone could be first.
#pragma once

#include <cstdint>

#include "scheduler/problem.h"

namespace scheduler {

/// A value no schedule of the whole problem goes below at this level; 0 where fewer than two terms
/// ask for an early end. About activities * their ancestors in work.
std::int64_t flow_bound(const Problem& problem, const GoalLevel& level);

}  // namespace scheduler
