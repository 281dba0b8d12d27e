#include "scheduler/clusters.h"

#include <algorithm>
#include <set>

namespace scheduler {
namespace {

using base::at;

/// A resource of more teams than this couples the whole room and makes no cluster.
constexpr std::size_t kMostTeamsOfAResource = 4;
constexpr int kMostTeamsOfACluster = 4;

std::vector<std::set<int>> teams_by_resource(const Problem& problem, bool as_cluster,
                                             const std::vector<int>& cluster_of) {
  std::vector<std::set<int>> result(problem.resources.size());
  for (std::size_t i = 0; i < problem.activities.size(); ++i) {
    const int owner = as_cluster ? cluster_of[i] : problem.activities[i].team;
    if (owner < 0) continue;
    for (const Mode& mode : problem.activities[i].modes) {
      for (const Use& use : mode.uses) result[static_cast<std::size_t>(use.resource)].insert(owner);
    }
  }
  return result;
}
}  // namespace

Clusters::Clusters(const Problem& problem) {
  join_teams(problem);
  number(problem);
  find_neighbours(problem);
}

int Clusters::root(int team) {
  while (parent_[at(team)] != team) team = parent_[at(team)];
  return team;
}

void Clusters::join(int a, int b, int most) {
  a = root(a);
  b = root(b);
  if (a == b || size_[at(a)] + size_[at(b)] > most) return;
  if (b < a) std::swap(a, b);
  parent_[at(b)] = a;
  size_[at(a)] += size_[at(b)];
}

void Clusters::join_teams(const Problem& problem) {
  int teams = 0;
  for (const Activity& activity : problem.activities) teams = std::max(teams, activity.team + 1);
  for (int team = 0; team < teams; ++team) parent_.push_back(team);
  size_.assign(at(teams), 1);
  for (const std::set<int>& sharing : teams_by_resource(problem, false, {})) {
    if (sharing.empty() || sharing.size() > kMostTeamsOfAResource) continue;
    for (const int team : sharing) join(*sharing.begin(), team, kMostTeamsOfACluster);
  }
}

void Clusters::number(const Problem& problem) {
  std::vector<int> index(parent_.size(), -1);
  for (std::size_t i = 0; i < problem.activities.size(); ++i) {
    const int team = problem.activities[i].team;
    cluster_of_.push_back(-1);
    if (team < 0) {
      shared_.push_back(static_cast<int>(i));
      continue;
    }
    int& number = index[at(root(team))];
    if (number < 0) {
      number = static_cast<int>(members_.size());
      members_.emplace_back();
    }
    cluster_of_[i] = number;
    members_[at(number)].push_back(static_cast<int>(i));
  }
}

void Clusters::find_neighbours(const Problem& problem) {
  std::vector<std::set<int>> near(members_.size());
  const auto meet = [&](int a, int b) {
    if (a < 0 || b < 0 || a == b) return;
    near[at(a)].insert(b);
    near[at(b)].insert(a);
  };
  for (const std::set<int>& sharing : teams_by_resource(problem, true, cluster_of_)) {
    for (const int a : sharing) {
      for (const int b : sharing) meet(a, b);
    }
  }
  for (const Lag& lag : problem.lags)
    meet(of_activity(lag.from.activity), of_activity(lag.to.activity));
  for (const std::set<int>& set : near) neighbours_.emplace_back(set.begin(), set.end());
}

int Clusters::of_term(const Term& term) const {
  std::set<int> owners;
  const auto add = [&](int activity) {
    if (of_activity(activity) >= 0) owners.insert(of_activity(activity));
  };
  if (term.kind == Term::Kind::kExcess) {
    for (const Event event : term.high) add(event.activity);
    for (const Event event : term.low) add(event.activity);
  } else {
    add(term.activity);
    if (term.kind == Term::Kind::kOutOfOrder) add(term.other);
  }
  return owners.size() == 1 ? *owners.begin() : -1;
}

}  // namespace scheduler
