#include "proof_check/semantics.h"

#include <algorithm>

namespace proof_check {
namespace {
constexpr long kNone = -1000000000;
std::size_t at(int index) { return static_cast<std::size_t>(index); }
}  // namespace

Semantics::Semantics(const Instance& instance) : instance_(instance) {
  const std::size_t count = instance.jobs.size();
  gap_.assign(count, std::vector<long>(count, kNone));
  for (std::size_t j = 0; j < count; ++j) gap_[j][j] = 0;
  for (const Lag& lag : instance.lags)
    gap_[at(lag.from)][at(lag.to)] = std::max<long>(gap_[at(lag.from)][at(lag.to)], lag.gap);
  for (std::size_t k = 0; k < count; ++k) {
    for (std::size_t i = 0; i < count; ++i) {
      for (std::size_t j = 0; j < count; ++j) {
        if (gap_[i][k] == kNone || gap_[k][j] == kNone) continue;
        gap_[i][j] = std::max(gap_[i][j], gap_[i][k] + gap_[k][j]);
      }
    }
    hopeless_ = hopeless_ || gap_[k][k] > 0;
    if (hopeless_) return;  // a cycle that never holds; its lengths would only grow
  }
  for (const Job& job : instance.jobs) {
    for (std::size_t r = 0; r < instance.capacities.size(); ++r)
      hopeless_ = hopeless_ || (job.duration > 0 && job.demands[r] > instance.capacities[r]);
  }
}

bool Semantics::lag_broken(const Starts& starts, const std::vector<int>& jobs) const {
  for (const int i : jobs) {
    for (const int j : jobs) {
      const long gap = gap_[at(i)][at(j)];
      if (gap != kNone && starts.low[at(i)] + gap > starts.high[at(j)]) return true;
    }
  }
  return false;
}

bool Semantics::never_together(int a, int b) const {
  const Job &one = instance_.jobs[at(a)], &two = instance_.jobs[at(b)];
  if (a == b || one.duration == 0 || two.duration == 0) return false;
  for (std::size_t r = 0; r < instance_.capacities.size(); ++r) {
    if (one.demands[r] + two.demands[r] > instance_.capacities[r]) return true;
  }
  return false;
}

// A job covers [greatest start, least end) in every schedule; the sum can rise only where one of
// these begins.
bool Semantics::overfull_minute(const Starts& starts, std::size_t r) const {
  const std::vector<Job>& jobs = instance_.jobs;
  for (std::size_t first = 0; first < jobs.size(); ++first) {
    const int minute = starts.high[first];
    long sum = 0;
    for (std::size_t j = 0; j < jobs.size(); ++j) {
      if (starts.high[j] <= minute && minute < starts.low[j] + jobs[j].duration)
        sum += jobs[j].demands[r];
    }
    if (sum > instance_.capacities[r]) return true;
  }
  return false;
}

// Work that no start within the bounds keeps out of [from, to); and, of the jobs that lie wholly
// inside, how many can follow one another beside each other.
bool Semantics::overfull_interval(const Starts& starts, std::size_t r, int from, int to) const {
  if (from >= to) return false;
  long work = 0, inside = 0;
  int least_demand = 0, least_duration = 0;
  for (std::size_t j = 0; j < instance_.jobs.size(); ++j) {
    const Job& job = instance_.jobs[j];
    if (job.demands[r] == 0 || job.duration == 0) continue;
    const int end = starts.low[j] + job.duration;
    const int within = std::min({job.duration, end - from, to - starts.high[j], to - from});
    work += static_cast<long>(std::max(0, within)) * job.demands[r];
    if (starts.low[j] < from || starts.high[j] + job.duration > to) continue;
    least_demand = inside == 0 ? job.demands[r] : std::min(least_demand, job.demands[r]);
    least_duration = inside == 0 ? job.duration : std::min(least_duration, job.duration);
    ++inside;
  }
  const long capacity = instance_.capacities[r];
  if (work > capacity * (to - from)) return true;
  return inside > 0 && inside > (capacity / least_demand) * ((to - from) / least_duration);
}

bool Semantics::overfull_between(const Starts& starts, std::size_t r,
                                 const std::vector<int>& marks) const {
  for (const int from : marks) {
    for (const int to : marks) {
      if (overfull_interval(starts, r, from, to)) return true;
    }
  }
  return false;
}

std::vector<int> Semantics::marks(const Starts& starts, const std::vector<int>& jobs) const {
  std::vector<int> marks;
  for (const int j : jobs) {
    for (const int start : {starts.low[at(j)], starts.high[at(j)]}) {
      marks.push_back(start);
      marks.push_back(start + instance_.jobs[at(j)].duration);
    }
  }
  std::sort(marks.begin(), marks.end());
  marks.erase(std::unique(marks.begin(), marks.end()), marks.end());
  return marks;
}

// What is likely first: a minute, the bounds of the jobs named, those of all that use the resource,
// every interval there is.
bool Semantics::overfull(const Starts& starts, std::size_t r, const std::vector<int>& jobs) const {
  if (overfull_minute(starts, r)) return true;
  if (overfull_between(starts, r, marks(starts, jobs))) return true;
  std::vector<int> users;
  for (std::size_t j = 0; j < instance_.jobs.size(); ++j) {
    if (instance_.jobs[j].demands[r] > 0) users.push_back(static_cast<int>(j));
  }
  std::vector<int> times = marks(starts, users);
  if (times.empty()) return false;
  if (overfull_between(starts, r, times)) return true;
  const int last = times.back();
  times.resize(1);
  while (times.back() < last) times.push_back(times.back() + 1);
  return overfull_between(starts, r, times);
}

}  // namespace proof_check
