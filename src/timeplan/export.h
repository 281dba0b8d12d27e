// The question behind a plan, for other solvers.
#pragma once

#include <string>

#include "timeplan/answer.h"

namespace timeplan {

/// The lesson as a MiniZinc model: with the waves (or own timelines) of the plan, without a plan
/// one wave; checkpoints are not in it. For a plan that fits it minimises the last goal level, with
/// those before it no worse than the plan was before checkpoints were set. Otherwise the bell is
/// the first level, up to eight hours late, and is what it minimises.
std::string minizinc(const kitchen::Lesson&, const Answer&);

}  // namespace timeplan
