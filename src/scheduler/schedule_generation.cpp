// Four resources lie in one word, so one subtraction asks all of them at once: the guard bit of a
// lane survives it as long as the lane holds enough.
#include "scheduler/schedule_generation.h"

#include <algorithm>

#include "base/index.h"

namespace scheduler {
namespace {

using base::at;

constexpr std::uint64_t kGuards = 0x8000800080008000ULL;

/// No schedule of the schemes is longer: each activity accounts for one gap before the next.
Time longest_schedule(const ListProblem& list) {
  std::int64_t sum = *std::max_element(list.earliest.begin(), list.earliest.end());
  for (int i = 0; i < list.count; ++i) {
    Time longest = list.duration[at(i)];
    for (int a = list.out_begin[at(i)]; a < list.out_begin[at(i) + 1]; ++a)
      longest = std::max(longest, list.out[at(a)].least);
    sum += longest;
  }
  return static_cast<Time>(std::min<std::int64_t>(sum, kNoLimit - 1));
}

}  // namespace

ScheduleGeneration::ScheduleGeneration(const ListProblem& list) : list_(list), words_(list.words) {
  const std::size_t size = at(longest_schedule(list) + 1) * at(words_);
  free_.resize(size);
  used_ = longest_schedule(list) + 1;
  returned_.assign(size, 0);
  wake_.assign(at(longest_schedule(list) + 1), 0);
  now_.resize(at(words_));
  missing_.resize(at(list.count));
  rank_.resize(at(list.count));
  ready_at_.resize(at(list.count));
  pending_.reserve(at(list.count));
}

std::int64_t ScheduleGeneration::take_work() {
  const std::int64_t result = work_;
  work_ = 0;
  return result;
}

Time ScheduleGeneration::after_predecessors(int i, const std::vector<Time>& starts) const {
  Time result = list_.earliest[at(i)];
  for (int a = list_.in_begin[at(i)]; a < list_.in_begin[at(i) + 1]; ++a) {
    const ListArc& arc = list_.in[at(a)];
    result = std::max(result, starts[at(arc.other)] + arc.least);
  }
  return result;
}

template <int kWords>
bool ScheduleGeneration::fits(const std::uint64_t* free, const std::uint64_t* demand) const {
  const int words = kWords > 0 ? kWords : words_;
  std::uint64_t kept = kGuards;
  for (int w = 0; w < words; ++w) kept &= free[w] - demand[w];
  return (kept & kGuards) == kGuards;
}

// From the end of the window backwards: a minute without room moves the window behind it, and what
// was seen to be free behind it need not be looked at again.
template <int kWords>
Time ScheduleGeneration::find(Time from, Time length, const std::uint64_t* demand) {
  const int words = kWords > 0 ? kWords : words_;
  Time known = from, end = from + length, minute = end;
  std::int64_t seen = 0;
  while (minute > known) {
    --minute;
    ++seen;
    if (fits<kWords>(free_.data() + at(minute) * at(words), demand)) continue;
    from = minute + 1;
    known = end;
    end = from + length;
    minute = end;
  }
  work_ += seen;
  return from;
}

template <int kWords>
void ScheduleGeneration::serial_of(const std::vector<int>& order, std::vector<Time>& starts) {
  const int words = kWords > 0 ? kWords : words_;
  for (std::size_t k = 0; k < at(used_) * at(words); ++k)
    free_[k] = list_.capacity[kWords == 1 ? 0 : k % at(words)] | kGuards;
  used_ = 0;
  for (const int i : order) {
    Time start = after_predecessors(i, starts);
    const Time length = list_.duration[at(i)];
    const std::uint64_t* demand = list_.demand_of(i);
    if (length > 0) {
      start = find<kWords>(start, length, demand);
      std::uint64_t* free = free_.data() + at(start) * at(words);
      for (Time minute = 0; minute < length; ++minute) {
        for (int w = 0; w < words; ++w) *free++ -= demand[w];
      }
      used_ = std::max(used_, start + length);
    }
    starts[at(i)] = start;
  }
  work_ += 4 * list_.count;
}

void ScheduleGeneration::serial(const std::vector<int>& order, std::vector<Time>& starts) {
  if (words_ == 1)
    serial_of<1>(order, starts);
  else if (words_ == 2)
    serial_of<2>(order, starts);
  else
    serial_of<0>(order, starts);
}

void ScheduleGeneration::wake(Time minute) {
  wake_[at(minute)] = 1;
  last_wake_ = std::max(last_wake_, minute);
}

// All predecessors of i have started: it waits for its time, in order of rank.
void ScheduleGeneration::release(int i, Time now, const std::vector<Time>& starts) {
  ready_at_[at(i)] = std::max(now, after_predecessors(i, starts));
  wake(ready_at_[at(i)]);
  const auto place = std::upper_bound(pending_.begin(), pending_.end(), i,
                                      [&](int a, int b) { return rank_[at(a)] < rank_[at(b)]; });
  pending_.insert(place, i);
}

void ScheduleGeneration::start_ready(Time now, std::vector<Time>& starts) {
  for (std::size_t k = 0; k < pending_.size();) {
    const int i = pending_[k];
    const std::uint64_t* demand = list_.demand_of(i);
    const Time length = list_.duration[at(i)];
    ++work_;
    // Everything that runs has started by now, so who fits now fits to the end.
    if (ready_at_[at(i)] > now || (length > 0 && !fits<0>(now_.data(), demand))) {
      ++k;
      continue;
    }
    starts[at(i)] = now;
    --left_;
    pending_.erase(pending_.begin() + static_cast<std::ptrdiff_t>(k));
    if (length > 0) {
      for (int w = 0; w < words_; ++w) {
        now_[at(w)] -= demand[w];
        returned_[at(now + length) * at(words_) + at(w)] += demand[w];
      }
      wake(now + length);
    }
    bool earlier = false;
    for (int a = list_.out_begin[at(i)]; a < list_.out_begin[at(i) + 1]; ++a) {
      const int next = list_.out[at(a)].other;
      if (--missing_[at(next)] > 0) continue;
      release(next, now, starts);
      earlier = earlier || ready_at_[at(next)] <= now;
    }
    if (earlier) k = 0;
  }
}

void ScheduleGeneration::parallel(const std::vector<int>& order, std::vector<Time>& starts) {
  for (int w = 0; w < words_; ++w) now_[at(w)] = list_.capacity[at(w)] | kGuards;
  pending_.clear();
  last_wake_ = 0;
  left_ = list_.count;
  for (std::size_t k = 0; k < order.size(); ++k) rank_[at(order[k])] = static_cast<int>(k);
  for (int i = 0; i < list_.count; ++i)
    missing_[at(i)] = list_.in_begin[at(i) + 1] - list_.in_begin[at(i)];
  for (int i = 0; i < list_.count; ++i) {
    if (missing_[at(i)] == 0) release(i, 0, starts);
  }
  Time now = 0;
  for (; left_ > 0; ++now) {
    if (!wake_[at(now)]) continue;
    wake_[at(now)] = 0;
    for (int w = 0; w < words_; ++w) {
      std::uint64_t& back = returned_[at(now) * at(words_) + at(w)];
      now_[at(w)] += back;
      back = 0;
    }
    start_ready(now, starts);
  }
  work_ += now + 4 * list_.count;
  // What still runs would give back later: leave the arrays clean for the next call.
  for (; now <= last_wake_; ++now) {
    if (!wake_[at(now)]) continue;
    wake_[at(now)] = 0;
    for (int w = 0; w < words_; ++w) returned_[at(now) * at(words_) + at(w)] = 0;
  }
}

void EndOrder::operator()(const ListProblem& list, const std::vector<Time>& starts,
                          std::vector<int>& order) {
  Time most = 0;
  for (int i = 0; i < list.count; ++i) most = std::max(most, starts[at(i)] + list.duration[at(i)]);
  begin_.assign(at(most) + 2, 0);
  for (int i = 0; i < list.count; ++i)
    ++begin_[at(most - starts[at(i)] - list.duration[at(i)]) + 1];
  for (Time t = 0; t <= most; ++t) begin_[at(t) + 1] += begin_[at(t)];
  order.resize(at(list.count));
  for (int i = list.count - 1; i >= 0; --i) {
    int& place = begin_[at(most - starts[at(i)] - list.duration[at(i)])];
    order[at(place++)] = list.count - 1 - i;
  }
}

}  // namespace scheduler
