// Overload check of a cumulative resource: the work of all uses that have to lie inside an interval
// never exceeds what the resource can give in it. Sees a queue that cannot end in time long before
// the time table does. (A. Wolf, G. Schrader 2005, "O(n log n) overload checking"; here a plain
// quadratic sweep; from memory.)
#pragma once

#include <cstdint>
#include <vector>

#include "scheduler/timetable.h"

namespace scheduler {

class Energy : public Propagator {
 public:
  /// `background[t]`: what constant uses take at minute t. `alike`: all items have the same amount
  /// and least length, so that only whole uses fit into an interval.
  Energy(std::vector<TableItem> items, const std::vector<int>& background, int capacity,
         bool alike);
  std::vector<int> sides() const;
  bool propagate(Core& core) override;

 private:
  struct Window {
    int start, end;
    std::int64_t work;
    std::size_t item;
  };

  bool worth_running();
  std::int64_t room(int from, int to) const;
  bool overloaded(Core& core, int from, std::size_t last, std::int64_t excess);

  std::vector<TableItem> items_;
  std::vector<std::int64_t> background_sum_;  // prefix sums
  int capacity_;
  bool alike_;
  std::int64_t calls_ = 0, hits_ = 0;
  std::vector<Window> windows_;
  std::vector<Literal> reason_;
};

}  // namespace scheduler
