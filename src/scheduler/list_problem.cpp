#include "scheduler/list_problem.h"

#include <algorithm>
#include <queue>

#include "base/index.h"

namespace scheduler {
namespace {

using base::at;

constexpr int kLane = 16, kLanes = 4;
constexpr int kMostAmount = (1 << (kLane - 1)) - 1;
/// A profile has a word for each minute.
constexpr Time kMostHorizon = 1 << 20;
constexpr std::size_t kMostActivities = 5000;

struct Link {
  int from, to;
  Time least;
};

bool fits_shape(const Problem& problem, const Options& options) {
  if (problem.activities.empty() || problem.activities.size() > kMostActivities) return false;
  if (problem.horizon > kMostHorizon) return false;
  if (!problem.spans.empty() || !problem.blocked.empty() || !problem.exactly_one.empty())
    return false;
  if (!problem.same_mode.empty() || problem.goals.size() != 1) return false;
  for (const auto& fixed : options.fixed) {
    if (fixed) return false;
  }
  const GoalLevel& goal = problem.goals[0];
  if (goal.terms.size() != 1) return false;
  const Term& term = goal.terms[0];
  return term.kind == Term::Kind::kExcess && term.low.empty() && !term.high.empty();
}

bool fits_shape(const Problem& problem, const Activity& activity) {
  if (activity.duration_min != activity.duration_max || activity.optional || activity.cleans ||
      activity.modes.size() != 1)
    return false;
  return std::all_of(activity.modes[0].uses.begin(), activity.modes[0].uses.end(),
                     [&](const Use& use) {
                       const Resource& resource = problem.resources[at(use.resource)];
                       return resource.kind == ResourceKind::kCumulative && use.hazard < 0 &&
                              use.amount <= kMostAmount && resource.capacity >= use.amount;
                     });
}

class Builder {
 public:
  explicit Builder(const Problem& problem) : problem_(problem) {
    list_.count = static_cast<int>(problem.activities.size()) + 1;
    list_.horizon = problem.horizon;
  }

  std::optional<ListProblem> build() {
    collect_links();
    number();
    fill();
    if (!tighten()) return std::nullopt;
    pack_resources();
    return std::move(list_);
  }

 private:
  Time offset(Event event) const {
    return event.side == Side::kEnd ? problem_.activities[at(event.activity)].duration_min : 0;
  }

  void collect_links() {
    for (const Lag& lag : problem_.lags) {
      const Time shift = offset(lag.from) - offset(lag.to);
      links_.push_back({lag.from.activity, lag.to.activity, lag.min + shift});
      if (lag.max != kNoLimit)
        links_.push_back({lag.to.activity, lag.from.activity, -lag.max - shift});
    }
    for (const Event event : problem_.goals[0].terms[0].high)
      links_.push_back({event.activity, list_.count - 1, offset(event)});
    // A lag of an activity to itself is a matter of the problem's own contradiction.
    links_.erase(std::remove_if(links_.begin(), links_.end(),
                                [](const Link& link) { return link.from == link.to; }),
                 links_.end());
  }

  Time length(int activity) const {
    return activity == list_.count - 1 ? 0 : problem_.activities[at(activity)].duration_min;
  }

  // Least number first among what has no predecessor left; the goal's activity last. Where lags
  // form a cycle the rest keeps its own order.
  void number() {
    list_.plain = true;
    std::vector<int> missing(at(list_.count), 0);
    std::vector<std::vector<int>> after(at(list_.count));
    for (const Link& link : links_) {
      if (link.least < length(link.from)) list_.plain = false;
      after[at(link.from)].push_back(link.to);
      ++missing[at(link.to)];
    }
    std::priority_queue<int, std::vector<int>, std::greater<>> ready;
    for (int i = 0; i < list_.count; ++i) {
      if (missing[at(i)] == 0) ready.push(i);
    }
    std::vector<int> order;
    while (!ready.empty()) {
      const int i = ready.top();
      ready.pop();
      if (i != list_.count - 1) order.push_back(i);
      for (const int next : after[at(i)]) {
        if (--missing[at(next)] == 0) ready.push(next);
      }
    }
    if (order.size() + 1 < at(list_.count)) {
      list_.plain = false;
      std::vector<char> done(at(list_.count), 0);
      for (const int i : order) done[at(i)] = 1;
      for (int i = 0; i < list_.count - 1; ++i) {
        if (!done[at(i)]) order.push_back(i);
      }
    }
    order.push_back(list_.count - 1);
    number_.resize(order.size());
    for (std::size_t k = 0; k < order.size(); ++k) number_[at(order[k])] = static_cast<int>(k);
    list_.goal = list_.count - 1;
    list_.original = order;
    list_.original.back() = -1;
  }

  void fill() {
    for (Link& link : links_) {
      link.from = number_[at(link.from)];
      link.to = number_[at(link.to)];
    }
    for (const int i : list_.original) {
      const bool goal = i < 0;
      const Time duration = goal ? 0 : problem_.activities[at(i)].duration_min;
      list_.duration.push_back(duration);
      list_.earliest.push_back(goal ? 0 : std::max(0, problem_.activities[at(i)].earliest));
      Time end = problem_.horizon;
      if (!goal && problem_.activities[at(i)].latest_end < end) {
        end = problem_.activities[at(i)].latest_end;
        list_.plain = false;
      }
      list_.latest.push_back(end - duration);
    }
    const auto lists = [&](bool out, std::vector<int>& begin, std::vector<ListArc>& arcs) {
      begin.assign(at(list_.count) + 1, 0);
      for (const Link& link : links_) ++begin[at(out ? link.from : link.to) + 1];
      for (int i = 0; i < list_.count; ++i) begin[at(i) + 1] += begin[at(i)];
      arcs.resize(links_.size());
      std::vector<int> next(begin.begin(), begin.end() - 1);
      for (const Link& link : links_) {
        int& place = next[at(out ? link.from : link.to)];
        arcs[at(place++)] = {out ? link.to : link.from, link.least};
      }
    };
    lists(true, list_.out_begin, list_.out);
    lists(false, list_.in_begin, list_.in);
  }

  // Longest paths (Bellman and Ford); false when a window is empty.
  bool tighten() {
    const Time most = 2 * problem_.horizon + 1;
    for (bool changed = true; changed;) {
      changed = false;
      for (const Link& link : links_) {
        Time& low = list_.earliest[at(link.to)];
        Time& high = list_.latest[at(link.from)];
        const Time new_low = list_.earliest[at(link.from)] + link.least;
        const Time new_high = list_.latest[at(link.to)] - link.least;
        if (new_low > low) {
          low = new_low;
          changed = true;
        }
        if (new_high < high) {
          high = new_high;
          changed = true;
        }
        if (low > list_.latest[at(link.to)] || high < list_.earliest[at(link.from)] || low > most)
          return false;
      }
    }
    for (int i = 0; i < list_.count; ++i) {
      if (list_.earliest[at(i)] > list_.latest[at(i)]) return false;
    }
    return true;
  }

  // Resources whose uses together never exceed the capacity are left out.
  void pack_resources() {
    const std::size_t count = problem_.resources.size();
    std::vector<std::int64_t> sum(count, 0);
    std::vector<std::vector<int>> amount(count, std::vector<int>(at(list_.count), 0));
    for (int i = 0; i < list_.count; ++i) {
      const int activity = list_.original[at(i)];
      if (activity < 0 || list_.duration[at(i)] == 0) continue;
      for (const Use& use : problem_.activities[at(activity)].modes[0].uses) {
        sum[at(use.resource)] += use.amount;
        amount[at(use.resource)][at(i)] += use.amount;
      }
    }
    std::vector<std::size_t> kept;
    for (std::size_t r = 0; r < count; ++r) {
      if (sum[r] > problem_.resources[r].capacity) kept.push_back(r);
    }
    list_.words = std::max(1, (static_cast<int>(kept.size()) + kLanes - 1) / kLanes);
    list_.capacity.assign(at(list_.words), 0);
    list_.demand.assign(at(list_.words) * at(list_.count), 0);
    for (std::size_t k = 0; k < kept.size(); ++k) {
      const std::size_t word = k / kLanes;
      const int shift = kLane * static_cast<int>(k % kLanes);
      const int capacity = std::min(problem_.resources[kept[k]].capacity, kMostAmount);
      list_.capacity[word] |= static_cast<std::uint64_t>(capacity) << shift;
      for (int i = 0; i < list_.count; ++i) {
        list_.demand[at(i) * at(list_.words) + word] |= static_cast<std::uint64_t>(
                                                            amount[kept[k]][at(i)])
                                                        << shift;
      }
    }
  }

  const Problem& problem_;
  ListProblem list_;
  std::vector<Link> links_;
  std::vector<int> number_;
};

}  // namespace

std::optional<ListProblem> list_problem(const Problem& problem, const Options& options) {
  if (!fits_shape(problem, options)) return std::nullopt;
  for (const Activity& activity : problem.activities) {
    if (!fits_shape(problem, activity)) return std::nullopt;
  }
  return Builder(problem).build();
}

ListProblem mirrored(const ListProblem& list) {
  ListProblem result;
  const int last = list.count - 1;
  result.count = list.count;
  result.goal = last - list.goal;
  result.horizon = list.horizon;
  result.plain = list.plain;
  result.words = list.words;
  result.capacity = list.capacity;
  result.in_begin = result.out_begin = {0};
  const auto turned = [&](int i, const ListArc& arc, bool out) {
    const int from = out ? i : arc.other, to = out ? arc.other : i;
    return ListArc{last - arc.other, arc.least + list.duration[at(to)] - list.duration[at(from)]};
  };
  for (int k = 0; k <= last; ++k) {
    const int i = last - k;
    result.original.push_back(list.original[at(i)]);
    result.duration.push_back(list.duration[at(i)]);
    result.earliest.push_back(list.horizon - list.latest[at(i)] - list.duration[at(i)]);
    result.latest.push_back(list.horizon - list.earliest[at(i)] - list.duration[at(i)]);
    for (int w = 0; w < list.words; ++w) result.demand.push_back(list.demand_of(i)[w]);
    for (int a = list.out_begin[at(i)]; a < list.out_begin[at(i) + 1]; ++a)
      result.in.push_back(turned(i, list.out[at(a)], true));
    result.in_begin.push_back(static_cast<int>(result.in.size()));
    for (int a = list.in_begin[at(i)]; a < list.in_begin[at(i) + 1]; ++a)
      result.out.push_back(turned(i, list.in[at(a)], false));
    result.out_begin.push_back(static_cast<int>(result.out.size()));
  }
  return result;
}

Schedule to_schedule(const Problem& problem, const ListProblem& list,
                     const std::vector<Time>& starts) {
  Schedule schedule(problem.activities.size());
  for (int i = 0; i < list.count; ++i) {
    if (list.original[at(i)] < 0) continue;
    Placement& placement = schedule[at(list.original[at(i)])];
    placement.start = starts[at(i)];
    placement.duration = list.duration[at(i)];
    placement.settings.assign(problem.activities[at(list.original[at(i)])].modes[0].uses.size(),
                              -1);
  }
  return schedule;
}

std::vector<Time> to_starts(const ListProblem& list, const Schedule& schedule) {
  std::vector<Time> starts(at(list.count), 0);
  for (int i = 0; i < list.count; ++i) {
    if (list.original[at(i)] >= 0) starts[at(i)] = schedule[at(list.original[at(i)])].start;
  }
  for (int a = list.in_begin[at(list.goal)]; a < list.in_begin[at(list.goal) + 1]; ++a) {
    const ListArc& arc = list.in[at(a)];
    starts[at(list.goal)] = std::max(starts[at(list.goal)], starts[at(arc.other)] + arc.least);
  }
  return starts;
}

}  // namespace scheduler
