#include "nutrition/dish_nutrients.h"

#include <algorithm>
#include <cmath>

#include "base/folding.h"
#include "base/text.h"
#include "kitchen/weigh.h"
#include "nutrition/per_food.h"

namespace nutrition {

using base::in_quotes;
using base::say;
using kitchen::Dish;
using kitchen::Food;
using kitchen::Ingredient;

namespace {

bool says_as_bought(const Ingredient& ingredient) {
  const std::string text = base::folded(ingredient.preparation);
  for (const char* words : {"as bought", "unpeeled", "in its shell", "with bone", "untrimmed"}) {
    if (text.find(words) != std::string::npos) return true;
  }
  return false;
}

// Liquids are what dry food can drink: measured by volume (but oil), or tomatoes from a tin.
bool is_liquid(const Ingredient& ingredient, const Food* food) {
  const auto unit = kitchen::unit_named(ingredient.unit);
  const bool volume = unit && kitchen::dimension(*unit) == kitchen::Dimension::kVolume &&
                      ingredient.amount * kitchen::in_base_units(*unit).value() >= 50;
  if (food == nullptr) return volume;  // stock, most likely
  if (food->key == "water" || food->key == "chopped_tomatoes_tinned" ||
      food->key == "plum_tomatoes_tinned" || food->key == "passata")
    return true;
  return volume && food->category != "fats oils" && food->category != "sugars sweet";
}

void edible_part(const Ingredient& ingredient, const CookingTables& tables, Line& line) {
  if (!line.how.empty() || !says_as_bought(ingredient))
    return;  // pieces and volumes are of what is eaten
  const Yield* trim = tables.yield(line.food->key, Cooking::kRaw, YieldKind::kTrim);
  if (line.food->edible) {
    *line.grams *= *line.food->edible;
    line.how = say("as bought, of which ", base::number_text(*line.food->edible * 100),
                   " % is eaten (", line.food->edible_source, ")");
  } else if (trim != nullptr) {
    *line.grams *= trim->share;
    line.sure = false;
    line.how = say("as bought, of which ", base::number_text(trim->share * 100), " % is eaten (",
                   trim->id, ", ", trim->confidence, ")");
  } else {
    line.sure = false;
    line.how = "as bought; how much of it is eaten is not known, so all of it is counted";
  }
}

Line weighed(const Ingredient& ingredient, const Food* food, const CookingTables& tables) {
  Line line;
  line.name = ingredient.name;
  line.food = food;
  const kitchen::Quantity quantity = kitchen::quantity_of(ingredient);
  line.to_taste = !quantity.stated();
  if (food == nullptr) {
    line.problem = say("No food of the table is called ", in_quotes(ingredient.name), ".");
    if (line.to_taste) {
      line.grams = 0;
    } else if (kitchen::dimension(quantity.unit) == kitchen::Dimension::kMass) {
      line.grams = converted(quantity, kitchen::Unit::kGram)->middle().value();
    }
    return line;
  }
  if (line.to_taste) {
    line.grams = 0;
    line.how = "to taste";
    return line;
  }
  const auto weight = kitchen::weigh(quantity, *food);
  if (!weight) {
    line.problem = weight.problems().front().message;
    return line;
  }
  line.grams = weight.value().grams.value();
  line.how = weight.value().how;
  line.sure = weight.value().sure;
  edible_part(ingredient, tables, line);
  return line;
}

// "To taste" is half a gram a portion or so; does that show on a label or in a share of a day?
bool matters_to_taste(const Line& line, What what) {
  if (line.food == nullptr || !has_figures(*line.food))
    return unit_of(what) == "g" || what == Nutrient::kSodium;
  const auto per_100 = per_100_g(*line.food, what);
  if (!per_100) return false;
  const double half_gram = *per_100 / 200;
  if (what == Nutrient::kSodium) return half_gram > 5;  // mg: the salt a label may call none
  if (unit_of(what) == "g") return half_gram > 0.5;
  return false;  // energy, vitamins and minerals of a pinch
}

Contribution brought_by(const Line& line, std::size_t index, What what, double kept,
                        bool pinch_counts) {
  Contribution part{index, std::nullopt, kept, std::nullopt, 0, std::nullopt};
  if (line.food != nullptr) part.per_100_g = per_100_g(*line.food, what);
  if (line.to_taste) {
    if (!pinch_counts || !matters_to_taste(line, what)) part.amount = 0;
  } else if (part.per_100_g && *part.per_100_g == 0) {
    part.amount = 0;  // whatever it weighs
  } else if (part.per_100_g && line.grams) {
    part.amount = *line.grams * *part.per_100_g / 100 * part.kept;
  }
  part.least = part.amount.value_or(0);
  part.most = part.amount;
  if (!part.amount && line.grams && !line.to_taste) {
    const auto most = line.food != nullptr ? most_per_100_g(*line.food, what)
                                           : most_per_100_g(what);
    if (most) part.most = *line.grams * *most / 100;
    if (line.food != nullptr) part.least = *line.grams * least_per_100_g(*line.food, what) / 100;
  }
  return part;
}

Total total_of(What what, const DishNutrients& dish, const CookingTables& tables,
               const Options& options) {
  Total total;
  double known_grams = 0;
  for (std::size_t i = 0; i < dish.lines.size(); ++i) {
    const Line& line = dish.lines[i];
    const bool loses = options.retention && what.of_table();
    const Contribution part = brought_by(line, i, what,
                                         loses ? line.cooked.kept(tables, what.nutrient()) : 1.0,
                                         !options.leave_out_to_taste);
    total.whole.amount += part.least;
    if (part.amount)
      known_grams += line.grams.value_or(0);
    else
      total.missing.push_back(i);
    if (part.most && total.whole.most)
      *total.whole.most += *part.most;
    else
      total.whole.most.reset();
    total.parts.push_back(part);
  }
  if (!total.missing.empty()) total.whole.sure = Sureness::kAtLeast;
  total.coverage = dish.raw_grams > 0 ? known_grams / dish.raw_grams : 0;
  return total;
}

void sum_weights(DishNutrients& dish, const Options& options) {
  double with_figures = 0;
  for (const Line& line : dish.lines) {
    if (!line.grams) dish.weight_known = false;
    dish.raw_grams += line.grams.value_or(0);
    dish.served_grams += line.served();
    if (line.food != nullptr && has_figures(*line.food)) with_figures += line.grams.value_or(0);
  }
  dish.coverage = dish.raw_grams > 0 ? with_figures / dish.raw_grams : 0;
  if (options.weighed && *options.weighed > 0) {
    dish.served_grams = *options.weighed;
    dish.weighed_by_hand = true;
    dish.weight_known = true;
  }
}

}  // namespace

Figure operator*(const Figure& figure, double factor) {
  Figure out{figure.amount * factor, std::nullopt, figure.sure};
  if (figure.most) out.most = *figure.most * factor;
  return out;
}

Figure operator+(const Figure& a, const Figure& b) {
  Figure out{a.amount + b.amount, std::nullopt, std::max(a.sure, b.sure)};
  if (a.most && b.most) out.most = *a.most + *b.most;
  return out;
}

Figure DishNutrients::portion(What what) const { return whole(what) * (1.0 / portions); }

Figure DishNutrients::per_100_g(What what) const {
  if (served_grams <= 0) return {0, std::nullopt, Sureness::kUnsure};
  Figure figure = whole(what) * (100 / served_grams);
  if (!weight_known) figure = {figure.amount, std::nullopt, Sureness::kUnsure};
  return figure;
}

namespace {

bool counts_itself(const Ingredient& ingredient) {
  return ingredient.amount > 0 && !kitchen::unit_named(ingredient.unit) &&
         kitchen::singular(base::folded(ingredient.unit)) ==
             kitchen::singular(base::folded(ingredient.name));
}

}  // namespace

std::vector<const Food*> foods_of(const Dish& dish, const kitchen::Foods& foods) {
  std::vector<const Food*> out;
  for (const Ingredient& ingredient : dish.ingredients) {
    const Food* food = kitchen::food_of(ingredient, foods);
    if (food == nullptr && ingredient.food.empty())
      food = foods.find(base::replaced(base::folded(ingredient.name), ' ', '_'));
    // "1 pepper" is the vegetable: a food counted as itself must have a weight of one.
    if (food != nullptr && ingredient.food.empty() && counts_itself(ingredient) &&
        !kitchen::weigh(kitchen::quantity_of(ingredient), *food)) {
      for (const kitchen::FoundFood& other : foods.search(ingredient.name)) {
        if (!kitchen::weigh(kitchen::quantity_of(ingredient), *other.food)) continue;
        food = other.food;
        break;
      }
    }
    // "Salt and pepper", to taste: it is the salt that counts.
    if (food == nullptr && ingredient.amount <= 0 &&
        base::folded(ingredient.name).starts_with("salt"))
      food = foods.find("salt");
    out.push_back(food);
  }
  return out;
}

DishNutrients dish_nutrients(const Dish& dish, const std::vector<const Food*>& foods,
                             const CookingTables& tables, const Options& options) {
  DishNutrients out;
  out.dish = dish.variant.empty() ? dish.name : say(dish.name, ": ", dish.variant);
  out.portions = std::max(1, options.portions.value_or(dish.portions));
  std::vector<Weighted> ingredients;
  for (std::size_t i = 0; i < dish.ingredients.size(); ++i) {
    const Food* food = i < foods.size() ? foods[i] : nullptr;
    out.lines.push_back(weighed(dish.ingredients[i], food, tables));
    ingredients.push_back({food, out.lines.back().grams, is_liquid(dish.ingredients[i], food)});
  }
  const std::vector<CookedAs> cooked = cooked_as(dish, ingredients, tables);
  for (std::size_t i = 0; i < out.lines.size(); ++i) {
    out.lines[i].cooked = cooked[i];
    if (!options.yields) {
      out.lines[i].cooked.weight = 1;
      out.lines[i].cooked.yield_id.clear();
      out.lines[i].cooked.why = "weight changes in cooking are switched off";
    }
  }
  sum_weights(out, options);
  if (options.retention) out.retention_source = tables.retention_source();
  for (std::size_t w = 0; w < kWhats; ++w)
    out.totals[w] = total_of(What::at(w), out, tables, options);
  return out;
}

}  // namespace nutrition
