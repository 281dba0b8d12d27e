// Teams that share scarce resources (three cooks at one cooker) form clusters. Clusters are what
// construction places, what bounds relax to, and what neighbourhoods free.
#pragma once

#include <vector>

#include "base/index.h"
#include "scheduler/problem.h"

namespace scheduler {

class Clusters {
 public:
  explicit Clusters(const Problem& problem);

  int count() const { return static_cast<int>(members_.size()); }
  /// Activities of a cluster, ascending.
  const std::vector<int>& members(int cluster) const { return members_[base::at(cluster)]; }
  /// Activities of no team (demonstrations, an adult's tasks).
  const std::vector<int>& shared() const { return shared_; }
  /// Clusters that use a resource together with this one or are joined to it by a lag.
  const std::vector<int>& neighbours(int cluster) const { return neighbours_[base::at(cluster)]; }
  /// The one cluster whose plan decides the term (besides shared activities), -1 = none or several.
  int of_term(const Term& term) const;
  int of_activity(int activity) const { return cluster_of_[base::at(activity)]; }

 private:
  void join_teams(const Problem& problem);
  void number(const Problem& problem);
  void find_neighbours(const Problem& problem);
  int root(int team);
  void join(int a, int b, int most);

  std::vector<int> parent_, size_;  // union-find over teams
  std::vector<int> cluster_of_;     // by activity, -1 = shared
  std::vector<std::vector<int>> members_, neighbours_;
  std::vector<int> shared_;
};

}  // namespace scheduler
