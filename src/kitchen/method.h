// Inside the dish reader: from the list of steps in a file to a checked method.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "kitchen/fields.h"

namespace kitchen {

/// The steps with the place in the file each came from; an added step has the place of the step it
/// closes.
struct Method {
  std::vector<Step> steps;
  std::vector<std::string> where;
};

/// Reads every step; references are already indices. Notes what is wrong; steps with faults hold
/// defaults.
Method method_of(const Fields& dish, const std::vector<Ingredient>& ingredients);

/// Where a step's heat comes from, or nothing. `least` is how long the step takes at least.
std::optional<Heat> heat_of(const Fields& step, Seconds least);

/// Refuses vessels that cannot be ("pot" on a ring and in an oven, a tin baked at two settings) and
/// adds the closing steps nobody wrote (rule L3). Call only on a method read without fault.
void close_vessels(Reader&, Method&);

/// Refuses waits that contradict each other or themselves, naming the steps (rule L1, T3).
void check_waits(Reader&, const Method&);

/// Index of the step with that id, or -1.
int step_called(const std::vector<Step>&, const std::string& id);

/// `wanted`, or with "-2", "-3" ... behind it if a step has that id already.
std::string first_free_id(const std::vector<Step>&, const std::string& wanted);

/// "Dice onion" from "dice-onion": whole words, at most twelve letters.
std::string brief_of(const std::string& id);

}  // namespace kitchen
