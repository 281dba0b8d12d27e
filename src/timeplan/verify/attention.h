// How much of a cook each task takes, in tenths of one person (rules A1 to A3).
#pragma once

#include "timeplan/verify/case.h"

namespace timeplan::judge {

/// What a task takes of its cook: `tenths` for the sum of A2, `share` (β) for the sum of A3.
struct Demand {
  int tenths = 0;
  int share = 0;
};

/// What the task takes of its cook. Adults' tasks, windows and looks take nothing here.
Demand demand(const Case&, int task);
/// Does the task keep somebody's hands: attention 5 and more?
bool keeps_hands(const Case&, int task);

}  // namespace timeplan::judge
