// What the instance itself says: does no schedule lie within these bounds? Each question is
// answered from durations, demands, capacities and lags by one plain argument; "no" only means that
// the argument does not show it.
#pragma once

#include <cstddef>
#include <vector>

#include "proof_check/instance.h"

namespace proof_check {

/// Least and greatest start of each job.
struct Starts {
  const std::vector<int>&low, &high;
};

class Semantics {
 public:
  explicit Semantics(const Instance& instance);

  /// Lags alone exclude every schedule, or one job alone needs more than there is.
  bool hopeless() const { return hopeless_; }
  /// Some lag, or chain of lags, between two of the jobs cannot hold.
  bool lag_broken(const Starts& starts, const std::vector<int>& jobs) const;
  /// Resource `r` is overfull, at a minute or over an interval; looks near the jobs named first.
  bool overfull(const Starts& starts, std::size_t r, const std::vector<int>& jobs) const;
  /// The two jobs need more of some resource than there is.
  bool never_together(int a, int b) const;

 private:
  bool overfull_minute(const Starts& starts, std::size_t r) const;
  bool overfull_interval(const Starts& starts, std::size_t r, int from, int to) const;
  bool overfull_between(const Starts& starts, std::size_t r, const std::vector<int>& marks) const;
  /// Bounds of starts and ends, in order.
  std::vector<int> marks(const Starts& starts, const std::vector<int>& jobs) const;

  const Instance& instance_;
  std::vector<std::vector<long>> gap_;  // longest chain of lags from job to job
  bool hopeless_ = false;
};

}  // namespace proof_check
