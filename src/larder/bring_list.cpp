#include "larder/bring_list.h"

#include "base/text.h"
#include "kitchen/weigh.h"

namespace larder {

using base::say;
using kitchen::Food;
using kitchen::Ingredient;
using kitchen::Quantity;

namespace {

struct Choice {
  const Pack* pack = nullptr;
  Ratio count = 0, left = 0;
  std::optional<Pence> pence;

  // Known prices first, then the cheaper one, then the one that wastes less.
  bool better_than(const Choice& other) const {
    if (other.pack == nullptr) return true;
    if (pence.has_value() != other.pence.has_value()) return pence.has_value();
    if (pence && *pence != *other.pence) return *pence < *other.pence;
    return left < other.left;
  }
};

Choice choose(const Quantity& wanted, const Food& food, const PriceList& prices) {
  Choice best;
  const Measure measure = measure_for({wanted}, food);
  const auto amount = in_measure(wanted, food, measure);
  if (!amount) return best;
  for (const Pack& pack : prices.packs) {
    if (pack.food != food.key) continue;
    const auto holds = pack.usable ? in_measure(*pack.usable, food, measure)
                                   : bought_in_measure(pack.size, food, measure);
    if (!holds || holds.value() <= Ratio(0)) continue;
    Choice c;
    c.pack = &pack;
    c.count = Ratio((amount.value() / holds.value()).ceil());
    c.left = c.count * holds.value() - amount.value();
    if (pack.price) c.pence = *pack.price * c.count.round();
    if (c.better_than(best)) best = c;
  }
  return best;
}

std::string pack_text(const Choice& c, const std::string& name) {
  const std::int64_t count = c.count.round();
  const Pack& pack = *c.pack;
  if (pack.loose) {
    const std::string amount = kitchen::quantity_text(kitchen::times(pack.size, c.count));
    const bool counted = kitchen::dimension(pack.size.unit) == kitchen::Dimension::kCount;
    return counted ? say(base::fraction_text(pack.size.middle() * c.count), " ", name)
                   : say(amount, " of ", name);
  }
  const std::string word = pack.words.empty() ? "pack" : pack.words;
  return say(count, " ", word, count == 1 ? " of " : "s of ", name, " (",
             kitchen::quantity_text(pack.size), count == 1 ? ")" : " each)");
}

std::string amount_of(const Ingredient& ingredient) {
  const Quantity q = kitchen::quantity_of(ingredient);
  const bool counted = kitchen::dimension(q.unit) == kitchen::Dimension::kCount;
  const std::string number = base::fraction_text(q.middle());
  return counted ? say(number, " ", ingredient.unit.empty() ? ingredient.name : ingredient.unit)
                 : kitchen::quantity_text(q);
}

}  // namespace

BringList bring_list(const DishUse& use, const PriceList& prices, const kitchen::Foods& foods) {
  BringList out;
  out.dish = use.dish.name;
  if (!use.dish.variant.empty()) out.dish += ", " + use.dish.variant;
  for (const int index : use.from_home) {
    const Ingredient& ingredient = use.dish.ingredients[static_cast<std::size_t>(index)];
    const Quantity q = kitchen::quantity_of(ingredient);
    BringLine line{ingredient.name, ingredient.name, "", std::nullopt};
    if (!q.stated()) {
      line.text = say("a little ", ingredient.name);
      out.lines.push_back(std::move(line));
      continue;
    }
    line.used = say("We use ", amount_of(ingredient), ".");
    line.text = kitchen::dimension(q.unit) == kitchen::Dimension::kCount
                    ? amount_of(ingredient)
                    : say(amount_of(ingredient), " of ", ingredient.name);
    const Food* food = kitchen::food_of(ingredient, foods);
    const Choice choice = food == nullptr ? Choice{} : choose(q, *food, prices);
    if (choice.pack != nullptr) {
      line.text = pack_text(choice, ingredient.name);
      line.pence = choice.pence;
    }
    out.lines.push_back(std::move(line));
  }
  return out;
}

std::string bring_text(const BringList& list, Date date) {
  std::string out = say(list.dish, ", ", day_text(date), "\nPlease bring:\n");
  for (const BringLine& line : list.lines)
    out += say("  - ", line.text, line.used.empty() ? "" : ". ", line.used, "\n");
  return out +
         "Keep cold food cold until it is in the school's fridge, and leave the packet or its "
         "label "
         "on: we read every label for allergens.\nIf bringing any of this is difficult, tell the "
         "school office or the food teacher; it is settled quietly and nobody else is told.\n";
}

}  // namespace larder
