#include "scheduler/exchange.h"

#include <algorithm>

#include "scheduler/holding.h"

namespace scheduler {

// Bounds that rest on goals the new schedule makes worse are void; those of the new side that hold
// are put in their place by take_bounds().
void Exchange::take_schedule(const Run& run) {
  if (!run.has_schedule()) return;
  const bool better = !known_.schedule || run.goals() < known_.goals ||
                      (run.goals() == known_.goals && run.values() < known_.values);
  if (!better) return;
  known_.bounds.resize(run.goals().size(), 0);
  if (known_.schedule) {
    for (std::size_t l = levels_holding(known_.goals, run.goals()); l < known_.bounds.size(); ++l)
      known_.bounds[l] = 0;
  }
  known_.schedule = true;
  known_.best = run.best();
  known_.values = run.values();
  known_.goals = run.goals();
}

void Exchange::take_bounds(const Run& run) {
  if (!run.has_schedule()) return;
  const std::size_t holding = levels_holding(run.goals(), known_.goals);
  for (std::size_t l = 0; l < holding; ++l)
    known_.bounds[l] = std::max(known_.bounds[l], run.bounds()[l]);
}

void Exchange::tell(const Run& run) {
  const std::lock_guard lock(mutex_);
  known_.infeasible = known_.infeasible || run.is_infeasible();
  take_schedule(run);
  take_bounds(run);
  bool closed = known_.schedule;
  for (std::size_t l = 0; l < known_.goals.size(); ++l)
    closed = closed && known_.bounds[l] >= known_.goals[l];
  if (known_.infeasible || closed) end();
}

void Exchange::take(Run& run) const {
  Known known;
  {
    const std::lock_guard lock(mutex_);
    known = known_;
  }
  if (known.infeasible) run.infeasible();
  if (!known.schedule) return;
  run.offer(known.best, known.values);
  std::vector<std::int64_t> bounds = known.bounds;
  std::fill(bounds.begin() + static_cast<std::ptrdiff_t>(levels_holding(known.goals, run.goals())),
            bounds.end(), 0);
  run.raise(bounds);
}

}  // namespace scheduler
