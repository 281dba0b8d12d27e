// The front door: decides between the exact core on everything and construction by teams, keeps the
// best schedule and the bounds, and is the only place where running out of budget ends.
#include "scheduler/solve.h"

#include <algorithm>
#include <stdexcept>

#include "scheduler/budget.h"
#include "scheduler/large.h"
#include "scheduler/levels.h"
#include "scheduler/list_search.h"
#include "scheduler/model.h"
#include "scheduler/run.h"
#include "scheduler/validate.h"

namespace scheduler {
namespace {

constexpr std::int64_t kFirstRound = 1500;
constexpr std::int64_t kNeighbourhoodConflicts = 250;
constexpr std::int64_t kBoundConflicts = 600;
constexpr std::int64_t kFirstImprovement = 8000000;
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

/// The whole problem as one model, searched in rounds.
class Whole {
 public:
  Whole(Run& run, const Scope& scope)
      : run_(run),
        model_(run.problem(), scope, run.budget(), run.options().proof),
        levels_(
            run.problem(), model_,
            [this](const Schedule& schedule, const std::vector<std::int64_t>& values) {
              run_.offer(schedule, values);
              run_.raise(levels_.bounds());
            },
            [this](const std::vector<std::int64_t>& bounds) { run_.raise(bounds); }) {
    const std::optional<Schedule>& hint = run.options().start_from;
    if (!hint || hint->size() != run.problem().activities.size() || run.has_schedule()) return;
    model_.guide(*hint);
    model_.core().begin_with_phases();
  }

  Verdict first(std::int64_t conflicts) { return levels_.first(conflicts); }

  /// Takes over the run's best schedule and tells the bounds propagation gives at once.
  void catch_up() {
    if (levels_.has_schedule() && levels_.best() == run_.best()) return;
    levels_.start_from(run_.best(), run_.goals());
    levels_.raise_by_propagation();
    run_.raise_floor(levels_.floor());
  }

  /// True when all levels are closed.
  bool round(std::int64_t conflicts, std::int64_t ticks) {
    catch_up();
    const bool done = levels_.round(conflicts, ticks);
    run_.raise(levels_.bounds());
    return done;
  }

  void prove() {
    run_.offer(levels_.best(), levels_.values());
    run_.prove_all();
  }

 private:
  Run& run_;
  Model model_;
  LevelSearch levels_;
};

bool find_first(Run& run, Whole& whole, Large& large) {
  for (std::int64_t conflicts = kFirstRound; !run.has_schedule();
       conflicts = std::min(4 * conflicts, kMaxRound)) {
    const Verdict verdict = whole.first(large.worthwhile() ? conflicts : kMaxRound);
    if (verdict == Verdict::kRefuted) {
      run.infeasible();
      return false;
    }
    if (verdict == Verdict::kGaveUp) large.construct({});
  }
  return true;
}

bool closed(const Run& run) {
  for (std::size_t l = 0; l < run.bounds().size(); ++l) {
    if (run.bounds()[l] < run.goal(l)) return false;
  }
  return true;
}

/// Neighbourhoods until about `ticks` are spent.
void improve(Run& run, Large& large, std::int64_t ticks) {
  const std::int64_t end = run.budget().ticks() + ticks;
  while (run.budget().ticks() < end && !closed(run)) large.improve(kNeighbourhoodConflicts);
}

/// Bounds until about `ticks` are spent, in calls that grow.
void bound(Run& run, Large& large, std::int64_t ticks, std::int64_t& conflicts) {
  const std::int64_t end = run.budget().ticks() + ticks;
  while (run.budget().ticks() < end && !closed(run) && large.bound(conflicts))
    conflicts = std::min(2 * conflicts, kMaxRound);
}

void search(Run& run, const Scope& scope) {
  ListSearch lists(run);
  lists.first();
  if (run.has_schedule() && run.options().first_only) return;
  Whole whole(run, scope);
  Large large(run, scope);
  if (!run.has_schedule() && !find_first(run, whole, large)) return;
  if (run.options().first_only) return;
  whole.catch_up();
  std::int64_t bounding = kBoundConflicts;
  if (large.worthwhile()) {
    bound(run, large, kFirstImprovement, bounding);
    large.construct_for_wishes();
    improve(run, large, kFirstImprovement);
  }
  std::int64_t ticks = large.worthwhile() ? kFirstImprovement : LevelSearch::kNoEnd;
  for (std::int64_t conflicts = kFirstRound;; conflicts = std::min(2 * conflicts, kMaxRound)) {
    const std::int64_t before = run.budget().ticks();
    if (whole.round(conflicts, ticks)) return whole.prove();
    if (closed(run)) return run.prove_all();
    const std::int64_t share = run.budget().ticks() - before;
    if (lists.applies()) lists.improve(share);
    if (closed(run)) return run.prove_all();
    if (!large.worthwhile()) continue;
    // As much work again for neighbourhoods, and for bounds.
    improve(run, large, share);
    if (closed(run)) return run.prove_all();
    bound(run, large, share, bounding);
    ticks += ticks / 2;
  }
}

void conclude(const Outcome& outcome, ProofSink* proof) {
  if (proof == nullptr) return;
  if (outcome.status == Status::kInfeasible)
    proof->infeasible();
  else
    proof->bounds(outcome.bounds);
}

}  // namespace

void search_all(Run& run) {
  const Problem& problem = run.problem();
  const Options& options = run.options();
  validate(problem);
  if (!options.fixed.empty() && options.fixed.size() != problem.activities.size()) {
    throw std::invalid_argument("fixed placements: one for each activity or none");
  }
  if (options.proof != nullptr) options.proof->horizon(problem.horizon);
  if (contradiction(problem)) {
    run.infeasible();
    return;
  }
  try {
    Schedule fixed(problem.activities.size());
    for (std::size_t i = 0; i < options.fixed.size(); ++i) {
      if (options.fixed[i]) fixed[i] = *options.fixed[i];
    }
    const Scope scope = whole_scope(problem, options, fixed);
    run.offer_start();
    search(run, scope);
  } catch (const OutOfBudget&) {
    // The best so far stands in `run`.
  }
}

Outcome solve(const Problem& problem, const Options& options) {
  Run run(problem, options);
  search_all(run);
  const Outcome outcome = run.outcome();
  conclude(outcome, options.proof);
  return outcome;
}

}  // namespace scheduler
