// Reads the small worked instances (format small-1, tests/data/small) into engine problems.
#pragma once

#include <filesystem>
#include <map>
#include <string>
#include <vector>

#include "scheduler/problem.h"

namespace scheduler::testing {

struct SmallInstance {
  std::string name;
  Problem problem;                            ///< without the level `waves`
  std::map<std::string, int> index;           ///< activity by id
  std::vector<std::vector<int>> wave_groups;  ///< groups of the level `waves`, empty without one
  bool feasible = true;
  std::vector<std::int64_t> optimum;  ///< all levels of the file
  Schedule example;                   ///< empty when infeasible
};

/// Errors: throws when the file cannot be read or has an unknown measure.
SmallInstance read_small(const std::filesystem::path& file);

/// The scheduling files (NN-name.json) of a folder, sorted.
std::vector<std::filesystem::path> small_files(const std::filesystem::path& folder);

}  // namespace scheduler::testing
