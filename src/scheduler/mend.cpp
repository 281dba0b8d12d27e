#include "scheduler/mend.h"

#include <algorithm>
#include <stdexcept>

#include "base/index.h"
#include "scheduler/clusters.h"

namespace scheduler {
namespace {

using base::at;

constexpr int kWidths = 3;

/// Which clusters may move at a width; activities of no team (an adult's) always may.
std::vector<char> free_clusters(const Problem& problem, const Clusters& clusters,
                                const std::vector<int>& teams, int width) {
  std::vector<char> free(at(clusters.count()), width == kWidths - 1 ? 1 : 0);
  for (std::size_t i = 0; i < problem.activities.size(); ++i) {
    const int cluster = clusters.of_activity(static_cast<int>(i));
    if (cluster < 0 ||
        std::find(teams.begin(), teams.end(), problem.activities[i].team) == teams.end())
      continue;
    free[at(cluster)] = 1;
    if (width == 0) continue;
    for (const int beside : clusters.neighbours(cluster)) free[at(beside)] = 1;
  }
  return free;
}

std::vector<std::optional<Placement>> held(const Clusters& clusters, const Schedule& standing,
                                           Time now, const std::vector<char>& free) {
  std::vector<std::optional<Placement>> fixed(standing.size());
  for (std::size_t i = 0; i < standing.size(); ++i) {
    const int cluster = clusters.of_activity(static_cast<int>(i));
    const bool past = standing[i].present && standing[i].start < now;
    if (past || (cluster >= 0 && !free[at(cluster)])) fixed[i] = standing[i];
  }
  return fixed;
}

}  // namespace

Mended mend(const Problem& changed, const Schedule& standing, const MendOptions& options) {
  if (standing.size() != changed.activities.size())
    throw std::invalid_argument("a standing schedule has one placement for each activity");
  const Clusters clusters(changed);
  Mended mended;
  for (int width = 0; width < kWidths; ++width) {
    Options engine = options.engine;
    engine.start_from = standing;
    engine.fixed = held(clusters, standing, options.now,
                        free_clusters(changed, clusters, options.teams, width));
    mended = {solve(changed, engine), width};
    if (!mended.outcome.best.empty()) break;
  }
  return mended;
}

}  // namespace scheduler
