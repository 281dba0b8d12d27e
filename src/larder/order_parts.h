// Inside the order: vans, one food's work, and the choice of vans. Not for other folders.
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <vector>

#include "larder/food_programme.h"
#include "larder/order.h"

namespace larder {

/// One van of one supplier that can still be ordered from.
struct Slot {
  int supplier = 0;
  Date order_by, arrives;
};

/// What can be bought of a food: a pack from a van, opened on a day.
struct Source {
  int pack = 0;
  int slot = 0;
  Keeping keeping;
};

struct StockSource {
  int lot = 0;
  double size = 0;
};

/// One food of the needs with all that could cover it. Batches carry an index into `sources`.
struct FoodWork {
  int food = 0;
  std::vector<Date> days;
  FoodProgramme all;  ///< with every van
  std::vector<Source> sources;
  std::vector<StockSource> stock;
  std::uint64_t slots = 0;  ///< bits of the vans that carry it
};

struct Works {
  std::vector<Supplier> suppliers;
  std::vector<Slot> slots;  ///< at most 64
  std::vector<FoodWork> foods;
};

/// Notes in `order` what cannot be bought at all.
Works works_of(const OrderInput&, const OrderWish&, Order& order);

/// The plan of each food when only these vans come.
struct Chosen {
  std::uint64_t slots = 0;
  std::vector<FoodPlan> plans;            ///< one a food
  std::vector<std::vector<Batch>> packs;  ///< what its counts count
  double bound = 0;                       ///< over all choices of vans
};
Chosen choose(const Works&, const OrderWish&);

void write_lines(const OrderInput&, const OrderWish&, const Works&, const Chosen&, Order&);
NaiveOrder naive_order(const OrderInput&, const Works&);

/// Splits what a day takes among its lessons, in their order.
std::vector<LessonUse> uses_of(const FoodNeed&, Date, double amount, std::vector<double>& open);

}  // namespace larder
