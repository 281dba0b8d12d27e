// Cumulative resource by time table: the sum of the amounts in use never exceeds the capacity.
// Every pruning is the unit propagation of the rule at one minute, so an explanation names that
// minute only ("lifted to a point"). (N. Beldiceanu, M. Carlsson 2002; A. Schutt, T. Feydt, P.
// Stuckey, M. Wallace 2011; from memory.)
#pragma once

#include <vector>

#include "scheduler/core.h"

namespace scheduler {

/// variable + offset, or the constant `offset` when variable is -1.
struct Point {
  int variable = -1;
  int offset = 0;
  friend auto operator<=>(const Point&, const Point&) = default;
};

/// Occupies [start, end) with `amount` while `active` is true.
struct TableItem {
  Point start, end;
  int amount = 1;
  Literal active;
  int least = 0;  ///< shortest length
};

class Timetable : public Propagator {
 public:
  /// `background[t]`: what constant uses take at minute t, size = horizon.
  Timetable(std::vector<TableItem> items, std::vector<int> background, int capacity)
      : items_(std::move(items)), background_(std::move(background)), capacity_(capacity) {}

  /// Sides whose bounds the table depends on.
  std::vector<int> sides() const;
  bool propagate(Core& core) override;

 private:
  bool overload(Core& core);
  bool push_start(Core& core, const TableItem& item);
  bool push_end(Core& core, const TableItem& item);
  bool exclude(Core& core, const TableItem& item);
  void explain(Core& core, const TableItem* item, int minute, int needed);

  std::vector<TableItem> items_;
  std::vector<int> background_;
  int capacity_;
  std::vector<int> height_;
  std::vector<const TableItem*> cover_;
  std::vector<Literal> reason_;
};

}  // namespace scheduler
