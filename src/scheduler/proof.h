// Who wants to see every step of the core: the proof log, and tests of single explanations. The
// core asks for nothing back; a run with a sink is the same run.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "scheduler/literal.h"

namespace scheduler {

class ProofSink {
 public:
  /// Source of a step that a difference arc made; others are numbers of propagators.
  static constexpr int kArc = -1;

  virtual ~ProofSink() = default;

  // What variables and propagators mean, before they first occur.
  virtual void horizon(int /*horizon*/) {}
  virtual void variable(int /*variable*/, const std::string& /*meaning*/) {}
  virtual void propagator(int /*source*/, const std::string& /*constraint*/) {}

  /// As it happens: `reason` (all true now) gives `consequence`, or is impossible (nullptr).
  virtual void pruned(int /*source*/, const std::vector<Literal>& /*reason*/,
                      const Literal* /*consequence*/) {}

  // What a derivation rests on: clauses true by one constraint alone, and clauses named before ...
  virtual void lemma(int /*source*/, const std::vector<Literal>& /*clause*/) {}
  virtual void premise(int /*name*/) {}
  // ... and what it ends in. `given` is a clause of the model.
  virtual void given(int /*name*/, const std::vector<Literal>& /*clause*/) {}
  virtual void derived(int /*name*/, const std::vector<Literal>& /*clause*/) {}
  virtual void forgotten(int /*name*/) {}

  // The conclusion: no schedule at all, or none below these values, level by level.
  virtual void infeasible() {}
  virtual void bounds(const std::vector<std::int64_t>& /*bounds*/) {}
};

}  // namespace scheduler
