// What the core tells a proof sink. Nothing here touches the search: a run with a proof is the same
// run.
#include <algorithm>
#include <functional>
#include <map>

#include "base/index.h"

#include "scheduler/core.h"

namespace scheduler {
namespace {
using base::at;
}  // namespace

// Called where a step is explained, so that exactly the lemmas a derivation used stand before it.
void Core::tell_explained(const Step& step, int value, const std::vector<Literal>& reason) const {
  int source = ProofSink::kArc;
  switch (step.reason.why) {
    case Why::kNone:
      return;
    case Why::kClause:
      proof_->premise(names_[at(step.reason.index)]);
      return;
    case Why::kStored:
      source = stored_[at(step.reason.index)].value;
      break;
    case Why::kArc:
      break;
  }
  tell_lemma(source, reason, {step.side, value});
}

void Core::tell_lemma(int source, const std::vector<Literal>& reason, Literal consequence) const {
  std::vector<Literal> clause;
  for (const Literal literal : reason) clause.push_back(!literal);
  if (consequence.side >= 0) clause.push_back(consequence);
  proof_->lemma(source, clause);
}

// What holds at the root is left out of later explanations, so each such bound is derived here.
void Core::tell_root(Literal literal, Reason reason) {
  if (reason.why == Why::kNone) return;  // told as a clause of one literal
  std::vector<Literal> literals;
  explain({literal.side, 0, literal.value, -1, 0, reason}, literal.value, literals);
  proof_->derived(next_name_++, {literal});
}

void Core::tell_pruned(Literal literal, Reason reason) {
  if (reason.why != Why::kArc) return;
  const Arc& arc = arcs_[at(reason.index)];
  std::vector<Literal> literals{{arc.from, literal.value - arc.distance}};
  literals.insert(literals.end(), arc.guards, arc.guards + arc.guard_count);
  proof_->pruned(ProofSink::kArc, literals, &literal);
}

// Literals that are all true cannot hold together: back to the decisions that made them true. A
// further assumption that was found false may be part of the clause.
void Core::tell_refuted(const std::vector<Literal>& conflict, const Literal* assumption) {
  std::map<int, int, std::greater<>> needed;  // step -> value, newest first
  const auto need = [&](Literal literal) {
    const int step = position(literal);
    if (step < 0 || trail_[at(step)].level == 0) return;
    const auto [entry, fresh] = needed.try_emplace(step, literal.value);
    if (!fresh) entry->second = std::max(entry->second, literal.value);
  };
  std::for_each(conflict.begin(), conflict.end(), need);
  std::vector<Literal> clause;
  if (assumption != nullptr) clause.push_back(!*assumption);
  while (!needed.empty()) {
    const auto [step, value] = *needed.begin();
    needed.erase(needed.begin());
    const Step& entry = trail_[at(step)];
    if (entry.reason.why == Why::kNone) {
      clause.push_back(!Literal{entry.side, entry.after});
      continue;
    }
    std::vector<Literal> reason;
    explain(entry, value, reason);
    std::for_each(reason.begin(), reason.end(), need);
  }
  proof_->derived(next_name_++, clause);
}

// The assumptions that cannot hold together, as a clause.
void Core::tell_core() {
  std::vector<Literal> clause;
  for (const Literal literal : core_) clause.push_back(!literal);
  proof_->derived(next_name_++, clause);
}

}  // namespace scheduler
