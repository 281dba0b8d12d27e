// The changes a teacher can make to a lesson that does not fit, as functions from a lesson to a
// lesson.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "kitchen/lesson.h"

namespace timeplan {

/// One change. `apply` gives nothing when the change makes no sense for the lesson.
struct Change {
  std::string code;  ///< stable: "trios"
  std::string says;  ///< "Work in threes instead of pairs."
  std::function<std::optional<kitchen::Lesson>(const kitchen::Lesson&)> apply;
};

/// All changes worth trying for this lesson, easiest first. Figures in them (how much shorter half
/// a batch is) are common practice, no source.
std::vector<Change> changes(const kitchen::Lesson&);

}  // namespace timeplan
