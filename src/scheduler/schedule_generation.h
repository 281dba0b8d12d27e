// The two schedule generation schemes of project scheduling, for plain projects (R. Kolisch 1996,
// "Serial and parallel resource-constrained project scheduling methods revisited"): serial places
// one activity after another at its earliest possible start, parallel steps through time and starts
// what it can. Backwards: the same on the mirrored project.
//
// One object works on one project again and again without allocating.
#pragma once

#include <cstdint>
#include <vector>

#include "scheduler/list_problem.h"

namespace scheduler {

class ScheduleGeneration {
 public:
  /// `list` must be plain and outlive this.
  explicit ScheduleGeneration(const ListProblem& list);

  /// `order`: all activities, each after its predecessors. Fills `starts`, by activity.
  void serial(const std::vector<int>& order, std::vector<Time>& starts);
  /// `order` as priorities: the first of those that can start does.
  void parallel(const std::vector<int>& order, std::vector<Time>& starts);

  /// Minutes and activities looked at since the last call, in ticks.
  std::int64_t take_work();

 private:
  template <int kWords>
  void serial_of(const std::vector<int>& order, std::vector<Time>& starts);
  template <int kWords>
  Time find(Time from, Time length, const std::uint64_t* demand);
  template <int kWords>
  bool fits(const std::uint64_t* free, const std::uint64_t* demand) const;
  Time after_predecessors(int i, const std::vector<Time>& starts) const;
  void wake(Time minute);
  void start_ready(Time now, std::vector<Time>& starts);
  void release(int i, Time now, const std::vector<Time>& starts);

  const ListProblem& list_;
  int words_;
  std::vector<std::uint64_t> free_;  // by minute and word, guard bits set
  Time used_ = 0;                    // minutes of free_ that may differ from the empty room
  std::int64_t work_ = 0;

  // parallel only
  std::vector<std::uint64_t> now_, returned_;  // free now; given back by minute and word
  std::vector<char> wake_;                     // by minute: something ends or becomes ready
  std::vector<int> missing_, rank_, pending_;  // pending_: by rank
  std::vector<Time> ready_at_;
  int left_ = 0;
  Time last_wake_ = 0;
};

/// The order in which the other direction's scheme takes this schedule's activities, in the
/// numbers of the mirrored project: last end first, among equals the higher number first.
class EndOrder {
 public:
  void operator()(const ListProblem& list, const std::vector<Time>& starts,
                  std::vector<int>& order);

 private:
  std::vector<int> begin_;
};

}  // namespace scheduler
