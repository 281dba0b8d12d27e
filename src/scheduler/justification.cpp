#include "scheduler/justification.h"

namespace scheduler {

Justification::Justification(const ListProblem& list, const ListProblem& backwards)
    : list_(list), backwards_(backwards), forward_(list), backward_(backwards) {
  late_.resize(static_cast<std::size_t>(list.count));
  early_ = late_;
}

int Justification::improve(std::vector<Time>& starts) {
  const std::size_t goal = static_cast<std::size_t>(list_.goal);
  for (int passes = 1;; ++passes) {
    end_order_(list_, starts, order_);
    backward_.serial(order_, late_);
    end_order_(backwards_, late_, order_);
    forward_.serial(order_, early_);
    // With release times the way back may be longer than the way there.
    if (early_[goal] > starts[goal]) return passes;
    const bool better = early_[goal] < starts[goal];
    starts = early_;
    if (!better) return passes;
  }
}

}  // namespace scheduler
