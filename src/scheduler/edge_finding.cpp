#include "scheduler/edge_finding.h"

#include <algorithm>
#include <stdexcept>

#include "base/index.h"
#include "scheduler/mutant.h"

namespace scheduler {
namespace {

using base::at;

/// Where fewer calls than one in so many find something, only every kPause-th call is made.
constexpr std::int64_t kCallsAHit = 60;
constexpr std::int64_t kPause = 16;
/// One part in so many of all work at most, beyond a first grace.
constexpr std::int64_t kShare = 12;
constexpr std::int64_t kGrace = 200000;

int overlap(int from, int to, int other_from, int other_to) {
  return std::max(0, std::min(to, other_to) - std::max(from, other_from));
}

}  // namespace

EdgeFinding::EdgeFinding(const Timetable& table) : table_(table) {
  background_sum_.push_back(0);
  for (const int height : table.background())
    background_sum_.push_back(background_sum_.back() + height);
}

std::vector<int> EdgeFinding::sides() const { return table_.sides(); }

bool EdgeFinding::worth_running(const Core& core) {
  if (born_ < 0) born_ = core.ticks();
  if (spent_ * kShare > core.ticks() - born_ + kGrace) return false;
  ++calls_;
  return hits_ * kCallsAHit >= calls_ - 20 * kCallsAHit || calls_ % kPause == 0;
}

void EdgeFinding::spend(Core& core, std::size_t ticks) {
  spent_ += static_cast<std::int64_t>(ticks);
  core.spend(static_cast<std::int64_t>(ticks));
}

// Tasks by falling least start; the profile's prefix sums over the time they span.
void EdgeFinding::collect(Core& core) {
  tasks_.clear();
  ends_.clear();
  largest_ = 0;
  first_ = static_cast<int>(table_.heights().size());
  int last = 0;
  const std::vector<TableItem>& items = table_.items();
  for (std::size_t i = 0; i < items.size(); ++i) {
    const TableItem& item = items[i];
    if (item.least <= 0 || !core.is_true(item.active)) continue;
    Task task{least(core, item.start),
              most(core, item.end),
              item.least,
              most(core, item.start),
              least(core, item.end),
              0,
              i};
    const int part = std::max(0, task.to - task.from);
    if (part >= task.length) continue;
    task.free = std::int64_t{item.amount} * (task.length - part);
    largest_ = std::max(largest_, task.free);
    tasks_.push_back(task);
    ends_.push_back(task.latest);
    first_ = std::min(first_, task.earliest);
    last = std::max(last, task.latest);
  }
  std::sort(tasks_.begin(), tasks_.end(), [](const Task& a, const Task& b) {
    return a.earliest != b.earliest ? a.earliest > b.earliest : a.item < b.item;
  });
  std::sort(ends_.begin(), ends_.end());
  ends_.erase(std::unique(ends_.begin(), ends_.end()), ends_.end());
  sum_profile(last);
}

void EdgeFinding::sum_profile(int last) {
  room_.assign(1, 0);
  const std::int64_t capacity = table_.capacity();
  for (int t = first_; t < last; ++t)
    room_.push_back(room_.back() + capacity - table_.heights()[at(t)]);
  columns_.clear();
  for (const Task& task : tasks_)
    columns_.push_back({task.latest, task.free, room_until(task.earliest)});
}

bool EdgeFinding::propagate(Core& core) {
  if (!worth_running(core)) return true;
  collect(core);
  spend(core,
        tasks_.size() * ends_.size() / 16 + room_.size() / 16 + table_.items().size() / 2 + 1);
  // A pruning makes what was collected older, never wrong: the call that follows it sees more.
  return std::all_of(ends_.rbegin(), ends_.rend(), [&](int end) { return sweep(core, end); });
}

// Intervals that end at `to`, from the shortest on.
bool EdgeFinding::sweep(Core& core, int to) {
  std::int64_t rest = room_until(to);
  for (std::size_t k = 0; k < columns_.size(); ++k) {
    const Column& column = columns_[k];
    if (column.latest > to) continue;
    rest -= column.free;
    if (rest - column.room >= largest_) continue;
    const int from = tasks_[k].earliest;
    if (rest < column.room) {
      ++hits_;
      return overloaded(core, from, to);
    }
    if (!push_out(core, from, to, rest - column.room)) return false;
  }
  return true;
}

// All tasks that are not counted wholly inside [from, to) and would use more of it than the rest.
bool EdgeFinding::push_out(Core& core, int from, int to, std::int64_t rest) {
  spend(core, tasks_.size() / 8 + 1);
  for (const Task& task : tasks_) {
    if (task.free <= rest || (task.earliest >= from && task.latest <= to)) continue;
    if (task.earliest >= to || task.latest <= from) continue;
    const int amount = table_.items()[task.item].amount;
    const std::int64_t counted = std::int64_t{amount} * overlap(task.from, task.to, from, to);
    const std::int64_t left = std::int64_t{amount} *
                              overlap(task.earliest, task.earliest + task.length, from, to);
    if (left - counted > rest && task.latest > to && !push_start(core, task, from, to))
      return false;
    const std::int64_t right = std::int64_t{amount} *
                               overlap(task.latest - task.length, task.latest, from, to);
    if (right - counted > rest && task.earliest < from && !push_end(core, task, from, to))
      return false;
  }
  return true;
}

// The part of a use that lies inside [from, to) wherever the use lies.
EdgeFinding::Share EdgeFinding::share(const Core& core, std::size_t index, int from, int to) const {
  const TableItem& item = table_.items()[index];
  Share share{index, -1, 0, item.amount, false};
  if (!core.is_true(item.active)) return share;
  const int latest = most(core, item.start), soonest = least(core, item.end);
  share.length = std::min(
      {item.least, least(core, item.start) + item.least - from, to - latest, to - from});
  if (overlap(latest, soonest, from, to) <= std::max(0, share.length)) return share;
  // A use that may be longer than its least length.
  share.from = std::max(latest, from);
  share.length = std::min(soonest, to) - share.from;
  return share;
}

std::int64_t EdgeFinding::shares(Core& core, std::size_t skipped, int from, int to) {
  shares_.clear();
  std::int64_t sum = background_sum_[at(to)] - background_sum_[at(from)];
  for (std::size_t i = 0; i < table_.items().size(); ++i) {
    if (i == skipped) continue;
    Share one = share(core, i, from, to);
    if (one.length <= 0) continue;
    sum += std::int64_t{one.amount} * one.length;
    reason_.clear();
    require(one, from, to);
    one.always = std::all_of(reason_.begin(), reason_.end(),
                             [&](Literal literal) { return core.true_at_root(literal); });
    shares_.push_back(one);
  }
  spend(core, table_.items().size() / 2);
  return sum;
}

void EdgeFinding::require(const Share& share, int from, int to) {
  const TableItem& item = table_.items()[share.item];
  if (share.from >= 0) {
    require_at_most(reason_, item.start, share.from);
    require_at_least(reason_, item.end, share.from + share.length);
  } else {
    require_at_least(reason_, item.start, from + share.length - item.least);
    require_at_most(reason_, item.start, to - share.length);
  }
  reason_.push_back(item.active);
}

// The smallest shares go first: the fewer literals are left, the more the clause says.
void EdgeFinding::give_away(std::int64_t excess) {
  std::sort(shares_.begin(), shares_.end(), [](const Share& a, const Share& b) {
    const int x = a.amount * a.length, y = b.amount * b.length;
    return x != y ? x < y : a.item < b.item;
  });
  for (Share& share : shares_) {
    if (share.always || excess <= 0) continue;
    const int given = static_cast<int>(std::min<std::int64_t>(excess / share.amount, share.length));
    share.length -= given;
    excess -= std::int64_t{given} * share.amount;
  }
}

// Why more than `most` of [from, to) is taken by uses other than `skipped`.
void EdgeFinding::explain(Core& core, std::size_t skipped, int from, int to, std::int64_t most) {
  const std::int64_t excess = shares(core, skipped, from, to) - most - 1;
  if (excess < 0) throw std::logic_error("an interval said to be overfull is not");
  give_away(excess);
  reason_.clear();
  for (const Share& share : shares_) {
    if (share.length > 0 && !share.always) require(share, from, to);
  }
}

bool EdgeFinding::overloaded(Core& core, int from, int to) {
  explain(core, table_.items().size(), from, to, std::int64_t{table_.capacity()} * (to - from));
  spoil(Site::kEdgeOverload, reason_);
  return core.fail(reason_);
}

// Beside the others the task has room for `fits` of its length in [from, to); it starts late enough
// to reach further into it, so it has to start when only that much is left.
bool EdgeFinding::push_start(Core& core, const Task& task, int from, int to) {
  const TableItem& item = table_.items()[task.item];
  const std::int64_t room = std::int64_t{table_.capacity()} * (to - from);
  const std::int64_t rest = room - shares(core, task.item, from, to);
  if (item.start.variable < 0 || rest < 0) return true;
  const int fits = static_cast<int>(rest / item.amount);
  if (fits >= std::min(task.length, to - from) || task.earliest < from + fits + 1 - task.length ||
      least(core, item.start) >= to - fits)
    return true;
  ++hits_;
  explain(core, task.item, from, to, room - std::int64_t{item.amount} * (fits + 1));
  require_at_least(reason_, item.start, from + fits + 1 - task.length);
  if (!core.true_at_root(item.active)) reason_.push_back(item.active);
  spoil(Site::kEdgeStart, reason_);
  return core.imply(at_least(item.start.variable, to - fits - item.start.offset), reason_);
}

bool EdgeFinding::push_end(Core& core, const Task& task, int from, int to) {
  const TableItem& item = table_.items()[task.item];
  const std::int64_t room = std::int64_t{table_.capacity()} * (to - from);
  const std::int64_t rest = room - shares(core, task.item, from, to);
  if (item.end.variable < 0 || rest < 0) return true;
  const int fits = static_cast<int>(rest / item.amount);
  if (fits >= std::min(task.length, to - from) || task.latest > to - fits - 1 + task.length ||
      most(core, item.end) <= from + fits)
    return true;
  ++hits_;
  explain(core, task.item, from, to, room - std::int64_t{item.amount} * (fits + 1));
  require_at_most(reason_, item.end, to - fits - 1 + task.length);
  if (!core.true_at_root(item.active)) reason_.push_back(item.active);
  spoil(Site::kEdgeEnd, reason_);
  return core.imply(at_most(item.end.variable, from + fits - item.end.offset), reason_);
}

}  // namespace scheduler
