// Order days: how long there is, what is not settled, and what to top up once the order is gone.
//
// "Order from Hollin by Fri 13 Nov: 2 days left. Not settled: 8B, Thu 19 Nov: no dish is settled."
#pragma once

#include "larder/order.h"

namespace larder {

struct OrderDay {
  int supplier = 0;  ///< index into Week::suppliers
  Date order_by, arrives;
  int days_left = 0;  ///< 0 = today; below 0 = gone
  friend bool operator==(const OrderDay&, const OrderDay&) = default;
};

struct CountDown {
  std::vector<OrderDay> ahead;  ///< soonest first
  std::vector<OrderDay> gone;   ///< latest first
  base::Problems unsettled;     ///< what should be settled before the next of them
};

/// The week's vans seen from today, with what the order has noted.
CountDown count_down(const Week&, const base::Problems& unsettled, Date today);

/// "Order from Hollin by Fri 13 Nov: today.", "... tomorrow.", "... 3 days left."
std::string order_day_text(const OrderDay&, const Week&);

/// What is still missing after an order was sent, from vans that can still be ordered: the sent
/// lines count as on their way. `in` holds the needs as they are now.
Order top_up(const OrderInput& in, const Order& sent, OrderWish wish);

}  // namespace larder
