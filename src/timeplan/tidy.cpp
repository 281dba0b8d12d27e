#include "timeplan/tidy.h"

#include <algorithm>

namespace timeplan {

namespace {

constexpr std::size_t kLargest = 250;  // activities; beyond it the extra level costs more than it gives

}  // namespace

void tidy(Trial& trial, const scheduler::Problem& problem, const TrialLimits& limits, double& spent) {
  if (problem.activities.size() > kLargest) return;
  Trial tidied = trial;
  tidied.brief.problem = problem;
  scheduler::GoalLevel soon{"soon", {}, 0};
  std::vector<int> known;
  for (const int activity : trial.brief.activity_of_node) {
    if (activity < 0 || std::find(known.begin(), known.end(), activity) != known.end()) continue;
    known.push_back(activity);
    scheduler::Term start;
    start.high = {{activity, scheduler::Side::kStart}};
    start.team = problem.activities[static_cast<std::size_t>(activity)].team;
    soon.terms.push_back(start);
  }
  tidied.brief.problem.goals.push_back(std::move(soon));
  solve(tidied, limits);
  spent += work_of(tidied.outcome);
  if (!tidied.found()) return;
  const auto before = scheduler::evaluate(trial.brief.problem, trial.outcome.best);
  const auto after = scheduler::evaluate(trial.brief.problem, tidied.outcome.best);
  if (after <= before) trial.outcome.best = tidied.outcome.best;
}

}  // namespace timeplan
