// From above: solution-guided descent. From below: cores over the parts of the level, each core
// replaced by the sum of its members with a bound one higher (A. Morgado, C. Dodaro, J.
// Marques-Silva 2014, "Core-guided MaxSAT with soft cardinality constraints"; from memory), on
// integer parts instead of unit clauses.
#include "scheduler/levels.h"

#include <algorithm>
#include <limits>

#include "scheduler/holding.h"
#include "scheduler/solve.h"

namespace scheduler {
namespace {
constexpr std::int64_t kFirstSlice = 150;
constexpr std::int64_t kProbeConflicts = 40;
constexpr std::int64_t kShrinkConflicts = 30;
}  // namespace

LevelSearch::LevelSearch(const Problem& problem, Model& model, Report report, Raised on_bound)
    : problem_(problem), model_(model), report_(std::move(report)), on_bound_(std::move(on_bound)) {
  const std::size_t count = problem.goals.size();
  goal_.assign(count, std::numeric_limits<std::int64_t>::max());
  for (const LevelModel& level : model.levels()) floor_.push_back(level.constant);
  bounds_ = floor_;
  parts_.resize(count);
}

// Where bounds become void the parts do as well.
void LevelSearch::set_goals(const std::vector<std::int64_t>& goals) {
  for (std::size_t l = levels_holding(goal_, goals); l < goals.size(); ++l) {
    bounds_[l] = floor_[l];
    parts_[l].stale = true;
  }
  goal_ = goals;
  for (std::size_t l = 0; l < goal_.size(); ++l) bounds_[l] = std::min(bounds_[l], goal_[l]);
}

void LevelSearch::start_from(const Schedule& schedule, const std::vector<std::int64_t>& goals) {
  best_ = schedule;
  values_ = evaluate(problem_, schedule);
  set_goals(goals);
  model_.guide(schedule);
}

std::vector<Literal> LevelSearch::assumptions(std::size_t level) const {
  std::vector<Literal> result = outer_;
  if (alone_) return result;
  for (std::size_t l = 0; l < level; ++l) {
    result.push_back(model_.at_most_value(l, goal_[l] + problem_.goals[l].band));
  }
  return result;
}

void LevelSearch::take_solution() {
  best_ = model_.decode();
  values_ = evaluate(problem_, best_);
  if (alone_) {
    for (std::size_t l = 0; l < goal_.size(); ++l) goal_[l] = std::min(goal_[l], values_[l]);
    return;
  }
  // A level counts as reached only while all before it keep within their bands.
  std::vector<std::int64_t> goals = goal_;
  for (std::size_t l = 0; l < goals.size(); ++l) {
    if (values_[l] >= goals[l]) {
      if (values_[l] > goals[l] + problem_.goals[l].band) goals[l] = values_[l];
      continue;
    }
    for (std::size_t k = l; k < goals.size(); ++k) goals[k] = values_[k];
    break;
  }
  set_goals(goals);
  if (report_) report_(best_, values_);
}

Verdict LevelSearch::first(std::int64_t conflict_limit) {
  const Verdict verdict = model_.core().search(outer_, conflict_limit);
  if (verdict == Verdict::kSolution) take_solution();
  return verdict;
}

void LevelSearch::raise(std::size_t level, std::int64_t bound) {
  if (parts_[level].stale) return;
  const std::int64_t raised = std::min(std::max(bounds_[level], bound), goal_[level]);
  if (raised <= bounds_[level]) return;
  bounds_[level] = raised;
  if (on_bound_) on_bound_(bounds_);
}

void LevelSearch::take_bounds(const std::vector<std::int64_t>& bounds) {
  for (std::size_t l = 0; l < bounds.size(); ++l)
    bounds_[l] = std::min(std::max(bounds_[l], bounds[l]), goal_[l]);
}

// What propagation alone knows of every level, before the first of them takes all the time.
void LevelSearch::raise_from_root() {
  if (rooted_) return;
  rooted_ = true;
  if (model_.core().probe(outer_)) {
    for (std::size_t l = 0; l < goal_.size(); ++l) {
      const LevelModel& level = model_.levels()[l];
      if (level.objective < 0) continue;
      floor_[l] = level.constant + model_.core().low(2 * level.objective);
      raise(l, floor_[l]);
    }
  }
  model_.core().retract();
}

// Told before the first level takes all the time.
void LevelSearch::raise_by_propagation() {
  raise_from_root();
  for (std::size_t l = 1; l < goal_.size(); ++l) {
    const LevelModel& level = model_.levels()[l];
    if (level.objective < 0 || proved(l)) continue;
    if (parts_[l].stale) parts_[l] = Parts{};
    if (model_.core().probe(assumptions(l)))
      raise(l, level.constant + model_.core().low(2 * level.objective));
    model_.core().retract();
  }
}

bool LevelSearch::round(std::int64_t conflicts_a_level, std::int64_t ticks, From from) {
  from_ = from;
  end_ = ticks == kNoEnd ? kNoEnd : model_.core().ticks() + ticks;
  raise_by_propagation();
  bool all = true;
  for (std::size_t l = 0; l < goal_.size(); ++l) {
    if (!proved(l) && !over()) minimise(l, conflicts_a_level);
    all = all && proved(l);
  }
  return all;
}

bool LevelSearch::minimise_alone(std::size_t level, std::int64_t conflict_limit) {
  alone_ = true;
  const bool done = minimise(level, conflict_limit);
  alone_ = false;
  return done;
}

bool LevelSearch::minimise(std::size_t level, std::int64_t conflict_limit) {
  if (parts_[level].stale) parts_[level] = Parts{};
  if (!model_.core().probe(assumptions(level))) {
    model_.core().retract();
    raise(level, goal_[level]);
    return true;
  }
  const int objective = model_.levels()[level].objective;
  const std::int64_t constant = model_.levels()[level].constant;
  const std::int64_t low = constant + (objective >= 0 ? model_.core().low(2 * objective) : 0);
  model_.core().retract();
  raise(level, low);
  const std::int64_t end = model_.core().conflicts() + conflict_limit;
  std::int64_t slice = std::min(kFirstSlice, conflict_limit);
  while (!proved(level) && model_.core().conflicts() < end && !over()) {
    if (parts_[level].stale) parts_[level] = Parts{};
    if (from_ != From::kAbove) from_below(level, slice);
    if (proved(level)) break;
    if (from_ != From::kBelow) descend(level, slice);
    slice += slice / 2;
  }
  return proved(level);
}

// Better schedules as long as there are: in strides that double with each success, because a
// solution near the saved one is rarely much better than it has to be.
void LevelSearch::descend(std::size_t level, std::int64_t conflict_limit) {
  std::int64_t stride = 1;
  // A sum over many parts falls by ones: long strides there only cost conflicts.
  const bool one_part = model_.levels()[level].softs.size() == 1;
  while (!proved(level) && !over()) {
    const std::int64_t room = goal_[level] - bounds_[level];
    stride = one_part ? std::max<std::int64_t>(1, std::min(stride, room / 4)) : 1;
    const std::int64_t limit = stride > 1 ? conflict_limit / 2 : conflict_limit;
    if (from_above(level, goal_[level] - stride, limit)) {
      stride *= 2;
    } else if (stride == 1) {
      return;
    } else {
      stride /= 4;
    }
  }
}

// True when a better schedule was found.
bool LevelSearch::from_above(std::size_t level, std::int64_t target, std::int64_t conflict_limit) {
  if (target < bounds_[level]) return false;
  std::vector<Literal> tried = assumptions(level);
  tried.push_back(model_.at_most_value(level, target));
  const Verdict verdict = model_.core().search(tried, conflict_limit);
  if (verdict == Verdict::kRefuted) raise(level, target + 1);
  if (verdict != Verdict::kSolution) return false;
  take_solution();
  return true;
}

void LevelSearch::prepare(std::size_t level) {
  Parts& parts = parts_[level];
  if (parts.ready) return;
  parts.ready = true;
  for (const Soft& soft : model_.levels()[level].softs) {
    parts.list.push_back({soft.variable, soft.weight, model_.core().root_low(2 * soft.variable)});
  }
}

std::int64_t LevelSearch::sum(std::size_t level) const {
  std::int64_t total = model_.levels()[level].constant;
  for (const Part& part : parts_[level].list) total += part.weight * part.bound;
  return total;
}

// Each part alone first: cores of one member raise the bound without new sums.
bool LevelSearch::probe_parts(std::size_t level, std::int64_t end) {
  Parts& parts = parts_[level];
  for (; parts.probed < parts.list.size(); ++parts.probed) {
    Part& part = parts.list[parts.probed];
    for (;;) {
      if (model_.core().conflicts() >= end || over()) return false;
      std::vector<Literal> tried = assumptions(level);
      tried.push_back(at_most(part.variable, part.bound));
      if (!model_.core().probe(tried)) {
        model_.core().retract();
        ++part.bound;
        continue;
      }
      model_.core().retract();
      const Verdict verdict = model_.core().search(tried, kProbeConflicts);
      if (verdict == Verdict::kSolution) take_if_better(level);
      if (verdict != Verdict::kRefuted) break;
      ++part.bound;
    }
  }
  return true;
}

// Solutions of a probe keep the levels before, but may be worse at this one.
void LevelSearch::take_if_better(std::size_t level) {
  const std::vector<std::int64_t> found = evaluate(problem_, model_.decode());
  if (found[level] < goal_[level]) take_solution();
}

std::vector<std::size_t> LevelSearch::members(const Parts& parts) const {
  std::vector<std::size_t> result;
  for (const Literal literal : model_.core().core()) {
    for (std::size_t i = 0; i < parts.list.size(); ++i) {
      const Part& part = parts.list[i];
      if (part.weight > 0 && at_most(part.variable, part.bound) == literal) {
        result.push_back(i);
        break;
      }
    }
  }
  std::sort(result.begin(), result.end());
  result.erase(std::unique(result.begin(), result.end()), result.end());
  return result;
}

void LevelSearch::shrink(std::size_t level, std::vector<std::size_t>& core) {
  const Parts& parts = parts_[level];
  for (std::size_t i = 0; i < core.size() && core.size() > 1;) {
    std::vector<Literal> tried = assumptions(level);
    for (std::size_t k = 0; k < core.size(); ++k) {
      if (k != i) tried.push_back(at_most(parts.list[core[k]].variable, parts.list[core[k]].bound));
    }
    const Verdict verdict = model_.core().search(tried, kShrinkConflicts);
    if (verdict == Verdict::kSolution) take_if_better(level);
    if (verdict == Verdict::kRefuted) {
      const std::vector<std::size_t> smaller = members(parts);
      if (smaller.empty()) return;
      core = smaller;
      i = std::min(i, core.size());
    } else {
      ++i;
    }
  }
}

void LevelSearch::relax(Parts& parts, const std::vector<std::size_t>& core) {
  if (core.size() == 1) {
    ++parts.list[core[0]].bound;
    return;
  }
  std::int64_t least = parts.list[core[0]].weight;
  for (const std::size_t i : core) least = std::min(least, parts.list[i].weight);
  int bound = 1;
  std::vector<int> variables;
  for (const std::size_t i : core) {
    Part& part = parts.list[i];
    bound += part.bound;
    variables.push_back(part.variable);
    // What the new sum takes over is counted there; the part keeps the rest of its weight.
    part.weight -= least;
  }
  parts.list.push_back({model_.add_sum(variables), least, bound});
}

void LevelSearch::from_below(std::size_t level, std::int64_t conflict_limit) {
  prepare(level);
  Parts& parts = parts_[level];
  const std::int64_t end = model_.core().conflicts() + conflict_limit;
  if (!probe_parts(level, end)) return raise(level, sum(level));
  raise(level, sum(level));
  while (!proved(level) && model_.core().conflicts() < end && !over()) {
    std::vector<Literal> tried = assumptions(level);
    for (const Part& part : parts.list) {
      if (part.weight > 0) tried.push_back(at_most(part.variable, part.bound));
    }
    const Verdict verdict = model_.core().search(tried, end - model_.core().conflicts());
    if (verdict == Verdict::kGaveUp) return;
    if (verdict == Verdict::kSolution) {
      take_solution();
      raise(level, values_[level]);
      return;
    }
    std::vector<std::size_t> core = members(parts);
    if (core.empty()) return raise(level, goal_[level]);
    shrink(level, core);
    relax(parts, core);
    raise(level, sum(level));
  }
}

}  // namespace scheduler
