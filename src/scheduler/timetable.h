// Cumulative resource by time table: the sum of the amounts in use never exceeds the capacity.
// Every pruning is the unit propagation of the rule at one minute, so an explanation names that
// minute only ("lifted to a point"). (N. Beldiceanu, M. Carlsson 2002; A. Schutt, T. Feydt, P.
// Stuckey, M. Wallace 2011; from memory.)
//
// The profile is kept from call to call: a call compares every item's bounds with those it saw
// last, mends the profile where compulsory parts differ, and looks only at items that changed or
// lie where the profile rose.
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

inline int least(const Core& core, Point p) {
  return p.variable < 0 ? p.offset : core.low(2 * p.variable) + p.offset;
}
inline int most(const Core& core, Point p) {
  return p.variable < 0 ? p.offset : core.high(2 * p.variable) + p.offset;
}
inline void require_at_least(std::vector<Literal>& reason, Point p, int value) {
  if (p.variable >= 0) reason.push_back(at_least(p.variable, value - p.offset));
}
inline void require_at_most(std::vector<Literal>& reason, Point p, int value) {
  if (p.variable >= 0) reason.push_back(at_most(p.variable, value - p.offset));
}

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
  Timetable(std::vector<TableItem> items, std::vector<int> background, int capacity);

  /// Sides whose bounds the table depends on.
  std::vector<int> sides() const;
  bool propagate(Core& core) override;

  // For propagators that run on the same resource after this one has come to rest.
  const std::vector<TableItem>& items() const { return items_; }
  int capacity() const { return capacity_; }
  /// Background and compulsory parts, minute by minute.
  const std::vector<int>& heights() const { return height_; }
  const std::vector<int>& background() const { return background_; }

 private:
  /// What the last call saw of an item; the compulsory part is empty when from >= to.
  struct Seen {
    int start_low, start_high, end_low, end_high;
    int from, to;
    char active;  // 1 true, 0 open, -1 false
    bool dirty;   // not looked at since something about it changed
  };

  void refresh(Core& core);
  void mend(const Seen& before, const Seen& after, int amount);
  void add(int from, int to, int amount);
  void mark_dirty();
  bool overload(Core& core);
  bool look(Core& core, std::size_t index);
  bool push_start(Core& core, std::size_t index);
  bool push_end(Core& core, std::size_t index);
  bool exclude(Core& core, std::size_t index);
  void explain(Core& core, std::size_t skipped, int minute, int needed);
  bool full(int minute, int amount) const {
    return height_[static_cast<std::size_t>(minute)] + amount > capacity_;
  }

  std::vector<TableItem> items_;
  std::vector<int> background_;
  int capacity_;
  std::vector<int> height_;
  std::vector<Seen> seen_;
  int rose_from_ = 0, rose_to_ = 0;  // hull of the minutes at which the profile rose
  std::vector<std::size_t> cover_;
  std::vector<Literal> reason_;
};

}  // namespace scheduler
