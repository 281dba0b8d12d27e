// Adding up what is in use, from one event to the next: no grid, no table of minutes.
//
// "From 10:52 to 10:55 five cooks stand at four sinks." The times that matter are the starts and
// ends themselves.
#pragma once

#include <vector>

#include "timeplan/verify/case.h"

namespace timeplan::judge {

/// Something in use for a while, by some tasks of the plan.
struct Use {
  Span span;
  int amount = 1;
  std::vector<int> tasks;
};

/// A stretch in which more is in use than there is: the most at one time, and everything in use
/// meanwhile.
struct Excess {
  Span span;
  int amount = 0;
  std::vector<int> tasks;
};

/// Every longest stretch in which the sum of the uses is more than `capacity`. Uses of no length
/// count for nothing. O(events * uses).
std::vector<Excess> over(const std::vector<Use>& uses, int capacity);

}  // namespace timeplan::judge
