// What is different between two plans of one lesson, as a teacher who has printed the first would
// want to hear it: seats first, then lines of the printed plan that no longer hold.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "kitchen/lesson.h"
#include "timeplan/answer.h"

namespace desk {

/// What a printed plan says, without anything that cannot be read off the paper.
struct Printed {
  std::map<std::string, std::string> seats;  ///< cook -> place
  int waves = 0;                             ///< 0: there is no plan
  std::vector<std::string> lines;            ///< "Wave 1: 09:25 Soften veg (DH)", sorted, each once
  friend bool operator==(const Printed&, const Printed&) = default;
};

Printed printed(const kitchen::Lesson&, const timeplan::Answer&);

struct WhatChanged {
  std::vector<std::string> says;  ///< one line each; empty when the printed plan still holds
  int seats_moved = 0;            ///< cooks who sit elsewhere
  int lines_moved = 0;            ///< printed lines that are gone or new, whichever are more
  friend bool operator==(const WhatChanged&, const WhatChanged&) = default;
};

WhatChanged what_changed(const Printed& before, const Printed& after);

}  // namespace desk
