// Problems too large for one exact search: clusters are placed one after another by the exact core
// against what stands already, then neighbourhoods are freed and solved again, and bounds come from
// each cluster alone in the empty room.
#pragma once

#include <cstdint>
#include <memory>
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
  ~Large();

  bool worthwhile() const;
  /// Tries to place all clusters, the shared activities where `shared` has them (empty: wherever
  /// they fall). Heuristic, bounded work; offers what it finds to the run.
  bool construct(const Schedule& shared);
  /// Bounds of all levels from every cluster alone. Needs a schedule. Exact, each cluster within
  /// some conflicts. False when there is nothing more to prove this way.
  bool bound(std::int64_t conflicts_a_level);
  /// Construction again for the places the clusters themselves would like for the shared
  /// activities.
  void construct_for_wishes();
  /// One neighbourhood; true when the run's schedule got better.
  bool improve(std::int64_t conflicts_a_level);

 private:
  struct ClusterSearch;
  struct ClusterBound {
    std::vector<std::int64_t> own, all;  // by level: terms of this cluster only; with the common
                                         // ones
    // The search it is at: one level under these allowances of the levels before.
    int level = -1;
    std::vector<std::int64_t> allowed;
    std::unique_ptr<ClusterSearch> own_search, all_search;
    bool closed = false;
    Schedule wish;   ///< with its places for the shared activities
    Schedule ideal;  ///< its members as they are best on the last level looked at
  };

  Scope scope_with(const std::vector<char>& free, const std::vector<char>& known,
                   const Schedule& placed) const;
  std::vector<Schedule> wishes() const;
  bool place(const std::vector<int>& clusters, std::vector<char>& known, Schedule& placed);
  bool place_beside(int cluster, const std::vector<char>& standing, std::vector<char>& known,
                    Schedule& placed);
  int choose_ejected(int cluster, const std::vector<char>& placed,
                     const std::vector<int>& tabu) const;
  void forget_void_bounds();
  Scope alone(int cluster) const;
  bool bound_cluster(int cluster, std::size_t level, std::int64_t conflicts);
  std::int64_t allowance(int cluster, std::size_t level) const;
  std::int64_t total(std::size_t level) const;
  std::int64_t gap(int cluster) const;
  int costly_cluster();
  void free_cluster(std::vector<char>& free, int cluster) const;
  void free_slice(std::vector<char>& free);
  std::vector<char> neighbourhood(int& ideal);
  void guide_to_ideal(Model& model, int cluster) const;
  void copy_ideal(int from, int to);

  Run& run_;
  const Problem& problem_;
  const Scope& base_;
  Clusters clusters_;
  std::vector<int> alike_;  // by cluster: the first one that is the same problem
  Random random_;
  Problem own_;               // the problem without terms of several clusters
  std::vector<char> common_;  // by level: has terms of several clusters
  std::vector<ClusterBound> bounds_;
  std::vector<std::int64_t> bounded_under_;  // the run's goals at the last call of bound()
};

}  // namespace scheduler
