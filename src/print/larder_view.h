// What the larder's papers and tables are made from: one order with everything needed to say it.
#pragma once

#include <string>

#include "larder/cost.h"
#include "larder/order.h"
#include "larder/order_day.h"

namespace print {

struct OrderView {
  const larder::OrderInput& in;
  const larder::Order& order;
  const larder::Costs& costs;
  const larder::CountDown& count_down;
};

/// What stands in place of lines when nothing is ordered: nothing is needed, or it is too late.
std::string nothing_bought_words(const OrderView&);

/// Names of what indices of the order mean.
std::string food_name(const OrderView&, int food);
std::string lesson_name(const OrderView&, int lesson);
const larder::Measure& measure_of(const OrderView&, int food);
const larder::Pack& pack_of(const OrderView&, const larder::OrderLine&);
/// "3 bags", "12 x 500 g" and "each": how a pack is called.
std::string pack_words(const larder::Pack&);

}  // namespace print
