// The order somebody writes lesson by lesson: what is missing for each, from the one pack that is
// cheapest for it. The comparison, not advice.
#include <cmath>
#include <limits>
#include <map>

#include "larder/order_parts.h"

namespace larder {
namespace {

// The cheapest whole number of one pack that covers `amount` on that day.
struct Pick {
  const Source* source = nullptr;
  int count = 0;
  double price = std::numeric_limits<double>::infinity();
};

Pick cheapest(const FoodWork& work, int day, double amount) {
  Pick best;
  for (const Batch& b : work.all.batches) {
    if (b.lot.first > day || b.lot.last < day) continue;
    const int count = static_cast<int>(std::ceil(amount / b.lot.size * (1 - kAmountSlack)));
    const double price = b.price * count;
    if (price < best.price) best = {&work.sources[static_cast<std::size_t>(b.tag)], count, price};
  }
  return best;
}

}  // namespace

NaiveOrder naive_order(const OrderInput& in, const Works& works) {
  NaiveOrder out;
  std::map<int, double> vans;
  for (const FoodWork& work : works.foods) {
    const FoodNeed& need = in.needs.foods[static_cast<std::size_t>(work.food)];
    const Served stock = serve(work.all, std::vector<int>(work.all.batches.size(), 0));
    std::vector<double> open;
    for (const Need& part : need.parts) open.push_back(part.amount.value());
    for (std::size_t d = 0; d < work.days.size(); ++d) {
      double there = 0;
      for (const auto& lot : stock.from_stock) there += lot[d];
      uses_of(need, work.days[d], there, open);
      // One purchase a lesson; several lines of a lesson share it.
      std::map<int, double> lessons;
      for (std::size_t i = 0; i < need.parts.size(); ++i) {
        if (need.parts[i].date == work.days[d] && open[i] > 1e-9)
          lessons[need.parts[i].lesson] += open[i];
      }
      for (const auto& [lesson, amount] : lessons) {
        const Pick pick = cheapest(work, static_cast<int>(d), amount);
        if (pick.source == nullptr) continue;
        out.goods += std::llround(pick.price);
        out.packs += pick.count;
        vans[pick.source->slot] += pick.price;
      }
    }
  }
  for (const auto& [slot, goods] : vans) {
    const Slot& van = works.slots[static_cast<std::size_t>(slot)];
    const Supplier& s = works.suppliers[static_cast<std::size_t>(van.supplier)];
    out.delivery += s.delivery;
    const auto spent = static_cast<Pence>(std::llround(goods));
    if (s.minimum > spent) out.below_minimum += s.minimum - spent;
  }
  return out;
}

}  // namespace larder
