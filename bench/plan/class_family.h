// Generated lessons of class size, for measuring: four in five cook one dish in waves, the rest two
// dishes a cook; singles, pairs and threes; few and many cookers and sinks; a register, often a
// demonstration, sometimes a break or a stop; lessons that are roomy, tight, or too short.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "kitchen/lesson.h"

namespace bench {

struct ClassLesson {
  std::string what;      ///< "17 cooks, leek-soup-scones, 8 cookers, 4 sinks, 85 min"
  bool everyday = true;  ///< one dish
  kitchen::Lesson lesson;
};

/// `count` lessons of 8 to 30 cooks, or all of `cooks`; the same seed gives the same lessons. Reads
/// dishes from demo/. Throws std::runtime_error when a dish cannot be read.
std::vector<ClassLesson> class_family(int count, std::uint64_t seed, int cooks = 0);

}  // namespace bench
