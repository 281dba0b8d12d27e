#include "timeplan/tidy.h"

#include <algorithm>

namespace timeplan {

namespace {

constexpr std::size_t kLargest = 250;  // activities; beyond it the extra level costs more than it
                                       // gives

// Starts of what waits for the hands of this node to be clean.
std::vector<scheduler::Event> next_after(const Trial& trial, int node) {
  std::vector<scheduler::Event> next;
  for (const Wait& w : trial.net.waits) {
    const int activity = trial.brief.activity_of_node[static_cast<std::size_t>(w.to)];
    if (w.from == node && w.why == WaitWhy::kHands && activity >= 0)
      next.push_back({activity, scheduler::Side::kStart});
  }
  return next;
}

}  // namespace

void tidy(Trial& trial, const scheduler::Problem& problem, const TrialLimits& limits,
          double& spent) {
  if (problem.activities.size() > kLargest) return;
  Trial tidied = trial;
  tidied.brief.problem = problem;
  scheduler::GoalLevel soon{"soon", {}, 0};
  std::vector<int> known;
  for (std::size_t n = 0; n < trial.net.nodes.size(); ++n) {
    const int activity = trial.brief.activity_of_node[n];
    if (activity < 0 || std::find(known.begin(), known.end(), activity) != known.end()) continue;
    known.push_back(activity);
    scheduler::Term start;
    start.high = {{activity, scheduler::Side::kStart}};
    // Clean hands go straight on to the food, not to half an hour of writing.
    if (trial.net.nodes[n].task.kind == TaskKind::kApronAndHands) {
      start.high = next_after(trial, static_cast<int>(n));
      start.low = {{activity, scheduler::Side::kEnd}};
    }
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
