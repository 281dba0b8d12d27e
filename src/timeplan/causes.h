// Why a lesson does not fit: a minimal set of reasons, each with its figures. A set is minimal when
// the lesson would fit (or could no longer be refuted) with any one of them away.
#pragma once

#include "timeplan/answer.h"
#include "timeplan/trial.h"

namespace timeplan {

struct Causes {
  std::vector<Cause> causes;
  bool minimal = true;
};

/// Leaves out one family of constraints after another and asks whether it still cannot be done;
/// what cannot be left out is a cause. The method of the dish itself and the bell are always among
/// the reasons. `spent` grows by the work.
Causes causes(const kitchen::Lesson&, const std::vector<int>& wave_of_cook, const TrialLimits& each,
              double& spent);

}  // namespace timeplan
