// Trail, clauses and arcs: everything that propagates without being asked.
#include "scheduler/core.h"

#include <algorithm>
#include <stdexcept>

#include "base/index.h"
#include "scheduler/mutant.h"

namespace scheduler {
namespace {
using base::at;
/// Watch buckets of one side; more are faster to walk and dearer to make.
constexpr std::int64_t kMostBuckets = 256;
}  // namespace

Core::Core(Budget& budget, ProofSink* proof) : budget_(budget), proof_(proof) {}

Core::~Core() { budget_.hold(-held_); }

int Core::new_variable(int low, int high, bool decide) {
  const int variable = variable_count();
  const std::int64_t width = std::max<std::int64_t>(std::int64_t{high} - low, 1);
  for (const int bound : {low, -high}) {
    Buckets buckets{nullptr, bound + 1, 0, 0};
    while (((width - 1) >> buckets.shift) >= kMostBuckets) ++buckets.shift;
    buckets.last = static_cast<int>((width - 1) >> buckets.shift);
    buckets_.push_back(std::move(buckets));
    low_.push_back(bound);
    root_low_.push_back(bound);
    last_.push_back(-1);
    arcs_from_.emplace_back();
    guarded_.emplace_back();
    wakes_.emplace_back();
  }
  owner_.push_back({2 * variable, low});
  decide_.push_back(decide ? 1 : 0);
  high_.push_back(0);
  phase_.push_back(low);
  cuts_.add_variable(low, high, decide);
  if (decide) budget_.spend(1 + std::min(width, CutOrder::kMostCuts) / 4);  // memory is touched
  if (low > high) broken_ = true;
  return variable;
}

void Core::set_phase(int variable, int value) { phase_[at(variable)] = value; }

void Core::push_level() {
  level_start_.push_back(static_cast<int>(trail_.size()));
  stored_start_.push_back(static_cast<int>(stored_.size()));
}

void Core::backtrack(int target) {
  if (level() <= target) return;
  const int keep = level_start_[at(target)];
  for (int i = static_cast<int>(trail_.size()) - 1; i >= keep; --i) {
    const Step& step = trail_[at(i)];
    const int variable = step.side / 2;
    if (!have_solution_ && fixed(variable)) phase_[at(variable)] = low(2 * variable);
    low_[at(step.side)] = step.before;
    last_[at(step.side)] = step.previous;
  }
  trail_.resize(at(keep));
  stored_.resize(at(stored_start_[at(target)]));
  level_start_.resize(at(target));
  stored_start_.resize(at(target));
  head_ = trail_.size();
  early_.clear(queued_);
  late_.clear(queued_);
  for (std::size_t l = at(target) + 1; l < closed_.size(); ++l) {
    for (const int cut : closed_[l]) cuts_.put_back(cut);
    closed_[l].clear();
  }
  while (!overlooked_.empty() && overlooked_.back().level > target) overlooked_.pop_back();
}

int Core::position(Literal literal) const {
  int step = last_[at(literal.side)];
  while (step >= 0 && trail_[at(step)].before >= literal.value) step = trail_[at(step)].previous;
  return step;
}

bool Core::enqueue(Literal literal, Reason reason) {
  if (is_true(literal)) return true;
  if (is_false(literal)) {
    conflict_.clear();
    explain({literal.side, 0, literal.value, -1, 0, reason}, literal.value, conflict_);
    conflict_.push_back(!literal);
    return false;
  }
  if (proof_ != nullptr) tell_pruned(literal, reason);
  const int side = literal.side;
  if (level() == 0) {
    if (proof_ != nullptr) tell_root(literal, reason);
    root_low_[at(side)] = literal.value;
    reason = {};
  }
  trail_.push_back({side, low_[at(side)], literal.value, last_[at(side)], level(), reason});
  last_[at(side)] = static_cast<int>(trail_.size()) - 1;
  low_[at(side)] = literal.value;
  return true;
}

void Core::explain(const Step& step, int value, std::vector<Literal>& out) const {
  switch (step.reason.why) {
    case Why::kNone:
      break;
    case Why::kClause: {
      // The implied literal stands first; watching never moves a true literal from there.
      const Clause& clause = clauses_[at(step.reason.index)];
      for (int i = 1; i < clause.size; ++i) out.push_back(!clause_literals_[at(clause.begin + i)]);
      spoil(Site::kClause, out);
      break;
    }
    case Why::kArc: {
      const Arc& arc = arcs_[at(step.reason.index)];
      out.push_back({arc.from, value - arc.distance});
      for (int i = 0; i < arc.guard_count; ++i) out.push_back(arc.guards[i]);
      spoil(Site::kArc, out);
      break;
    }
    case Why::kStored: {
      const int count = stored_[at(step.reason.index)].side;
      for (int i = 1; i <= count; ++i) out.push_back(stored_[at(step.reason.index + i)]);
      break;
    }
  }
  if (proof_ != nullptr) tell_explained(step, value, out);
}

bool Core::imply(Literal literal, const std::vector<Literal>& reason) {
  if (is_true(literal)) return true;
  if (proof_ != nullptr) proof_->pruned(source_, reason, &literal);
  if (is_false(literal)) {
    if (proof_ != nullptr) tell_lemma(source_, reason, literal);
    conflict_ = reason;
    conflict_.push_back(!literal);
    return false;
  }
  const int index = static_cast<int>(stored_.size());
  stored_.push_back({static_cast<int>(reason.size()), source_});
  stored_.insert(stored_.end(), reason.begin(), reason.end());
  return enqueue(literal, {Why::kStored, index});
}

bool Core::fail(const std::vector<Literal>& reason) {
  if (proof_ != nullptr) {
    proof_->pruned(source_, reason, nullptr);
    tell_lemma(source_, reason, {-1, 0});
  }
  conflict_ = reason;
  return false;
}

void Core::add_clause(std::vector<Literal> literals) {
  if (level() != 0) throw std::logic_error("clauses are added at the root only");
  std::vector<Literal> kept;
  for (const Literal literal : literals) {
    if (is_true(literal)) return;
    if (is_false(literal)) continue;
    bool merged = false;
    for (Literal& other : kept) {
      if (other.side == literal.side) {
        other.value = std::min(other.value, literal.value);
        merged = true;
      } else if (other.side == (literal.side ^ 1) && literal.value <= 1 - other.value) {
        return;  // x >= a or x <= b with a <= b + 1: always true
      }
    }
    if (!merged) kept.push_back(literal);
  }
  const int name = next_name_++;
  if (proof_ != nullptr) proof_->given(name, kept);
  if (kept.empty()) {
    broken_ = true;
  } else if (kept.size() == 1) {
    if (!enqueue(kept[0], {})) broken_ = true;
  } else {
    attach(kept, false, 0, name);
  }
}

int Core::attach(const std::vector<Literal>& literals, bool learnt, int lbd, int name) {
  const int index = static_cast<int>(clauses_.size());
  clauses_.push_back({static_cast<int>(clause_literals_.size()), static_cast<int>(literals.size()),
                      lbd, learnt, conflicts_});
  if (learnt) {
    held_ += bytes(clauses_.back().size);
    budget_.hold(bytes(clauses_.back().size));
  }
  if (proof_ != nullptr) names_.push_back(name);
  clause_literals_.insert(clause_literals_.end(), literals.begin(), literals.end());
  for (int i = 0; i < 2; ++i) {
    watch(literals[at(i)], index, literals[at(1 - i)]);
  }
  return index;
}

void Core::watch(Literal literal, int clause, Literal blocker) {
  const int side = literal.side ^ 1, threshold = 1 - literal.value;
  Buckets& buckets = buckets_[at(side)];
  if (!buckets.lists) buckets.lists = std::make_unique<std::vector<Watch>[]>(at(buckets.last) + 1);
  // A threshold beyond all values of the side is never crossed; it may lie in any bucket.
  buckets.lists[at(buckets.of(threshold))].push_back({threshold, clause, blocker});
}

void Core::add_arc(int from, int to, int distance, const std::vector<Literal>& guards) {
  Arc arc{from, to, distance, 0, {}};
  for (const Literal guard : guards) {
    if (true_at_root(guard)) continue;
    if (root_low(guard.side ^ 1) >= 1 - guard.value) return;
    if (arc.guard_count == kMaxGuards) throw std::logic_error("an arc with too many guards");
    arc.guards[arc.guard_count++] = guard;
  }
  for (int direction = 0; direction < 2; ++direction) {
    const int index = static_cast<int>(arcs_.size());
    arcs_.push_back(arc);
    arcs_from_[at(arc.from)].push_back(index);
    for (int i = 0; i < arc.guard_count; ++i) {
      guarded_[at(arc.guards[i].side)].push_back({arc.guards[i].value, index});
    }
    if (level() == 0 && !visit_arc(index)) {
      broken_ = true;
      if (proof_ != nullptr) tell_refuted(conflict_, nullptr);
    }
    std::swap(arc.from, arc.to);
    arc.from ^= 1;
    arc.to ^= 1;
  }
}

int Core::add_propagator(std::unique_ptr<Propagator> propagator, const std::vector<int>& sides,
                         bool late) {
  const int index = static_cast<int>(propagators_.size());
  propagators_.push_back(std::move(propagator));
  queued_.push_back(1);
  is_late_.push_back(late ? 1 : 0);
  (late ? late_ : early_).list.push_back(index);
  for (const int side : sides) wakes_[at(side)].push_back(index);
  return index;
}

int Core::Queue::take() {
  const int next = list[head++];
  if (empty()) {
    list.clear();
    head = 0;
  }
  return next;
}

void Core::Queue::clear(std::vector<char>& queued) {
  while (!empty()) queued[at(take())] = 0;
}

void Core::wake(int side) {
  for (const int index : wakes_[at(side)]) {
    if (queued_[at(index)]) continue;
    queued_[at(index)] = 1;
    (is_late_[at(index)] ? late_ : early_).list.push_back(index);
  }
}

bool Core::propagate() {
  for (;;) {
    while (head_ < trail_.size()) {
      const Step step = trail_[head_++];
      budget_.spend(1);
      if (!visit_watches(step)) return false;
      for (const int arc : arcs_from_[at(step.side)]) {
        if (!visit_arc(arc)) return false;
      }
      for (const Guarded& guarded : guarded_[at(step.side)]) {
        if (guarded.threshold <= step.before || guarded.threshold > step.after) continue;
        if (!visit_arc(guarded.arc)) return false;
      }
      wake(step.side);
    }
    if (early_.empty() && late_.empty()) return true;
    const int next = early_.empty() ? late_.take() : early_.take();
    queued_[at(next)] = 0;
    source_ = next;
    const bool fine = propagators_[at(next)]->propagate(*this);
    source_ = ProofSink::kArc;
    if (!fine) return false;
  }
}

bool Core::visit_watches(const Step& step) {
  const Buckets& buckets = buckets_[at(step.side)];
  if (!buckets.lists) return true;
  std::vector<Watch>* const lists = buckets.lists.get();
  const int last = buckets.of(step.after);
  for (int b = buckets.of(step.before + 1); b <= last; ++b) {
    if (!lists[b].empty() && !visit_bucket(step, lists[b])) return false;
  }
  return true;
}

bool Core::visit_bucket(const Step& step, std::vector<Watch>& list) {
  budget_.spend(1 + static_cast<std::int64_t>(list.size() / 4));
  std::size_t kept = 0;
  for (std::size_t i = 0; i < list.size(); ++i) {
    Watch watch = list[i];
    bool keep = true;
    bool fine = true;
    if (watch.threshold > step.before && watch.threshold <= step.after && !is_true(watch.blocker)) {
      fine = visit_clause(watch, step.side, keep);
    }
    if (keep) list[kept++] = watch;
    if (!fine) {
      for (++i; i < list.size(); ++i) list[kept++] = list[i];
      list.resize(kept);
      return false;
    }
  }
  list.resize(kept);
  return true;
}

bool Core::visit_clause(Watch& watch, int side, bool& keep) {
  Clause& clause = clauses_[at(watch.clause)];
  Literal* literals = &clause_literals_[at(clause.begin)];
  const Literal gone{side ^ 1, 1 - watch.threshold};
  if (literals[0] == gone) std::swap(literals[0], literals[1]);
  watch.blocker = literals[0];
  if (is_true(literals[0])) return true;
  for (int k = 2; k < clause.size; ++k) {
    if (is_false(literals[k])) continue;
    std::swap(literals[1], literals[k]);
    // Never the list being walked: literals of one clause stand on different sides.
    this->watch(literals[1], watch.clause, literals[0]);
    keep = false;
    return true;
  }
  clause.used = conflicts_;
  return enqueue(literals[0], {Why::kClause, watch.clause});
}

bool Core::visit_arc(int index) {
  const Arc& arc = arcs_[at(index)];
  int open = -1;
  for (int i = 0; i < arc.guard_count; ++i) {
    if (is_true(arc.guards[i])) continue;
    if (open >= 0 || is_false(arc.guards[i])) return true;
    open = i;
  }
  const Literal implied{arc.to, low(arc.from) + arc.distance};
  if (is_true(implied)) return true;
  if (open < 0) return enqueue(implied, {Why::kArc, index});
  if (!is_false(implied)) return true;
  scratch_.clear();
  scratch_.push_back({arc.from, low(arc.from)});
  scratch_.push_back(!implied);
  for (int i = 0; i < arc.guard_count; ++i) {
    if (i != open) scratch_.push_back(arc.guards[i]);
  }
  spoil(Site::kArcGuard, scratch_);
  return imply(!arc.guards[open], scratch_);
}

}  // namespace scheduler
