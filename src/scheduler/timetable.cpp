#include "scheduler/timetable.h"

#include <algorithm>
#include <utility>

#include "scheduler/mutant.h"

namespace scheduler {

Timetable::Timetable(std::vector<TableItem> items, std::vector<int> background, int capacity)
    : items_(std::move(items)),
      background_(std::move(background)),
      capacity_(capacity),
      height_(background_),
      seen_(items_.size(), Seen{0, 0, 0, 0, 0, 0, -1, true}),
      rose_from_(static_cast<int>(height_.size())) {}

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
  refresh(core);
  mark_dirty();
  if (!overload(core)) return false;
  for (std::size_t i = 0; i < items_.size(); ++i) {
    if (!seen_[i].dirty) continue;
    if (!look(core, i)) return false;
    seen_[i].dirty = false;
  }
  return true;
}

// An item that was looked at and whose bounds are as they were then can be pruned only where the
// profile rose since, whatever was undone in between.
void Timetable::refresh(Core& core) {
  for (std::size_t i = 0; i < items_.size(); ++i) {
    const TableItem& item = items_[i];
    Seen now{least(core, item.start),
             most(core, item.start),
             least(core, item.end),
             most(core, item.end),
             0,
             0,
             0,
             true};
    now.active = core.is_true(item.active) ? 1 : core.is_false(item.active) ? -1 : 0;
    Seen& seen = seen_[i];
    if (now.start_low == seen.start_low && now.start_high == seen.start_high &&
        now.end_low == seen.end_low && now.end_high == seen.end_high && now.active == seen.active)
      continue;
    if (now.active == 1 && now.start_high < now.end_low) {
      now.from = now.start_high;
      now.to = now.end_low;
    }
    mend(seen, now, item.amount);
    seen = now;
  }
  core.spend(static_cast<std::int64_t>(items_.size() / 2 + 1));
}

void Timetable::mend(const Seen& before, const Seen& after, int amount) {
  if (before.from == after.from && before.to == after.to) return;
  if (before.from >= after.to || after.from >= before.to) {  // nothing in common
    add(before.from, before.to, -amount);
    add(after.from, after.to, amount);
    return;
  }
  add(before.from, std::min(before.to, after.from), -amount);
  add(after.from, std::min(after.to, before.from), amount);
  add(std::max(before.from, after.to), before.to, -amount);
  add(std::max(after.from, before.to), after.to, amount);
}

void Timetable::add(int from, int to, int amount) {
  if (from >= to) return;
  for (int t = from; t < to; ++t) height_[static_cast<std::size_t>(t)] += amount;
  if (amount < 0) return;
  rose_from_ = std::min(rose_from_, from);
  rose_to_ = std::max(rose_to_, to);
}

void Timetable::mark_dirty() {
  if (rose_from_ >= rose_to_) return;
  for (Seen& seen : seen_) {
    if (seen.start_low < rose_to_ && seen.end_high > rose_from_) seen.dirty = true;
  }
}

bool Timetable::overload(Core& core) {
  for (int t = rose_from_; t < rose_to_; ++t) {
    if (!full(t, 0)) continue;
    explain(core, items_.size(), t, capacity_ + 1);
    spoil(Site::kTableOverload, reason_);
    return core.fail(reason_);
  }
  // Only now: the same bounds may come again before the profile was ever found good.
  rose_from_ = static_cast<int>(height_.size());
  rose_to_ = 0;
  return true;
}

bool Timetable::look(Core& core, std::size_t index) {
  const Seen& seen = seen_[index];
  if (seen.active < 0) return true;
  core.spend(2);
  if (seen.active == 0) return exclude(core, index);
  return push_start(core, index) && push_end(core, index);
}

// Items whose compulsory part covers the minute, enough of them to sum up to `needed`; the item
// `skipped` does not count. Those that cover it in every schedule cost nothing and come first, then
// the largest: fewer literals say more.
void Timetable::explain(Core& core, std::size_t skipped, int minute, int needed) {
  reason_.clear();
  cover_.clear();
  needed -= background_[static_cast<std::size_t>(minute)];
  for (std::size_t i = 0; i < items_.size(); ++i) {
    if (i == skipped || seen_[i].from > minute || seen_[i].to <= minute) continue;
    cover_.push_back(i);
  }
  const auto always = [&](std::size_t i) {
    const TableItem& item = items_[i];
    return core.true_at_root(item.active) &&
           (item.start.variable < 0 ||
            core.true_at_root(at_most(item.start.variable, minute - item.start.offset))) &&
           (item.end.variable < 0 ||
            core.true_at_root(at_least(item.end.variable, minute + 1 - item.end.offset)));
  };
  std::size_t open = 0;
  for (const std::size_t i : cover_) {
    if (always(i))
      needed -= items_[i].amount;
    else
      cover_[open++] = i;
  }
  cover_.resize(open);
  std::sort(cover_.begin(), cover_.end(), [&](std::size_t a, std::size_t b) {
    if (items_[a].amount != items_[b].amount) return items_[a].amount > items_[b].amount;
    return a < b;
  });
  for (const std::size_t i : cover_) {
    if (needed <= 0) break;
    needed -= items_[i].amount;
    require_at_most(reason_, items_[i].start, minute);
    require_at_least(reason_, items_[i].end, minute + 1);
    if (!core.true_at_root(items_[i].active)) reason_.push_back(items_[i].active);
  }
}

bool Timetable::push_start(Core& core, std::size_t index) {
  const TableItem& item = items_[index];
  if (item.start.variable < 0) return true;
  for (;;) {
    const int from = least(core, item.start);
    const int to = std::min(least(core, item.end), most(core, item.start));
    int blocked = to - 1;
    while (blocked >= from && !full(blocked, item.amount)) --blocked;
    if (blocked < from) return true;
    explain(core, index, blocked, capacity_ - item.amount + 1);
    require_at_least(reason_, item.end, blocked + 1);
    if (!core.true_at_root(item.active)) reason_.push_back(item.active);
    spoil(Site::kTableStart, reason_);
    if (!core.imply(at_least(item.start.variable, blocked + 1 - item.start.offset), reason_))
      return false;
  }
}

bool Timetable::push_end(Core& core, std::size_t index) {
  const TableItem& item = items_[index];
  if (item.end.variable < 0) return true;
  for (;;) {
    const int from = std::max(most(core, item.start), least(core, item.end));
    const int to = most(core, item.end);
    int blocked = from;
    while (blocked < to && !full(blocked, item.amount)) ++blocked;
    if (blocked >= to) return true;
    explain(core, index, blocked, capacity_ - item.amount + 1);
    require_at_most(reason_, item.start, blocked);
    if (!core.true_at_root(item.active)) reason_.push_back(item.active);
    spoil(Site::kTableEnd, reason_);
    if (!core.imply(at_most(item.end.variable, blocked - item.end.offset), reason_)) return false;
  }
}

bool Timetable::exclude(Core& core, std::size_t index) {
  const TableItem& item = items_[index];
  const int to = least(core, item.end);
  for (int t = most(core, item.start); t < to; ++t) {
    if (!full(t, item.amount)) continue;
    explain(core, index, t, capacity_ - item.amount + 1);
    require_at_most(reason_, item.start, t);
    require_at_least(reason_, item.end, t + 1);
    spoil(Site::kTableExclude, reason_);
    return core.imply(!item.active, reason_);
  }
  return true;
}

}  // namespace scheduler
