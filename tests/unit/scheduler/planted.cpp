#include "planted.h"

#include <gtest/gtest.h>

#include "scheduler/level_bounds.h"
#include "scheduler/levels.h"
#include "scheduler/model.h"
#include "scheduler/solve.h"

namespace scheduler::testing {
namespace {
constexpr std::int64_t kPlenty = 200000;
}  // namespace

Planted run_planted(const Problem& problem, const std::vector<std::vector<int>>& known) {
  Budget budget(60.0, -1, {});
  Scope scope;
  scope.roles.assign(problem.activities.size(), Role::kFree);
  const std::vector<std::int64_t> least = level_bounds(problem);
  scope.least = &least;
  const std::vector<std::vector<InMode>> apart = exclusive_sets(problem, 0);
  scope.apart = &apart;
  Model model(problem, scope, budget);
  const std::size_t variables = static_cast<std::size_t>(model.core().variable_count());
  for (const std::vector<int>& solution : known) model.core().plant(solution);
  model.core().plant_found_solutions();
  Planted result;
  LevelSearch levels(
      problem, model, [&](const Schedule& schedule, const std::vector<std::int64_t>&) {
        EXPECT_EQ(check(problem, schedule), std::vector<std::string>{});
        std::vector<int> values = model.core().solution();
        values.resize(variables);  // sums made by the bounding belong to this run only
        result.found.push_back(values);
      });
  if (levels.first(kPlenty) != Verdict::kSolution) return result;
  EXPECT_TRUE(levels.round(kPlenty));
  result.optimum = levels.values();
  return result;
}

std::optional<std::vector<std::int64_t>> planted_optimum(const Problem& problem) {
  if (contradiction(problem)) return std::nullopt;
  return run_planted(problem, {}).optimum;
}

}  // namespace scheduler::testing
