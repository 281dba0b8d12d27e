// "Not in the room today" reaches back to the lessons before: their cloths and trays, kit, sinks
// and air.
//
// "10B at 11:20, nuts not in the room (Leo): 8A made fruit loaf with nuts until 10:15. Replace
// cloths and aprons; full clean of scales and food processor; wipe bays A and B; air the room."
#pragma once

#include <string>
#include <vector>

#include "safety/diets.h"

namespace safety {

struct DayLesson {
  const kitchen::Lesson& lesson;
  const LessonNeeds& needs;
};

/// What an earlier lesson left of something that must not be in the room.
struct Leftover {
  int lesson = 0;  ///< index into the day: who must not have it
  int cook = 0;    ///< of that lesson
  Need need;
  int before = 0;  ///< index into the day: the lesson that brought it
  Stated stated = Stated::kContains;
  std::string since;                 ///< clock time of that lesson's bell: "10:15"
  std::vector<int> dishes;           ///< of the earlier lesson
  std::vector<std::string> replace;  ///< fresh ones: "dish cloths and tea towels"
  std::vector<std::string> clean;    ///< "food processor: full clean, 8 min"
  friend bool operator==(const Leftover&, const Leftover&) = default;
};

/// For each need that reaches the room, every lesson before it on that date in that room (by name)
/// that brings it or may, the latest first. A clean in between is not known here, so none is taken
/// as done. Also what the lesson itself is to ban stands in its conflicts.
std::vector<Leftover> leftovers(const std::vector<DayLesson>&, const Evidence&);

}  // namespace safety
