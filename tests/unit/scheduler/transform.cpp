#include "transform.h"

#include <algorithm>
#include <functional>

#include "base/index.h"

namespace scheduler::testing {
namespace {

using base::at;

void for_each_use(Problem& problem, const std::function<void(Use&)>& change) {
  for (Activity& activity : problem.activities) {
    for (Mode& mode : activity.modes) std::for_each(mode.uses.begin(), mode.uses.end(), change);
  }
  for (Span& span : problem.spans) {
    for (auto& uses : span.uses_by_mode) std::for_each(uses.begin(), uses.end(), change);
  }
}

void for_each_term(Problem& problem, const std::function<void(Term&)>& change) {
  for (GoalLevel& level : problem.goals)
    std::for_each(level.terms.begin(), level.terms.end(), change);
}

Event flipped(Event event) {
  event.side = event.side == Side::kStart ? Side::kEnd : Side::kStart;
  return event;
}

std::vector<Event> flipped(std::vector<Event> events) {
  for (Event& event : events) event = flipped(event);
  return events;
}

template <class T>
void erase_at(std::vector<T>& list, std::uint64_t index) {
  list.erase(list.begin() + static_cast<std::ptrdiff_t>(index));
}

}  // namespace

Problem with_activities_permuted(const Problem& problem, const std::vector<int>& to) {
  Problem result = problem;
  const auto map = [&](int i) { return to[at(i)]; };
  const auto map_event = [&](Event& e) { e.activity = map(e.activity); };
  const auto map_list = [&](std::vector<int>& list) {
    for (int& i : list) i = map(i);
  };
  for (std::size_t i = 0; i < to.size(); ++i) {
    result.activities[at(to[i])] = problem.activities[i];
  }
  for (Lag& lag : result.lags) {
    map_event(lag.from);
    map_event(lag.to);
  }
  for (Span& span : result.spans) {
    map_event(span.from);
    map_event(span.to);
    if (span.like) span.like = map(*span.like);
    map_list(span.excludes);
  }
  for (Blocked& blocked : result.blocked) map_list(blocked.activities);
  for (auto& group : result.same_mode) map_list(group);
  for (auto& group : result.exactly_one) map_list(group);
  for_each_term(result, [&](Term& term) {
    for (Event& e : term.high) map_event(e);
    for (Event& e : term.low) map_event(e);
    term.activity = map(term.activity);
    term.other = map(term.other);
  });
  return result;
}

Problem with_resources_permuted(const Problem& problem, const std::vector<int>& to) {
  Problem result = problem;
  for (std::size_t r = 0; r < to.size(); ++r) result.resources[at(to[r])] = problem.resources[r];
  for_each_use(result, [&](Use& use) { use.resource = to[at(use.resource)]; });
  for (Activity& activity : result.activities) {
    if (activity.cleans) activity.cleans = to[at(*activity.cleans)];
  }
  return result;
}

Problem with_times_scaled(const Problem& problem, int factor) {
  Problem result = problem;
  const auto scale = [&](Time& time) {
    if (time != kNoLimit) time *= factor;
  };
  scale(result.horizon);
  for (Activity& activity : result.activities) {
    for (Time* time :
         {&activity.duration_min, &activity.duration_max, &activity.earliest, &activity.latest_end})
      scale(*time);
  }
  for (Lag& lag : result.lags) {
    scale(lag.min);
    scale(lag.max);
  }
  for (Resource& resource : result.resources) {
    for (std::vector<Time>& row : resource.change) std::for_each(row.begin(), row.end(), scale);
  }
  for_each_use(result, [&](Use& use) { scale(use.door_shut); });
  for (Blocked& blocked : result.blocked) {
    scale(blocked.from);
    scale(blocked.to);
  }
  for_each_term(result, [&](Term& term) {
    scale(term.allowance);
    if (term.kind == Term::Kind::kMoved) scale(term.at);
    scale(term.tolerance);
  });
  return result;
}

Problem reversible(Problem problem) {
  for (Resource& resource : problem.resources) resource.initial.reset();
  for_each_use(problem, [](Use& use) { use.door_shut = use.soil = use.minds = 0; });
  for (GoalLevel& level : problem.goals) {
    std::erase_if(level.terms, [](const Term& term) {
      return term.kind == Term::Kind::kMoved || term.kind == Term::Kind::kOutOfOrder ||
             (term.kind == Term::Kind::kExcess && term.low.empty());
    });
  }
  return problem;
}

Problem reversed(const Problem& problem) {
  Problem result = problem;
  const Time end = problem.horizon;
  for (Activity& activity : result.activities) {
    const Time latest = std::min(activity.latest_end, end);
    activity.latest_end = end - activity.earliest;
    activity.earliest = end - latest;
  }
  for (Lag& lag : result.lags) {
    const Event from = lag.from;
    lag.from = flipped(lag.to);
    lag.to = flipped(from);
  }
  for (Span& span : result.spans) {
    const Event from = span.from;
    span.from = flipped(span.to);
    span.to = flipped(from);
  }
  for (std::size_t r = 0; r < result.resources.size(); ++r) {
    const auto& change = problem.resources[r].change;
    for (std::size_t i = 0; i < change.size(); ++i) {
      for (std::size_t j = 0; j < change.size(); ++j)
        result.resources[r].change[j][i] = change[i][j];
    }
  }
  for (Blocked& blocked : result.blocked) {
    const Time from = blocked.from;
    blocked.from = end - blocked.to;
    blocked.to = end - from;
  }
  for_each_term(result, [](Term& term) {
    const std::vector<Event> high = term.high;
    term.high = flipped(term.low);
    term.low = flipped(high);
  });
  return result;
}

Problem shifted(const Problem& problem, Time minutes) {
  Problem result = problem;
  result.horizon += minutes;
  for (Activity& activity : result.activities) {
    activity.earliest += minutes;
    if (activity.latest_end != kNoLimit) activity.latest_end += minutes;
  }
  for (Blocked& blocked : result.blocked) {
    blocked.from += minutes;
    blocked.to += minutes;
  }
  for_each_term(result, [&](Term& term) {
    if (term.kind == Term::Kind::kExcess && term.low.empty()) term.allowance += minutes;
    if (term.kind == Term::Kind::kMoved) term.at += minutes;
  });
  return result;
}

Problem with_implied_rules(Problem problem, int copied) {
  const std::vector<Lag> lags = problem.lags;
  for (const Lag& first : lags) {
    for (const Lag& second : lags) {
      if (first.to != second.from || problem.activities[at(first.to.activity)].optional) continue;
      Lag both{first.from, second.to, first.min + second.min, kNoLimit, -1};
      if (first.max != kNoLimit && second.max != kNoLimit) both.max = first.max + second.max;
      problem.lags.push_back(both);
    }
  }
  if (!lags.empty()) problem.lags.push_back(lags.front());
  Resource copy = problem.resources[at(copied)];
  copy.kind = ResourceKind::kCumulative;
  const int index = static_cast<int>(problem.resources.size());
  problem.resources.push_back(copy);
  const auto double_uses = [&](std::vector<Use>& uses) {
    for (std::size_t u = 0, count = uses.size(); u < count; ++u) {
      if (uses[u].resource != copied) continue;
      Use use;
      use.resource = index;
      use.amount = uses[u].amount;
      use.hazard = uses[u].hazard;
      uses.push_back(use);
    }
  };
  for (Activity& activity : problem.activities) {
    for (Mode& mode : activity.modes) double_uses(mode.uses);
  }
  for (Span& span : problem.spans) {
    for (auto& uses : span.uses_by_mode) double_uses(uses);
  }
  return problem;
}

bool take_one_rule(Problem& problem, std::uint64_t choice) {
  std::vector<std::function<void()>> ways;
  for (std::size_t i = 0; i < problem.lags.size(); ++i)
    ways.push_back([&problem, i] { erase_at(problem.lags, i); });
  for (std::size_t i = 0; i < problem.blocked.size(); ++i)
    ways.push_back([&problem, i] { erase_at(problem.blocked, i); });
  for (std::size_t i = 0; i < problem.spans.size(); ++i)
    ways.push_back([&problem, i] { erase_at(problem.spans, i); });
  for (Resource& resource : problem.resources) {
    if (!resource.limits.empty()) ways.push_back([&resource] { resource.limits.clear(); });
    if (resource.initial) ways.push_back([&resource] { resource.initial.reset(); });
  }
  for (Activity& activity : problem.activities) {
    for (Mode& mode : activity.modes) {
      for (std::size_t u = 0; u < mode.uses.size(); ++u)
        ways.push_back([&mode, u] { erase_at(mode.uses, u); });
    }
  }
  if (ways.empty()) return false;
  ways[choice % ways.size()]();
  return true;
}

}  // namespace scheduler::testing
