// What an answer of the planner still needs before anybody sees it.
#pragma once

#include <string>
#include <vector>

#include "kitchen/lesson.h"
#include "timeplan/answer.h"

namespace desk {

/// The reader's notes on the lesson and then `notes` go with the answer; a lesson for which only a
/// timeline for every cook works is shown so from here on.
void finish_plan(kitchen::Lesson&, timeplan::Answer&, const std::vector<std::string>& notes);

}  // namespace desk
