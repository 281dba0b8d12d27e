// The ratios of a dish as a teacher reads them: which preparations it holds, where each figure lies
// in its band, and what a pupil's change would do.
#pragma once

#include <string>
#include <vector>

#include "kitchen/ratios/change.h"
#include "kitchen/ratios/judge.h"

namespace print {

/// `details`: every ingredient that was counted, the row of the table, its source, and why the
/// preparation was recognised.
std::string say_ratios(const kitchen::Dish&, const std::vector<kitchen::JudgedPreparation>&,
                       bool details);

std::string say_change(const kitchen::ChangeVerdict&, const std::string& words);

}  // namespace print
