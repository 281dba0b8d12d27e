// A plan out of the answer that was kept for machines: when each task starts, who is in which wave,
// and what was to be reached when. Enough to keep it through a change (timeplan/keep.h), also after
// the program was started anew.
#pragma once

#include <optional>

#include "kitchen/json_tree.h"
#include "kitchen/lesson.h"
#include "timeplan/plan.h"

namespace print {

/// `answer`: what answer_json() wrote for this very lesson. Cookers, sinks, units of kit and adults
/// are left open. Nothing when there is no plan in it, or when it names what the lesson does not
/// have.
std::optional<timeplan::Plan> plan_in(const kitchen::Lesson&, const kitchen::Node& answer);

/// Whether that plan has a timeline for every cook.
bool own_timelines_in(const kitchen::Node& answer);

}  // namespace print
