// Random small project instances, made up here, as the engine's programs and as the checker read
// them.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "../../../bench/scheduler/project.h"
#include "proof_check/instance.h"

namespace proof_check::testing {

struct ProjectRecipe {
  int jobs = 9;  ///< without the two dummies
  int resources = 2;
  int longest = 6;
  int max_lag_chance = 25;  ///< in percent, for each lag
};

/// Same seed, same project. With a schedule or without, as it comes.
projects::Project random_project(std::uint64_t seed, const ProjectRecipe& recipe);

/// In the format of ProGen/max.
std::string text_of(const projects::Project& project);

/// Through the text and the checker's own reader.
Instance instance_of(const projects::Project& project);

/// The engine's proof under a work limit, and what the engine says it proves.
struct Proof {
  std::string text;
  bool infeasible = false;
  int bound = 0;
  int value = -1;  ///< of the best schedule found, -1 = none
};
Proof proof_of(const projects::Project& project);

std::vector<std::string> lines_of(const std::string& text);
std::string joined(const std::vector<std::string>& lines);

}  // namespace proof_check::testing
