// The table of best known makespans: set,instance,lb,ub,proved,source.
#pragma once

#include <filesystem>
#include <map>
#include <string>
#include <utility>

namespace projects {

struct BestKnown {
  int low = 0, high = 0;  ///< 0 = none given
  std::string proved;     ///< optimal, infeasible or open
};

/// By (set, instance). Errors: ReadError (project.h).
using BestKnownTable = std::map<std::pair<std::string, std::string>, BestKnown>;
BestKnownTable read_best_known(const std::filesystem::path& file);

}  // namespace projects
