// Reasons and clauses that are wrong on purpose: one literal missing at one place, to see whether
// the tests notice (docs/methods/proof.md, "Mutants"). Only a build with BENCHBELL_MUTANTS has
// them; in every other one spoil() is nothing.
#pragma once

#include <cstdint>
#include <vector>

#include "scheduler/literal.h"

namespace scheduler {

/// Where reasons and clauses are made. tools/mutants.py reads this list.
enum class Site : std::int8_t {
  // explanations of the core
  kArc,
  kArcGuard,
  kClause,
  kLearnt,
  kMinimise,
  kRedundant,
  kCore,
  // explanations of propagators
  kTableOverload,
  kTableStart,
  kTableEnd,
  kTableExclude,
  kEdgeOverload,
  kEdgeStart,
  kEdgeEnd,
  kEnergy,
  kSumLimit,
  kSumPruned,
  // clauses and guards of the model
  kWindow,
  kChoice,
  kBoth,
  kLag,
  kSpan,
  kNonempty,
  kSameMode,
  kExactlyOne,
  kBlocked,
  kApart,
  kInitial,
  kDoor,
  kSoil,
  kExtreme,
  kMoved,
  kUnit,
};

#ifdef BENCHBELL_MUTANTS
/// Takes a literal away when this is the site that was chosen.
void spoil(Site site, std::vector<Literal>& literals);
#else
inline void spoil(Site /*site*/, std::vector<Literal>& /*literals*/) {}
#endif

}  // namespace scheduler
