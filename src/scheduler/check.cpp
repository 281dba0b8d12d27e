// The rules, minute by minute. Slow and obvious on purpose; shares nothing with the propagators.
#include <algorithm>
#include <set>
#include <string>

#include "base/index.h"

#include "scheduler/solve.h"

namespace scheduler {
namespace {

using base::at;

/// A use in force over [start, end).
struct Held {
  int owner = 0;  // activity, or number of activities + span
  Time start = 0, end = 0;
  int setting = -1;
  const Use* use = nullptr;
};

class Checker {
 public:
  Checker(const Problem& problem, const Schedule& schedule)
      : problem_(problem), schedule_(schedule) {}

  std::vector<std::string> run() {
    if (schedule_.size() != problem_.activities.size())
      return {"schedule has a wrong number of placements"};
    for (int i = 0; i < static_cast<int>(schedule_.size()); ++i) check_activity(i);
    if (!breaches_.empty()) return breaches_;  // what follows would index out of range
    check_lags();
    check_groups();
    check_blocked();
    check_spans();
    for (int r = 0; r < static_cast<int>(problem_.resources.size()); ++r) check_resource(r);
    return breaches_;
  }

 private:
  void breach(const std::string& text) { breaches_.push_back(text); }
  bool present(int i) const { return schedule_[at(i)].present; }
  Time start(int i) const { return schedule_[at(i)].start; }
  Time end(int i) const { return schedule_[at(i)].start + schedule_[at(i)].duration; }
  Time time(Event e) const { return e.side == Side::kStart ? start(e.activity) : end(e.activity); }
  const std::string& name(int i) const { return problem_.activities[at(i)].name; }

  void check_activity(int i) {
    const Activity& activity = problem_.activities[at(i)];
    const Placement& p = schedule_[at(i)];
    if (!p.present) {
      if (!activity.optional) breach(activity.name + " is absent");
      return;
    }
    if (p.duration < activity.duration_min || p.duration > activity.duration_max) {
      breach(activity.name + " has a wrong duration");
    }
    if (p.start < std::max(0, activity.earliest)) breach(activity.name + " starts too early");
    if (end(i) > std::min(problem_.horizon, activity.latest_end))
      breach(activity.name + " ends too late");
    if (p.mode < 0 || p.mode >= static_cast<int>(activity.modes.size())) {
      breach(activity.name + " has no such mode");
      return;
    }
    const std::vector<Use>& uses = activity.modes[at(p.mode)].uses;
    if (p.settings.size() != uses.size()) {
      breach(activity.name + " has a wrong number of settings");
      return;
    }
    for (std::size_t u = 0; u < uses.size(); ++u) {
      const std::vector<int>& allowed = uses[u].settings;
      const bool fine = allowed.empty()
                            ? p.settings[u] == -1
                            : std::count(allowed.begin(), allowed.end(), p.settings[u]) > 0;
      if (!fine) breach(activity.name + " has a setting that is not acceptable");
    }
  }

  void check_lags() {
    for (std::size_t l = 0; l < problem_.lags.size(); ++l) {
      const Lag& lag = problem_.lags[l];
      if (!present(lag.from.activity) || !present(lag.to.activity)) continue;
      const Time gap = time(lag.to) - time(lag.from);
      if (gap < lag.min || (lag.max != kNoLimit && gap > lag.max)) {
        breach("lag " + std::to_string(l) + " from " + name(lag.from.activity) + " to " +
               name(lag.to.activity));
      }
    }
  }

  void check_groups() {
    for (const std::vector<int>& group : problem_.same_mode) {
      std::set<int> modes;
      for (const int i : group) {
        if (present(i)) modes.insert(schedule_[at(i)].mode);
      }
      if (modes.size() > 1) breach("unequal modes in the group of " + name(group.front()));
    }
    for (const std::vector<int>& group : problem_.exactly_one) {
      const auto count = std::count_if(group.begin(), group.end(),
                                       [&](int i) { return present(i); });
      if (count != 1) breach(std::to_string(count) + " present in a group of which one has to be");
    }
  }

  bool overlaps(int i, Time from, Time to) const {
    return present(i) && schedule_[at(i)].duration > 0 && start(i) < to && end(i) > from;
  }

  void check_blocked() {
    for (const Blocked& blocked : problem_.blocked) {
      for (const int i : blocked.activities) {
        if (overlaps(i, blocked.from, blocked.to)) breach(name(i) + " runs in a blocked time");
      }
    }
  }

  void check_spans() {
    for (std::size_t s = 0; s < problem_.spans.size(); ++s) {
      const Span& span = problem_.spans[s];
      if (!present(span.from.activity) || !present(span.to.activity)) continue;
      if (time(span.to) < time(span.from))
        breach("span " + std::to_string(s) + " ends before it begins");
      for (const int i : span.excludes) {
        if (overlaps(i, time(span.from), time(span.to)))
          breach(name(i) + " overlaps span " + std::to_string(s));
      }
    }
  }

  std::vector<Held> uses_of(int resource) const {
    std::vector<Held> held;
    for (int i = 0; i < static_cast<int>(schedule_.size()); ++i) {
      const Placement& p = schedule_[at(i)];
      if (!p.present || p.duration == 0) continue;
      const std::vector<Use>& uses = problem_.activities[at(i)].modes[at(p.mode)].uses;
      for (std::size_t u = 0; u < uses.size(); ++u) {
        if (uses[u].resource == resource)
          held.push_back({i, start(i), end(i), p.settings[u], &uses[u]});
      }
    }
    for (std::size_t s = 0; s < problem_.spans.size(); ++s) add_span_uses(s, resource, held);
    return held;
  }

  void add_span_uses(std::size_t s, int resource, std::vector<Held>& held) const {
    const Span& span = problem_.spans[s];
    if (!present(span.from.activity) || !present(span.to.activity) ||
        time(span.to) <= time(span.from))
      return;
    if (span.like && !present(*span.like)) return;
    const std::size_t mode = span.like ? at(schedule_[at(*span.like)].mode) : 0;
    if (mode >= span.uses_by_mode.size()) return;
    for (const Use& use : span.uses_by_mode[mode]) {
      if (use.resource != resource) continue;
      int setting = use.settings.size() == 1 ? use.settings[0] : -1;
      if (span.like && use.settings.size() != 1) {
        const Placement& like = schedule_[at(*span.like)];
        const std::vector<Use>& uses = problem_.activities[at(*span.like)].modes[mode].uses;
        for (std::size_t u = uses.size(); u-- > 0;) {
          if (uses[u].resource == resource && !uses[u].settings.empty()) setting = like.settings[u];
        }
      }
      held.push_back(
          {static_cast<int>(schedule_.size() + s), time(span.from), time(span.to), setting, &use});
    }
  }

  void check_resource(int r) {
    const Resource& resource = problem_.resources[at(r)];
    const std::vector<Held> held = uses_of(r);
    for (Time t = 0; t < problem_.horizon; ++t) check_minute(resource, held, t);
    for (const Held& a : held) {
      if (resource.kind == ResourceKind::kSettings) check_initial(resource, a);
      for (const Held& b : held) {
        if (a.owner == b.owner) continue;
        if (resource.kind == ResourceKind::kSettings) check_settings(resource, a, b);
        if (resource.kind == ResourceKind::kSoiling) check_soil(r, a, b);
      }
    }
  }

  void check_minute(const Resource& resource, const std::vector<Held>& held, Time t) {
    int sum = 0;
    for (const Held& use : held) {
      if (use.start <= t && t < use.end) sum += use.use->amount;
    }
    if (sum > resource.capacity) breach(resource.name + " is overfull at " + std::to_string(t));
    for (const Limit& limit : resource.limits) {
      int count = 0;
      for (const Held& use : held)
        count += use.start <= t && t < use.end && use.use->hazard == limit.hazard ? 1 : 0;
      if (count > limit.at_once)
        breach(resource.name + " has too many of one hazard at " + std::to_string(t));
    }
  }

  void check_initial(const Resource& resource, const Held& a) {
    if (!resource.initial || a.setting < 0) return;
    if (a.start < resource.change[at(*resource.initial)][at(a.setting)]) {
      breach(resource.name + " is not ready for its first setting");
    }
  }

  void check_settings(const Resource& resource, const Held& a, const Held& b) {
    if (a.owner < b.owner && a.setting >= 0 && b.setting >= 0 && a.setting != b.setting) {
      const bool a_first = b.start - a.end >= resource.change[at(a.setting)][at(b.setting)];
      const bool b_first = a.start - b.end >= resource.change[at(b.setting)][at(a.setting)];
      if (!a_first && !b_first) breach(resource.name + " has no time to change its setting");
    }
    const auto inside = [&](Time t) { return a.start < t && t < a.start + a.use->door_shut; };
    if (inside(b.start) || inside(b.end))
      breach(resource.name + " is opened while it has to stay shut");
  }

  void check_soil(int r, const Held& a, const Held& b) {
    const Resource& resource = problem_.resources[at(r)];
    if ((a.use->overlaps_not & b.use->kind_bit) != 0 && a.start < b.end && b.start < a.end) {
      breach(resource.name + " is shared by uses that have to stay apart");
    }
    const int bits = a.use->soil & b.use->minds;
    if (bits == 0 || b.end <= a.start) return;
    for (int c = 0; c < static_cast<int>(schedule_.size()); ++c) {
      const Activity& cleaner = problem_.activities[at(c)];
      const bool fits = present(c) && cleaner.cleans && *cleaner.cleans == r &&
                        (bits & ~cleaner.cleans_bits) == 0;
      if (fits && a.end <= start(c) && end(c) <= b.start) return;
    }
    breach(resource.name + " is not cleaned in time");
  }

  const Problem& problem_;
  const Schedule& schedule_;
  std::vector<std::string> breaches_;
};

std::int64_t measure(const Schedule& schedule, const Term& term) {
  const auto time = [&](Event e) {
    const Placement& p = schedule[at(e.activity)];
    return e.side == Side::kStart ? p.start : p.start + p.duration;
  };
  if (term.kind == Term::Kind::kExcess) {
    bool any_high = false, any_low = false;
    Time high = 0, low = 0;
    for (const Event e : term.high) {
      if (!schedule[at(e.activity)].present) continue;
      high = any_high ? std::max(high, time(e)) : time(e);
      any_high = true;
    }
    for (const Event e : term.low) {
      if (!schedule[at(e.activity)].present) continue;
      low = any_low ? std::min(low, time(e)) : time(e);
      any_low = true;
    }
    if (!any_high || (!any_low && !term.low.empty())) return 0;
    return std::max<std::int64_t>(0, std::int64_t{high} - low - term.allowance);
  }
  const Placement& p = schedule[at(term.activity)];
  if (!p.present) return 0;
  switch (term.kind) {
    case Term::Kind::kMoved:
      return p.start > term.at + term.tolerance || p.start < term.at - term.tolerance ? 1 : 0;
    case Term::Kind::kOutOfOrder:
      return schedule[at(term.other)].present && p.start > schedule[at(term.other)].start ? 1 : 0;
    case Term::Kind::kMode:
      return p.mode != term.at ? 1 : 0;
    case Term::Kind::kPresent:
    case Term::Kind::kExcess:
      break;
  }
  return 1;
}

}  // namespace

std::vector<std::string> check(const Problem& problem, const Schedule& schedule) {
  return Checker(problem, schedule).run();
}

std::vector<std::int64_t> evaluate(const Problem& problem, const Schedule& schedule) {
  std::vector<std::int64_t> values;
  for (const GoalLevel& level : problem.goals) {
    std::int64_t value = 0;
    for (const Term& term : level.terms) value += term.weight * measure(schedule, term);
    values.push_back(value);
  }
  return values;
}

}  // namespace scheduler
