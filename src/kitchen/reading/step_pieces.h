// Clauses gathered into steps: what a pupil does before the next wait or change of place.
#pragma once

#include <vector>

#include "kitchen/reading/clauses.h"

namespace kitchen {

struct StepPieces {
  std::vector<Clause> clauses;         ///< at least one
  std::vector<std::size_t> sentences;  ///< sentences without an action that belong to it
  Clause main;                         ///< the one that says what kind of work it is
};

/// Every clause in exactly one step, in order. Sentences without an action join the step before
/// them; those before the first step are left to the caller (`early`).
std::vector<StepPieces> gathered(const std::vector<Sentence>&, std::vector<std::size_t>& early);

}  // namespace kitchen
