// A problem as a model for MiniZinc (N. Nethercote and others 2007, "MiniZinc: towards a standard
// CP modelling language"; version 2.6 or newer), so that any general-purpose solver can be asked
// the same question. Data and model in one text.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "scheduler/problem.h"

namespace scheduler {

/// The model minimises goal level `level` (from 0) while each level before it is at most what
/// `before` says; the two lines that say so stand at the top and may be changed by hand. Without
/// goals it asks for any schedule. Throws std::invalid_argument when `level` is not a level or
/// `before` is shorter than it. Size: linear in the problem, but for pairs of uses of one oven or
/// of one soiled place.
std::string minizinc(const Problem& problem, std::size_t level,
                     const std::vector<std::int64_t>& before);

/// The same, with all levels at once: it minimises a sum of the levels whose weights, made from the
/// greatest value of each, put one unit of a level above all that comes after it. Throws
/// std::invalid_argument when that sum may reach 2^31, where Gecode ends, or a level but the last
/// has a band. Models of a level have that sum as well where it fits, as `level = 0`.
std::string minizinc(const Problem& problem);

}  // namespace scheduler
