// The engine's front door: solve(problem, options) -> outcome. Same problem, seed and work limit:
// same answer.
//
// Goal levels are minimised in order; every level carries a proved lower bound for all schedules
// that are no worse on the levels before it. The outcome's schedule always satisfies check(): the
// engine never returns one that does not.
#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "scheduler/problem.h"
#include "scheduler/proof.h"

namespace scheduler {

enum class Status : std::int8_t {
  kOptimal,     ///< all levels proved
  kFeasible,    ///< a schedule, not everything proved
  kInfeasible,  ///< proved: no schedule exists
  kUnknown,     ///< neither a schedule nor a proof within the limits
};

struct Options {
  double seconds = 5.0;          ///< wall clock, the only use of a clock: to stop
  std::int64_t work_limit = -1;  ///< ticks; -1 = none. With a limit reached before `seconds` a run
                                 ///< repeats exactly
  /// A run ends when the first level is proved and no other is further from its bound than this,
  /// but not before `close_after` ticks; -1 = goes on until all is proved.
  std::int64_t close_enough = -1;
  std::int64_t close_after = 0;
  int memory_mb = 300;  ///< for what is learnt; the least useful of it goes first. The problem's
                        ///< own model comes on top
  std::uint64_t seed = 1;
  /// 1 or 2. With two, one thread looks for better schedules and the other for bounds; they tell
  /// each other what they find, so a run no longer repeats exactly. Work limits count for the
  /// first.
  int threads = 1;
  std::function<bool()> stop;  ///< asked often (within 10 ms); true = give the best so far
  std::function<void(const Schedule&, const std::vector<std::int64_t>& values)> on_better;
  /// Told whenever a bound rises, one value a goal level. A bound falls back when a level before it
  /// got worse for the sake of one before that: it spoke of fewer schedules.
  std::function<void(const std::vector<std::int64_t>& bounds)> on_bound;
  std::optional<Schedule> start_from;  ///< a schedule to improve on; if it breaks a rule, a hint
                                       ///< where to look first
  /// Per activity: fixed placements (empty = nothing fixed). Fixed activities are constants to the
  /// search.
  std::vector<std::optional<Placement>> fixed;
  /// Told every step that leads to the bounds, and the bounds at the end; may be null. Only bounds
  /// of the whole model are told in full: with many teams (bounds by clusters) or fixed activities
  /// a log will not check.
  ProofSink* proof = nullptr;
  bool first_only = false;  ///< stop at the first schedule
  /// Whether each two uses that are too much for a plain resource get an order to decide on. Bounds
  /// of projects gain by it. A class has ten thousand such pairs, most of them of one pair of hands
  /// and decided by where the two lie: without them it is searched twice as fast.
  bool decide_pairs = true;
};

struct Outcome {
  Status status = Status::kUnknown;
  Schedule best;                     ///< empty when there is none
  std::vector<std::int64_t> values;  ///< one a goal level
  std::vector<std::int64_t> bounds;  ///< one a goal level, proved; never above values
  std::vector<bool> proved;          ///< level and all before it closed
  std::int64_t ticks = 0, conflicts = 0;
  double first_seconds = 0, best_seconds = 0, seconds = 0;
};

/// Errors in the problem itself (a positive cycle of lags, an unknown resource): nothing is
/// searched.
struct Contradiction {
  std::vector<int> lags;  ///< indices of the lags on a positive cycle, in order
};
std::optional<Contradiction> contradiction(const Problem&);

Outcome solve(const Problem&, const Options&);

/// All breaches of the problem by a schedule, in words for a programmer; empty = satisfied. Slow
/// and obvious.
std::vector<std::string> check(const Problem&, const Schedule&);
/// The goal values of a schedule, one a level.
std::vector<std::int64_t> evaluate(const Problem&, const Schedule&);

}  // namespace scheduler
