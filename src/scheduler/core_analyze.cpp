// Conflict analysis: first unique implication point, minimisation, cores over assumptions, cleaning
// of the clause set. (J. Marques-Silva, K. Sakallah 1999; N. Een, N. Sorensson 2003; O. Ohrimenko,
// P. Stuckey, M. Codish 2009; from memory.)
#include <algorithm>
#include <stdexcept>
#include <string>

#include "base/index.h"
#include "scheduler/core.h"
#include "scheduler/mutant.h"

namespace scheduler {
namespace {
using base::at;
constexpr int kMinimiseDepth = 30;
}  // namespace

void Core::bump(Literal literal) {
  const int variable = literal.side / 2;
  cuts_.bump(variable, literal.side % 2 == 0 ? literal.value : 1 - literal.value);
}

void Core::mark(Literal literal, int at_level) {
  if (!is_true(literal)) throw std::logic_error("an explanation with a literal that is not true");
  const int step = position(literal);
  if (step < 0 || trail_[at(step)].level == 0) return;
  if (step >= newest_) throw std::logic_error("an explanation younger than its consequence");
  bump(literal);
  if (marked_[at(step)] == stamp_) {
    need_[at(step)] = std::max(need_[at(step)], literal.value);
    return;
  }
  marked_[at(step)] = stamp_;
  need_[at(step)] = literal.value;
  if (trail_[at(step)].level == at_level) {
    ++counter_;
  } else {
    lower_.push_back(step);
  }
}

void Core::analyze() {
  const std::size_t size = trail_.size();
  if (marked_.size() < size) {
    marked_.resize(size, 0);
    need_.resize(size, 0);
    proven_.resize(size, 0);
    hopeless_.resize(size, 0);
  }
  ++stamp_;
  counter_ = 0;
  lower_.clear();
  const int top = level();
  newest_ = static_cast<int>(size);
  for (const Literal literal : conflict_) mark(literal, top);
  int step = static_cast<int>(size);
  for (;;) {
    do {
      --step;
    } while (marked_[at(step)] != stamp_ || trail_[at(step)].level != top);
    if (counter_ == 1) break;
    scratch_.clear();
    explain(trail_[at(step)], need_[at(step)], scratch_);
    budget_.spend(1 + static_cast<std::int64_t>(scratch_.size()));
    if (trail_[at(step)].reason.why == Why::kClause)
      clauses_[at(trail_[at(step)].reason.index)].used = conflicts_;
    marked_[at(step)] = 0;
    --counter_;
    newest_ = step;
    for (const Literal literal : scratch_) mark(literal, top);
  }
  minimise();
  assemble(step);
}

void Core::minimise() {
  std::sort(lower_.begin(), lower_.end());
  std::vector<int> kept;
  for (const int step : lower_) {
    const Step& entry = trail_[at(step)];
    bool drop = entry.reason.why != Why::kNone;
    if (drop) {
      std::vector<Literal> reason;
      explain(entry, need_[at(step)], reason);
      spoil(Site::kMinimise, reason);
      for (const Literal literal : reason) {
        if (!redundant(literal, 0)) {
          drop = false;
          break;
        }
      }
    }
    if (!drop) kept.push_back(step);
  }
  lower_ = std::move(kept);
}

bool Core::redundant(Literal literal, int depth) {
  const int step = position(literal);
  if (step < 0 || trail_[at(step)].level == 0) return true;
  // Only a mark on the very same step counts: a later, stronger bound of the same side could itself
  // have been dropped because of this one.
  if (marked_[at(step)] == stamp_ && need_[at(step)] >= literal.value) return true;
  const Step& entry = trail_[at(step)];
  if (proven_[at(step)] == stamp_) return true;
  if (hopeless_[at(step)] == stamp_ || entry.reason.why == Why::kNone || depth >= kMinimiseDepth)
    return false;
  std::vector<Literal> reason;
  // Explained at full strength, so that the memo holds for every value of this step.
  explain(entry, entry.after, reason);
  spoil(Site::kRedundant, reason);
  budget_.spend(1 + static_cast<std::int64_t>(reason.size()));
  for (const Literal other : reason) {
    if (redundant(other, depth + 1)) continue;
    hopeless_[at(step)] = stamp_;
    return false;
  }
  proven_[at(step)] = stamp_;
  return true;
}

void Core::assemble(int uip) {
  learnt_.clear();
  const Literal first{trail_[at(uip)].side, need_[at(uip)]};
  learnt_.push_back(!first);
  back_level_ = 0;
  std::vector<int> levels;
  // From the newest step down: of two bounds of one side the later implies the earlier, which is
  // left out.
  for (auto it = lower_.rbegin(); it != lower_.rend(); ++it) {
    const Step& entry = trail_[at(*it)];
    const Literal refuted = !Literal{entry.side, need_[at(*it)]};
    bool covered = false;
    for (const Literal other : learnt_) covered = covered || other.side == refuted.side;
    if (covered) continue;
    learnt_.push_back(refuted);
    levels.push_back(entry.level);
    if (entry.level > back_level_) {
      back_level_ = entry.level;
      std::swap(learnt_[1], learnt_.back());
    }
  }
  std::sort(levels.begin(), levels.end());
  levels.erase(std::unique(levels.begin(), levels.end()), levels.end());
  learnt_lbd_ = static_cast<int>(levels.size()) + 1;
  spoil(Site::kLearnt, learnt_);
}

bool Core::resolve_conflict() {
  ++conflicts_;
  budget_.count_conflict();
  int top = 0;
  for (const Literal literal : conflict_) {
    const int step = position(literal);
    if (step >= 0) top = std::max(top, trail_[at(step)].level);
  }
  if (top == 0) {
    if (proof_ != nullptr) tell_refuted({}, nullptr);
    return false;
  }
  backtrack(top);  // a lazily run propagator may notice a conflict of earlier levels
  analyze();
  const int name = next_name_++;
  if (proof_ != nullptr) proof_->derived(name, learnt_);
  if (!planted_.empty()) check_planted(learnt_);
  backtrack(back_level_);
  if (learnt_.size() == 1) {
    if (!enqueue(learnt_[0], {})) return false;
  } else {
    const int index = attach(learnt_, true, learnt_lbd_, name);
    if (!enqueue(learnt_[0], {Why::kClause, index}))
      throw std::logic_error("a learnt clause that does not assert");
  }
  cuts_.decay();
  return true;
}

void Core::analyze_final(Literal refuted) {
  core_.clear();
  core_.push_back(refuted);
  if (marked_.size() < trail_.size()) {
    marked_.resize(trail_.size(), 0);
    need_.resize(trail_.size(), 0);
    proven_.resize(trail_.size(), 0);
    hopeless_.resize(trail_.size(), 0);
  }
  ++stamp_;
  lower_.clear();
  counter_ = 0;
  newest_ = static_cast<int>(trail_.size());
  mark(!refuted, -1);
  for (int step = static_cast<int>(trail_.size()) - 1; step >= 0; --step) {
    if (marked_[at(step)] != stamp_) continue;
    const Step& entry = trail_[at(step)];
    if (entry.reason.why == Why::kNone) {
      core_.push_back({entry.side, entry.after});
      continue;
    }
    scratch_.clear();
    explain(entry, need_[at(step)], scratch_);
    newest_ = step;
    for (const Literal literal : scratch_) mark(literal, -1);
  }
  spoil(Site::kCore, core_);
  if (proof_ != nullptr) tell_core();
}

void Core::check_planted(const std::vector<Literal>& clause) const {
  for (const std::vector<int>& values : planted_) {
    bool holds = false;
    for (const Literal literal : clause) {
      const std::size_t variable = at(literal.side / 2);
      if (variable >= values.size()) {
        holds = true;  // a variable made after the solution was planted: nothing is known
        break;
      }
      const int value = literal.side % 2 == 0 ? values[variable] : -values[variable];
      holds = holds || value >= literal.value;
    }
    if (!holds)
      throw std::logic_error(
          "a learnt clause excludes a known solution: some explanation is unsound");
  }
}

void Core::clean_clauses() {
  // Where memory runs out, good clauses go as well, the longest unused first.
  const bool crowded = budget_.crowded();
  std::vector<char> locked(clauses_.size(), 0);
  for (const Step& step : trail_) {
    if (step.reason.why == Why::kClause) locked[at(step.reason.index)] = 1;
  }
  std::vector<int> candidates;
  for (int i = 0; i < static_cast<int>(clauses_.size()); ++i) {
    const Clause& clause = clauses_[at(i)];
    const bool recent = clause.lbd <= 6 && clause.used + 4000 > conflicts_;
    const bool worth_keeping = clause.lbd <= 2 || recent;
    if (clause.learnt && !locked[at(i)] && (crowded || !worth_keeping)) candidates.push_back(i);
  }
  std::sort(candidates.begin(), candidates.end(), [&](int a, int b) {
    if (clauses_[at(a)].used != clauses_[at(b)].used)
      return clauses_[at(a)].used < clauses_[at(b)].used;
    return a < b;
  });
  std::vector<char> dead(clauses_.size(), 0);
  std::int64_t freed = 0;
  for (std::size_t i = 0; i < candidates.size() / 2; ++i) {
    dead[at(candidates[i])] = 1;
    freed += bytes(clauses_[at(candidates[i])].size);
  }
  held_ -= freed;
  budget_.hold(-freed);

  std::vector<int> moved(clauses_.size(), -1);
  std::vector<Clause> kept;
  std::vector<Literal> literals;
  for (std::size_t i = 0; i < clauses_.size(); ++i) {
    if (proof_ != nullptr && dead[i]) proof_->forgotten(names_[i]);
    if (dead[i]) continue;
    if (proof_ != nullptr) names_[kept.size()] = names_[i];
    moved[i] = static_cast<int>(kept.size());
    Clause clause = clauses_[i];
    const int begin = static_cast<int>(literals.size());
    for (int k = 0; k < clause.size; ++k)
      literals.push_back(clause_literals_[at(clause.begin + k)]);
    clause.begin = begin;
    kept.push_back(clause);
  }
  clauses_ = std::move(kept);
  if (proof_ != nullptr) names_.resize(clauses_.size());
  clause_literals_ = std::move(literals);
  for (const Buckets& buckets : buckets_) {
    if (!buckets.lists) continue;
    for (int b = 0; b <= buckets.last; ++b) {
      std::vector<Watch>& list = buckets.lists[at(b)];
      std::size_t size = 0;
      for (Watch watch : list) {
        watch.clause = moved[at(watch.clause)];
        if (watch.clause >= 0) list[size++] = watch;
      }
      list.resize(size);
    }
  }
  for (Step& step : trail_) {
    if (step.reason.why == Why::kClause) step.reason.index = moved[at(step.reason.index)];
  }
  budget_.spend(static_cast<std::int64_t>(clause_literals_.size() / 8));
  next_clean_ = conflicts_ + 2000 + 300 * (conflicts_ / 5000);
}

}  // namespace scheduler
