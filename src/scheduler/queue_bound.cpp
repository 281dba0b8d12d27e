#include "scheduler/queue_bound.h"

#include <algorithm>
#include <map>
#include <optional>
#include <set>
#include <tuple>

#include "base/index.h"

namespace scheduler {
namespace {

using base::at;

/// What uses of one queue have in common: terms with equal keys form a group.
struct Key {
  bool before;   ///< queue first, common moment later
  Event moment;  ///< activity -1: minute 0
  int weight, resource, amount;
  Time length, offset, allowance;
  friend auto operator<=>(const Key&, const Key&) = default;
};

struct Group {
  std::set<int> activities;
  Time least_gap = kNoLimit;  ///< between queue use and moment, the least over the members
};

class QueueBound {
 public:
  QueueBound(const Problem& problem, const GoalLevel& level) : problem_(problem), level_(level) {}

  std::int64_t run() {
    for (const Lag& lag : problem_.lags) {
      const auto [entry, fresh] = gaps_.try_emplace({lag.from, lag.to}, lag.min);
      if (!fresh) entry->second = std::max(entry->second, lag.min);
    }
    for (const Term& term : level_.terms) add(term);
    // A group may share activities with another one of the level, but never a term, so the bounds
    // add up.
    std::int64_t sum = 0;
    for (const auto& [key, group] : groups_) sum += key.weight * waiting(key, group);
    return sum;
  }

 private:
  std::optional<Time> gap(Event from, Event to) const {
    const auto found = gaps_.find({from, to});
    if (found == gaps_.end()) return std::nullopt;
    return found->second;
  }

  /// Least time from the end of the activity to the moment, or from the moment to its start, by a
  /// direct lag.
  std::optional<Time> distance(bool before, int activity, Event moment, Time length) const {
    if (moment.activity < 0) return problem_.activities[at(activity)].earliest;
    const Event start{activity, Side::kStart}, end{activity, Side::kEnd};
    if (before) {
      if (const auto direct = gap(end, moment)) return direct;
      if (const auto from_start = gap(start, moment)) return *from_start - length;
      return std::nullopt;
    }
    if (const auto direct = gap(moment, start)) return direct;
    if (const auto to_end = gap(moment, end)) return *to_end - length;
    return std::nullopt;
  }

  void add(const Term& term) {
    if (term.kind != Term::Kind::kExcess || term.high.size() != 1 || term.low.size() > 1) return;
    const Event high = term.high[0];
    const Event low = term.low.empty() ? Event{-1, Side::kStart} : term.low[0];
    if (!try_add(term, true, low, high)) try_add(term, false, high, low);
  }

  bool try_add(const Term& term, bool before, Event queued, Event moment) {
    if (queued.activity < 0 || queued.activity == moment.activity) return false;
    const Activity& activity = problem_.activities[at(queued.activity)];
    const Time length = activity.duration_min;
    if (activity.optional || activity.modes.size() != 1 || length == 0 ||
        length != activity.duration_max)
      return false;
    if (moment.activity >= 0 && problem_.activities[at(moment.activity)].optional) return false;
    const std::optional<Time> least = distance(before, queued.activity, moment, length);
    if (!least) return false;
    const Use* narrow = nullptr;  // the use with the fewest lanes
    for (const Use& use : activity.modes[0].uses) {
      if (use.amount > 0 && (narrow == nullptr || lanes(use.resource, use.amount) <
                                                      lanes(narrow->resource, narrow->amount))) {
        narrow = &use;
      }
    }
    if (narrow == nullptr) return false;
    const Time offset = queued.side == Side::kEnd ? length : 0;
    Group& group = groups_[{before, moment, term.weight, narrow->resource, narrow->amount, length,
                            offset, term.allowance}];
    if (!group.activities.insert(queued.activity).second)
      return true;  // the same term twice counts once
    group.least_gap = std::min(group.least_gap, *least);
    return true;
  }

  int lanes(int resource, int amount) const {
    return problem_.resources[at(resource)].capacity / amount;
  }

  // Uses of equal length fall into as many lanes as fit beside each other (interval graphs are
  // perfect); in one lane starts are at least a length apart.
  std::int64_t waiting(const Key& key, const Group& group) const {
    const std::int64_t count = static_cast<std::int64_t>(group.activities.size());
    std::int64_t sum = 0;
    for (std::int64_t within = 0; within <= problem_.horizon; ++within) {
      const std::int64_t window = key.before
                                      ? key.offset + key.allowance + within - key.length -
                                            group.least_gap
                                      : key.allowance + within - key.offset - group.least_gap;
      const std::int64_t most = window < 0 ? 0
                                           : std::int64_t{lanes(key.resource, key.amount)} *
                                                 (window / key.length + 1);
      if (most >= count) break;
      sum += count - most;
    }
    return sum;
  }

  const Problem& problem_;
  const GoalLevel& level_;
  std::map<std::pair<Event, Event>, Time> gaps_;
  std::map<Key, Group> groups_;
};

}  // namespace

std::int64_t queue_bound(const Problem& problem, const GoalLevel& level) {
  return QueueBound(problem, level).run();
}

}  // namespace scheduler
