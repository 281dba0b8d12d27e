#include "larder/sets.h"

#include "base/text.h"
#include "kitchen/weigh.h"

namespace larder {
namespace {

using base::say;
using kitchen::Dimension;

struct WasteRow {
  std::string_view food;
  int peeled;    ///< % left by a practised hand
  int beginner;  ///< % left by a beginner
  std::string_view source;
};

// Potatoes are the only food with both figures; the others lose in the same proportion as potatoes,
// which nobody has measured.
constexpr std::string_view kPotato =
    "82 % left when peeled, 72 % by a beginner with a knife (common practice, from memory)";
constexpr std::string_view kLikePotato =
    "taken to lose in the same proportion as potatoes (82 to 72 %; our guess, no source)";
constexpr WasteRow kWaste[] = {
    {"potato", 82, 72, kPotato},
    {"baking_potato", 82, 72, kPotato},
    {"sweet_potato", 82, 72, kLikePotato},
    {"carrot", 82, 72, kLikePotato},
    {"parsnip", 82, 72, kLikePotato},
    {"swede", 82, 72, kLikePotato},
    {"turnip", 82, 72, kLikePotato},
    {"celeriac", 82, 72, kLikePotato},
    {"butternut_squash", 82, 72, kLikePotato},
    {"beetroot_raw", 82, 72, kLikePotato},
    {"apple_cooking", 82, 72, kLikePotato},
    {"apple_eating", 82, 72, kLikePotato},
    {"pear", 82, 72, kLikePotato},
    {"ginger_root", 82, 72, kLikePotato},
};

}  // namespace

base::Result<int> set_count(const Sets& sets) {
  const long long count = static_cast<long long>(sets.cooks) + (sets.demonstration ? 1 : 0) +
                          sets.spares;
  if (sets.cooks < 0 || sets.spares < 0 || count < 1 || count > kMostSets) {
    return base::Problem{"sets.count", "", "",
                         say(sets.cooks, " cooks and ", sets.spares, " spares make no order."),
                         say("Ask for 1 to ", kMostSets, " sets in all.")};
  }
  return static_cast<int>(count);
}

BeginnersWaste beginners_waste(std::string_view food_key) {
  for (const WasteRow& row : kWaste) {
    if (row.food == food_key) return {Ratio(row.peeled, row.beginner), std::string(row.source)};
  }
  return {};
}

base::Result<SetOrder> order_of_sets(const kitchen::Dish& dish, const Sets& sets,
                                     const Ratio& factor, const kitchen::Foods& foods,
                                     bool beginners) {
  const auto count = set_count(sets);
  if (!count) return count.problems();
  SetOrder out;
  out.sets = count.value();
  Scaled one = scale(dish, factor, foods);
  out.warnings = std::move(one.warnings);
  for (ScaledLine& line : one.lines) {
    SetLine set{line.ingredient, std::move(line.amount), {}, {}};
    const auto& ingredient = dish.ingredients[static_cast<std::size_t>(line.ingredient)];
    const auto* food = food_of(ingredient, foods);
    // A beginner is not given one and a seventh of a carrot: counted pieces stay.
    const bool weighed = set.tray.exact.stated() &&
                         dimension(set.tray.exact.unit) == Dimension::kMass;
    if (beginners && food != nullptr && weighed) {
      set.waste = beginners_waste(food->key);
      if (set.waste.factor != Ratio(1))
        set.tray = shown(kitchen::times(set.tray.exact, set.waste.factor));
    }
    set.order = set.tray.exact.stated() ? kitchen::times(set.tray.shown, Ratio(out.sets))
                                        : set.tray.exact;
    out.lines.push_back(std::move(set));
  }
  return out;
}

}  // namespace larder
