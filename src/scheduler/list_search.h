// Schedules for a run from lists instead of exact search: first ones within milliseconds, then the
// population in turns with the exact core, each starting from what the other found.
#pragma once

#include <cstdint>
#include <optional>

#include "scheduler/list_problem.h"
#include "scheduler/population.h"
#include "scheduler/run.h"

namespace scheduler {

class ListSearch {
 public:
  explicit ListSearch(Run& run);

  /// The problem is a plain project; otherwise the calls below do nothing.
  bool applies() const { return population_.has_value(); }
  /// Before the exact search: a first schedule, then better ones for a moment. Offers to the run.
  void first();
  /// In turns with an exact search that has spent this many ticks.
  void improve(std::int64_t ticks);

 private:
  void search(std::int64_t ticks);
  void offer();

  Run& run_;
  int idle_ = 0;  // turns in a row without a better schedule
  std::optional<ListProblem> list_;
  std::optional<Population> population_;
};

}  // namespace scheduler
