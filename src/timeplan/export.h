// The question behind a plan, for other solvers.
#pragma once

#include <string>

#include "timeplan/answer.h"

namespace timeplan {

/// The lesson as a MiniZinc model: with the plan's waves (or own timelines) where there is a plan,
/// else one wave with the bell as a goal; checkpoints are not in it. It minimises the last goal
/// level, with those before it no worse than the plan was before checkpoints were set.
std::string minizinc(const kitchen::Lesson&, const Answer&);

}  // namespace timeplan
