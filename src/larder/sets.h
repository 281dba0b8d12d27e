// How many sets of a dish a class needs, and what goes on each tray: cooks, one for the
// demonstration, spares, and a little more of what beginners waste.
//
// "12 cooks, a demonstration and a spare: 14 sets; potatoes 280 g a tray instead of 250 g." A tray
// is rounded to what can be weighed, and the order is the sum of the trays.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/problem.h"
#include "kitchen/dish.h"
#include "kitchen/foods.h"
#include "larder/scale.h"

namespace larder {

struct Sets {
  int cooks = 0;
  bool demonstration = false;  ///< the teacher cooks one too
  int spares = 0;              ///< for what is dropped or burnt
  friend bool operator==(const Sets&, const Sets&) = default;
};
inline constexpr int kMostSets = 200;

/// cooks + demonstration + spares. Errors: sets.count (none, negative, or over kMostSets).
base::Result<int> set_count(const Sets&);

/// A beginner with a knife loses more than a cook.
struct BeginnersWaste {
  Ratio factor = 1;    ///< how many times as much must be given out; 1 = nothing is known
  std::string source;  ///< empty when the factor is 1
  friend bool operator==(const BeginnersWaste&, const BeginnersWaste&) = default;
};
/// For a food by its key.
BeginnersWaste beginners_waste(std::string_view food_key);

struct SetLine {
  int ingredient = 0;
  Shown tray;            ///< for one set, the beginner's waste in it
  BeginnersWaste waste;  ///< as it was counted; 1 for what is counted in pieces
  Quantity order;        ///< all trays together, exactly; not stated = to taste
  friend bool operator==(const SetLine&, const SetLine&) = default;
};

struct SetOrder {
  int sets = 0;
  std::vector<SetLine> lines;  ///< one for each ingredient, in order
  std::vector<std::string> warnings;
  friend bool operator==(const SetOrder&, const SetOrder&) = default;
};

/// One set is the dish as written, times `factor`.
/// Errors: sets.count.
base::Result<SetOrder> order_of_sets(const kitchen::Dish&, const Sets&, const Ratio& factor,
                                     const kitchen::Foods&, bool beginners = true);

}  // namespace larder
