// What lessons cost: each pack's price shared out to the penny among the lessons that use it and
// what is left, held against the budget.
//
// "9K: £14.20 for 24 pupils, £0.59 each; the budget is £0.80." What families bring and what the
// school supplies is split in the private part only; nothing of it is on any list pupils see.
#pragma once

#include "larder/order.h"

namespace larder {

struct LessonCost {
  int lesson = 0;
  Pence bought = 0;    ///< its share of the packs in the order
  Pence stores = 0;    ///< worth of what comes out of the stores, at the cheapest pack's price
  Pence delivery = 0;  ///< its share of the vans
  Pence total() const { return bought + stores + delivery; }
  friend bool operator==(const LessonCost&, const LessonCost&) = default;
};

struct ClassCost {
  std::string name;
  int pupils = 0;  ///< summed over its lessons
  Pence total = 0;
  Ratio per_pupil = 0;  ///< pence, exact; 0 pupils: 0
  friend bool operator==(const ClassCost&, const ClassCost&) = default;
};

/// Staff only.
struct PrivateSplit {
  Pence school = 0;    ///< of the lessons' total
  Pence families = 0;  ///< what families bring would cost in shop packs' unit prices
  friend bool operator==(const PrivateSplit&, const PrivateSplit&) = default;
};

struct Costs {
  std::vector<LessonCost> lessons;  ///< one a lesson of the week
  std::vector<ClassCost> classes;
  Pence left_over = 0;  ///< share of the packs that no lesson of the week uses
  Pence paid = 0;       ///< the order's total; lessons' bought + delivery + left_over
  PrivateSplit split;
  std::vector<std::string> over_budget;  ///< sentences
  std::vector<std::string> not_known;    ///< foods whose price is not known and that are used
};

Costs costs_of(const OrderInput&, const Order&);

/// Shares `whole` by weights so that the parts sum to it: rounded down, and the pennies left go to
/// the largest remainders, the first of equals first. Weights not below 0, one above it.
std::vector<Pence> shared_out(Pence whole, const std::vector<Ratio>& weights);

}  // namespace larder
