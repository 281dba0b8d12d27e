// The last touch: among plans that are equally good, the one in which everything starts as soon as
// it can. A task that stands about for no reason would be read as a pause that is meant (rule D2),
// and pupils do not wait for no reason.
#pragma once

#include "timeplan/trial.h"

namespace timeplan {

/// Moves starts of `trial`'s schedule earlier without making any goal level worse. `problem` is the
/// trial's problem, perhaps with checkpoints fixed. Larger problems than a class in waves are left
/// as they are. `spent` grows by the work.
void tidy(Trial& trial, const scheduler::Problem& problem, const TrialLimits& limits,
          double& spent);

}  // namespace timeplan
