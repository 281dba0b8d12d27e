// Random small problems with every kind of rule, for property and differential tests.
#pragma once

#include <cstdint>

#include "scheduler/problem.h"

namespace scheduler::testing {

struct Recipe {
  int activities = 6;
  Time horizon = 18;
  bool elastic = true;
  bool modes = true;
  bool settings = true;
  bool optional = true;
  bool soil = true;
  bool spans = true;
  bool bands = false;
  bool crowded = false;  ///< few lags, many optional activities and modes, small uses of one
                         ///< resource
};

/// Same seed, same problem. Feasible or not, as it comes.
Problem random_problem(std::uint64_t seed, const Recipe& recipe);

}  // namespace scheduler::testing
