// Which bounds outlive a change of the best values.
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

namespace scheduler {

/// A bound speaks of schedules that are no worse on the levels before it. Of bounds proved while
/// the levels' values were `then`, so many from the front hold now: those up to the first level
/// that got worse. A better value on one level may cost the levels after it, and then more
/// schedules are "no worse before" than when the levels behind that one were bounded: those bounds
/// are void.
inline std::size_t levels_holding(const std::vector<std::int64_t>& then,
                                  const std::vector<std::int64_t>& now) {
  for (std::size_t l = 0; l < then.size(); ++l) {
    if (now[l] > then[l]) return l + 1;
  }
  return then.size();
}

}  // namespace scheduler
