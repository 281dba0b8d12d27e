// Double justification of a plain project's schedule (K. Li, R. Willis 1992, "An iterative
// scheduling technique for resource-constrained project scheduling"; V. Valls, F. Ballestin, S.
// Quintanilla 2005, "Justification and RCPSP: a technique that pays"): everything as late as it
// goes, latest end first, then everything as early as it goes. Never longer than before.
#pragma once

#include <cstdint>
#include <vector>

#include "scheduler/list_problem.h"
#include "scheduler/schedule_generation.h"

namespace scheduler {

class Justification {
 public:
  /// `list` must be plain; it and `backwards`, its mirrored form, must outlive this.
  Justification(const ListProblem& list, const ListProblem& backwards);

  /// Passes to and fro until one brings nothing. `starts` keeps the last schedule, which is never
  /// worse than before; returns the passes made.
  int improve(std::vector<Time>& starts);

  ScheduleGeneration& forward() { return forward_; }
  ScheduleGeneration& backward() { return backward_; }
  std::int64_t take_work() { return forward_.take_work() + backward_.take_work(); }

 private:
  const ListProblem& list_;
  const ListProblem& backwards_;
  ScheduleGeneration forward_, backward_;
  EndOrder end_order_;
  std::vector<int> order_;
  std::vector<Time> late_, early_;
};

}  // namespace scheduler
