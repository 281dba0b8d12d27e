// Outside opinion: Gecode (libgecode-dev, https://www.gecode.org) on small problems.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "scheduler/problem.h"

namespace scheduler::testing {

/// The optimum of every level in turn, bands not looked at; nothing when infeasible.
std::optional<std::vector<std::int64_t>> gecode_optimum(const Problem& problem);

}  // namespace scheduler::testing
