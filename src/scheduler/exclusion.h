// Activities of which no two can overlap, although no one resource says so: two need the same sink,
// a third needs the hands of somebody whom each of them needs as well, a fourth comes before the
// third. Together they are as good as one machine, and the edge finding of one machine sees far
// more than that of each resource alone: a class that works in step and washes up bay by bay has
// one such set a bay. (Disjunctive cliques: P. Brucker, S. Knust 2003; from memory.)
#pragma once

#include <vector>

#include "scheduler/problem.h"

namespace scheduler {

/// An activity while it runs in one of its modes.
struct InMode {
  int activity = 0;
  int mode = 0;
  friend auto operator<=>(const InMode&, const InMode&) = default;
};

/// Hundredths of the horizon that the work of a set must fill to be worth a propagator. At 80 and
/// below, or with all sets, classes of 8 to 30 cooks got looser plans in the same time, at 90 and
/// above some proofs were missed (docs/methods/planner.md).
inline constexpr int kWorthwhileFullness = 88;

/// Sets of four and more that reach beyond one resource, each with no two members that can overlap
/// in any schedule, and with least lengths that fill at least `fullness` hundredths of the horizon.
/// Sorted; none is part of another; the ones with most work first, at most some tens. Milliseconds
/// for a class of 24 cooks: once for a search, not for each of its models.
std::vector<std::vector<InMode>> exclusive_sets(const Problem& problem,
                                                int fullness = kWorthwhileFullness);

}  // namespace scheduler
