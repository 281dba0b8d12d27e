// A synthetic class: 24 cooks with two dishes of nine steps and a washing-up each, eight cookers
// shared by three cooks, one adult who watches two hot-oil steps at once, a demonstration with a
// free start. Durations are invented from general kitchen experience. Goal: the sum over cooks of
// the minutes between their two dishes being ready.
#pragma once

#include "scheduler/problem.h"

namespace scheduler::bench {

struct ClassroomOptions {
  int cooks = 24;         ///< at most 24, three to a cooker
  int adult_watches = 2;  ///< hot-oil steps at once
  Time day = 100;
  Time demo_from = 10, demo_to = 40;
  bool finish_level = false;  ///< a second level: the end of the last washing-up
};

Problem classroom(const ClassroomOptions& options);

}  // namespace scheduler::bench
