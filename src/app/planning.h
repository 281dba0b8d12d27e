// From what was asked to a planned lesson: files or the quick way in, the allergens of the table of
// foods, then the planner. What `plan` and `paper` have in common.
#pragma once

#include "app/commands.h"
#include "base/problem.h"
#include "kitchen/lesson.h"
#include "timeplan/answer.h"

namespace app {

/// The lesson that was asked for, as its file or the quick way in says it.
base::Result<kitchen::Lesson> lesson_of(const PlanAsked&);

/// A lesson ready to be planned: what dishes contain is completed from the table of foods and the
/// labels read where somebody avoids something, and checked again.
struct Ready {
  kitchen::Lesson lesson;
  kitchen::Lesson as_written;            ///< before anything was completed
  std::vector<std::string> label_notes;  ///< which labels were taken as containing what they might
};
base::Result<Ready> ready_lesson(const PlanAsked&);

/// Plans it with a line on the terminal while it takes long, and Ctrl-C for the best so far. A
/// lesson that only works with a timeline for every cook is changed to say so.
timeplan::Answer planned(Ready&, const PlanAsked&);

}  // namespace app
