// What a set of answers looks like beside the best known values.
#pragma once

#include <string>

#include "best_known.h"

namespace projects {

/// One line of the table rcpsp writes.
struct Answer {
  std::string instance;
  enum class Proved { kNo, kOptimal, kInfeasible } proved = Proved::kNo;
  bool has_schedule = false;
  long long lower = 0, upper = 0, first_upper = 0;
  double first_seconds = 0, best_seconds = 0, seconds = 0;
};

class KnownCounts {
 public:
  KnownCounts(BestKnownTable table, std::string set)
      : table_(std::move(table)), set_(std::move(set)) {}

  /// In words what contradicts the table; empty: nothing, or the table has no such instance.
  std::string add(const Answer& answer);
  int wrong() const { return wrong_; }
  /// Several lines for people.
  std::string summary() const;

 private:
  BestKnownTable table_;
  std::string set_;
  int count_ = 0, unknown_ = 0, proved_ = 0, at_best_ = 0, without_ = 0, wrong_ = 0, late_ = 0;
  int compared_ = 0;
  double gaps_ = 0, seconds_ = 0;
};

}  // namespace projects
