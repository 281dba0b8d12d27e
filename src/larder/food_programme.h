// The small programme of one food: how many of which packs, from which van, so that every lesson
// has enough in date at the least cost.
//
// "Mushrooms: 1.2 kg on Tuesday and 0.8 kg on Thursday; a 250 g punnet at 95p opened by Thursday,
// a 2 kg box at £5.90 ..." Days here are places in a list, amounts plain numbers of the food's
// measure, so that it can be held against any other solver (docs/methods/ordering.md has the
// symbols).
#pragma once

#include <cstddef>
#include <vector>

namespace larder {

/// Something of a food that can be used on the days `first` to `last` (places in
/// FoodProgramme::need).
struct Lot {
  double size = 0;  ///< > 0
  int first = 0, last = 0;
  bool lasts = false;  ///< what is left of it after the last day still has its worth
  friend bool operator==(const Lot&, const Lot&) = default;
};

/// A kind of pack opened at a time: as many as wanted, each a lot of its own.
struct Batch {
  Lot lot;
  double price = 0;  ///< pence, > 0
  int tag = 0;       ///< the caller's
  friend bool operator==(const Batch&, const Batch&) = default;
};

struct FoodProgramme {
  std::vector<double> need;  ///< a day, not below 0
  std::vector<Lot> stock;    ///< already there
  std::vector<Batch> batches;
  double worth = 0;       ///< pence for a unit left that lasts; below every batch's price a unit
  double worth_most = 0;  ///< no more than so much counts
};

/// Which lot serves which day, earliest end first (ties: what does not last, then stock, then as
/// listed). `counts` has an entry a batch.
struct Served {
  /// from_stock[i][day], from_batch[b][day]: amounts taken
  std::vector<std::vector<double>> from_stock, from_batch;
  std::vector<double> short_by;  ///< a day
  double left_that_lasts = 0;
  double short_in_all = 0;
};
Served serve(const FoodProgramme&, const std::vector<int>& counts);

struct FoodPlan {
  std::vector<int> counts;  ///< a batch
  double cost = 0;          ///< prices less the worth of what is left
  double bound = 0;         ///< no plan costs less
  bool feasible = true;     ///< false: nothing that can be bought covers some day
};

/// The best counts, within `gap` (a share of the cost) of the least; exact for 0. Searches by
/// adding packs where a day is short; hard ones go to the mixed-integer solver, which may stop at
/// `seconds` with a bound of its own.
struct FoodSearch {
  double gap = 0;
  std::size_t most_nodes = 4000;
  double seconds = 1.0;
};
FoodPlan solve(const FoodProgramme&, const FoodSearch&);

/// The same by the mixed-integer solver alone.
FoodPlan solve_by_milp(const FoodProgramme&, const FoodSearch&);

/// Batches that another makes useless are dropped: as cheap, as large, usable on all its days and
/// lasting as long.
void drop_useless(std::vector<Batch>&);

/// Amounts closer than this share are equal: sums of thirds and quarters in binary.
inline constexpr double kAmountSlack = 1e-7;

}  // namespace larder
