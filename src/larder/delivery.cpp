#include "larder/delivery.h"

#include <algorithm>
#include <set>

#include "base/text.h"
#include "kitchen/weigh.h"

namespace larder {

using base::in_quotes;
using base::say;
using kitchen::Allergen;
using kitchen::Allergens;

namespace {

constexpr int kAllergens = 14;

class Door {
 public:
  Door(const OrderInput& in, const Order& order, const std::vector<Avoids>& avoids, Date today)
      : in_(in), order_(order), avoids_(avoids), today_(today) {}

  DeliveryOutcome run(const std::vector<Ticked>& ticks) {
    std::set<int> seen;
    for (const Ticked& tick : ticks) {
      if (tick.line < 0 || tick.line >= static_cast<int>(order_.lines.size()) || tick.came < 0) {
        fault("delivery.line", say("The order has no line ", tick.line + 1, "."),
              "Tick off the lines as the order numbers them.");
      } else if (!seen.insert(tick.line).second) {
        fault("delivery.twice", say("Line ", tick.line + 1, " is ticked off twice."),
              "Tick it once with all packs that came.");
      } else {
        line(tick);
      }
    }
    for (std::size_t i = 0; i < order_.lines.size(); ++i) {
      if (!seen.contains(static_cast<int>(i))) out_.not_ticked.push_back(static_cast<int>(i));
    }
    return std::move(out_);
  }

 private:
  void fault(std::string code, std::string message, std::string remedy) {
    out_.faults.push_back({std::move(code), "", "", std::move(message), std::move(remedy)});
  }

  void line(const Ticked& tick) {
    const OrderLine& line = order_.lines[static_cast<std::size_t>(tick.line)];
    const Pack& pack = in_.prices.packs[static_cast<std::size_t>(line.pack)];
    const kitchen::Food& food = *in_.foods.find(pack.food);
    if (tick.came > 0) {
      const Date until = tick.use_by.value_or(line.good_until);
      if (until < today_)
        fault("delivery.use_by",
              say(in_quotes(food.name), " has a use-by date of ", day_text(until),
                  ", which has passed."),
              "Send it back; do not put it away.");
      else
        out_.lots.push_back(
            {pack.food, kitchen::times(in_stores(pack, food), Ratio(tick.came)), until, false, ""});
    }
    if (tick.came < line.count) short_of(tick, line);
    if (tick.swapped && tick.came > 0) recheck(tick, line, food);
  }

  // The last lessons go short first: the first ones can still be topped up least.
  void short_of(const Ticked& tick, const OrderLine& line) {
    Missing missing{tick.line, line.count - tick.came, 0, {}};
    missing.amount = line.holds * Ratio(missing.packs, line.count);
    Ratio left = missing.amount - line.left;
    std::vector<LessonUse> uses = line.uses;
    std::stable_sort(uses.begin(), uses.end(), [&](const LessonUse& a, const LessonUse& b) {
      return date_of(a) > date_of(b);
    });
    for (const LessonUse& use : uses) {
      if (left <= Ratio(0)) break;
      const Ratio here = std::min(left, use.amount);
      missing.hits.push_back({use.lesson, here});
      left = left - here;
    }
    out_.missing.push_back(std::move(missing));
  }

  Date date_of(const LessonUse& use) const {
    return in_.week.lessons[static_cast<std::size_t>(use.lesson)].date;
  }

  // Every dish of the week with that food, whichever pack it was to come from: packets get mixed
  // up in a cupboard.
  void recheck(const Ticked& tick, const OrderLine& line, const kitchen::Food& food) {
    if (line.food < 0) return;  // no lesson needs it any more
    for (const Need& need : in_.needs.foods[static_cast<std::size_t>(line.food)].parts) {
      if (need.date < today_) continue;
      const DishUse& use = in_.week.lessons[static_cast<std::size_t>(need.lesson)]
                               .dishes[static_cast<std::size_t>(need.dish)];
      const kitchen::Ingredient& known = use.dish.ingredients[static_cast<std::size_t>(need.line)];
      Recheck again{need.lesson, use.dish.name, food.name, tick.product, tick.label_read, {}, {}};
      if (!use.dish.variant.empty()) again.dish += ": " + use.dish.variant;
      for (int a = 0; a < kAllergens; ++a) {
        const auto allergen = static_cast<Allergen>(a);
        const bool now = !tick.label_read || tick.contains.contains(allergen);
        if (now && !known.contains.contains(allergen)) again.more.insert(allergen);
      }
      for (const Avoids& who : avoids_) {
        const bool hit = std::any_of(again.more.begin(), again.more.end(),
                                     [&](Allergen a) { return who.allergens.contains(a); });
        if (who.lesson == need.lesson && hit) again.cooks.push_back(who.cook);
      }
      if (std::find(out_.rechecks.begin(), out_.rechecks.end(), again) == out_.rechecks.end())
        out_.rechecks.push_back(std::move(again));
    }
  }

  const OrderInput& in_;
  const Order& order_;
  const std::vector<Avoids>& avoids_;
  Date today_;
  DeliveryOutcome out_;
};

}  // namespace

DeliveryOutcome take_in(const OrderInput& in, const Order& order, const std::vector<Ticked>& ticks,
                        const std::vector<Avoids>& avoids, Date today) {
  return Door(in, order, avoids, today).run(ticks);
}

}  // namespace larder
