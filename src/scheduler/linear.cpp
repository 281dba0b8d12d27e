#include "scheduler/linear.h"

#include <algorithm>

#include "scheduler/mutant.h"

namespace scheduler {

std::vector<int> Linear::sides() const {
  std::vector<int> sides;
  for (const Summand& summand : summands_) sides.push_back(summand.side);
  return sides;
}

// The bounds that force the sum up, weakened by what the limit is exceeded in excess (`spare`): a
// weaker reason makes a clause that says more.
void Linear::explain(Core& core, std::size_t skipped, std::int64_t spare) {
  reason_.clear();
  for (std::size_t j = 0; j < summands_.size(); ++j) {
    if (j == skipped) continue;
    const Summand& summand = summands_[j];
    int needed = core.low(summand.side);
    const int root = core.root_low(summand.side);
    if (needed == root) continue;
    const std::int64_t give = std::min<std::int64_t>(spare / summand.weight, needed - root);
    needed -= static_cast<int>(give);
    spare -= give * summand.weight;
    if (needed > root) reason_.push_back({summand.side, needed});
  }
}

bool Linear::propagate(Core& core) {
  std::int64_t least = 0;
  for (const Summand& summand : summands_) least += summand.weight * core.low(summand.side);
  core.spend(static_cast<std::int64_t>(summands_.size()));
  if (least > limit_) {
    explain(core, summands_.size(), least - limit_ - 1);
    spoil(Site::kSumLimit, reason_);
    return core.fail(reason_);
  }
  const std::int64_t slack = limit_ - least;
  for (std::size_t i = 0; i < summands_.size(); ++i) {
    const Summand& summand = summands_[i];
    const int low = core.low(summand.side);
    const std::int64_t room = slack / summand.weight;
    if (room >= static_cast<std::int64_t>(core.high(summand.side)) - low) continue;
    const int high = low + static_cast<int>(room);
    // One more than `high` would exceed the limit by `over`; all but one of it may be given away.
    const std::int64_t over = (room + 1) * summand.weight - slack;
    explain(core, i, over - 1);
    spoil(Site::kSumPruned, reason_);
    if (!core.imply({summand.side ^ 1, -high}, reason_)) return false;
  }
  return true;
}

}  // namespace scheduler
