#include "larder/cost.h"

#include <algorithm>
#include <map>
#include <numeric>

#include "base/text.h"
#include "kitchen/weigh.h"

namespace larder {

using base::say;

namespace {

class Count {
 public:
  Count(const OrderInput& in, const Order& order) : in_(in), order_(order) {
    for (std::size_t i = 0; i < in.week.lessons.size(); ++i)
      out_.lessons.push_back({static_cast<int>(i), 0, 0, 0});
  }

  Costs run() {
    for (const OrderLine& line : order_.lines) bought(line);
    for (const StockUse& use : order_.from_stock) stores(use);
    vans();
    out_.paid = order_.total();
    classes();
    private_split();
    budget();
    return std::move(out_);
  }

 private:
  LessonCost& lesson(int index) { return out_.lessons[static_cast<std::size_t>(index)]; }
  const FoodNeed& need(int index) const { return in_.needs.foods[static_cast<std::size_t>(index)]; }

  void bought(const OrderLine& line) {
    std::vector<Ratio> weights;
    for (const LessonUse& use : line.uses) weights.push_back(use.amount);
    weights.push_back(line.left);
    const std::vector<Pence> shares = shared_out(line.pence, weights);
    for (std::size_t i = 0; i < line.uses.size(); ++i)
      lesson(line.uses[i].lesson).bought += shares[i];
    out_.left_over += shares.back();
  }

  // Pence a unit of the cheapest pack of a food, exact; nothing when no price is known.
  std::optional<Ratio> unit_price(const std::string& key, const Measure& measure) {
    const kitchen::Food* food = in_.foods.find(key);
    const auto cheapest = food == nullptr ? std::nullopt
                                          : cheapest_pack(*food, measure, in_.prices);
    return cheapest ? std::optional(cheapest->pence) : std::nullopt;
  }

  void stores(const StockUse& use) {
    const FoodNeed& food = need(use.food);
    const auto unit = unit_price(food.food, food.measure);
    if (!unit) {
      if (std::find(out_.not_known.begin(), out_.not_known.end(), food.name) ==
          out_.not_known.end())
        out_.not_known.push_back(food.name);
      return;
    }
    for (const LessonUse& each : use.uses)
      lesson(each.lesson).stores += (each.amount * *unit).round();
  }

  // Vans and what fills an order up are shared by what each lesson buys.
  void vans() {
    std::vector<Ratio> weights;
    for (const LessonCost& each : out_.lessons) weights.emplace_back(each.bought);
    const Pence whole = order_.delivery + order_.below_minimum;
    const bool none = std::all_of(weights.begin(), weights.end(),
                                  [](const Ratio& w) { return w == Ratio(0); });
    if (none) return;
    const std::vector<Pence> shares = shared_out(whole, weights);
    for (std::size_t i = 0; i < shares.size(); ++i) out_.lessons[i].delivery = shares[i];
  }

  void classes() {
    std::map<std::string, ClassCost> all;
    for (const LessonCost& cost : out_.lessons) {
      const WeekLesson& at = in_.week.lessons[static_cast<std::size_t>(cost.lesson)];
      ClassCost& c = all[at.class_name];
      c.name = at.class_name;
      c.pupils += at.pupils;
      c.total += cost.total();
    }
    for (auto& [name, c] : all) {
      if (c.pupils > 0) c.per_pupil = Ratio(c.total, c.pupils);
      out_.classes.push_back(c);
    }
  }

  void private_split() {
    for (const LessonCost& cost : out_.lessons) out_.split.school += cost.total();
    Ratio families = 0;
    for (const WeekLesson& at : in_.week.lessons) {
      for (const DishUse& use : at.dishes) {
        for (const int line : use.from_home) {
          const auto& ingredient = use.dish.ingredients[static_cast<std::size_t>(line)];
          const kitchen::Food* food = kitchen::food_of(ingredient, in_.foods);
          const kitchen::Quantity q = kitchen::quantity_of(ingredient);
          if (food == nullptr || !q.stated()) continue;
          const Measure measure = measure_for({q}, *food);
          const auto one = in_measure(q, *food, measure);
          const auto unit = unit_price(food->key, measure);
          if (one && unit) families += one.value() * *unit * (use.sets - use.school_sets);
        }
      }
    }
    out_.split.families = families.round();
  }

  void budget() {
    const Budget& b = in_.week.budget;
    const auto over = [&](const std::string& what, Pence is, Pence may) {
      if (is > may)
        out_.over_budget.push_back(say(what, " comes to ", pounds_text(is), ", ",
                                       pounds_text(is - may), " over the budget of ",
                                       pounds_text(may), "."));
    };
    for (const LessonCost& cost : out_.lessons) {
      const WeekLesson& at = in_.week.lessons[static_cast<std::size_t>(cost.lesson)];
      if (!b.per_pupil || at.pupils == 0) continue;
      // Held against the pupils' sum, so that no rounding a head decides.
      if (cost.total() > *b.per_pupil * at.pupils)
        out_.over_budget.push_back(say(at.title, " costs ",
                                       pounds_text(Ratio(cost.total(), at.pupils)),
                                       " a pupil; the budget is ", pounds_text(*b.per_pupil), "."));
    }
    if (b.week) over("The week's order", out_.paid, *b.week);
    if (b.term) over("The term with this order", b.spent_this_term + out_.paid, *b.term);
  }

  const OrderInput& in_;
  const Order& order_;
  Costs out_;
};

}  // namespace

std::vector<Pence> shared_out(Pence whole, const std::vector<Ratio>& weights) {
  Ratio sum = 0;
  for (const Ratio& w : weights) sum += w;
  std::vector<Pence> out;
  std::vector<std::pair<Ratio, std::size_t>> rest;
  Pence given = 0;
  for (std::size_t i = 0; i < weights.size(); ++i) {
    const Ratio share = Ratio(whole) * weights[i] / sum;
    out.push_back(share.floor());
    given += out.back();
    rest.emplace_back(share - Ratio(out.back()), i);
  }
  std::stable_sort(rest.begin(), rest.end(),
                   [](const auto& a, const auto& b) { return a.first > b.first; });
  for (std::size_t i = 0; given < whole && !rest.empty(); ++i, ++given)
    ++out[rest[i % rest.size()].second];
  return out;
}

Costs costs_of(const OrderInput& in, const Order& order) { return Count(in, order).run(); }

}  // namespace larder
