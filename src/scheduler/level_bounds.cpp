#include "scheduler/level_bounds.h"

#include <algorithm>

#include "scheduler/flow_bound.h"
#include "scheduler/queue_bound.h"

namespace scheduler {

std::vector<std::int64_t> level_bounds(const Problem& problem) {
  FlowBound flow(problem);
  std::vector<std::int64_t> result;
  for (const GoalLevel& level : problem.goals)
    result.push_back(std::max(queue_bound(problem, level), flow.of(level)));
  return result;
}

}  // namespace scheduler
