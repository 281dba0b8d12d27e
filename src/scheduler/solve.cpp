// The front door: checks what is asked for, searches in one thread or two, and is the only place
// where running out of budget ends.
#include "scheduler/solve.h"

#include <exception>
#include <stdexcept>
#include <thread>

#include "scheduler/budget.h"
#include "scheduler/exchange.h"
#include "scheduler/exclusion.h"
#include "scheduler/level_bounds.h"
#include "scheduler/run.h"
#include "scheduler/validate.h"
#include "scheduler/whole_search.h"

namespace scheduler {
namespace {

/// What every model of the whole problem rests on; made once, read by both threads. Only for a
/// problem that has been looked over by begin().
struct Ground {
  Ground(const Problem& problem, const Options& options)
      : fixed(problem.activities.size()),
        least(level_bounds(problem)),
        apart(exclusive_sets(problem)) {
    scope.roles.assign(problem.activities.size(), Role::kFree);
    scope.fixed = &fixed;
    scope.least = &least;
    scope.apart = &apart;
    scope.decide_pairs = options.decide_pairs;
    for (std::size_t i = 0; i < options.fixed.size(); ++i) {
      if (!options.fixed[i]) continue;
      fixed[i] = *options.fixed[i];
      scope.roles[i] = Role::kFixed;
    }
  }
  Ground(const Ground&) = delete;
  Ground& operator=(const Ground&) = delete;

  Schedule fixed;  ///< placements the caller has fixed are constants to the search
  std::vector<std::int64_t> least;
  std::vector<std::vector<InMode>> apart;
  Scope scope;
};

/// False when nothing is left to search.
bool begin(Run& run) {
  const Problem& problem = run.problem();
  const Options& options = run.options();
  validate(problem);
  if (!options.fixed.empty() && options.fixed.size() != problem.activities.size())
    throw std::invalid_argument("fixed placements: one for each activity or none");
  if (options.threads < 1 || options.threads > 2)
    throw std::invalid_argument("threads: one or two");
  if (options.threads == 2 && options.proof != nullptr)
    throw std::invalid_argument("a proof is written by one thread");
  if (options.proof != nullptr) options.proof->horizon(problem.horizon);
  if (!contradiction(problem)) return true;
  run.infeasible();
  return false;
}

void search_within_budget(Run& run, const Scope& scope, Exchange* exchange) {
  try {
    run.offer_start();
    search(run, scope, exchange);
  } catch (const OutOfBudget&) {
    // The best so far stands in `run`.
  }
}

/// The second thread of a search: bounds, until the exchange is over.
class Bounding {
 public:
  Bounding(const Problem& problem, const Options& options, const Scope& scope, Exchange& exchange)
      : scope_(scope),
        exchange_(exchange),
        options_(quiet(options, exchange)),
        run_(problem, options_),
        thread_([this] { search(); }) {}
  Bounding(const Bounding&) = delete;
  Bounding& operator=(const Bounding&) = delete;
  ~Bounding() { end(); }

  /// What went wrong in the thread goes wrong here.
  Outcome finish() {
    end();
    if (error_) std::rethrow_exception(error_);
    return run_.outcome();
  }

 private:
  // Only the exchange ends it, and what the caller gave to be called is called from the caller's
  // own thread alone.
  static Options quiet(Options options, const Exchange& exchange) {
    options.work_limit = options.close_enough = -1;
    options.seed += 1;
    options.on_better = nullptr;
    options.on_bound = nullptr;
    options.stop = [&exchange] { return exchange.over(); };
    return options;
  }

  void end() {
    exchange_.end();
    if (thread_.joinable()) thread_.join();
  }

  void search() {
    try {
      search_bounds(run_, scope_, exchange_);
    } catch (const OutOfBudget&) {
      // What it found has been told.
    } catch (...) {
      error_ = std::current_exception();
      exchange_.end();
    }
  }

  const Scope& scope_;
  Exchange& exchange_;
  Options options_;
  Run run_;
  std::exception_ptr error_;
  std::thread thread_;  // last: it uses all the others
};

Outcome solve_in_two(const Problem& problem, const Options& given) {
  Exchange exchange;
  Options options = given;
  options.memory_mb /= 2;
  options.stop = [&exchange, &given] { return exchange.over() || (given.stop && given.stop()); };
  Run run(problem, options);
  if (!begin(run)) return run.outcome();
  const Ground ground(problem, options);
  Bounding bounding(problem, options, ground.scope, exchange);
  search_within_budget(run, ground.scope, &exchange);
  const Outcome other = bounding.finish();
  exchange.take(run);
  if (run.closed()) run.prove_all();
  Outcome outcome = run.outcome();
  outcome.ticks += other.ticks;
  outcome.conflicts += other.conflicts;
  return outcome;
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
  if (!begin(run)) return;
  const Ground ground(run.problem(), run.options());
  search_within_budget(run, ground.scope, nullptr);
}

Outcome solve(const Problem& problem, const Options& options) {
  if (options.threads == 2) return solve_in_two(problem, options);
  Run run(problem, options);
  search_all(run);
  const Outcome outcome = run.outcome();
  conclude(outcome, options.proof);
  return outcome;
}

}  // namespace scheduler
