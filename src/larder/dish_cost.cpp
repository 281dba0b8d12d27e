#include "larder/dish_cost.h"

#include "base/text.h"
#include "kitchen/weigh.h"
#include "larder/needs.h"

namespace larder {
namespace {

IngredientCost cost_of(const kitchen::Ingredient& ingredient, int index, const PriceList& prices,
                       const kitchen::Foods& foods) {
  IngredientCost out{index, {}, ""};
  const kitchen::Food* food = kitchen::food_of(ingredient, foods);
  if (food == nullptr) {
    out.how = base::say(base::in_quotes(ingredient.name), " is in no table of foods.");
    return out;
  }
  if (from_the_tap(*food)) {
    out.pence = Ratio(0);
    out.how = "from the tap";
    return out;
  }
  const kitchen::Quantity quantity = kitchen::quantity_of(ingredient);
  const Measure measure = measure_for({quantity}, *food);
  const auto amount = in_measure(quantity, *food, measure);
  if (!amount) {
    out.how = amount.problems().front().message;
    return out;
  }
  const auto price = cheapest_pack(*food, measure, prices);
  if (!price) {
    out.how = base::say("No price is known for ", food->name, ".");
    return out;
  }
  out.pence = amount.value() * price->pence;
  out.how = base::say(amount_text(amount.value(), measure), " of ",
                      kitchen::quantity_text(price->pack->size), " at ",
                      pounds_text(*price->pack->price));
  return out;
}

}  // namespace

DishCost dish_cost(const kitchen::Dish& dish, const PriceList& prices,
                   const kitchen::Foods& foods) {
  DishCost out;
  for (std::size_t i = 0; i < dish.ingredients.size(); ++i) {
    if (dish.ingredients[i].amount == 0) continue;
    IngredientCost line = cost_of(dish.ingredients[i], static_cast<int>(i), prices, foods);
    if (line.pence)
      out.known = out.known + *line.pence;
    else
      out.complete = false;
    out.lines.push_back(std::move(line));
  }
  return out;
}

}  // namespace larder
