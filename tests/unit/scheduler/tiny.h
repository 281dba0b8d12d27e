// One constraint on a tiny space against its plain reading: five variables of at most six values or
// so, every assignment tried one by one. Whatever the core says about it - each pruning, each
// explanation, each learnt clause, each solution - is held against that list.
#pragma once

#include <cstdint>
#include <functional>
#include <utility>
#include <vector>

#include "scheduler/core.h"

namespace scheduler::testing {

struct Tiny {
  std::vector<std::pair<int, int>> domains;                ///< one a variable, [low, high]
  std::function<bool(const std::vector<int>&)> satisfied;  ///< slow and obvious
  std::function<void(Core&)> post;
  int watched = 0;      ///< the propagator (by number) whose steps are counted apart
  bool decides = true;  ///< the core alone refuses every assignment that does not satisfy it
};

/// What was looked at; a test expects enough of it.
struct TinyCount {
  long problems = 0, prunings = 0, conflicts = 0, watched = 0, lemmas = 0, learnt = 0,
       solutions = 0;
  TinyCount& operator+=(const TinyCount& other);
};

/// Failed expectations for every step that a satisfying assignment contradicts.
TinyCount compare_with_brute_force(const Tiny& tiny, std::uint64_t seed);

/// Many of them, seeds 1 .. count, and a line about it.
TinyCount compare_all(const char* name, const std::function<Tiny(std::uint64_t seed)>& make,
                      std::uint64_t count);

}  // namespace scheduler::testing
