// One sum that orders schedules as the goal levels do one after another: for solvers that minimise
// a single number.
//
// Example: two levels of at most 9 and 4 get the weights 5 and 1, since one unit of the first is
// worth more than all there is of the second. It is not for the engine, which has its levels.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "scheduler/problem.h"

namespace scheduler {

/// A value that no schedule exceeds, for each goal level; at least 0.
std::vector<std::int64_t> most_of_levels(const Problem& problem);

/// A weight for each level, the last one 1. Nothing when the sum could exceed `limit`, or when a
/// level but the last has a band: no sum says "may give back that much".
std::optional<std::vector<std::int64_t>> level_weights(const Problem& problem, std::int64_t limit);

}  // namespace scheduler
