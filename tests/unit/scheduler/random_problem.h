// Random small problems with every kind of rule, for property and differential tests.
#pragma once

#include <cstdint>

#include "scheduler/problem.h"

namespace scheduler::testing {

struct Recipe {
  int activities = 6;
  Time horizon = 18;
  bool elastic = true;
  bool modes = true;
  bool settings = true;
  bool optional = true;
  bool soil = true;
  bool spans = true;
  bool bands = false;
  bool crowded = false;  ///< few lags, many optional activities and modes, small uses of one
                         ///< resource
  // How often, in percent, and how many at most: raised where one kind of rule is looked at.
  int empty_chance = 5;     ///< a least length of 0
  int lag_chance = 55;      ///< a lag from some activity before, for each (crowded: at most 15)
  int max_lag_chance = 50;  ///< of these with a greatest wait
  int extra_lags = 1;       ///< between any two events, each with a chance of 25
  int mode_chance = 30;     ///< a second mode (crowded: at least 60)
  int oven_chance = 35;     ///< a use with settings
  int door_chance = 20;     ///< of these with a door that stays shut
  int shelves_chance = 0;   ///< of these one that takes both shelves
  int soil_chance = 35;     ///< a use that leaves or minds soil
  int span_chance = 50;     ///< each of the spans
  int most_spans = 1;
};

/// Same seed, same problem. Feasible or not, as it comes.
Problem random_problem(std::uint64_t seed, const Recipe& recipe);

}  // namespace scheduler::testing
