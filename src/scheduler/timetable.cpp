#include "scheduler/timetable.h"

#include <algorithm>

namespace scheduler {
namespace {

int least(const Core& core, Point p) {
  return p.variable < 0 ? p.offset : core.low(2 * p.variable) + p.offset;
}
int most(const Core& core, Point p) {
  return p.variable < 0 ? p.offset : core.high(2 * p.variable) + p.offset;
}

void require_at_least(std::vector<Literal>& reason, Point p, int value) {
  if (p.variable >= 0) reason.push_back(at_least(p.variable, value - p.offset));
}
void require_at_most(std::vector<Literal>& reason, Point p, int value) {
  if (p.variable >= 0) reason.push_back(at_most(p.variable, value - p.offset));
}

}  // namespace

std::vector<int> Timetable::sides() const {
  std::vector<int> sides;
  for (const TableItem& item : items_) {
    for (const Point p : {item.start, item.end}) {
      if (p.variable < 0) continue;
      sides.push_back(2 * p.variable);
      sides.push_back(2 * p.variable + 1);
    }
    sides.push_back(item.active.side);
  }
  std::sort(sides.begin(), sides.end());
  sides.erase(std::unique(sides.begin(), sides.end()), sides.end());
  return sides;
}

bool Timetable::propagate(Core& core) {
  height_ = background_;
  for (const TableItem& item : items_) {
    if (!core.is_true(item.active)) continue;
    const int to = least(core, item.end);
    for (int t = most(core, item.start); t < to; ++t)
      height_[static_cast<std::size_t>(t)] += item.amount;
  }
  core.spend(static_cast<std::int64_t>(height_.size() / 8 + 3 * items_.size()));
  if (!overload(core)) return false;
  for (const TableItem& item : items_) {
    if (core.is_false(item.active)) continue;
    if (!core.is_true(item.active)) {
      if (!exclude(core, item)) return false;
      continue;
    }
    if (!push_start(core, item) || !push_end(core, item)) return false;
  }
  return true;
}

bool Timetable::overload(Core& core) {
  const int size = static_cast<int>(height_.size());
  for (int t = 0; t < size; ++t) {
    if (height_[static_cast<std::size_t>(t)] <= capacity_) continue;
    explain(core, nullptr, t, capacity_ + 1);
    return core.fail(reason_);
  }
  return true;
}

// Items whose compulsory part covers the minute, enough of them to sum up to `needed`; `item`
// itself does not count.
void Timetable::explain(Core& core, const TableItem* item, int minute, int needed) {
  reason_.clear();
  cover_.clear();
  int sum = background_[static_cast<std::size_t>(minute)] - needed;
  for (const TableItem& other : items_) {
    if (&other == item || !core.is_true(other.active)) continue;
    if (most(core, other.start) > minute || least(core, other.end) <= minute) continue;
    cover_.push_back(&other);
    sum += other.amount;
  }
  for (const TableItem* other : cover_) {
    if (sum >= other->amount) {
      sum -= other->amount;  // not needed for the overload
      continue;
    }
    require_at_most(reason_, other->start, minute);
    require_at_least(reason_, other->end, minute + 1);
    if (!core.true_at_root(other->active)) reason_.push_back(other->active);
  }
}

bool Timetable::push_start(Core& core, const TableItem& item) {
  if (item.start.variable < 0) return true;
  for (;;) {
    const int from = least(core, item.start);
    const int to = std::min(least(core, item.end), most(core, item.start));
    int blocked = to - 1;
    while (blocked >= from && height_[static_cast<std::size_t>(blocked)] + item.amount <= capacity_)
      --blocked;
    if (blocked < from) return true;
    explain(core, &item, blocked, capacity_ - item.amount + 1);
    require_at_least(reason_, item.end, blocked + 1);
    if (!core.true_at_root(item.active)) reason_.push_back(item.active);
    if (!core.imply(at_least(item.start.variable, blocked + 1 - item.start.offset), reason_))
      return false;
  }
}

bool Timetable::push_end(Core& core, const TableItem& item) {
  if (item.end.variable < 0) return true;
  for (;;) {
    const int from = std::max(most(core, item.start), least(core, item.end));
    const int to = most(core, item.end);
    int blocked = from;
    while (blocked < to && height_[static_cast<std::size_t>(blocked)] + item.amount <= capacity_)
      ++blocked;
    if (blocked >= to) return true;
    explain(core, &item, blocked, capacity_ - item.amount + 1);
    require_at_most(reason_, item.start, blocked);
    if (!core.true_at_root(item.active)) reason_.push_back(item.active);
    if (!core.imply(at_most(item.end.variable, blocked - item.end.offset), reason_)) return false;
  }
}

bool Timetable::exclude(Core& core, const TableItem& item) {
  const int to = least(core, item.end);
  for (int t = most(core, item.start); t < to; ++t) {
    if (height_[static_cast<std::size_t>(t)] + item.amount <= capacity_) continue;
    explain(core, &item, t, capacity_ - item.amount + 1);
    require_at_most(reason_, item.start, t);
    require_at_least(reason_, item.end, t + 1);
    return core.imply(!item.active, reason_);
  }
  return true;
}

}  // namespace scheduler
