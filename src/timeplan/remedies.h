// What would make a lesson fit: changes a teacher can make, each planned again before it is
// offered.
#pragma once

#include "timeplan/answer.h"
#include "timeplan/plan_time.h"

namespace timeplan {

/// Tries the changes one by one, easiest to make first, then the best two together when none is
/// enough alone. `overrun` of the lesson as it is; what a change wins is measured against it.
/// Nothing: it cannot be done even with a later bell, and what can be done then is a gain. A plan
/// that `stood` before the lesson was changed is tried first: a remedy may bring it back.
std::vector<Remedy> remedies(const kitchen::Lesson&, std::optional<Seconds> overrun,
                             const std::optional<Standing>& stood, PlanTime&);

}  // namespace timeplan
