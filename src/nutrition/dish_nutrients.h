// What a dish holds as served: whole, a portion, 100 g. Every figure can be opened down to the row
// it came from, and what is not known is said, never taken for nothing.
//
// Cheese sauce of four: salt at least 1.3 g a portion, for how much salt went in "to taste" is not
// known; 96 % of its weight has figures. An estimate from tables, never an analysis: a packet's own
// label wins.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "kitchen/dish.h"
#include "kitchen/foods.h"
#include "nutrition/cooked_as.h"
#include "nutrition/cooking.h"
#include "nutrition/what.h"

namespace nutrition {

enum class Sureness : std::int8_t {
  kWhole,    ///< every ingredient's share is known
  kAtLeast,  ///< some ingredient's share is missing
  kUnsure,   ///< the weight itself is not known, so 100 g may hold more or less
};

/// An amount with what is known of it. When whole, `most` is `amount`; when only at least known,
/// `most` is what it can be at the very most (no food is more than all fat), if even that is known.
struct Figure {
  double amount = 0;
  std::optional<double> most = 0;
  Sureness sure = Sureness::kWhole;

  static Figure exactly(double amount) { return {amount, amount, Sureness::kWhole}; }
  bool whole() const { return sure == Sureness::kWhole; }
  friend bool operator==(const Figure&, const Figure&) = default;
};
Figure operator*(const Figure&, double);
/// The sum is as unsure as the less sure of the two.
Figure operator+(const Figure&, const Figure&);

/// One ingredient, weighed.
struct Line {
  std::string name;                     ///< as the dish has it
  const kitchen::Food* food = nullptr;  ///< into the table given, which must outlive this; null
                                        ///< when not known
  std::optional<double> grams;          ///< of the edible part, before cooking; 0 when "to taste"
  bool to_taste = false;                ///< no amount is stated
  bool sure = true;                     ///< weighed by definition or a measured row
  std::string how;      ///< "2 cloves at 3 g (SR WEIGHT ...)"; empty when it was a mass
  std::string problem;  ///< why it is not weighed or not known; empty when it is
  CookedAs cooked;

  double served() const { return grams.value_or(0) * cooked.weight; }
};

/// What one ingredient brings to one total.
struct Contribution {
  std::size_t line = 0;
  std::optional<double> per_100_g;  ///< by the table; nothing when missing
  double kept = 1;                  ///< share left after cooking
  std::optional<double> amount;     ///< in the whole dish; nothing when missing
  double least = 0;                 ///< what it is at the very least; the amount when known
  std::optional<double> most;  ///< what it can be at the very most; nothing when even that is not
                               ///< known
};

struct Total {
  Figure whole;                      ///< in the whole dish
  std::vector<std::size_t> missing;  ///< lines whose share is not known
  std::vector<Contribution> parts;   ///< one a line
  double coverage = 0;  ///< share of the weight that went in whose figure is known, 0 to 1
};

struct DishNutrients {
  std::string dish;
  int portions = 1;
  std::vector<Line> lines;       ///< as the dish's ingredients
  double raw_grams = 0;          ///< everything that could be weighed
  double served_grams = 0;       ///< above 0 unless nothing could be weighed
  bool weight_known = true;      ///< false when an ingredient with an amount could not be weighed
  bool weighed_by_hand = false;  ///< `served_grams` is the caller's own weighing
  double coverage = 0;  ///< share of the weight that went in with a food and figures of its own, 0
                        ///< to 1
  std::array<Total, kWhats> totals;
  std::string retention_source;  ///< where the shares left after cooking come from; empty when
                                 ///< switched off

  const Total& total(What what) const { return totals[what.index()]; }
  Figure whole(What what) const { return total(what).whole; }
  Figure portion(What) const;
  Figure per_100_g(What) const;
  double portion_grams() const { return served_grams / portions; }
};

struct Options {
  bool yields = true;                            ///< weight changes in cooking
  bool retention = true;                         ///< losses of vitamins in cooking
  std::optional<double> weighed = std::nullopt;  ///< the finished dish on the scales, grams: better
                                                 ///< than any table
  bool leave_out_to_taste = false;               ///< count only what has an amount
  std::optional<int> portions = std::nullopt;    ///< other than the dish says, at least 1
};

/// The food of each ingredient: by its key, its name, its name as a key; null when none fits.
std::vector<const kitchen::Food*> foods_of(const kitchen::Dish&, const kitchen::Foods&);

/// What the dish holds. `foods` has one entry an ingredient, as foods_of() gives.
/// Which amounts are of what is eaten: those of a dish are of prepared food, and the weights of
/// pieces leave out what is thrown away; only a mass whose preparation says "as bought",
/// "unpeeled", "in its shell" or "with bone" is multiplied by the food's edible share. "To taste"
/// is missing where half a gram a portion would matter (salt), and nothing elsewhere. Source of
/// that half gram: common practice, no source.
/// Promise: never fails; what it cannot know is in `lines[i].problem` and in `missing`.
DishNutrients dish_nutrients(const kitchen::Dish&, const std::vector<const kitchen::Food*>& foods,
                             const CookingTables&, const Options& = {});

}  // namespace nutrition
