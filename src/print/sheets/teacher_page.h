// The teacher's page: what to say aloud and where to stand, on one sheet in the hand. Waves as a
// picture, checkpoints, stops and gates, last safe starts with what to do instead, where to stand,
// and lines to fill in for what no program may know: allergies and where the injector is.
#pragma once

#include "print/sheets/signs.h"

namespace print::sheets {

/// For a lesson that does not fit: why, and what would help.
void draw_teacher_page(Document&, const Planned&);
std::string pdf_of_teacher_page(const Planned&);

/// Minutes in which a whole wave only waits, at least three at a time: time for a question.
struct Wait {
  Seconds from{0}, to{0};
  int wave = 0;
  std::string meanwhile;  ///< "simmer soup"
};
std::vector<Wait> waiting_minutes(const kitchen::Lesson&, const Plan&);

}  // namespace print::sheets
