#include "timeplan/verify/sweep.h"

#include <algorithm>

namespace timeplan::judge {

namespace {

std::vector<Seconds> events(const std::vector<Use>& uses) {
  std::vector<Seconds> times;
  for (const auto& use : uses) {
    if (use.span.from >= use.span.to) continue;
    times.push_back(use.span.from);
    times.push_back(use.span.to);
  }
  std::sort(times.begin(), times.end());
  times.erase(std::unique(times.begin(), times.end()), times.end());
  return times;
}

// What is in use throughout `span`, which holds no event inside.
Excess in_use(const std::vector<Use>& uses, Span span) {
  Excess sum{span, 0, {}};
  for (const auto& use : uses) {
    if (use.span.from >= use.span.to || !overlap(use.span, span)) continue;
    sum.amount += use.amount;
    sum.tasks.insert(sum.tasks.end(), use.tasks.begin(), use.tasks.end());
  }
  return sum;
}

}  // namespace

std::vector<Excess> over(const std::vector<Use>& uses, int capacity) {
  std::vector<Excess> result;
  const auto times = events(uses);
  for (std::size_t i = 0; i + 1 < times.size(); ++i) {
    auto now = in_use(uses, {times[i], times[i + 1]});
    if (now.amount <= capacity) continue;
    if (!result.empty() && result.back().span.to == now.span.from) {
      auto& stretch = result.back();
      stretch.span.to = now.span.to;
      stretch.amount = std::max(stretch.amount, now.amount);
      stretch.tasks.insert(stretch.tasks.end(), now.tasks.begin(), now.tasks.end());
    } else {
      result.push_back(std::move(now));
    }
  }
  return result;
}

}  // namespace timeplan::judge
