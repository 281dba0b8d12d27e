// Construction and improvement. (Ejection as in A. Mingozzi, K. Neumann and others' repair of
// schedules with maximum lags; large neighbourhoods: P. Shaw 1998; both from memory.)
#include "scheduler/large.h"

#include <algorithm>
#include <deque>
#include <numeric>

#include "base/index.h"
#include "scheduler/alike.h"
#include "scheduler/holding.h"

namespace scheduler {
namespace {

using base::at;

constexpr std::size_t kLargeActivities = 150;
constexpr int kLargeClusters = 3;
constexpr std::int64_t kPlaceConflicts = 600;
constexpr std::int64_t kPolishConflicts = 300;
constexpr std::size_t kMostPartners = 3;
constexpr int kMostWishes = 4;
/// Besides: the shared activities at these parts (of kParts) of their windows.
constexpr int kParts = 6;
constexpr int kMostFree = 110;

}  // namespace

Large::Large(Run& run, const Scope& base)
    : run_(run),
      problem_(run.problem()),
      base_(base),
      clusters_(run.problem()),
      random_(run.options().seed),
      own_(run.problem()) {
  for (GoalLevel& level : own_.goals) {
    std::vector<Term> kept;
    for (const Term& term : level.terms) {
      if (clusters_.of_term(term) >= 0) kept.push_back(term);
    }
    common_.push_back(kept.size() != level.terms.size() ? 1 : 0);
    level.terms = std::move(kept);
  }
  // Activities fixed by the caller are constants a cluster may see, and they differ.
  const bool any_fixed = std::find(base.roles.begin(), base.roles.end(), Role::kFixed) !=
                         base.roles.end();
  alike_ = first_alike(problem_, clusters_);
  if (any_fixed) std::iota(alike_.begin(), alike_.end(), 0);
  bounds_.resize(at(clusters_.count()));
  for (ClusterBound& bound : bounds_) {
    bound.own.assign(problem_.goals.size(), 0);
    bound.all.assign(problem_.goals.size(), 0);
  }
}

Large::~Large() = default;

bool Large::worthwhile() const {
  return problem_.activities.size() >= kLargeActivities && clusters_.count() >= kLargeClusters;
}

Scope Large::scope_with(const std::vector<char>& free, const std::vector<char>& known,
                        const Schedule& placed) const {
  Scope scope;
  scope.fixed = &placed;
  scope.trust_fixed = true;
  scope.least = base_.least;
  scope.apart = base_.apart;
  scope.decide_pairs = base_.decide_pairs;
  for (std::size_t i = 0; i < free.size(); ++i) {
    if (base_.roles[i] == Role::kFixed)
      scope.roles.push_back(Role::kFixed);
    else
      scope.roles.push_back(free[i] ? Role::kFree : known[i] ? Role::kFixed : Role::kIgnored);
  }
  return scope;
}

void Large::free_cluster(std::vector<char>& free, int cluster) const {
  for (const int i : clusters_.members(cluster)) free[at(i)] = 1;
}

// The clusters' best plan against what is known; shared activities not yet known are decided with
// it.
bool Large::place(const std::vector<int>& clusters, std::vector<char>& known, Schedule& placed) {
  std::vector<char> free(problem_.activities.size(), 0);
  for (const int cluster : clusters) free_cluster(free, cluster);
  for (const int i : clusters_.shared()) free[at(i)] = known[at(i)] ? 0 : 1;
  const Scope scope = scope_with(free, known, placed);
  Model model(problem_, scope, run_.budget());
  LevelSearch levels(problem_, model, {});
  if (levels.first(kPlaceConflicts) != Verdict::kSolution) return false;
  levels.round(kPolishConflicts);
  for (std::size_t i = 0; i < free.size(); ++i) {
    if (!free[i]) continue;
    placed[i] = levels.best()[i];
    known[i] = 1;
  }
  return true;
}

int Large::choose_ejected(int cluster, const std::vector<char>& placed,
                          const std::vector<int>& tabu) const {
  int best = -1;
  for (const int other : clusters_.neighbours(cluster)) {
    if (!placed[at(other)]) continue;
    if (best < 0 || tabu[at(other)] < tabu[at(best)]) best = other;
  }
  return best;
}

// Together with one that stands in its way: two clusters are still small enough for the exact core.
bool Large::place_beside(int cluster, const std::vector<char>& standing, std::vector<char>& known,
                         Schedule& placed) {
  std::vector<int> near;
  for (const int other : clusters_.neighbours(cluster)) {
    if (standing[at(other)]) near.push_back(other);
  }
  random_.shuffle(near);
  if (near.size() > kMostPartners) near.resize(kMostPartners);
  return std::any_of(near.begin(), near.end(), [&](int other) {
    return place({cluster, other}, known, placed);
  });
}

bool Large::construct(const Schedule& shared) {
  const std::size_t count = problem_.activities.size();
  std::vector<char> known(count, 0), standing(at(clusters_.count()), 0);
  Schedule placed(count);
  for (std::size_t i = 0; i < count; ++i) {
    if (base_.roles[i] != Role::kFixed) continue;
    placed[i] = (*base_.fixed)[i];
    known[i] = 1;
  }
  if (!shared.empty()) {
    for (const int i : clusters_.shared()) {
      placed[at(i)] = shared[at(i)];
      known[at(i)] = 1;
    }
  }
  std::vector<int> order;
  for (int c = 0; c < clusters_.count(); ++c) order.push_back(c);
  random_.shuffle(order);
  std::deque<int> waiting(order.begin(), order.end());
  std::vector<int> tabu(at(clusters_.count()), 0);
  for (int step = 1; !waiting.empty(); ++step) {
    if (step > 4 * clusters_.count()) return false;
    const int cluster = waiting.front();
    waiting.pop_front();
    if (place({cluster}, known, placed) || place_beside(cluster, standing, known, placed)) {
      standing[at(cluster)] = 1;
      continue;
    }
    const int ejected = choose_ejected(cluster, standing, tabu);
    if (ejected < 0) return false;  // it fails even alone: the shared activities stand in its way
    standing[at(ejected)] = 0;
    tabu[at(ejected)] = step;
    for (const int i : clusters_.members(ejected))
      known[at(i)] = base_.roles[at(i)] == Role::kFixed ? 1 : 0;
    waiting.push_front(cluster);
    waiting.push_back(ejected);
  }
  // Rules that join clusters only through a third one could still be broken; such a plan is of no
  // use.
  if (!check(problem_, placed).empty()) return false;
  return run_.offer(placed, evaluate(problem_, placed));
}

std::vector<Schedule> Large::wishes() const {
  std::vector<Schedule> result;
  const auto add = [&](const Schedule& wish) {
    if (std::find(result.begin(), result.end(), wish) == result.end()) result.push_back(wish);
  };
  for (const ClusterBound& bound : bounds_) {
    if (bound.wish.empty() || static_cast<int>(result.size()) >= kMostWishes) continue;
    Schedule wish(problem_.activities.size());
    for (const int i : clusters_.shared()) wish[at(i)] = bound.wish[at(i)];
    add(wish);
  }
  for (int part = 0; part <= kParts; ++part) {
    Schedule wish(problem_.activities.size());
    for (const int i : clusters_.shared()) {
      const Activity& activity = problem_.activities[at(i)];
      Placement& placement = wish[at(i)];
      placement = run_.best()[at(i)];
      if (!placement.present || base_.roles[at(i)] == Role::kFixed) continue;
      const Time last = std::min(problem_.horizon, activity.latest_end) - placement.duration;
      placement.start = activity.earliest + part * (last - activity.earliest) / kParts;
    }
    add(wish);
  }
  return result;
}

void Large::construct_for_wishes() {
  for (const Schedule& wish : wishes()) {
    construct(wish);
  }
}

std::int64_t Large::gap(int cluster) const {
  // The first level that is not closed decides what is costly.
  for (std::size_t l = 0; l < problem_.goals.size(); ++l) {
    if (run_.bounds()[l] >= run_.values()[l] || own_.goals[l].terms.empty()) continue;
    Schedule part = run_.best();
    for (std::size_t i = 0; i < part.size(); ++i) {
      if (clusters_.of_activity(static_cast<int>(i)) != cluster) part[i].present = false;
    }
    return evaluate(own_, part)[l] - bounds_[at(cluster)].own[l];
  }
  return 0;
}

int Large::costly_cluster() {
  int best = random_.below(clusters_.count());
  std::int64_t best_gap = gap(best);
  for (int again = 0; again < 2; ++again) {
    const int other = random_.below(clusters_.count());
    const std::int64_t other_gap = gap(other);
    if (other_gap <= best_gap) continue;
    best = other;
    best_gap = other_gap;
  }
  return best;
}

void Large::free_slice(std::vector<char>& free) {
  const Schedule& best = run_.best();
  const Time length = std::max(2, problem_.horizon / (4 + random_.below(4)));
  const Time from = random_.below(std::max(1, problem_.horizon - length + 1));
  std::vector<int> inside;
  for (int i = 0; i < static_cast<int>(best.size()); ++i) {
    const Placement& p = best[at(i)];
    if (!p.present || (p.start < from + length && p.start + p.duration > from)) inside.push_back(i);
  }
  random_.shuffle(inside);
  if (inside.size() > at(kMostFree)) inside.resize(at(kMostFree));
  for (const int i : inside) free[at(i)] = 1;
}

std::vector<char> Large::neighbourhood(int& ideal) {
  std::vector<char> free(problem_.activities.size(), 0);
  const int kind = random_.below(10);
  if (kind == 0 || clusters_.count() < 2) {
    free_slice(free);
    return free;
  }
  const int first = costly_cluster();
  free_cluster(free, first);
  if (kind < 4 || kind >= 7) ideal = first;
  if (kind == 1) {
    for (const int i : clusters_.shared()) free[at(i)] = 1;
  } else if (kind >= 4 && !clusters_.neighbours(first).empty()) {
    const std::vector<int>& near = clusters_.neighbours(first);
    free_cluster(free, near[at(random_.below(static_cast<int>(near.size())))]);
  }
  return free;
}

// The standing schedule, with the cluster as it would be best alone.
void Large::guide_to_ideal(Model& model, int cluster) const {
  const Schedule& ideal = bounds_[at(cluster)].ideal;
  if (ideal.empty()) return;
  Schedule guide = run_.best();
  for (const int i : clusters_.members(cluster)) guide[at(i)] = ideal[at(i)];
  model.guide(guide);
}

bool Large::improve(std::int64_t conflicts_a_level) {
  int ideal = -1;
  const std::vector<char> free = neighbourhood(ideal);
  const std::vector<char> known(free.size(), 1);
  const Schedule standing = run_.best();
  const Scope scope = scope_with(free, known, standing);
  run_.budget().spend(static_cast<std::int64_t>(free.size()));
  Model model(problem_, scope, run_.budget());
  bool better = false;
  LevelSearch levels(problem_, model,
                     [&](const Schedule& schedule, const std::vector<std::int64_t>& values) {
                       better = run_.offer(schedule, values) || better;
                     });
  levels.start_from(standing, run_.goals());
  if (ideal >= 0) guide_to_ideal(model, ideal);
  levels.round(conflicts_a_level);
  return better;
}

// --- bounds ---

std::int64_t Large::total(std::size_t level) const {
  std::int64_t sum = 0, most = 0;
  for (const ClusterBound& bound : bounds_) sum += bound.own[level];
  // With the common terms only one cluster's view of them counts, beside what the others need for
  // themselves.
  for (const ClusterBound& bound : bounds_) {
    most = std::max(most, bound.all[level] + sum - bound.own[level]);
  }
  return std::max(sum, most);
}

// What a cluster may use of an earlier level: the best value known with its band, less what all
// others need.
std::int64_t Large::allowance(int cluster, std::size_t level) const {
  std::int64_t others = 0;
  for (int c = 0; c < clusters_.count(); ++c) {
    if (c != cluster) others += bounds_[at(c)].own[level];
  }
  return run_.goal(level) + problem_.goals[level].band - others;
}

/// A cluster alone, on one level: kept from one call to the next, with all it has learnt.
struct Large::ClusterSearch {
  ClusterSearch(const Problem& problem, Scope alone, Budget& budget,
                const std::vector<std::int64_t>& allowed)
      : scope(std::move(alone)), model(problem, scope, budget), levels(problem, model, {}) {
    for (std::size_t l = 0; l < allowed.size(); ++l) levels.limit(l, allowed[l]);
  }

  /// True when proved to the end.
  bool work(std::size_t level, std::int64_t conflicts) {
    if (!levels.has_schedule() && levels.first(conflicts) != Verdict::kSolution) return false;
    return levels.minimise_alone(level, conflicts);
  }

  Scope scope;
  Model model;
  LevelSearch levels;
};

Scope Large::alone(int cluster) const {
  std::vector<char> free(problem_.activities.size(), 0);
  free_cluster(free, cluster);
  for (const int i : clusters_.shared()) free[at(i)] = 1;
  const std::vector<char> known(free.size(), 0);
  // Fixed activities of other clusters stay in: they are constants of the problem itself.
  Scope scope = scope_with(free, known, *base_.fixed);
  scope.relax = true;
  scope.least = nullptr;  // of all terms, and this may be asked for the cluster's own
  return scope;
}

bool Large::bound_cluster(int cluster, std::size_t level, std::int64_t conflicts) {
  ClusterBound& bound = bounds_[at(cluster)];
  std::vector<std::int64_t> allowed;
  for (std::size_t l = 0; l < level; ++l) allowed.push_back(allowance(cluster, l));
  if (bound.level != static_cast<int>(level) || bound.allowed != allowed) {
    bound.own_search = std::make_unique<ClusterSearch>(own_, alone(cluster), run_.budget(),
                                                       allowed);
    bound.all_search = common_[level] ? std::make_unique<ClusterSearch>(problem_, alone(cluster),
                                                                        run_.budget(), allowed)
                                      : nullptr;
    bound.level = static_cast<int>(level);
    bound.allowed = std::move(allowed);
    bound.closed = false;
  }
  if (bound.closed) return false;
  bound.closed = true;
  const auto run = [&](ClusterSearch& search, std::vector<std::int64_t>& target) {
    bound.closed = search.work(level, conflicts) && bound.closed;
    if (!search.levels.has_schedule()) return;
    target[level] = std::max(target[level], search.levels.bound(level));
    if (level == 0) bound.wish = search.levels.best();
    bound.ideal = search.levels.best();
  };
  run(*bound.own_search, bound.own);
  if (bound.all_search) run(*bound.all_search, bound.all);
  bound.all[level] = std::max(bound.all[level], bound.own[level]);
  return true;
}

// Members of clusters that are alike correspond in their order.
void Large::copy_ideal(int from, int to) {
  const Schedule& ideal = bounds_[at(from)].ideal;
  if (ideal.empty()) return;
  const std::vector<int>& source = clusters_.members(from);
  const std::vector<int>& target = clusters_.members(to);
  Schedule& copy = bounds_[at(to)].ideal;
  copy.resize(ideal.size());
  for (std::size_t k = 0; k < source.size(); ++k) copy[at(target[k])] = ideal[at(source[k])];
}

// Bounds of clusters rest on the goals of the levels before, as those of the whole do.
void Large::forget_void_bounds() {
  if (bounded_under_.empty()) bounded_under_ = run_.goals();
  for (std::size_t l = levels_holding(bounded_under_, run_.goals()); l < problem_.goals.size();
       ++l) {
    for (ClusterBound& bound : bounds_) bound.own[l] = bound.all[l] = 0;
  }
  bounded_under_ = run_.goals();
}

bool Large::bound(std::int64_t conflicts_a_level) {
  forget_void_bounds();
  bool worked = false;
  for (std::size_t level = 0; level < problem_.goals.size(); ++level) {
    if (run_.bounds()[level] >= run_.goal(level)) continue;
    for (int c = 0; c < clusters_.count(); ++c) {
      if (alike_[at(c)] == c) {
        worked = bound_cluster(c, level, conflicts_a_level) || worked;
        continue;
      }
      // Under the same allowance: what all others need is the same for clusters that are alike.
      const ClusterBound& first = bounds_[at(alike_[at(c)])];
      bounds_[at(c)].own[level] = first.own[level];
      bounds_[at(c)].all[level] = first.all[level];
      copy_ideal(alike_[at(c)], c);
    }
    std::vector<std::int64_t> raised = run_.bounds();
    raised[level] = std::max(raised[level], total(level));
    run_.raise(raised);
  }
  return worked;
}

}  // namespace scheduler
