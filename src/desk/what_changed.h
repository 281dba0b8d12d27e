// What is different between two plans of one lesson, as a teacher who has printed the first would
// want to hear it: seats first, then lines of the printed plan that no longer hold.
#pragma once

#include <string>
#include <vector>

#include "kitchen/lesson.h"
#include "timeplan/answer.h"

namespace desk {

struct WhatChanged {
  std::vector<std::string> says;  ///< one line each; empty when the printed plan still holds
  int seats_moved = 0;            ///< cooks who sit elsewhere
  int lines_moved = 0;            ///< printed lines (what a wave does when) that are gone or new
  friend bool operator==(const WhatChanged&, const WhatChanged&) = default;
};

WhatChanged what_changed(const kitchen::Lesson& before, const timeplan::Answer& old_plan,
                         const kitchen::Lesson& after, const timeplan::Answer& new_plan);

/// The printed lines of a plan: for each wave "09:25 Soften veg", each once.
std::vector<std::string> printed_lines(const kitchen::Lesson&, const timeplan::Plan&);

}  // namespace desk
