// The state of one search: best schedule, values, bounds, proofs, time stamps.
#pragma once

#include <cstdint>
#include <vector>

#include "scheduler/budget.h"
#include "scheduler/solve.h"

namespace scheduler {

class Run {
 public:
  Run(const Problem& problem, const Options& options);

  const Problem& problem() const { return problem_; }
  const Options& options() const { return options_; }
  Budget& budget() { return budget_; }

  bool has_schedule() const {
    return !outcome_.best.empty() || (problem_.activities.empty() && accepted_);
  }
  const Schedule& best() const { return outcome_.best; }
  const std::vector<std::int64_t>& values() const { return outcome_.values; }
  const std::vector<std::int64_t>& bounds() const { return outcome_.bounds; }

  /// The least value a level had under the levels before it.
  std::int64_t goal(std::size_t level) const { return goal_[level]; }
  const std::vector<std::int64_t>& goals() const { return goal_; }

  /// Takes a schedule if it is better under the levels' bands. Throws std::logic_error if it breaks
  /// a rule.
  bool offer(const Schedule& schedule, const std::vector<std::int64_t>& values);
  /// Takes options.start_from if it satisfies everything.
  void offer_start();
  /// Proved lower bounds; kept where higher than before.
  void raise(const std::vector<std::int64_t>& bounds);
  /// Bounds that hold whatever the levels before are: what is left when one of those gets worse.
  void raise_floor(const std::vector<std::int64_t>& floor);
  void prove_all() { all_proved_ = true; }
  void infeasible() { infeasible_ = true; }
  bool is_infeasible() const { return infeasible_; }
  /// Every level's bound has met its goal.
  bool closed() const;
  /// What is known now; may be asked at any time.
  Outcome outcome() const;

 private:
  bool better(const std::vector<std::int64_t>& values) const;
  void take_goals(const std::vector<std::int64_t>& goals);
  void settle_limit();

  const Problem& problem_;
  const Options& options_;
  Budget budget_;
  Outcome outcome_;
  std::vector<std::int64_t> goal_;   // least value a level had under the levels before it
  std::vector<std::int64_t> floor_;  // bounds whatever the levels before are
  std::vector<std::int64_t> told_;   // bounds the caller heard of last
  bool all_proved_ = false, infeasible_ = false, accepted_ = false;
};

/// Searches until everything is proved or the budget is used up; what was found stands in the run.
/// Throws std::invalid_argument when the problem or the options make no sense.
void search_all(Run& run);

}  // namespace scheduler
