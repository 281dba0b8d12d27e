#include "larder/order.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "base/text.h"
#include "larder/order_parts.h"

namespace larder {

using base::in_quotes;
using base::say;
using kitchen::Food;

namespace {

constexpr std::size_t kMostSlots = 64;

class Preparation {
 public:
  Preparation(const OrderInput& in, const OrderWish& wish, Order& order)
      : in_(in), wish_(wish), order_(order) {}

  Works run() {
    first_ = last_ = in_.week.lessons.empty() ? wish_.today : in_.week.lessons.front().date;
    for (const WeekLesson& lesson : in_.week.lessons) {
      first_ = std::min(first_, lesson.date);
      last_ = std::max(last_, lesson.date);
    }
    vans();
    for (std::size_t f = 0; f < in_.needs.foods.size(); ++f) food(static_cast<int>(f));
    return std::move(works_);
  }

 private:
  // A price list without vans means one shop that can be reached the day before.
  void vans() {
    works_.suppliers = in_.week.suppliers;
    if (works_.suppliers.empty()) {
      std::set<std::string> names;
      for (const Pack& pack : in_.prices.packs) names.insert(pack.supplier);
      for (const std::string& name : names)
        works_.suppliers.push_back(
            {name, 0, 0, false, {{wish_.today, std::max(wish_.today, first_)}}});
    }
    for (std::size_t s = 0; s < works_.suppliers.size(); ++s) {
      for (const Delivery& van : works_.suppliers[s].vans) {
        if (van.order_by < wish_.today || last_ < van.arrives) continue;
        if (works_.slots.size() < kMostSlots)
          works_.slots.push_back({static_cast<int>(s), van.order_by, van.arrives});
      }
    }
    std::stable_sort(works_.slots.begin(), works_.slots.end(),
                     [](const Slot& a, const Slot& b) { return a.arrives < b.arrives; });
  }

  void unsettled(std::string code, std::string message, std::string remedy) {
    base::Problem p{std::move(code), "", "", std::move(message), std::move(remedy)};
    auto& all = order_.unsettled;
    if (std::find(all.begin(), all.end(), p) == all.end()) all.push_back(std::move(p));
  }

  void food(int index) {
    const FoodNeed& need = in_.needs.foods[static_cast<std::size_t>(index)];
    FoodWork work;
    work.food = index;
    for (const Need& part : need.parts) {
      if (work.days.empty() || work.days.back() != part.date) {
        work.days.push_back(part.date);
        work.all.need.push_back(0);
      }
      work.all.need.back() += part.amount.value();
    }
    const Food& food = *in_.foods.find(need.food);
    stock(need, food, work);
    packs(need, food, work);
    worth(work);
    uncovered(need, work);
    works_.foods.push_back(std::move(work));
  }

  // Places of the days from `from` to `to`, both in it; nothing if there are none.
  static std::optional<Lot> window(const FoodWork& work, double size, int from, int to) {
    Lot lot{size, -1, -1, false};
    for (std::size_t d = 0; d < work.days.size(); ++d) {
      if (work.days[d].days < from || work.days[d].days > to) continue;
      if (lot.first < 0) lot.first = static_cast<int>(d);
      lot.last = static_cast<int>(d);
    }
    if (lot.first < 0 || size <= 0) return std::nullopt;
    return lot;
  }

  void stock(const FoodNeed& need, const Food& food, FoodWork& work) {
    const auto add = [&](int index, const Expected& e) {
      const kitchen::Quantity& q = e.amount;
      const auto amount = bought_in_measure(q, food, need.measure);
      if (!amount) {
        unsettled("order.stock_not_summed",
                  say(kitchen::quantity_text(q), " of ", in_quotes(food.name),
                      " in the stores is not counted: ", amount.problems().front().message),
                  amount.problems().front().remedy);
        return;
      }
      const int to = e.use_by ? e.use_by->days : last_.days + kLastsDays;
      auto lot = window(work, amount.value().value(), e.arrives.days, to);
      if (!lot) return;
      lot->lasts = to >= last_.days + kLastsDays;
      work.all.stock.push_back(*lot);
      work.stock.push_back({index, lot->size});
    };
    int index = 0;
    for (const StockLot& lot : in_.stock) {
      if (lot.food == need.food) add(index, {lot.food, lot.amount, wish_.today, lot.use_by});
      ++index;
    }
    for (const Expected& e : wish_.expected) {
      if (e.food == need.food) add(index, e);
      ++index;
    }
  }

  void packs(const FoodNeed& need, const Food& food, FoodWork& work) {
    int priced = 0, listed = 0;
    for (std::size_t p = 0; p < in_.prices.packs.size(); ++p) {
      const Pack& pack = in_.prices.packs[p];
      if (pack.food != need.food) continue;
      ++listed;
      if (!pack.price) {
        unsettled("order.no_price",
                  say("A pack of ", in_quotes(food.name), " from ", in_quotes(pack.supplier), ", ",
                      kitchen::quantity_text(pack.size), ", has no price, so it is not chosen."),
                  say("Enter its price in line ", pack.line, " of the price list."));
        continue;
      }
      const auto holds = pack.usable ? in_measure(*pack.usable, food, need.measure)
                                     : bought_in_measure(pack.size, food, need.measure);
      if (!holds) {
        unsettled(
            "order.pack_not_summed",
            say("The pack of ", in_quotes(food.name), " with ", kitchen::quantity_text(pack.size),
                " cannot be held against the dishes: ", holds.problems().front().message),
            "Say in the column usable what of it is used, in the dishes' unit: 12 sheets.");
        continue;
      }
      ++priced;
      from_vans(static_cast<int>(p), holds.value().value(), keeping_of(pack, food), work);
    }
    if (priced > 0 || work.slots != 0) return;
    unsettled("order.no_pack",
              say(listed == 0 ? "No pack of " : "No pack with a price and size that fit of ",
                  in_quotes(food.name), " is in the price list; ",
                  amount_text(need.total(), need.measure), " are needed."),
              "Add a row for it, or put it on the list for the shop.");
  }

  void from_vans(int pack, double size, const Keeping& keeping, FoodWork& work) {
    const Pack& p = in_.prices.packs[static_cast<std::size_t>(pack)];
    bool comes = false;
    for (std::size_t k = 0; k < works_.slots.size(); ++k) {
      const Slot& slot = works_.slots[k];
      if (works_.suppliers[static_cast<std::size_t>(slot.supplier)].name != p.supplier) continue;
      comes = true;
      const int closed = slot.arrives.days + keeping.closed;
      const int source = static_cast<int>(work.sources.size());
      bool used = false;
      for (const Date& opened : work.days) {
        if (opened < slot.arrives || opened.days > closed) continue;
        const int to = std::min(closed, opened.days + keeping.opened);
        auto lot = window(work, size, opened.days, to);
        if (!lot) continue;
        lot->lasts = to >= last_.days + kLastsDays;
        work.all.batches.push_back({*lot, static_cast<double>(*p.price), source});
        used = true;
      }
      if (!used) continue;
      work.sources.push_back({pack, static_cast<int>(k), keeping});
      work.slots |= std::uint64_t{1} << k;
    }
    if (!comes)
      unsettled("order.no_van",
                say("No van of ", in_quotes(p.supplier),
                    " can still be ordered, so its packs are not "
                    "chosen."),
                "Give the week's file its order day and delivery day, or leave the supplier out.");
  }

  // A share of the cheapest unit price, so that nothing is bought to be left over.
  void worth(FoodWork& work) {
    double total = 0, cheapest = 0;
    for (const double need : work.all.need) total += need;
    for (const Batch& b : work.all.batches) {
      const double unit = b.price / b.lot.size;
      cheapest = cheapest <= 0 ? unit : std::min(cheapest, unit);
    }
    const bool lasts = std::any_of(work.all.batches.begin(), work.all.batches.end(),
                                   [](const Batch& b) { return b.lot.lasts; });
    if (!lasts) return;
    const int days = std::max(7, last_.days - first_.days + 1);
    work.all.worth = kWorthLeft * cheapest;
    work.all.worth_most = total * kWorthForDays / days;
  }

  // Days that nothing can cover are taken out of the programme and told.
  void uncovered(const FoodNeed& need, FoodWork& work) {
    std::vector<int> plenty;
    double total = 0;
    for (const double each : work.all.need) total += each;
    for (const Batch& b : work.all.batches)
      plenty.push_back(static_cast<int>(std::ceil(total / b.lot.size)) + 1);
    const Served served = serve(work.all, plenty);
    for (std::size_t d = 0; d < work.days.size(); ++d) {
      double missing = served.short_by[d];
      if (missing <= 0) continue;
      work.all.need[d] -= missing;
      const std::string why = work.all.batches.empty() ? "nothing to buy it from is known"
                                                       : "no van brings it in time and in date";
      for (auto part = need.parts.rbegin(); part != need.parts.rend() && missing > 0; ++part) {
        if (part->date != work.days[d]) continue;
        const double here = std::min(missing, part->amount.value());
        missing -= here;
        order_.shortfalls.push_back({work.food, part->lesson, Ratio::near(here), why});
      }
    }
  }

  const OrderInput& in_;
  const OrderWish& wish_;
  Order& order_;
  Works works_;
  Date first_, last_;
};

}  // namespace

Works works_of(const OrderInput& in, const OrderWish& wish, Order& order) {
  return Preparation(in, wish, order).run();
}

Order plan_order(const OrderInput& in, const OrderWish& wish) {
  Order order;
  order.unsettled = in.needs.unsettled;
  const Works works = works_of(in, wish, order);
  const Chosen chosen = choose(works, wish);
  write_lines(in, wish, works, chosen, order);
  order.naive = naive_order(in, works);
  return order;
}

std::vector<Expected> expected_of(const Order& order, const OrderInput& in) {
  std::vector<Expected> out;
  for (const OrderLine& line : order.lines) {
    const Pack& pack = in.prices.packs[static_cast<std::size_t>(line.pack)];
    const Food& food = *in.foods.find(pack.food);
    out.push_back({pack.food, kitchen::times(in_stores(pack, food), Ratio(line.count)),
                   line.arrives, line.good_until});
  }
  return out;
}

}  // namespace larder
