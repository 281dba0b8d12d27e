// Writes a proof as lines of text, see docs/methods/proof.md: what the variables mean, lemmas with
// the constraint each comes from, and clauses that follow from them, down to the bound.
//
// Example: "l arc : 3<=6 5>=9" says that start 5 is at least 9 when start 3 is at least 7.
#pragma once

#include <ostream>

#include "scheduler/proof.h"

namespace scheduler {

class ProofLog : public ProofSink {
 public:
  /// `out` must outlive the log; whether writing worked is the caller's to ask of it.
  explicit ProofLog(std::ostream& out) : out_(out) {}

  void horizon(int horizon) override;
  void variable(int variable, const std::string& meaning) override;
  void propagator(int source, const std::string& constraint) override;
  void lemma(int source, const std::vector<Literal>& clause) override;
  void premise(int name) override { premises_.push_back(name); }
  void given(int name, const std::vector<Literal>& clause) override;
  void derived(int name, const std::vector<Literal>& clause) override;
  void forgotten(int name) override;
  void infeasible() override;
  void bounds(const std::vector<std::int64_t>& bounds) override;

 private:
  void write(const std::vector<Literal>& clause);

  std::ostream& out_;
  std::vector<std::string> constraints_;  // by source
  std::vector<int> premises_;             // since the last derivation
};

}  // namespace scheduler
