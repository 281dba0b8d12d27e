// The table of how long a pupil takes that travels inside the program.
#pragma once

#include "kitchen/reading/task_times.h"

namespace shipped {

/// Read once.
const kitchen::TaskTimes& task_times();

}  // namespace shipped
