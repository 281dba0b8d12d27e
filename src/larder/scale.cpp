#include "larder/scale.h"

#include <algorithm>
#include <optional>

#include "base/folding.h"
#include "base/text.h"
#include "kitchen/weigh.h"

namespace larder {
namespace {

using base::in_quotes;
using base::say;
using kitchen::Dimension;
using kitchen::Dish;
using kitchen::Food;
using kitchen::Foods;
using kitchen::Ingredient;
using kitchen::Unit;

bool counts_eggs(const Ingredient& ingredient, const Quantity& quantity, const Foods& foods) {
  if (quantity.unit != Unit::kPiece) return false;
  const Food* food = food_of(ingredient, foods);
  return food != nullptr
             ? food->category == "eggs"
             : kitchen::singular_words(ingredient.name).find(" egg ") != std::string::npos;
}

Quantity scaled(const Quantity& quantity, const Ratio& factor) {
  return quantity.stated() ? kitchen::times(quantity, factor) : quantity;
}

// A count of eggs as the weight of the beaten egg; nothing when no weight is known.
std::optional<Shown> beaten(const Ingredient& ingredient, const Quantity& eggs,
                            const Foods& foods) {
  const Food* food = food_of(ingredient, foods);
  if (food == nullptr) return std::nullopt;
  Quantity each = eggs;
  if (each.piece == "egg") each.piece.clear();
  const auto weighed = weigh(each, *food);
  if (!weighed) return std::nullopt;
  return shown(Quantity::of(weighed.value().grams, Unit::kGram));
}

Dish with_amounts(const Dish& dish, const Scaled& scaled, bool rounded) {
  Dish out = dish;
  out.portions = std::max<int>(1, static_cast<int>((Ratio(dish.portions) * scaled.factor).round()));
  for (const ScaledLine& line : scaled.lines) {
    const Quantity& q = rounded ? line.amount.shown : line.amount.exact;
    if (!q.stated()) continue;
    Ingredient& ingredient = out.ingredients[static_cast<std::size_t>(line.ingredient)];
    ingredient.amount = q.middle().value();
    ingredient.unit = q.unit == Unit::kPiece ? q.piece : std::string(unit_word(q.unit));
  }
  return out;
}

}  // namespace

base::Result<Ratio> factor_for_portions(const Dish& dish, int portions) {
  if (portions < 1 || portions > kMostPortions) {
    return base::Problem{"scale.portions", "", "", say(portions, " portions cannot be made."),
                         say("Ask for 1 to ", kMostPortions, ".")};
  }
  return Ratio(portions, dish.portions);
}

Scaled scale(const Dish& dish, const Ratio& factor, const Foods& foods, Eggs eggs) {
  Scaled out;
  out.factor = factor;
  for (std::size_t i = 0; i < dish.ingredients.size(); ++i) {
    const Ingredient& ingredient = dish.ingredients[i];
    const Quantity exact = scaled(quantity_of(ingredient), factor);
    const bool egg = counts_eggs(ingredient, exact, foods);
    ScaledLine line{static_cast<int>(i), shown(exact, egg), ""};
    if (egg && eggs == Eggs::kBeatenWeight && !exact.middle().whole()) {
      if (auto weight = beaten(ingredient, exact, foods)) {
        line.note = say(base::fraction_text(exact.middle()), " eggs: beat ", exact.middle().ceil(),
                        " and weigh out");
        line.amount = std::move(*weight);
      }
    } else if (egg && line.amount.step != Ratio(0)) {
      const Ratio off = line.amount.error < Ratio(0) ? Ratio(0) - line.amount.error
                                                     : line.amount.error;
      if (off >= Ratio(1, 4)) {
        out.warnings.push_back(say("The ", ingredient.name, ": ", line.amount.text, " for ",
                                   base::fraction_text(exact.middle()),
                                   "; beaten and weighed it would be right."));
      }
    }
    if (line.amount.too_small) {
      out.warnings.push_back(
          say("The ", ingredient.name, ": ", line.amount.text,
              " is less than can be measured: weigh it for several at once and share it out."));
    }
    out.lines.push_back(std::move(line));
  }
  return out;
}

Dish as_shown(const Dish& dish, const Scaled& scaled) { return with_amounts(dish, scaled, true); }
Dish as_exact(const Dish& dish, const Scaled& scaled) { return with_amounts(dish, scaled, false); }

}  // namespace larder
