// What two searches of one problem tell each other, each from a thread of its own: the best
// schedule, the goals it reached, the bounds and what they rest on. Nothing else passes between
// them, so each can be read as if it were alone.
#pragma once

#include <atomic>
#include <cstdint>
#include <mutex>
#include <vector>

#include "scheduler/run.h"

namespace scheduler {

class Exchange {
 public:
  /// Adds what `run` knows to what is known. Cheap; may be called from anywhere in a search.
  void tell(const Run& run);
  /// Offers `run` what is known and better than its own. Not inside a model's search: the run's
  /// goals may change, and the search has to catch up with them.
  void take(Run& run) const;

  /// All levels are closed, or there is no schedule, or one side has given up: both should end.
  bool over() const { return over_.load(std::memory_order_relaxed); }
  void end() { over_.store(true, std::memory_order_relaxed); }

 private:
  struct Known {
    bool schedule = false, infeasible = false;
    Schedule best;
    std::vector<std::int64_t> values, goals, bounds;  // one a goal level
  };
  void take_schedule(const Run& run);
  void take_bounds(const Run& run);

  mutable std::mutex mutex_;
  Known known_;
  std::atomic<bool> over_{false};
};

}  // namespace scheduler
