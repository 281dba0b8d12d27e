// What a changed dish should reach: "salt not high", "fibre at least 6 g a portion", "energy at
// most 2000 kJ".
//
// A goal is linear in the grams of the ingredients, so that the smallest change can be proved
// smallest.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/problem.h"
#include "nutrition/front_of_pack.h"

namespace nutrition {

enum class GoalOf : std::int8_t {
  kKilojoules,
  kKilocalories,
  kFat,
  kSaturates,
  kSugars,
  kFreeSugars,  ///< counted as many as they can be
  kFibre,
  kProtein,  ///< as the label states it
  kSalt,
};
std::string_view name_of(GoalOf);
std::string_view unit_of(GoalOf);

enum class GoalPer : std::int8_t { kPortion, kHundred };

/// At least or at most so much in a portion or in 100 g as served.
struct Goal {
  GoalOf of = GoalOf::kSalt;
  bool at_most = true;
  double amount = 0;
  GoalPer per = GoalPer::kPortion;
  std::string words;  ///< as it was asked: "salt not high"
};

/// The goals a sentence asks for. Understood are
///   "WHAT not high", "WHAT low" with WHAT one of fat, saturates, sugars, salt (the colours: "not
///   red" and "green" say the same), and "WHAT at least|at most NUMBER [kJ|kcal|g] [a portion|in
///   100 g]", a portion when nothing is said.
/// "Not high" is two goals when a portion is large (over 100 g): 100 g and the portion.
/// Errors: goal.words with what is understood.
base::Result<std::vector<Goal>> read_goal(std::string_view words, double portion_grams);

/// What a dish has of it, in a portion or 100 g.
Figure reached(const Goal&, const DishNutrients&);
/// Whether that keeps the goal for certain: at most also with what is missing at its most.
bool kept(const Goal&, const DishNutrients&);

/// In 100 g of a food: what the goal is about. Nothing when it is not known.
std::optional<double> per_100_g(const kitchen::Food&, GoalOf);

}  // namespace nutrition
