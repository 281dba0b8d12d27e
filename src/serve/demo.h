// The invented school, and the dishes that come with the program, put into an empty store.
#pragma once

#include "base/clock.h"
#include "base/problem.h"
#include "store/repository.h"

namespace serve {

/// All dishes that travel inside the program. Every new store begins with them.
base::Result<bool> add_shipped_dishes(store::Repository&);

/// Rooms, rules, classes, prices, stores and a week of lessons of the invented school; the lessons
/// are put into the week of `today`, so that the first page shows them.
base::Result<bool> add_demo_school(store::Repository&, base::Date today);

}  // namespace serve
