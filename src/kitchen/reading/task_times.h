// How long common tasks take a pupil of 11 to 16, for steps whose text does not say.
//
// "Peel and dice an onion" is 6 minutes for one medium onion; three onions take three times that.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/problem.h"

namespace kitchen {

struct TaskTime {
  std::string task;                 ///< "peel and dice an onion"
  std::string conditions;           ///< "one medium"
  std::vector<std::string> verbs;   ///< any of these must be done: "chop", "dice"
  std::vector<std::string> things;  ///< any of these must be named; empty = whatever it is
  double novice_minutes = 1;        ///< median, > 0
  double adult_minutes = 1;
  double spread = 0.35;  ///< sigma of the logarithm of the duration
  bool each = false;     ///< for one piece: two pieces take twice as long
  std::string source;
};

class TaskTimes {
 public:
  TaskTimes() = default;
  explicit TaskTimes(std::vector<TaskTime> rows) : rows_(std::move(rows)) {}
  const std::vector<TaskTime>& rows() const { return rows_; }
  /// The row that names the verb and the thing (both singular, folded), the most particular first;
  /// nothing if none does.
  const TaskTime* find(std::string_view verb, const std::vector<std::string>& words) const;

 private:
  std::vector<TaskTime> rows_;
};

/// Errors: table.*, task_times.column, task_times.value.
base::Result<TaskTimes> read_task_times(std::string_view csv, std::string file_name);

}  // namespace kitchen
