// The mixed-integer programme behind develop(). Not for use outside nutrition/.
#pragma once

#include <optional>
#include <vector>

#include "nutrition/develop.h"
#include "optimise/milp.h"

namespace nutrition {

/// One way an ingredient may be: its amount changed, or another food in its place. Unchanged is
/// none of them.
struct Mode {
  std::optional<std::size_t> swap;  ///< index into Allowed::swaps
  double least = 0, most = 0, step = 1;
  std::vector<double> per_gram;  ///< of each goal, at its worst where it is not known
  double weight = 1;             ///< served grams a gram
};

/// One ingredient in the model; `now` is how it is.
struct ModelPart {
  double grams = 0;
  Mode now;
  std::vector<Mode> modes;
};

struct Model {
  std::vector<ModelPart> parts;
  std::vector<RatioBound> ratios;
  std::vector<Goal> goals;
  int portions = 1;
};

struct Choice {
  std::optional<std::size_t> mode;  ///< nothing = unchanged
  double grams = 0;
};

struct ModelAnswer {
  optimise::Status status = optimise::Status::kStopped;
  std::vector<Choice> choices;  ///< one a part when found
};

/// Least change that keeps every ratio and goal.
ModelAnswer least_change(const Model&, double seconds);

/// The bound that is let go, and how near to it the rest can be kept. Nothing when even without it
/// nothing works.
struct Relaxed {
  Stop::Kind kind = Stop::Kind::kGoal;
  std::size_t index = 0;
};
std::optional<double> nearest_without(const Model&, const Relaxed&, double seconds);

}  // namespace nutrition
