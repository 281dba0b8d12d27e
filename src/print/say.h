// The plan as a teacher would say it aloud to a class: does it fit, how likely, the waves with
// their checkpoints, then who, where, when. Plain text, British spelling, kitchen words; figures
// behind the plan only under details.
#pragma once

#include <string>

#include "kitchen/lesson.h"
#include "timeplan/answer.h"

namespace print {

struct SayOptions {
  bool details = false;  ///< how far each goal is from the best possible, runs, seed
  int width = 80;        ///< letters a line; at least 40
  bool colour = false;   ///< terminal colours
};

std::string say(const kitchen::Lesson&, const timeplan::Answer&, const SayOptions&);

}  // namespace print
