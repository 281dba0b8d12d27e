// An order with what it costs and how long there is: what page, paper and command line all show.
#pragma once

#include "larder/cost.h"
#include "larder/order.h"
#include "larder/order_day.h"

namespace larder {

struct WorkedOrder {
  Order order;
  Costs costs;
  CountDown days;
};

/// Vans whose order day is before `today` are left out.
WorkedOrder worked_order(const OrderInput&, Date today);

}  // namespace larder
