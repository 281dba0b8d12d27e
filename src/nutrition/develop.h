// The smallest change that makes a dish reach a goal while every ratio that holds it together stays
// in its band.
//
// "Salt not high": leave out 5 g of the 60 g of cheddar and use unsalted butter; nothing smaller
// does it, and the sauce keeps its butter to flour. When no change does, the bounds that stop it
// are named, one by one. A changed dish is a proposal: cook it and taste it before a class does.
#pragma once

#include <string>
#include <vector>

#include "base/problem.h"
#include "nutrition/dish_nutrients.h"
#include "nutrition/goals.h"

namespace nutrition {

/// Another food that may take an ingredient's place, in grams between `least` and `most`.
struct Swap {
  std::string name;
  const kitchen::Food* food = nullptr;
  double least = 0, most = 0;
};

/// How far one ingredient may change. One stands for each ingredient of the dish, in its order.
struct Allowed {
  double least = 0, most = 0;  ///< grams; both the present weight = it stays as it is
  /// Grams of one step of change: 0 = the school's scales, 5 g and below 20 g 1 g. An egg's weight
  /// for eggs.
  double step = 0;
  std::vector<Swap> swaps;
};

/// least <= sum of numerator * grams / sum of denominator * grams <= most, one coefficient an
/// ingredient. "Fat to flour of a shortcrust between 0.4 and 0.6." A swapped ingredient counts as
/// the one it replaces.
struct RatioBound {
  std::vector<double> numerator, denominator;
  double least = 0, most = 0;
  std::string name;
};

struct DevelopAsked {
  kitchen::Dish dish;
  std::vector<const kitchen::Food*> foods;  ///< one an ingredient
  std::vector<Allowed> allowed;             ///< one an ingredient
  std::vector<RatioBound> ratios;
  std::vector<Goal> goals;
  Options options;       ///< `weighed` is ignored: a changed dish has not been on the scales
  double seconds = 0.8;  ///< for the search, all of it
};

struct Change {
  std::size_t ingredient = 0;
  double from = 0, to = 0;  ///< grams
  std::string instead;      ///< the other food's name; empty when only the amount changes
};

/// A bound without which the goal could be reached, alone.
struct Stop {
  enum class Kind : std::int8_t { kLeast, kMost, kRatio, kGoal } kind = Kind::kGoal;
  std::size_t index = 0;  ///< of the ingredient, ratio or goal
  double bound = 0;       ///< as it was given
  double needed = 0;      ///< the nearest value at which it works, other bounds kept
};

struct Developed {
  bool possible = false;  ///< a change was found
  /// Nothing smaller does it, or, when not possible, nothing does. Otherwise the search was
  /// stopped.
  bool proved = false;
  std::vector<Change> changes;  ///< empty when the dish reaches the goals as it is
  kitchen::Dish dish;           ///< changed
  std::vector<const kitchen::Food*> foods;
  DishNutrients before, after;  ///< without what goes in "to taste"
  std::vector<Stop> stops;      ///< when proved not to be possible
};

/// How far a dish may change when nobody says otherwise: each weighed ingredient by `share` either
/// way (water stays), seasonings and sugars down to nothing; counted ingredients in halves of a
/// piece, eggs whole.
std::vector<Allowed> usual_changes(const kitchen::Dish&, const DishNutrients&, double share = 0.5);

/// Fewest ingredients changed, then least change in proportion; amounts that a school's scales can
/// weigh; judged again by the full calculation. What is not known of an ingredient counts at its
/// worst. Ingredients "to taste" are left out of the sum: with them a goal for salt holds only for
/// what is weighed.
/// Errors: develop.no_goal, develop.not_weighed (an ingredient has an amount but no weight), develop.shape (lists that
/// do not have one entry an ingredient).
/// Cost: tens of milliseconds for a dish of a dozen ingredients (bench), at most `seconds` a search.
base::Result<Developed> develop(const DevelopAsked&, const CookingTables&);

}  // namespace nutrition
