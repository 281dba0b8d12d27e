// From counts to lines that can be read: what each pack is for, what is left and until when.
#include <algorithm>
#include <map>
#include <tuple>

#include "larder/order_parts.h"

namespace larder {
namespace {

constexpr double kNothing = 1e-9;

void add_uses(std::vector<LessonUse>& to, const std::vector<LessonUse>& more) {
  for (const LessonUse& use : more) {
    const auto same = std::find_if(to.begin(), to.end(),
                                   [&](const LessonUse& u) { return u.lesson == use.lesson; });
    if (same == to.end())
      to.push_back(use);
    else
      same->amount += use.amount;
  }
}

class Lines {
 public:
  Lines(const OrderInput& in, const Works& works, const Chosen& chosen, Order& order)
      : in_(in), works_(works), chosen_(chosen), order_(order) {}

  void run() {
    order_.suppliers = works_.suppliers;
    order_.bound = chosen_.bound;
    for (std::size_t f = 0; f < works_.foods.size(); ++f) food(f);
    for (auto& [key, line] : lines_) order_.lines.push_back(std::move(line));
    vans();
    order_.cost = static_cast<double>(order_.total()) - order_.worth_left;
    order_.bound = std::min(order_.bound, order_.cost);
  }

 private:
  void food(std::size_t f) {
    const FoodWork& work = works_.foods[f];
    const FoodNeed& need = in_.needs.foods[static_cast<std::size_t>(work.food)];
    FoodProgramme p = work.all;
    p.batches = chosen_.packs[f];
    std::vector<int> counts = chosen_.plans[f].counts;
    counts.resize(p.batches.size(), 0);
    const Served served = serve(p, counts);
    std::vector<double> open;
    for (const Need& part : need.parts) open.push_back(part.amount.value());
    std::vector<std::vector<LessonUse>> stock(p.stock.size()), bought(p.batches.size());
    for (std::size_t d = 0; d < work.days.size(); ++d) {
      for (std::size_t i = 0; i < p.stock.size(); ++i)
        add_uses(stock[i], uses_of(need, work.days[d], served.from_stock[i][d], open));
      for (std::size_t b = 0; b < p.batches.size(); ++b)
        add_uses(bought[b], uses_of(need, work.days[d], served.from_batch[b][d], open));
    }
    for (std::size_t i = 0; i < stock.size(); ++i) {
      if (!stock[i].empty())
        order_.from_stock.push_back({work.food, work.stock[i].lot, std::move(stock[i])});
    }
    for (std::size_t b = 0; b < p.batches.size(); ++b) {
      if (counts[b] > 0) line(work, p.batches[b], counts[b], bought[b]);
    }
    order_.worth_left += p.worth * std::min(p.worth_most, served.left_that_lasts);
  }

  void line(const FoodWork& work, const Batch& batch, int count,
            const std::vector<LessonUse>& uses) {
    const Source& source = work.sources[static_cast<std::size_t>(batch.tag)];
    const Slot& slot = works_.slots[static_cast<std::size_t>(source.slot)];
    OrderLine& line = lines_[{slot.supplier, slot.arrives, work.food, source.pack}];
    const Ratio more = Ratio::near(batch.lot.size) * Ratio(count);
    line.pack = source.pack;
    line.food = work.food;
    line.supplier = slot.supplier;
    line.order_by = slot.order_by;
    line.arrives = slot.arrives;
    line.count += count;
    line.pence += *in_.prices.packs[static_cast<std::size_t>(source.pack)].price * count;
    line.holds += more;
    line.left += more;
    for (const LessonUse& use : uses) line.left = line.left - use.amount;
    if (line.left < Ratio(0)) line.left = 0;
    add_uses(line.uses, uses);
    line.good_until = Date{slot.arrives.days + source.keeping.closed};
    line.opened_days = source.keeping.opened;
    line.keeping_assumed = source.keeping.assumed;
  }

  void vans() {
    for (const OrderLine& line : order_.lines) {
      const auto same = [&](const VanOrder& v) {
        return v.supplier == line.supplier && v.arrives == line.arrives;
      };
      auto van = std::find_if(order_.vans.begin(), order_.vans.end(), same);
      if (van == order_.vans.end()) {
        const Pence delivery = order_.suppliers[static_cast<std::size_t>(line.supplier)].delivery;
        van = order_.vans.insert(van, {line.supplier, line.order_by, line.arrives, 0, delivery, 0});
      }
      van->goods += line.pence;
    }
    for (VanOrder& van : order_.vans) {
      const Supplier& s = order_.suppliers[static_cast<std::size_t>(van.supplier)];
      van.below_minimum = std::max<Pence>(0, s.minimum - van.goods);
      order_.goods += van.goods;
      order_.delivery += van.delivery;
      order_.below_minimum += van.below_minimum;
    }
  }

  const OrderInput& in_;
  const Works& works_;
  const Chosen& chosen_;
  Order& order_;
  std::map<std::tuple<int, Date, int, int>, OrderLine> lines_;
};

}  // namespace

std::vector<LessonUse> uses_of(const FoodNeed& need, Date date, double amount,
                               std::vector<double>& open) {
  std::vector<LessonUse> out;
  for (std::size_t i = 0; i < need.parts.size() && amount > kNothing; ++i) {
    if (need.parts[i].date != date || open[i] <= 0) continue;
    const double here = std::min(amount, open[i]);
    open[i] -= here;
    amount -= here;
    add_uses(out, {{need.parts[i].lesson, Ratio::near(here)}});
  }
  return out;
}

void write_lines(const OrderInput& in, const OrderWish&, const Works& works, const Chosen& chosen,
                 Order& order) {
  Lines(in, works, chosen, order).run();
}

}  // namespace larder
