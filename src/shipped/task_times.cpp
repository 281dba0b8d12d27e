#include "shipped/task_times.h"

#include "shipped/sound.h"
#include "shipped/tables.h"

namespace shipped {

const kitchen::TaskTimes& task_times() {
  static const kitchen::TaskTimes kTimes = sound(
      kitchen::read_task_times(table("task_times.csv"), "task_times.csv"));
  return kTimes;
}

}  // namespace shipped
