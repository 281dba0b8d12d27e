// Branching and restarts. First in order of least start (the serial schedule generation scheme as a
// branching rule), later by activity of conflicts with the saved solution as the first guess, with
// turns of what many wait for.
#include <algorithm>

#include "base/index.h"

#include "scheduler/core.h"

namespace scheduler {
namespace {
using base::at;

constexpr std::int64_t kRestartUnit = 100;
/// Restarts from one turn of the list rule to the next.
constexpr std::int64_t kListTurn = 16;
/// The same for what many wait for.
constexpr std::int64_t kHubTurn = 3;

/// The restart sequence 1 1 2 1 1 2 4 ... (M. Luby, A. Sinclair, D. Zuckerman 1993).
std::int64_t luby(std::int64_t index) {
  std::int64_t size = 1, power = 0;
  while (size < index + 1) {
    ++power;
    size = 2 * size + 1;
  }
  while (size - 1 != index) {
    size = (size - 1) / 2;
    --power;
    index %= size;
  }
  return std::int64_t{1} << power;
}
}  // namespace

void Core::set_branching(std::vector<BranchItem> items) {
  items_ = std::move(items);
  for (const BranchItem& item : items_) {
    if (item.hub && item.start_side >= 0) hubs_.push_back(item.start_side);
  }
}

Literal Core::towards(int variable, int value) const {
  const int low_bound = low(2 * variable), high_bound = high(2 * variable);
  if (value <= low_bound) return at_most(variable, low_bound);
  if (value >= high_bound) return at_least(variable, high_bound);
  // First one side of the saved value, at the next decision the other.
  return at_least(variable, value);
}

Literal Core::undecided_choice(const BranchItem& item) const {
  Literal first{-1, 0};
  for (const Literal choice : item.choices) {
    if (is_true(choice) || is_false(choice)) continue;
    if (phase_[at(choice.side / 2)] >= choice.value) return choice;
    if (first.side < 0) first = choice;
  }
  return first;
}

Literal Core::pick_earliest() {
  const BranchItem* best = nullptr;
  int best_low = 0, best_high = 0;
  for (const BranchItem& item : items_) {
    if (is_false(item.present)) continue;
    if (!is_true(item.present)) return !item.present;
    const bool start_open = item.start_side >= 0 && low(item.start_side) < high(item.start_side);
    const bool end_open = item.end_side >= 0 && low(item.end_side) < high(item.end_side);
    if (!start_open && !end_open && undecided_choice(item).side < 0) continue;
    const int low_start = item.start_side >= 0 ? low(item.start_side) : 0;
    const int high_start = item.start_side >= 0 ? high(item.start_side) : 0;
    if (best == nullptr || low_start < best_low ||
        (low_start == best_low && high_start < best_high)) {
      best = &item;
      best_low = low_start;
      best_high = high_start;
    }
  }
  budget_.spend(static_cast<std::int64_t>(items_.size() / 4));
  if (best == nullptr) return {-1, 0};
  const Literal choice = undecided_choice(*best);
  if (choice.side >= 0) return choice;
  if (best->start_side >= 0 && low(best->start_side) < high(best->start_side)) {
    return !Literal{best->start_side, low(best->start_side) + 1};
  }
  return !Literal{best->end_side, low(best->end_side) + 1};
}

// Halves the widest of them: when a class works in step, its few common starts decide the rest, and
// what is learnt below them speaks of them alone.
Literal Core::pick_hub() {
  budget_.spend(static_cast<std::int64_t>(hubs_.size() / 4));
  int widest = -1, width = 0;
  for (const int side : hubs_) {
    const int w = high(side) - low(side);
    if (w > width && !is_false(owner_[at(side / 2)])) {
      width = w;
      widest = side;
    }
  }
  if (widest < 0) return {-1, 0};
  return !Literal{widest, low(widest) + width / 2 + 1};
}

Literal Core::pick_active() {
  while (!cuts_.empty()) {
    const CutOrder::Cut cut = cuts_.top();
    const Literal above = at_least(cut.variable, cut.value);
    const bool absent = is_false(owner_[at(cut.variable)]);
    if (!absent && !is_true(above) && !is_false(above)) {
      budget_.spend(1);
      // Without a schedule there is nothing to guess from: as early as can be.
      if (!have_solution_) return towards(cut.variable, phase_[at(cut.variable)]);
      return phase_[at(cut.variable)] >= cut.value ? above : !above;
    }
    // Comes back when the level that decided it is left.
    const int name = cuts_.pop();
    const int step = absent ? static_cast<int>(trail_.size()) - 1
                            : position(is_true(above) ? above : !above);
    const int by = step < 0 ? 0 : trail_[at(step)].level;
    if (at(by) >= closed_.size()) closed_.resize(at(by) + 1);
    closed_[at(by)].push_back(name);
  }
  return {-1, 0};
}

// Looks on where it found the last one, as long as that one's level stands.
Literal Core::pick_overlooked() {
  const int from = overlooked_.empty() ? 0 : overlooked_.back().variable;
  const int count = variable_count();
  for (int variable = from; variable < count; ++variable) {
    if (!decide_[at(variable)] || fixed(variable) || is_false(owner_[at(variable)])) continue;
    budget_.spend((variable - from) / 16);
    overlooked_.push_back({level() + 1, variable});
    return towards(variable, phase_[at(variable)]);
  }
  budget_.spend((count - from) / 16);
  return {-1, 0};
}

Literal Core::pick() {
  Literal decision{-1, 0};
  if (hubs_first_) decision = pick_hub();
  if (decision.side < 0 && !earliest_first_) decision = pick_active();
  if (decision.side < 0) decision = pick_earliest();
  if (decision.side < 0 && earliest_first_) decision = pick_active();
  if (decision.side < 0) decision = pick_overlooked();
  return decision;
}

void Core::store_solution() {
  const int count = variable_count();
  solution_.resize(at(count));
  for (int variable = 0; variable < count; ++variable) {
    const int value = high_[at(variable)] ? high(2 * variable) : low(2 * variable);
    solution_[at(variable)] = value;
    if (decide_[at(variable)]) phase_[at(variable)] = value;
  }
  have_solution_ = true;
  if (plant_found_) planted_.push_back(solution_);
}

bool Core::solution_holds(Literal literal) const {
  const int value = solution_[at(literal.side / 2)];
  return (literal.side % 2 == 0 ? value : -value) >= literal.value;
}

bool Core::probe(const std::vector<Literal>& assumptions) {
  backtrack(0);
  if (broken_) return false;
  if (!propagate()) {
    broken_ = true;
    if (proof_ != nullptr) tell_refuted(conflict_, nullptr);
    return false;
  }
  for (const Literal assumption : assumptions) {
    if (is_false(assumption)) {
      if (proof_ != nullptr) tell_refuted({!assumption}, &assumption);
      return false;
    }
    push_level();
    if (!enqueue(assumption, {}) || !propagate()) {
      if (proof_ != nullptr) tell_refuted(conflict_, nullptr);
      return false;
    }
  }
  return true;
}

Verdict Core::search(const std::vector<Literal>& assumptions, std::int64_t conflict_limit) {
  core_.clear();
  backtrack(0);
  if (broken_) return Verdict::kRefuted;
  const std::int64_t end = conflicts_ + conflict_limit;
  std::int64_t restart_at = conflicts_ + kRestartUnit * luby(restarts_);
  for (;;) {
    if (!propagate()) {
      budget_.spend(5);
      if (!resolve_conflict()) {
        backtrack(0);
        broken_ = true;
        return Verdict::kRefuted;
      }
      continue;
    }
    if (conflicts_ >= end) {
      backtrack(0);
      return Verdict::kGaveUp;
    }
    if (conflicts_ >= restart_at) {
      ++restarts_;
      restart_at = conflicts_ + kRestartUnit * luby(restarts_);
      // Alternating keeps both the early drive of the list rule and the focus of the conflicts. The
      // list rule has had its turn when there is no schedule yet: latest lags defeat it.
      hubs_first_ = restarts_ % kHubTurn == 0;
      earliest_first_ = have_solution_ && restarts_ % kListTurn == 0;
      backtrack(std::min(level(), static_cast<int>(assumptions.size())));
      if (conflicts_ >= next_clean_ || budget_.crowded()) clean_clauses();
      continue;
    }
    Literal decision{-1, 0};
    while (level() < static_cast<int>(assumptions.size())) {
      const Literal assumption = assumptions[at(level())];
      if (is_true(assumption)) {
        push_level();
        continue;
      }
      if (is_false(assumption)) {
        analyze_final(assumption);
        backtrack(0);
        return Verdict::kRefuted;
      }
      decision = assumption;
      break;
    }
    if (decision.side < 0) decision = pick();
    if (decision.side < 0) {
      store_solution();
      backtrack(0);
      return Verdict::kSolution;
    }
    push_level();
    enqueue(decision, {});
    budget_.spend(1);
  }
}

}  // namespace scheduler
