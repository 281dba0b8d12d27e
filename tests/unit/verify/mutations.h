// One way after another of breaking a rule in a plan that keeps them all.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "sample.h"

namespace timeplan::sample {

/// Chooses one of so many, from 0; the test says how.
using Choose = std::function<int(int)>;

/// Breaks `rule` in the plan (or tightens the lesson under the plan). Where there are several
/// places or sizes, `break_it` asks for one.
struct Mutation {
  std::string rule;
  std::string what;
  Sample (*lesson)();
  std::function<void(Sample&, const Choose&)> break_it;
};

/// Times, tasks there must be, waits, serving and windows.
std::vector<Mutation> time_mutations();
/// Attention, vessels, ovens, what is shared, kit and hygiene.
std::vector<Mutation> room_mutations();
/// Adults, house rules, waves, goals.
std::vector<Mutation> people_mutations();

}  // namespace timeplan::sample
