// Time-table edge finding of a cumulative resource: the work that has to lie inside an interval -
// compulsory parts and uses that cannot leave it - never exceeds what the resource can give there,
// so a use that would not fit beside it is pushed out. (P. Vilim 2011, "Timetable edge finding
// filtering algorithm for discrete cumulative resources"; A. Schutt, T. Feydt, P. Stuckey 2013,
// "Explaining time-table-edge-finding propagation"; from memory.) Explanations count the work a use
// cannot keep out of the interval wherever it lies, which is more than what was counted to find it,
// and give the difference away.
#pragma once

#include <cstdint>
#include <vector>

#include "scheduler/timetable.h"

namespace scheduler {

class EdgeFinding : public Propagator {
 public:
  /// Runs after `table` has come to rest and reads its profile; the table must outlive it.
  explicit EdgeFinding(const Timetable& table);
  std::vector<int> sides() const;
  bool propagate(Core& core) override;

 private:
  /// An item that is not wholly in the profile; `free`: its work outside it.
  struct Task {
    int earliest, latest;  // least start, greatest end
    int length;            // least length
    int from, to;          // compulsory part
    std::int64_t free;
    std::size_t item;
  };
  /// Work that a use cannot keep out of the interval: `length` of it, because the start is within
  /// bounds, or because [from, from + length) is compulsory (from >= 0).
  struct Share {
    std::size_t item;
    int from, length, amount;
    bool always;  // in every schedule
  };

  bool worth_running(const Core& core);
  void spend(Core& core, std::size_t ticks);
  void collect(Core& core);
  void sum_profile(int last);
  /// What the profile leaves of [first_, to).
  std::int64_t room_until(int to) const { return room_[static_cast<std::size_t>(to - first_)]; }
  bool sweep(Core& core, int to);
  bool push_out(Core& core, int from, int to, std::int64_t rest);
  bool overloaded(Core& core, int from, int to);
  bool push_start(Core& core, const Task& task, int from, int to);
  bool push_end(Core& core, const Task& task, int from, int to);
  Share share(const Core& core, std::size_t index, int from, int to) const;
  std::int64_t shares(Core& core, std::size_t skipped, int from, int to);
  void require(const Share& share, int from, int to);
  void give_away(std::int64_t excess);
  void explain(Core& core, std::size_t skipped, int from, int to, std::int64_t most);

  const Timetable& table_;
  std::vector<std::int64_t> background_sum_;  // prefix sums
  std::int64_t calls_ = 0, hits_ = 0, born_ = -1, spent_ = 0;
  std::vector<Task> tasks_;
  std::vector<int> ends_;
  std::int64_t largest_ = 0;  // free work of one task at most
  int first_ = 0;
  std::vector<std::int64_t> room_;  // by end of the interval, from first_ on
  struct Column {
    int latest;
    std::int64_t free, room;  // work outside the profile; room until the least start
  };
  std::vector<Column> columns_;  // of tasks_, for the sweep
  std::vector<Share> shares_;
  std::vector<Literal> reason_;
};

}  // namespace scheduler
