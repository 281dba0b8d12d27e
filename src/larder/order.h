// The order: which packs from which van, so that the week's lessons have what they need at the
// least cost, what lies in the stores and what keeps taken into account.
//
// "2 bags of red lentils, 1.5 kg, from Hollin on Monday, £6.90: 1.56 kg for 9K on Tuesday, 1.2 kg
// for 8B on Thursday, 240 g left, good until next November." Method: docs/methods/ordering.md.
#pragma once

#include <string>
#include <vector>

#include "larder/needs.h"
#include "larder/prices.h"
#include "larder/stock.h"

namespace larder {

/// Of what lasts, what a unit left over is worth of its cheapest price; our choice, no source.
inline constexpr double kWorthLeft = 0.5;
/// "Lasts": still good so many days after the last lesson; our choice, no source.
inline constexpr int kLastsDays = 28;
/// Left-overs count up to what so many days would use at this week's rate; our choice, no source.
inline constexpr int kWorthForDays = 84;

/// Everything an order is made from.
struct OrderInput {
  const Week& week;
  const Needs& needs;
  const PriceList& prices;
  const std::vector<StockLot>& stock;
  const kitchen::Foods& foods;
};

/// Goods already ordered and on their way, for a top-up.
struct Expected {
  std::string food;  ///< key
  kitchen::Quantity amount;
  Date arrives;
  std::optional<Date> use_by;
  friend bool operator==(const Expected&, const Expected&) = default;
};

struct OrderWish {
  Date today;  ///< vans whose order day is over are left out
  std::vector<Expected> expected;
  double gap = 0.0005;    ///< each food within this share of its least cost
  double seconds = 0.05;  ///< for one hard food in the mixed-integer solver
};

/// What one lesson takes of something.
struct LessonUse {
  int lesson = 0;  ///< index into Week::lessons
  Ratio amount = 0;
  friend bool operator==(const LessonUse&, const LessonUse&) = default;
};

struct OrderLine {
  int pack = 0;      ///< index into PriceList::packs
  int food = 0;      ///< index into Needs::foods; -1 = of a sent order, and no lesson needs it now
  int supplier = 0;  ///< index into the order's suppliers
  Date order_by, arrives;
  int count = 0;
  Pence pence = 0;  ///< for all of them
  Ratio holds = 0;  ///< what all of them hold for use, in the food's measure
  std::vector<LessonUse> uses;
  Ratio left = 0;   ///< after the last lesson
  Date good_until;  ///< closed
  int opened_days = 0;
  bool keeping_assumed = false;  ///< the price list does not say how long it keeps
  friend bool operator==(const OrderLine&, const OrderLine&) = default;
};

/// What comes out of the stores (or is expected), first-expired first.
struct StockUse {
  int food = 0;  ///< index into Needs::foods
  int lot = 0;   ///< index into the stock; expected goods count on behind it
  std::vector<LessonUse> uses;
  friend bool operator==(const StockUse&, const StockUse&) = default;
};

/// What nothing covers: told, and the lesson goes on.
struct Shortfall {
  int food = 0;
  int lesson = 0;
  Ratio amount = 0;
  std::string why;
  friend bool operator==(const Shortfall&, const Shortfall&) = default;
};

struct VanOrder {
  int supplier = 0;
  Date order_by, arrives;
  Pence goods = 0, delivery = 0;
  Pence below_minimum = 0;  ///< what is missing to the supplier's minimum, paid or filled up
  friend bool operator==(const VanOrder&, const VanOrder&) = default;
};

/// Ordered lesson by lesson, each from the pack that is cheapest for it alone.
struct NaiveOrder {
  Pence goods = 0, delivery = 0, below_minimum = 0;
  int packs = 0;
  Pence total() const { return goods + delivery + below_minimum; }
  friend bool operator==(const NaiveOrder&, const NaiveOrder&) = default;
};

struct Order {
  std::vector<Supplier> suppliers;
  std::vector<OrderLine> lines;  ///< by supplier, van and food
  std::vector<StockUse> from_stock;
  std::vector<Shortfall> shortfalls;
  std::vector<VanOrder> vans;  ///< those used
  Pence goods = 0, delivery = 0, below_minimum = 0;
  double worth_left = 0;  ///< pence that what is left and lasts counts for
  double cost = 0;        ///< total less the worth of what is left, pence
  double bound = 0;       ///< no order for the same needs costs less, pence
  NaiveOrder naive;
  base::Problems unsettled;  ///< those of the needs, and order.no_pack, order.no_price,
                             ///< order.no_van, order.pack_not_summed
  Pence total() const { return goods + delivery + below_minimum; }
  /// How far the cost may be from the least possible, as a share of it; 0 = proved best.
  double gap() const { return cost > 0 && bound < cost ? (cost - bound) / cost : 0; }
};

/// Cost:    one small programme a food and choice of vans; 250 foods and 600 packs take a tenth of
///          a second (bench/larder).
/// Promise: the least cost within Order::gap(), which is computed, not assumed.
Order plan_order(const OrderInput&, const OrderWish&);

/// What of a sent order is still to come, for a top-up: its lines as expected goods.
std::vector<Expected> expected_of(const Order&, const OrderInput&);

}  // namespace larder
