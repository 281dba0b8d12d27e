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

/// Every clause in exactly one step, in order. A sentence without an action joins the step before
/// it in its line; where there is none it is left to the caller (`aside`).
std::vector<StepPieces> gathered(const std::vector<Sentence>&, std::vector<std::size_t>& aside);

}  // namespace kitchen
