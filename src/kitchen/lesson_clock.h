// Between the seconds of a lesson and the wall clock.
#pragma once

#include <optional>
#include <string>

#include "kitchen/lesson.h"
#include "kitchen/zone.h"

namespace kitchen {

/// The real moment of the opening; nothing if the lesson has no date or its zone is not known.
std::optional<Instant> opening_instant(const Lesson&);

/// A time of the lesson as a lesson file says it: "10:50"; with the date on another day; with the
/// offset from UTC when it is the second of two equal clock times.
std::string file_time(const Lesson&, Seconds since_opening);

}  // namespace kitchen
