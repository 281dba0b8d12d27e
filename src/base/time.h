// Time inside a lesson: whole seconds since its opening instant (rule T1). Clock times and zones
// live only where files are read and plans are printed, so a clock change inside a lesson cannot
// touch a plan.
#pragma once

#include <chrono>
#include <cstdint>

namespace base {

/// Seconds since the lesson's opening, or a length of time. Never negative in a plan.
using Seconds = std::chrono::seconds;
using Minutes = std::chrono::minutes;

/// Plans live on a grid of one minute (rule T3).
inline constexpr Seconds kGrid{60};

/// Up to the next whole minute: durations, least waits, change-over times, window starts.
constexpr Seconds grid_up(Seconds t) {
  const auto r = t % kGrid;
  return r.count() > 0 ? t - r + kGrid : t - r;
}

/// Down to the whole minute: longest waits and window ends.
constexpr Seconds grid_down(Seconds t) {
  const auto r = t % kGrid;
  return r.count() < 0 ? t - r - kGrid : t - r;
}

constexpr Seconds minutes(std::int64_t n) { return Seconds{n * 60}; }

}  // namespace base
