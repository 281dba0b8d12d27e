// Problems too large for one exact search: clusters are placed one after another by the exact core
// against what stands already, then neighbourhoods are freed and solved again, and bounds come from
// each cluster alone in the empty room.
#pragma once

#include <cstdint>
#include <vector>

#include "scheduler/clusters.h"
#include "scheduler/levels.h"
#include "scheduler/model.h"
#include "scheduler/random.h"
#include "scheduler/run.h"

namespace scheduler {

class Large {
 public:
  /// `base`: roles of the whole problem (free, or fixed by the caller). Must outlive this.
  Large(Run& run, const Scope& base);

  bool worthwhile() const;
  /// Tries to place all clusters, the shared activities where `shared` has them (empty: wherever
  /// they fall). Heuristic, bounded work; offers what it finds to the run.
  bool construct(const Schedule& shared);
  /// Bounds of all levels from every cluster alone. Needs a schedule. Exact, each cluster within
  /// some conflicts.
  void bound(std::int64_t conflicts_a_level);
  /// Construction again for the places the clusters themselves would like for the shared
  /// activities.
  void construct_for_wishes();
  /// One neighbourhood; true when the run's schedule got better.
  bool improve(std::int64_t conflicts_a_level);

 private:
  struct ClusterBound {
    std::vector<std::int64_t> own, all;  // by level: terms of this cluster only; with the common
                                         // ones
    Schedule wish;
  };

  Scope scope_with(const std::vector<char>& free, const std::vector<char>& known,
                   const Schedule& placed) const;
  std::vector<Schedule> wishes() const;
  bool place(const std::vector<int>& clusters, std::vector<char>& known, Schedule& placed);
  bool place_beside(int cluster, const std::vector<char>& standing, std::vector<char>& known,
                    Schedule& placed);
  int choose_ejected(int cluster, const std::vector<char>& placed,
                     const std::vector<int>& tabu) const;
  void bound_cluster(int cluster, std::size_t level, std::int64_t conflicts);
  std::int64_t allowance(int cluster, std::size_t level) const;
  std::int64_t total(std::size_t level) const;
  std::int64_t gap(int cluster) const;
  int costly_cluster();
  void free_cluster(std::vector<char>& free, int cluster) const;
  void free_slice(std::vector<char>& free);
  std::vector<char> neighbourhood();

  Run& run_;
  const Problem& problem_;
  const Scope& base_;
  Clusters clusters_;
  Random random_;
  Problem own_;               // the problem without terms of several clusters
  std::vector<char> common_;  // by level: has terms of several clusters
  std::vector<ClusterBound> bounds_;
};

}  // namespace scheduler
