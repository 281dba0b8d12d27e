#include "larder/order_day.h"

#include <algorithm>

#include "base/text.h"

namespace larder {

CountDown count_down(const Week& week, const base::Problems& unsettled, Date today) {
  CountDown out;
  for (std::size_t s = 0; s < week.suppliers.size(); ++s) {
    for (const Delivery& van : week.suppliers[s].vans) {
      const OrderDay day{static_cast<int>(s), van.order_by, van.arrives,
                         van.order_by.days - today.days};
      (day.days_left < 0 ? out.gone : out.ahead).push_back(day);
    }
  }
  const auto sooner = [](const OrderDay& a, const OrderDay& b) { return a.order_by < b.order_by; };
  std::stable_sort(out.ahead.begin(), out.ahead.end(), sooner);
  std::stable_sort(out.gone.rbegin(), out.gone.rend(), sooner);
  out.unsettled = unsettled;
  return out;
}

std::string order_day_text(const OrderDay& day, const Week& week) {
  const std::string& name = week.suppliers[static_cast<std::size_t>(day.supplier)].name;
  const std::string when = day.days_left < 0    ? "gone"
                           : day.days_left == 0 ? "today"
                           : day.days_left == 1 ? "tomorrow"
                                                : base::say(day.days_left, " days left");
  return base::say("Order from ", name, " by ", day_text(day.order_by), ": ", when,
                   ". It comes on ", day_text(day.arrives), ".");
}

Order top_up(const OrderInput& in, const Order& sent, OrderWish wish) {
  const std::vector<Expected> coming = expected_of(sent, in);
  wish.expected.insert(wish.expected.end(), coming.begin(), coming.end());
  return plan_order(in, wish);
}

}  // namespace larder
