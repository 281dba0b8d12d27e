// What each goal level of a problem comes to at least, by arguments on the problem as a whole that
// search and propagation do not find: queues (queue_bound.h) and sums of ends (flow_bound.h).
#pragma once

#include <cstdint>
#include <vector>

#include "scheduler/problem.h"

namespace scheduler {

/// One value a goal level that no schedule of the whole problem goes below. Once for a search, not
/// for each of its models: on a class of 24 cooks it takes milliseconds.
std::vector<std::int64_t> level_bounds(const Problem& problem);

}  // namespace scheduler
