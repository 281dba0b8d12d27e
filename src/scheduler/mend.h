// A standing schedule that a changed problem may have broken (a cook is late, an oven is out) is
// made whole again with as little of it touched as will do: what has started stays as it is; first
// only the teams concerned may move, then those beside them as well, then everything still to come.
#pragma once

#include <vector>

#include "scheduler/solve.h"

namespace scheduler {

struct MendOptions {
  Time now = 0;            ///< what starts before it stays where it stands
  std::vector<int> teams;  ///< concerned by the change: free in the first attempt
  Options engine;          ///< for each attempt; `fixed` and `start_from` are set by mend()
};

struct Mended {
  Outcome outcome;  ///< of the last attempt; kInfeasible only when nothing to come can save it
  int width = 0;    ///< 0: the teams alone were enough; 1: with those beside them; 2: everything
};

/// `standing`: one placement for each activity of `changed`, which has the same activities in the
/// same order. Throws std::invalid_argument when the sizes differ.
Mended mend(const Problem& changed, const Schedule& standing, const MendOptions& options);

}  // namespace scheduler
