// Lexicographic minimisation on one Model: each level is pushed down from above (solutions) and up
// from below (cores), in slices that grow, until both meet.
#pragma once

#include <cstdint>
#include <functional>
#include <limits>
#include <vector>

#include "scheduler/model.h"

namespace scheduler {

class LevelSearch {
 public:
  /// Where a level is searched from: better schedules above, bounds below.
  enum class From : std::int8_t { kBoth, kAbove, kBelow };

  static constexpr std::int64_t kNoEnd = std::numeric_limits<std::int64_t>::max();

  using Report = std::function<void(const Schedule&, const std::vector<std::int64_t>& values)>;
  using Raised = std::function<void(const std::vector<std::int64_t>& bounds)>;

  /// `report` hears of every schedule taken, `on_bound` of every bound raised.
  LevelSearch(const Problem& problem, Model& model, Report report, Raised on_bound = {});

  /// Level values no schedule may exceed, from outside (bounds of a part under a budget); kept as
  /// assumptions.
  void limit(std::size_t level, std::int64_t value) {
    outer_.push_back(model_.at_most_value(level, value));
  }

  /// A known schedule of this model to improve on; `goals`: the best value each level had under
  /// those before it (its own values, unless bands have given something back).
  void start_from(const Schedule& schedule, const std::vector<std::int64_t>& goals);

  /// Bounds that others have proved under the goals given last.
  void take_bounds(const std::vector<std::int64_t>& bounds);

  /// Bounds of all levels from propagation alone, each under the best of those before it.
  /// Needs a schedule.
  void raise_by_propagation();

  /// Finds any schedule. kRefuted: none exists (within the limits set).
  Verdict first(std::int64_t conflict_limit);

  /// Improves and proves the levels in order, each with about this many conflicts, and ends soon
  /// after so many ticks. Needs a schedule. True when every level is proved.
  bool round(std::int64_t conflicts_a_level, std::int64_t ticks = kNoEnd, From from = From::kBoth);

  /// One level only, all before it taken as they are. True when proved.
  bool minimise(std::size_t level, std::int64_t conflict_limit);

  /// The level for itself: what the levels before it happen to be in the schedule found does not
  /// bind, only limit() does.
  bool minimise_alone(std::size_t level, std::int64_t conflict_limit);

  bool has_schedule() const { return !best_.empty(); }
  const Schedule& best() const { return best_; }
  const std::vector<std::int64_t>& values() const { return values_; }
  const std::vector<std::int64_t>& bounds() const { return bounds_; }
  std::int64_t bound(std::size_t level) const { return bounds_[level]; }
  /// Bounds that hold whatever the levels before are.
  const std::vector<std::int64_t>& floor() const { return floor_; }
  bool proved(std::size_t level) const { return bounds_[level] >= goal_[level]; }

 private:
  /// A weighted part of the level, assumed to stay at `bound`; new ones arise as sums over cores.
  struct Part {
    int variable;
    std::int64_t weight;
    int bound;
  };
  struct Parts {
    bool ready = false;
    bool stale = false;  ///< proved under goals that hold no more: to be made anew
    std::size_t probed = 0;
    std::vector<Part> list;
  };

  std::vector<Literal> assumptions(std::size_t level) const;
  void raise_from_root();
  bool over() const { return model_.core().ticks() >= end_; }
  void set_goals(const std::vector<std::int64_t>& goals);
  void take_solution();
  void take_if_better(std::size_t level);
  void raise(std::size_t level, std::int64_t bound);
  void descend(std::size_t level, std::int64_t conflict_limit);
  bool from_above(std::size_t level, std::int64_t target, std::int64_t conflict_limit);
  void from_below(std::size_t level, std::int64_t conflict_limit);
  bool probe_parts(std::size_t level, std::int64_t end);
  void prepare(std::size_t level);
  std::vector<std::size_t> members(const Parts& parts) const;
  void shrink(std::size_t level, std::vector<std::size_t>& core);
  void relax(Parts& parts, const std::vector<std::size_t>& core);
  std::int64_t sum(std::size_t level) const;

  const Problem& problem_;
  Model& model_;
  Report report_;
  Raised on_bound_;
  std::vector<Literal> outer_;
  bool alone_ = false, rooted_ = false;
  std::int64_t end_ = kNoEnd;  // of the round, in ticks
  From from_ = From::kBoth;    // in the round
  Schedule best_;
  std::vector<std::int64_t> values_;
  std::vector<std::int64_t> goal_;    // the best value a level had under the levels before it
  std::vector<std::int64_t> floor_;   // bounds whatever the levels before are
  std::vector<std::int64_t> bounds_;  // for schedules no worse than goal_ on the levels before
  std::vector<Parts> parts_;
};

}  // namespace scheduler
