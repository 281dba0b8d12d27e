// One search of a whole problem: alone, or as one of two that tell each other what they find.
#pragma once

#include "scheduler/exchange.h"
#include "scheduler/model.h"
#include "scheduler/run.h"

namespace scheduler {

/// Schedules and bounds in turn until all is proved; with an `exchange`, beside search_bounds(),
/// schedules alone. Ends by OutOfBudget when the run's budget is used up.
void search(Run& run, const Scope& scope, Exchange* exchange);

/// Bounds alone, beside search() in another thread.
void search_bounds(Run& run, const Scope& scope, Exchange& exchange);

}  // namespace scheduler
