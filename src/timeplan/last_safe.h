// Last safe starts (rule Y13): the latest minute a deciding step may begin so that the rest still
// meets the bell, with everything that was to end before its planned start kept as planned; and
// what to do instead.
#pragma once

#include "timeplan/answer.h"
#include "timeplan/trial.h"

namespace timeplan {

/// For each wave (or cook, with own timelines: only the few with the least to spare) the pans and
/// tins that go on, hot oil, and the last washing up. One engine run a step: it makes the start as
/// late as it can be, with proof; a step whose run is not proved within `each` is left out rather
/// than guessed.
std::vector<LastSafeStart> last_safe_starts(const kitchen::Lesson&, const Trial&, const Plan&,
                                            const TrialLimits& each, double& spent);

}  // namespace timeplan
