// Solving with known schedules planted: a learnt clause that excludes one of them is reported where
// it is learnt.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "scheduler/problem.h"

namespace scheduler::testing {

struct Planted {
  std::optional<std::vector<std::int64_t>> optimum;  ///< nothing when there is no schedule
  std::vector<std::vector<int>> found;               ///< values of the variables, a schedule each
};

/// All levels to the end. `known`: from an earlier run on the same problem; every schedule met on
/// the way is planted into the rest of the run. Errors: std::logic_error when a learnt clause
/// excludes a planted schedule; a failed expectation when one breaks a rule.
Planted run_planted(const Problem& problem, const std::vector<std::vector<int>>& known);

/// The optimum alone.
std::optional<std::vector<std::int64_t>> planted_optimum(const Problem& problem);

}  // namespace scheduler::testing
