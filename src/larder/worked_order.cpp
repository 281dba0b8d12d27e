#include "larder/worked_order.h"

namespace larder {

WorkedOrder worked_order(const OrderInput& in, Date today) {
  OrderWish wish;
  wish.today = today;
  WorkedOrder out;
  out.order = plan_order(in, wish);
  out.costs = costs_of(in, out.order);
  out.days = count_down(in.week, out.order.unsettled, today);
  return out;
}

}  // namespace larder
