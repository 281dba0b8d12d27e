// What would make a lesson fit: changes a teacher can make, each planned again before it is
// offered.
#pragma once

#include "timeplan/answer.h"
#include "timeplan/trial.h"

namespace timeplan {

/// Tries the changes one by one, easiest to make first, then the best two together when none is
/// enough alone. `overrun` of the lesson as it is; what a change wins is measured against it.
/// Nothing: it cannot be done even with a later bell, and what can be done then is a gain. `spent`
/// grows by the work done.
std::vector<Remedy> remedies(const kitchen::Lesson&, std::optional<Seconds> overrun,
                             const TrialLimits& whole, double& spent);

}  // namespace timeplan
