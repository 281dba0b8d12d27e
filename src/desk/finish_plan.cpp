#include "desk/finish_plan.h"

#include "kitchen/check_lesson.h"

namespace desk {

void finish_plan(kitchen::Lesson& lesson, timeplan::Answer& answer,
                 const std::vector<std::string>& notes) {
  answer.notes = kitchen::notes(lesson);
  answer.notes.insert(answer.notes.end(), notes.begin(), notes.end());
  if (answer.own_timelines_needed) lesson.timelines = kitchen::Timelines::kOwn;
}

}  // namespace desk
