// The front door: decides between the exact core on everything and construction by teams, keeps the
// best schedule and the bounds, and is the only place where running out of budget ends.
#include "scheduler/solve.h"

#include <algorithm>
#include <stdexcept>

#include "scheduler/budget.h"
#include "scheduler/levels.h"
#include "scheduler/model.h"
#include "scheduler/run.h"
#include "scheduler/validate.h"

namespace scheduler {
namespace {

constexpr std::int64_t kFirstRound = 1500;
constexpr std::int64_t kMaxRound = 1000000000;

Scope whole_scope(const Problem& problem, const Options& options, const Schedule& fixed) {
  Scope scope;
  scope.roles.assign(problem.activities.size(), Role::kFree);
  scope.fixed = &fixed;
  for (std::size_t i = 0; i < options.fixed.size(); ++i) {
    if (options.fixed[i]) scope.roles[i] = Role::kFixed;
  }
  return scope;
}

void solve_exactly(Run& run, const Scope& scope) {
  Model model(run.problem(), scope, run.budget());
  LevelSearch levels(run.problem(), model,
                     [&](const Schedule& schedule, const std::vector<std::int64_t>& values) {
                       run.offer(schedule, values);
                     });
  if (run.has_schedule()) {
    levels.start_from(run.best(), run.values());
  } else {
    const Verdict verdict = levels.first(kMaxRound);
    if (verdict == Verdict::kRefuted) return run.infeasible();
  }
  if (run.options().first_only) return;
  for (std::int64_t conflicts = kFirstRound;; conflicts = std::min(2 * conflicts, kMaxRound)) {
    const bool done = levels.round(conflicts);
    run.raise(levels.bounds());
    if (done) {
      run.offer(levels.best(), levels.values());
      return run.prove_all();
    }
  }
}

}  // namespace

Outcome solve(const Problem& problem, const Options& options) {
  validate(problem);
  if (!options.fixed.empty() && options.fixed.size() != problem.activities.size()) {
    throw std::invalid_argument("fixed placements: one for each activity or none");
  }
  Run run(problem, options);
  if (contradiction(problem)) {
    run.infeasible();
    return run.outcome();
  }
  try {
    Schedule fixed(problem.activities.size());
    for (std::size_t i = 0; i < options.fixed.size(); ++i) {
      if (options.fixed[i]) fixed[i] = *options.fixed[i];
    }
    const Scope scope = whole_scope(problem, options, fixed);
    run.offer_start();
    solve_exactly(run, scope);
  } catch (const OutOfBudget&) {
    // The best so far stands in `run`.
  }
  return run.outcome();
}

}  // namespace scheduler
