#include "scheduler/list_search.h"

#include <algorithm>

namespace scheduler {
namespace {

/// By activity, some tens of milliseconds in all: small projects are closed by it, or soon after by
/// the exact core.
constexpr std::int64_t kFirstTicks = 20000;
/// Far: the gap is more than this part of the value.
constexpr std::int64_t kFar = 50;
/// Each turn without a better schedule halves the next, so often at most: proofs need the time.
constexpr int kMostHalvings = 3;
/// Between two looks at the budget, a fraction of a millisecond.
constexpr std::int64_t kSlice = 20000;

}  // namespace

ListSearch::ListSearch(Run& run) : run_(run), list_(list_problem(run.problem(), run.options())) {
  if (list_ && list_->plain) population_.emplace(*list_, run.options().seed);
}

void ListSearch::offer() {
  const Schedule schedule = to_schedule(run_.problem(), *list_, population_->best());
  run_.offer(schedule, evaluate(run_.problem(), schedule));
}

void ListSearch::first() {
  if (!applies()) return;
  run_.budget().spend(population_->run(1));
  offer();
  if (!run_.options().first_only) search(kFirstTicks * list_->count);
}

void ListSearch::improve(std::int64_t ticks) {
  if (!applies()) return;
  // Far from its bound a schedule is better served by the population than by proofs.
  const bool far = kFar * (run_.goal(0) - run_.bounds()[0]) > run_.goal(0);
  const std::int64_t before = run_.goal(0);
  search((far ? 4 * ticks : ticks) >> std::min(idle_, kMostHalvings));
  idle_ = run_.goal(0) < before ? 0 : idle_ + 1;
}

void ListSearch::search(std::int64_t ticks) {
  const std::vector<Time> known = to_starts(*list_, run_.best());
  if (known[static_cast<std::size_t>(list_->goal)] < population_->best_value())
    population_->join(known);
  const std::int64_t end = run_.budget().ticks() + ticks;
  while (run_.budget().ticks() < end && !population_->closed()) {
    const Time before = population_->best_value();
    const std::int64_t spent = population_->run(std::min(kSlice, end - run_.budget().ticks()));
    if (population_->best_value() < before) offer();
    run_.budget().spend(spent);
  }
}

}  // namespace scheduler
