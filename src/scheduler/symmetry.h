// Whether parts of a problem may change places: two bays of equal cooks can swap all they do
// without anything getting better or worse, so one order between them may be chosen freely.
//
//   if (can_swap(problem, {{collect_of_bay_a, collect_of_bay_b}, {wash_of_bay_a, wash_of_bay_b}}))
//     // whichever of the two bays collects first may be decided
#pragma once

#include <utility>
#include <vector>

#include "scheduler/problem.h"

namespace scheduler {

/// True only if the problem is the same with the activities of each pair in each other's place:
/// every schedule then has a twin of the same value on every level, in which they have swapped.
/// Resources swap along where only one of a pair uses them; uses are matched in the order they
/// stand in. Names, teams and constraint groups do not matter. False is no proof of the contrary.
/// An activity stands in one pair at most. O(problem).
bool can_swap(const Problem& problem, const std::vector<std::pair<int, int>>& pairs);

}  // namespace scheduler
