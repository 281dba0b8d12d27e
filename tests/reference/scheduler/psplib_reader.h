// Readers of two public file formats for project scheduling: `.sm` of PSPLIB (R. Kolisch, A.
// Sprecher 1996) and the
// `.sch` format of ProGen/max (C. Schwindt 1996) with minimum and maximum time lags. The goal is
// the makespan.
#pragma once

#include <filesystem>
#include <map>
#include <string>

#include "scheduler/problem.h"

namespace scheduler::testing {

/// Errors: std::runtime_error when the file is not of the format its name says.
Problem read_project(const std::filesystem::path& file);

struct BestKnown {
  int low = 0, high = 0;
  std::string proved;  ///< optimal, infeasible or open
};

/// best_known.csv: by (set, instance).
std::map<std::pair<std::string, std::string>, BestKnown> read_best_known(
    const std::filesystem::path& file);

}  // namespace scheduler::testing
