// The small worked chances of tests/data/small/dispatch-*.json as play models, whole minutes as
// seconds / 60.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "nlohmann/json.hpp"
#include "timeplan/chance/room_play.h"

namespace seeds {

struct Outcome {
  int seconds = 0;
  double chance = 1;
};

struct Seed {
  timeplan::PlayModel model;
  std::vector<std::vector<Outcome>> outcomes;  ///< [activity]
  std::vector<std::string> cooks;
  nlohmann::json chance;
};

/// Reads "3/4".
double ratio(const std::string& text);
/// A seed of that file name. Throws when the file cannot be read.
Seed read(const std::string& file);

/// What every combination of durations comes to.
struct Exact {
  double room = 0;
  double expected_not_out = 0;
  double quality_fault = 0;
  std::vector<double> cooks;
  std::map<int, double> last_finish;  ///< minutes
};
Exact enumerate(const Seed& seed);

}  // namespace seeds
