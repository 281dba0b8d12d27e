#include "scheduler/proof_log.h"

#include <algorithm>

namespace scheduler {

void ProofLog::horizon(int horizon) { out_ << "horizon " << horizon << '\n'; }

void ProofLog::variable(int variable, const std::string& meaning) {
  out_ << "var " << variable << ' ' << meaning << '\n';
}

void ProofLog::propagator(int source, const std::string& constraint) {
  const std::size_t index = static_cast<std::size_t>(source);
  if (constraints_.size() <= index) constraints_.resize(index + 1, "unnamed");
  constraints_[index] = constraint;
}

void ProofLog::write(const std::vector<Literal>& clause) {
  for (const Literal literal : clause) {
    const bool least = literal.side % 2 == 0;
    out_ << ' ' << literal.side / 2 << (least ? ">=" : "<=")
         << (least ? literal.value : -literal.value);
  }
}

void ProofLog::lemma(int source, const std::vector<Literal>& clause) {
  const std::size_t index = static_cast<std::size_t>(source);
  out_ << "l ";
  if (source == kArc)
    out_ << "arc";
  else
    out_ << (index < constraints_.size() ? constraints_[index] : "unnamed");
  out_ << " :";
  write(clause);
  out_ << '\n';
}

void ProofLog::given(int name, const std::vector<Literal>& clause) {
  out_ << "g " << name;
  write(clause);
  out_ << '\n';
}

void ProofLog::derived(int name, const std::vector<Literal>& clause) {
  out_ << "d " << name;
  write(clause);
  std::sort(premises_.begin(), premises_.end());
  premises_.erase(std::unique(premises_.begin(), premises_.end()), premises_.end());
  if (!premises_.empty()) out_ << " :";
  for (const int premise : premises_) out_ << ' ' << premise;
  premises_.clear();
  out_ << '\n';
}

void ProofLog::forgotten(int name) { out_ << "f " << name << '\n'; }

void ProofLog::infeasible() { out_ << "bound none\n"; }

void ProofLog::bounds(const std::vector<std::int64_t>& bounds) {
  out_ << "bound";
  for (const std::int64_t bound : bounds) out_ << ' ' << bound;
  out_ << '\n';
}

}  // namespace scheduler
