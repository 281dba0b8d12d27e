#include "scheduler/level_weights.h"

#include <algorithm>

namespace scheduler {
namespace {

std::int64_t most_of(const Problem& problem, const Term& term) {
  if (term.kind != Term::Kind::kExcess) return 1;
  const auto activity = [&](Event e) -> const Activity& {
    return problem.activities[static_cast<std::size_t>(e.activity)];
  };
  if (term.high.empty()) return 0;
  std::int64_t high = 0, low = term.low.empty() ? 0 : problem.horizon;
  for (const Event e : term.high)
    high = std::max<std::int64_t>(high, std::min(activity(e).latest_end, problem.horizon));
  for (const Event e : term.low)
    low = std::min<std::int64_t>(low, std::max(activity(e).earliest, 0));
  return std::max<std::int64_t>(0, high - low - term.allowance);
}

}  // namespace

std::vector<std::int64_t> most_of_levels(const Problem& problem) {
  std::vector<std::int64_t> most;
  for (const GoalLevel& level : problem.goals) {
    std::int64_t sum = 0;
    for (const Term& term : level.terms) sum += term.weight * most_of(problem, term);
    most.push_back(sum);
  }
  return most;
}

std::optional<std::vector<std::int64_t>> level_weights(const Problem& problem, std::int64_t limit) {
  const std::vector<std::int64_t> most = most_of_levels(problem);
  std::vector<std::int64_t> weights(most.size(), 1);
  std::int64_t weight = 1, sum = 0;
  for (std::size_t l = most.size(); l-- > 0;) {
    if (l + 1 < most.size() && problem.goals[l].band > 0) return std::nullopt;
    weights[l] = weight;
    // Divided, not multiplied: the product may not fit any number.
    if (most[l] > (limit - sum) / weight) return std::nullopt;
    sum += weight * most[l];
    weight = sum + 1;
  }
  return weights;
}

}  // namespace scheduler
