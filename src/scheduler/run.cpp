#include "scheduler/run.h"

#include <algorithm>
#include <stdexcept>

#include "scheduler/holding.h"

namespace scheduler {

Run::Run(const Problem& problem, const Options& options)
    : problem_(problem),
      options_(options),
      budget_(options.seconds, options.work_limit, options.stop) {
  outcome_.bounds.assign(problem.goals.size(), 0);
  floor_ = outcome_.bounds;
  budget_.limit_memory(std::int64_t{options.memory_mb} * 1024 * 1024);
}

// What has been reached may end the run early.
void Run::settle_limit() {
  if (!accepted_ || goal_.empty()) return;
  if (outcome_.values[0] > outcome_.bounds[0]) return;
  std::int64_t widest = 0;
  for (std::size_t l = 1; l < goal_.size(); ++l)
    widest = std::max(widest, outcome_.values[l] - outcome_.bounds[l]);
  if (widest <= options_.close_enough) budget_.end_by(options_.close_after);
}

// Lexicographic with bands: a level counts as better when below its best value so far, as worse
// when it leaves its band; within the band the later levels decide, and without any difference
// there the earlier ones do.
bool Run::better(const std::vector<std::int64_t>& values) const {
  for (std::size_t l = 0; l < values.size(); ++l) {
    if (values[l] < goal_[l]) return true;
    if (values[l] > goal_[l] + problem_.goals[l].band) return false;
    bool later = false;
    for (std::size_t k = l + 1; k < values.size(); ++k)
      later = later || values[k] != outcome_.values[k];
    if (!later) return values[l] < outcome_.values[l];
  }
  return false;
}

void Run::take_goals(const std::vector<std::int64_t>& goals) {
  for (std::size_t l = levels_holding(goal_, goals); l < goals.size(); ++l)
    outcome_.bounds[l] = floor_[l];
  goal_ = goals;
}

bool Run::offer(const Schedule& schedule, const std::vector<std::int64_t>& values) {
  if (has_schedule() && !better(values)) return false;
  const std::vector<std::string> breaches = check(problem_, schedule);
  if (!breaches.empty())
    throw std::logic_error("the engine made a schedule that breaks a rule: " + breaches.front());
  for (std::size_t i = 0; i < options_.fixed.size(); ++i) {
    if (options_.fixed[i] && *options_.fixed[i] != schedule[i])
      throw std::logic_error("a fixed activity was moved");
  }
  if (!accepted_) {
    goal_ = values;
    outcome_.first_seconds = budget_.elapsed();
  }
  accepted_ = true;
  for (std::size_t l = 0; l < values.size(); ++l) {
    if (values[l] >= goal_[l]) continue;
    std::vector<std::int64_t> goals = goal_;
    std::copy(values.begin() + static_cast<std::ptrdiff_t>(l), values.end(),
              goals.begin() + static_cast<std::ptrdiff_t>(l));
    take_goals(goals);
    break;
  }
  outcome_.best = schedule;
  outcome_.values = values;
  outcome_.best_seconds = budget_.elapsed();
  if (options_.on_better) options_.on_better(schedule, values);
  settle_limit();
  return true;
}

void Run::offer_start() {
  if (!options_.start_from || !check(problem_, *options_.start_from).empty()) return;
  for (std::size_t i = 0; i < options_.fixed.size(); ++i) {
    if (options_.fixed[i] && *options_.fixed[i] != (*options_.start_from)[i]) return;
  }
  offer(*options_.start_from, evaluate(problem_, *options_.start_from));
}

void Run::raise(const std::vector<std::int64_t>& bounds) {
  bool rose = false;
  for (std::size_t l = 0; l < bounds.size(); ++l) {
    rose = rose || bounds[l] > outcome_.bounds[l];
    outcome_.bounds[l] = std::max(outcome_.bounds[l], bounds[l]);
  }
  if (rose && options_.on_bound && outcome_.bounds != told_) {
    told_ = outcome_.bounds;
    options_.on_bound(told_);
  }
  settle_limit();
}

void Run::raise_floor(const std::vector<std::int64_t>& floor) {
  for (std::size_t l = 0; l < floor.size(); ++l) floor_[l] = std::max(floor_[l], floor[l]);
  raise(floor_);
}

bool Run::closed() const {
  for (std::size_t l = 0; l < goal_.size(); ++l) {
    if (outcome_.bounds[l] < goal_[l]) return false;
  }
  return has_schedule();
}

Outcome Run::outcome() const {
  Outcome now = outcome_;
  now.ticks = budget_.ticks();
  now.conflicts = budget_.conflicts();
  now.seconds = budget_.elapsed();
  now.status = infeasible_ ? Status::kInfeasible : accepted_ ? Status::kFeasible : Status::kUnknown;
  bool closed = accepted_;
  for (std::size_t l = 0; l < now.bounds.size(); ++l) {
    if (!accepted_) break;
    now.bounds[l] = std::min(now.bounds[l], now.values[l]);
    closed = closed && (all_proved_ || now.bounds[l] >= goal_[l]);
    now.proved.push_back(closed);
  }
  if (closed && !infeasible_ && !options_.first_only) now.status = Status::kOptimal;
  if (!accepted_) now.proved.assign(problem_.goals.size(), infeasible_);
  return now;
}

}  // namespace scheduler
