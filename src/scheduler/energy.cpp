#include "scheduler/energy.h"

#include <algorithm>

#include "scheduler/mutant.h"

namespace scheduler {
namespace {
/// Where one call in so many finds nothing, only every kPause-th call is made.
constexpr std::int64_t kCallsAHit = 400;
constexpr std::int64_t kPause = 16;
}  // namespace

Energy::Energy(std::vector<TableItem> items, const std::vector<int>& background, int capacity,
               bool alike)
    : capacity_(capacity), alike_(alike) {
  for (TableItem& item : items) {
    if (item.least > 0 && item.amount > 0) items_.push_back(item);
  }
  background_sum_.push_back(0);
  for (const int height : background) background_sum_.push_back(background_sum_.back() + height);
}

std::vector<int> Energy::sides() const {
  std::vector<int> sides;
  for (const TableItem& item : items_) {
    if (item.start.variable >= 0) sides.push_back(2 * item.start.variable);
    if (item.end.variable >= 0) sides.push_back(2 * item.end.variable + 1);
    sides.push_back(item.active.side);
  }
  std::sort(sides.begin(), sides.end());
  sides.erase(std::unique(sides.begin(), sides.end()), sides.end());
  return sides;
}

bool Energy::worth_running() {
  ++calls_;
  return hits_ * kCallsAHit >= calls_ - kCallsAHit || calls_ % kPause == 0;
}

std::int64_t Energy::room(int from, int to) const {
  const auto sum = [&](int t) {
    const std::size_t last = background_sum_.size() - 1;
    return background_sum_[std::min(static_cast<std::size_t>(t), last)];
  };
  const std::int64_t free = std::int64_t{capacity_} * (to - from) - (sum(to) - sum(from));
  if (!alike_) return free;
  const TableItem& one = items_.front();
  const std::int64_t whole = std::int64_t{capacity_ / one.amount} * ((to - from) / one.least);
  return std::min(free, whole * one.amount * one.least);
}

bool Energy::propagate(Core& core) {
  if (items_.empty() || !worth_running()) return true;
  windows_.clear();
  for (std::size_t i = 0; i < items_.size(); ++i) {
    const TableItem& item = items_[i];
    if (!core.is_true(item.active)) continue;
    const int start = item.start.variable < 0
                          ? item.start.offset
                          : core.low(2 * item.start.variable) + item.start.offset;
    const int end = item.end.variable < 0 ? item.end.offset
                                          : core.high(2 * item.end.variable) + item.end.offset;
    windows_.push_back({start, end, std::int64_t{item.amount} * item.least, i});
  }
  std::sort(windows_.begin(), windows_.end(), [](const Window& a, const Window& b) {
    return a.end != b.end ? a.end < b.end : a.item < b.item;
  });
  core.spend(static_cast<std::int64_t>(windows_.size() * windows_.size() / 8 + 1));
  int previous = -1;
  for (const Window& first : windows_) {
    if (first.start == previous) continue;  // the same left end as just before
    previous = first.start;
    std::int64_t work = 0;
    for (std::size_t k = 0; k < windows_.size(); ++k) {
      const Window& window = windows_[k];
      if (window.start < first.start) continue;
      work += window.work;
      const std::int64_t excess = work - room(first.start, window.end);
      if (excess > 0) return overloaded(core, first.start, k, excess);
    }
  }
  return true;
}

bool Energy::overloaded(Core& core, int from, std::size_t last, std::int64_t excess) {
  ++hits_;
  const int to = windows_[last].end;
  reason_.clear();
  for (std::size_t k = 0; k <= last; ++k) {
    const Window& window = windows_[k];
    if (window.start < from) continue;
    if (window.work < excess) {
      excess -= window.work;  // overloaded without it as well
      continue;
    }
    const TableItem& item = items_[window.item];
    if (item.start.variable >= 0) {
      reason_.push_back(at_least(item.start.variable, from - item.start.offset));
    }
    if (item.end.variable >= 0) {
      reason_.push_back(at_most(item.end.variable, to - item.end.offset));
    }
    if (!core.true_at_root(item.active)) reason_.push_back(item.active);
  }
  spoil(Site::kEnergy, reason_);
  return core.fail(reason_);
}

}  // namespace scheduler
