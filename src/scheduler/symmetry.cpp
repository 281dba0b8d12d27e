#include "scheduler/symmetry.h"

#include <algorithm>
#include <cstdint>
#include <numeric>
#include <optional>

#include "base/index.h"
#include "scheduler/description.h"

namespace scheduler {
namespace {

using base::at;

/// A renaming of activities and resources, and what the parts of a problem are called under it.
class Renaming {
 public:
  explicit Renaming(const Problem& problem)
      : problem_(problem),
        activity_(problem.activities.size()),
        resource_(problem.resources.size()) {
    std::iota(activity_.begin(), activity_.end(), 0);
    std::iota(resource_.begin(), resource_.end(), 0);
  }

  /// False when what the two use cannot be matched.
  bool swap(int a, int b) {
    activity_[at(a)] = b;
    activity_[at(b)] = a;
    const Activity& x = problem_.activities[at(a)];
    const Activity& y = problem_.activities[at(b)];
    if (x.modes.size() != y.modes.size() || x.cleans.has_value() != y.cleans.has_value())
      return false;
    if (x.cleans && !swap_resource(*x.cleans, *y.cleans)) return false;
    for (std::size_t m = 0; m < x.modes.size(); ++m) {
      if (!swap_resources(x.modes[m].uses, y.modes[m].uses)) return false;
    }
    return true;
  }
  /// What a span holds from and to activities that swap, its twin holds in their place.
  bool swap_resources(const std::vector<Use>& x, const std::vector<Use>& y) {
    if (x.size() != y.size()) return false;
    for (std::size_t u = 0; u < x.size(); ++u) {
      if (!swap_resource(x[u].resource, y[u].resource)) return false;
    }
    return true;
  }

  bool moves(int activity) const { return activity_[at(activity)] != activity; }
  bool moves(Event e) const { return moves(e.activity); }
  bool moves_resource(int resource) const { return resource_[at(resource)] != resource; }
  bool moves(const std::vector<Use>& uses) const {
    return std::any_of(uses.begin(), uses.end(),
                       [this](const Use& use) { return moves_resource(use.resource); });
  }
  template <class Item>
  bool moves_any(const std::vector<Item>& items) const {
    return std::any_of(items.begin(), items.end(), [this](const Item& i) { return moves(i); });
  }

  std::int64_t name(int activity) const { return activity_[at(activity)]; }
  std::int64_t name(Event e) const { return 2 * name(e.activity) + (e.side == Side::kEnd ? 1 : 0); }
  std::int64_t resource_name(int resource) const { return resource_[at(resource)]; }
  template <class Item>
  Description names(const std::vector<Item>& items) const {
    Description result;
    for (const Item& item : items) result.push_back(name(item));
    std::sort(result.begin(), result.end());
    return result;
  }

 private:
  bool swap_resource(int a, int b) {
    if (a == b) return resource_[at(a)] == a;
    const bool free = resource_[at(a)] == a && resource_[at(b)] == b;
    if (!free) return resource_[at(a)] == b;
    resource_[at(a)] = b;
    resource_[at(b)] = a;
    return true;
  }

  const Problem& problem_;
  std::vector<int> activity_, resource_;
};

Description of_uses(const std::vector<Use>& uses, const Renaming& as) {
  std::vector<Description> each;
  for (const Use& use : uses) {
    Description t{as.resource_name(use.resource)};
    put_use(t, use);
    each.push_back(std::move(t));
  }
  std::sort(each.begin(), each.end());
  Description all;
  for (const Description& t : each) put_list(all, t);
  return all;
}

// Each description starts with a number of its own kind and holds all that matters of the item.
Description of_activity(const Problem& problem, int index, const Renaming& as) {
  const Activity& a = problem.activities[at(index)];
  Description t{0, as.name(index), a.cleans ? as.resource_name(*a.cleans) : -1};
  put_activity(t, a);
  for (const Mode& mode : a.modes) put_list(t, of_uses(mode.uses, as));
  return t;
}

Description of_resource(const Problem& problem, int index, const Renaming& as) {
  Description t{1, as.resource_name(index)};
  put_resource(t, problem.resources[at(index)]);
  return t;
}

Description of_lag(const Lag& lag, const Renaming& as) {
  return {2, as.name(lag.from), as.name(lag.to), lag.min, lag.max};
}

Description of_span(const Span& span, const Renaming& as) {
  Description t{3, as.name(span.from), as.name(span.to), span.like ? as.name(*span.like) : -1};
  for (const auto& uses : span.uses_by_mode) put_list(t, of_uses(uses, as));
  put_list(t, as.names(span.excludes));
  return t;
}

Description of_blocked(const Blocked& blocked, const Renaming& as) {
  Description t{4, blocked.from, blocked.to};
  put_list(t, as.names(blocked.activities));
  return t;
}

Description of_set(std::int64_t kind, const std::vector<int>& activities, const Renaming& as) {
  Description t{kind};
  put_list(t, as.names(activities));
  return t;
}

bool concerns_one(const Term& term) { return term.kind != Term::Kind::kExcess; }
bool concerns_two(const Term& term) { return term.kind == Term::Kind::kOutOfOrder; }

Description of_term(std::size_t level, const Term& term, const Renaming& as) {
  Description t{7, static_cast<std::int64_t>(level),
                concerns_one(term) ? as.name(term.activity) : -1,
                concerns_two(term) ? as.name(term.other) : -1};
  put_term(t, term);
  if (!concerns_one(term)) {
    put_list(t, as.names(term.high));
    put_list(t, as.names(term.low));
  }
  return t;
}

bool moves(const Term& term, const Renaming& r) {
  if (!concerns_one(term)) return r.moves_any(term.high) || r.moves_any(term.low);
  return r.moves(term.activity) || (concerns_two(term) && r.moves(term.other));
}

bool moves(const Problem& problem, int index, const Renaming& r) {
  const Activity& a = problem.activities[at(index)];
  return r.moves(index) || (a.cleans && r.moves_resource(*a.cleans)) ||
         std::any_of(a.modes.begin(), a.modes.end(),
                     [&](const Mode& mode) { return r.moves(mode.uses); });
}

bool moves(const Span& span, const Renaming& r) {
  return r.moves(span.from) || r.moves(span.to) || (span.like && r.moves(*span.like)) ||
         r.moves_any(span.excludes) || r.moves_any(span.uses_by_mode);
}

/// Of everything the renaming touches, what it is called with and without it.
class Comparison {
 public:
  Comparison(const Problem& problem, const Renaming& renaming)
      : plain_(problem), renamed_(renaming) {
    for (int i = 0; i < static_cast<int>(problem.activities.size()); ++i) {
      if (moves(problem, i, renaming))
        note([&](const Renaming& as) { return of_activity(problem, i, as); });
    }
    for (int i = 0; i < static_cast<int>(problem.resources.size()); ++i) {
      if (renaming.moves_resource(i))
        note([&](const Renaming& as) { return of_resource(problem, i, as); });
    }
    for (const Lag& lag : problem.lags) {
      if (renaming.moves(lag.from) || renaming.moves(lag.to))
        note([&](const Renaming& as) { return of_lag(lag, as); });
    }
    for (const Span& span : problem.spans) {
      if (moves(span, renaming)) note([&](const Renaming& as) { return of_span(span, as); });
    }
    for (const Blocked& blocked : problem.blocked) {
      if (renaming.moves_any(blocked.activities))
        note([&](const Renaming& as) { return of_blocked(blocked, as); });
    }
    for (const std::vector<int>& same : problem.same_mode) {
      if (renaming.moves_any(same)) note([&](const Renaming& as) { return of_set(5, same, as); });
    }
    for (const std::vector<int>& one : problem.exactly_one) {
      if (renaming.moves_any(one)) note([&](const Renaming& as) { return of_set(6, one, as); });
    }
    for (std::size_t l = 0; l < problem.goals.size(); ++l) {
      for (const Term& term : problem.goals[l].terms) {
        if (moves(term, renaming)) note([&](const Renaming& as) { return of_term(l, term, as); });
      }
    }
  }

  bool equal() {
    std::sort(before_.begin(), before_.end());
    std::sort(after_.begin(), after_.end());
    return before_ == after_;
  }

 private:
  template <class Describe>
  void note(const Describe& describe) {
    before_.push_back(describe(plain_));
    after_.push_back(describe(renamed_));
  }

  Renaming plain_;
  const Renaming& renamed_;
  std::vector<Description> before_, after_;
};

}  // namespace

bool can_swap(const Problem& problem, const std::vector<std::pair<int, int>>& pairs) {
  Renaming renaming(problem);
  for (const auto& [a, b] : pairs) {
    if (a != b && !renaming.swap(a, b)) return false;
  }
  // What only spans hold (a vessel's cooker) swaps along with the ends of the span.
  for (const Span& span : problem.spans) {
    if (!renaming.moves(span.from) && !renaming.moves(span.to)) continue;
    for (const Span& twin : problem.spans) {
      if (renaming.name(span.from) !=
              2 * twin.from.activity + (twin.from.side == Side::kEnd ? 1 : 0) ||
          renaming.name(span.to) != 2 * twin.to.activity + (twin.to.side == Side::kEnd ? 1 : 0))
        continue;
      if (span.uses_by_mode.size() != twin.uses_by_mode.size()) continue;
      for (std::size_t m = 0; m < span.uses_by_mode.size(); ++m) {
        if (!renaming.swap_resources(span.uses_by_mode[m], twin.uses_by_mode[m])) return false;
      }
      break;
    }
  }
  return Comparison(problem, renaming).equal();
}

}  // namespace scheduler
