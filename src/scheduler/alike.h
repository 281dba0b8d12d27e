// Clusters that are the same problem under other names: six bays of four cooks with the same two
// dishes need one proof, not six.
#pragma once

#include <vector>

#include "scheduler/clusters.h"

namespace scheduler {

/// For each cluster the first one that is equal to it when seen with the shared activities in an
/// otherwise empty room: the same activities, lags, spans, uses and goal terms in the same order,
/// resources renamed. Names, teams and constraint groups do not count. O(clusters * problem).
std::vector<int> first_alike(const Problem& problem, const Clusters& clusters);

}  // namespace scheduler
