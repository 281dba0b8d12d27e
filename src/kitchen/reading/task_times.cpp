#include "kitchen/reading/task_times.h"

#include <algorithm>

#include "base/csv.h"
#include "base/text.h"

namespace kitchen {

using base::in_quotes;
using base::say;

const TaskTime* TaskTimes::find(std::string_view verb,
                                const std::vector<std::string>& words) const {
  const auto holds = [](const std::vector<std::string>& all, std::string_view word) {
    return std::find(all.begin(), all.end(), word) != all.end();
  };
  const TaskTime* best = nullptr;
  for (const TaskTime& row : rows_) {
    if (!holds(row.verbs, verb)) continue;
    const bool named = std::any_of(row.things.begin(), row.things.end(),
                                   [&](const std::string& t) { return holds(words, t); });
    if (!row.things.empty() && !named) continue;
    if (best == nullptr || (best->things.empty() && named)) best = &row;
  }
  return best;
}

base::Result<TaskTimes> read_task_times(std::string_view csv, std::string file_name) {
  const auto read = base::read_csv(csv, file_name);
  if (!read) return read.problems();
  const base::Table& table = read.value();
  base::Problems problems;
  std::vector<std::size_t> at;
  for (const char* name : {"task", "conditions", "verbs", "things", "novice_minutes",
                           "adult_minutes", "spread", "each", "source"}) {
    const auto column = table.column(name);
    if (!column) {
      problems.push_back({"task_times.column", file_name, "line 1",
                          say("The table of task times has no column ", in_quotes(name), "."),
                          "Add it."});
    }
    at.push_back(column.value_or(0));
  }
  if (!problems.empty()) return problems;
  std::vector<TaskTime> rows;
  for (const base::Table::Row& row : table.rows) {
    const auto cell = [&](std::size_t i) -> const std::string& { return row.cells[at[i]]; };
    const auto minutes = base::number_in(cell(4)), adult = base::number_in(cell(5)),
               spread = base::number_in(cell(6));
    if (!minutes || *minutes <= 0 || !adult || *adult <= 0 || !spread || *spread < 0 ||
        base::parts(cell(2), ' ').empty()) {
      problems.push_back({"task_times.value", file_name, say("line ", row.line),
                          say("The task ", in_quotes(cell(0)), " lacks a verb or its minutes."),
                          "Give minutes above 0, a spread from 0 and at least one verb."});
      continue;
    }
    rows.push_back({cell(0), cell(1), base::parts(cell(2), ' '), base::parts(cell(3), ' '),
                    *minutes, *adult, *spread, cell(7) == "yes", cell(8)});
  }
  if (!problems.empty()) return problems;
  return TaskTimes(std::move(rows));
}

}  // namespace kitchen
