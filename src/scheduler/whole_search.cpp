// Between the exact core on everything, construction by teams and lists: who has how much of the
// work, and when a search is done.
#include "scheduler/whole_search.h"

#include <algorithm>

#include "scheduler/large.h"
#include "scheduler/levels.h"
#include "scheduler/list_search.h"

namespace scheduler {
namespace {

constexpr std::int64_t kFirstRound = 1500;
constexpr std::int64_t kNeighbourhoodConflicts = 250;
constexpr std::int64_t kBoundConflicts = 600;
constexpr std::int64_t kFirstImprovement = 8000000;
constexpr std::int64_t kMaxRound = 1000000000;
/// Conflicts of a round between two looks at what the other thread has found.
constexpr std::int64_t kMaxRoundOfTwo = 8000;

/// The whole problem as one model, searched in rounds.
class Whole {
 public:
  Whole(Run& run, const Scope& scope, Exchange* exchange)
      : run_(run),
        exchange_(exchange),
        model_(run.problem(), scope, run.budget(), run.options().proof),
        levels_(
            run.problem(), model_,
            [this](const Schedule& schedule, const std::vector<std::int64_t>& values) {
              run_.offer(schedule, values);
              found(levels_.bounds());
            },
            [this](const std::vector<std::int64_t>& bounds) { found(bounds); }) {
    const std::optional<Schedule>& hint = run.options().start_from;
    if (!hint || hint->size() != run.problem().activities.size() || run.has_schedule()) return;
    model_.guide(*hint);
    model_.core().begin_with_phases();
  }

  Verdict first(std::int64_t conflicts) { return levels_.first(conflicts); }

  /// Takes over the run's best schedule and tells the bounds propagation gives at once.
  void catch_up() {
    const bool known = levels_.has_schedule() && levels_.best() == run_.best();
    if (known && propagated_) return;
    if (!known) levels_.start_from(run_.best(), run_.goals());
    levels_.raise_by_propagation();
    run_.raise_floor(levels_.floor());
    propagated_ = true;
  }

  /// True when all levels are closed.
  bool round(std::int64_t conflicts, std::int64_t ticks, LevelSearch::From from) {
    catch_up();
    levels_.take_bounds(run_.bounds());
    const bool done = levels_.round(conflicts, ticks, from);
    found(levels_.bounds());
    return done;
  }

  void prove() {
    run_.offer(levels_.best(), levels_.values());
    run_.prove_all();
  }

 private:
  void found(const std::vector<std::int64_t>& bounds) {
    run_.raise(bounds);
    if (exchange_ != nullptr) exchange_->tell(run_);
  }

  Run& run_;
  Exchange* exchange_;  // none: this search is alone
  bool propagated_ = false;
  Model model_;
  LevelSearch levels_;
};

/// The other thread may have found a schedule, better ones or bounds.
void trade(Run& run, Exchange* exchange) {
  if (exchange == nullptr) return;
  exchange->tell(run);
  exchange->take(run);
}

/// False when it is proved that there is none.
bool find_first(Run& run, Whole& whole, Large& large, Exchange* exchange) {
  const std::int64_t most = exchange == nullptr ? kMaxRound : kMaxRoundOfTwo;
  for (std::int64_t conflicts = kFirstRound; !run.has_schedule();
       conflicts = std::min(4 * conflicts, most)) {
    const Verdict verdict = whole.first(large.worthwhile() ? conflicts : most);
    if (verdict == Verdict::kRefuted) run.infeasible();
    trade(run, exchange);
    if (run.is_infeasible()) return false;
    if (verdict == Verdict::kGaveUp && !run.has_schedule()) large.construct({});
  }
  return true;
}

/// Neighbourhoods until about `ticks` are spent.
void improve(Run& run, Large& large, std::int64_t ticks) {
  const std::int64_t end = run.budget().ticks() + ticks;
  while (run.budget().ticks() < end && !run.closed()) large.improve(kNeighbourhoodConflicts);
}

/// Bounds until about `ticks` are spent, in calls that grow.
void bound(Run& run, Large& large, std::int64_t ticks, std::int64_t& conflicts) {
  const std::int64_t end = run.budget().ticks() + ticks;
  while (run.budget().ticks() < end && !run.closed() && large.bound(conflicts))
    conflicts = std::min(2 * conflicts, kMaxRound);
}

}  // namespace

void search(Run& run, const Scope& scope, Exchange* exchange) {
  using From = LevelSearch::From;
  const bool alone = exchange == nullptr;
  ListSearch lists(run);
  lists.first();
  if (run.has_schedule() && run.options().first_only) return;
  trade(run, exchange);
  Whole whole(run, scope, exchange);
  Large large(run, scope);
  if (!run.has_schedule() && !find_first(run, whole, large, exchange)) return;
  if (run.options().first_only) return;
  whole.catch_up();
  std::int64_t bounding = kBoundConflicts;
  if (large.worthwhile()) {
    if (alone) bound(run, large, kFirstImprovement, bounding);
    large.construct_for_wishes();
    improve(run, large, kFirstImprovement);
  }
  std::int64_t ticks = large.worthwhile() ? kFirstImprovement : LevelSearch::kNoEnd;
  const std::int64_t most = alone ? kMaxRound : kMaxRoundOfTwo;
  for (std::int64_t conflicts = kFirstRound;; conflicts = std::min(2 * conflicts, most)) {
    const std::int64_t before = run.budget().ticks();
    if (whole.round(conflicts, ticks, alone ? From::kBoth : From::kAbove)) return whole.prove();
    trade(run, exchange);
    if (run.closed()) return run.prove_all();
    const std::int64_t share = run.budget().ticks() - before;
    if (lists.applies()) lists.improve(share);
    if (run.closed()) return run.prove_all();
    if (!large.worthwhile()) continue;
    // As much work again for neighbourhoods, and for bounds.
    improve(run, large, share);
    if (run.closed()) return run.prove_all();
    if (alone) bound(run, large, share, bounding);
    ticks += ticks / 2;
  }
}

void search_bounds(Run& run, const Scope& scope, Exchange& exchange) {
  Whole whole(run, scope, &exchange);
  Large large(run, scope);
  trade(run, &exchange);
  if (!run.has_schedule() && !find_first(run, whole, large, &exchange)) return;
  std::int64_t bounding = kBoundConflicts;
  for (std::int64_t conflicts = kFirstRound;; conflicts = std::min(2 * conflicts, kMaxRoundOfTwo)) {
    const std::int64_t before = run.budget().ticks();
    const bool done = whole.round(conflicts, LevelSearch::kNoEnd, LevelSearch::From::kBelow);
    const std::int64_t share = run.budget().ticks() - before;
    if (large.worthwhile()) bound(run, large, share, bounding);
    trade(run, &exchange);
    if (done || run.closed()) return exchange.end();
  }
}

}  // namespace scheduler
