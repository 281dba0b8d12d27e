#include "scheduler/population.h"

#include <algorithm>

#include "base/index.h"

namespace scheduler {
namespace {

using base::at;

/// Members of the first population times activities, but not more members than kMostFirst; of each
/// next population so many times more.
constexpr int kMembersActivities = 200000;
constexpr int kLeastFirst = 50, kMostFirst = 1500;
constexpr std::size_t kGrowth = 2;
constexpr int kMostGrowths = 3;
/// Children for each member before a population has come to rest.
constexpr std::int64_t kChildren = 400;
constexpr int kMutations = 1;  // in a hundred
/// Work of the schemes is counted in minutes and activities looked at; about as much time as a tick
/// of the core takes two of them. Besides, each child has its crossing and sorting.
constexpr std::int64_t kLooksATick = 2;
constexpr std::int64_t kChild = 200;

}  // namespace

Population::Population(const ListProblem& list, std::uint64_t seed)
    : list_(list),
      backwards_(mirrored(list)),
      justification_(list_, backwards_),
      random_(seed),
      bound_(list.earliest[at(list.goal)]),
      size_(at(std::clamp(kMembersActivities / list.count, kLeastFirst, kMostFirst))) {
  child_.starts.resize(at(list.count));
  child_.order.resize(at(list.count));
  marks_.assign(at(list.count), 0);
}

// Sorted by start, equals by number: each activity after its predecessors.
void Population::order_of(const std::vector<Time>& starts, std::vector<int>& order) {
  const Time most = *std::max_element(starts.begin(), starts.end());
  begin_.assign(at(most) + 2, 0);
  for (const Time start : starts) ++begin_[at(start) + 1];
  for (Time t = 0; t <= most; ++t) begin_[at(t) + 1] += begin_[at(t)];
  order.resize(starts.size());
  for (int i = 0; i < list_.count; ++i) order[at(begin_[at(starts[at(i)])]++)] = i;
}

// Each next one drawn from those whose predecessors are in, the likelier the less time it has
// (biased random sampling, A. Drexl 1991).
void Population::sample_order(std::vector<int>& order) {
  missing_.assign(at(list_.count), 0);
  ready_.clear();
  order.clear();
  for (int i = 0; i < list_.count; ++i) {
    missing_[at(i)] = list_.in_begin[at(i) + 1] - list_.in_begin[at(i)];
    if (missing_[at(i)] == 0) ready_.push_back(i);
  }
  while (!ready_.empty()) {
    Time most = 0;
    for (const int i : ready_) most = std::max(most, list_.latest[at(i)]);
    std::int64_t sum = 0;
    const auto weight = [&](int i) {
      const std::int64_t regret = most - list_.latest[at(i)] + 1;
      return std::min<std::int64_t>(regret * regret, 1 << 20);
    };
    for (const int i : ready_) sum += weight(i);
    std::int64_t draw = static_cast<std::int64_t>((random_.next() >> 11) %
                                                  static_cast<std::uint64_t>(sum));
    std::size_t chosen = 0;
    while (draw >= weight(ready_[chosen])) draw -= weight(ready_[chosen++]);
    const int i = ready_[chosen];
    ready_.erase(ready_.begin() + static_cast<std::ptrdiff_t>(chosen));
    order.push_back(i);
    for (int a = list_.out_begin[at(i)]; a < list_.out_begin[at(i) + 1]; ++a) {
      if (--missing_[at(list_.out[at(a)].other)] == 0) ready_.push_back(list_.out[at(a)].other);
    }
  }
}

// A stretch of the father's order within the mother's: what the mother has before the stretch, then
// from the father what is missing up to its end, then the rest of the mother.
void Population::child_of(const Member& mother, const Member& father) {
  const int count = list_.count;
  const int length = count / 4 + random_.below(count / 2 + 1);
  const int first = random_.below(std::max(1, count - length + 1));
  ++stamp_;
  child_.order.clear();
  const auto take = [&](const std::vector<int>& from, int end) {
    for (const int i : from) {
      if (static_cast<int>(child_.order.size()) >= end) return;
      if (marks_[at(i)] == stamp_) continue;
      marks_[at(i)] = stamp_;
      child_.order.push_back(i);
    }
  };
  take(mother.order, first);
  take(father.order, first + length);
  take(mother.order, count);
  child_.parallel = random_.below(2) == 0;
}

bool Population::before(int i, int j) const {
  for (int a = list_.out_begin[at(i)]; a < list_.out_begin[at(i) + 1]; ++a) {
    if (list_.out[at(a)].other == j) return true;
  }
  return false;
}

// Neighbours change places where no lag forbids it; a few of them travel further.
void Population::mutate(std::vector<int>& order) {
  for (std::size_t k = 0; k + 1 < order.size(); ++k) {
    if (random_.below(100) >= kMutations) continue;
    std::size_t place = k;
    for (int steps = 1 + random_.below(10); steps > 0 && place + 1 < order.size(); --steps) {
      if (before(order[place], order[place + 1])) break;
      std::swap(order[place], order[place + 1]);
      ++place;
    }
  }
}

void Population::decode() {
  if (child_.parallel)
    justification_.forward().parallel(child_.order, child_.starts);
  else
    justification_.forward().serial(child_.order, child_.starts);
  schedules_ += 1 + 2 * justification_.improve(child_.starts);
  child_.value = child_.starts[at(list_.goal)];
  order_of(child_.starts, child_.order);
  found();
}

void Population::found() {
  child_.mark = 0;
  for (const Time start : child_.starts)
    child_.mark = (child_.mark ^ static_cast<std::uint64_t>(start)) * 0x9E3779B97F4A7C15ULL;
  if (has_best() && child_.value >= best_value()) return;
  best_ = child_.starts;
}

bool Population::known(const Member& member) const {
  for (std::size_t k = 0; k < known_.size(); ++k) {
    if (known_[k] == member.mark && members_[k].starts == member.starts) return true;
  }
  return false;
}

void Population::put(int place) {
  if (at(place) == members_.size()) {
    members_.emplace_back();
    known_.push_back(0);
  }
  members_[at(place)] = child_;
  known_[at(place)] = child_.mark;
}

int Population::pick() {
  const int count = static_cast<int>(members_.size());
  const int a = random_.below(count), b = random_.below(count);
  return members_[at(a)].value <= members_[at(b)].value ? a : b;
}

// In place of the worst of a few, if it is no worse and not there yet.
void Population::accept() {
  if (known(child_)) return;
  const int count = static_cast<int>(members_.size());
  int worst = random_.below(count);
  for (int again = 0; again < 3; ++again) {
    const int other = random_.below(count);
    if (members_[at(other)].value > members_[at(worst)].value) worst = other;
  }
  if (child_.value <= members_[at(worst)].value) put(worst);
}

void Population::join(const std::vector<Time>& starts) {
  child_.starts = starts;
  schedules_ += 2 * justification_.improve(child_.starts);
  child_.value = child_.starts[at(list_.goal)];
  child_.parallel = false;
  order_of(child_.starts, child_.order);
  found();
  if (!grown_)
    put(static_cast<int>(members_.size()));
  else
    accept();
}

// A population at rest is joined by the one before it; when both together have come to rest, a
// larger one begins. So small populations give good schedules early, and large ones in time.
void Population::next_population() {
  children_ = 0;
  if (waiting_.empty()) {
    waiting_ = std::move(members_);
    members_.clear();
    known_.clear();
    grown_ = false;
    if (++growths_ <= kMostGrowths) size_ *= kGrowth;
    return;
  }
  for (Member& member : waiting_) {
    child_ = std::move(member);
    put(static_cast<int>(members_.size()));
  }
  waiting_.clear();
}

std::int64_t Population::run(std::int64_t ticks) {
  std::int64_t spent = 0;
  const auto used = [&] { return spent / kLooksATick; };
  while (used() < ticks && !closed()) {
    if (!grown_) {
      sample_order(child_.order);
      child_.parallel = random_.below(2) == 0;
      decode();
      put(static_cast<int>(members_.size()));
      grown_ = members_.size() >= size_;
    } else {
      child_of(members_[at(pick())], members_[at(pick())]);
      mutate(child_.order);
      decode();
      accept();
      if (++children_ >= kChildren * static_cast<std::int64_t>(members_.size())) next_population();
    }
    spent += justification_.take_work() + 6 * list_.count + kChild;
  }
  return used();
}

}  // namespace scheduler
