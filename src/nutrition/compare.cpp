#include "nutrition/compare.h"

#include <algorithm>
#include <iterator>

namespace nutrition {

namespace {

kitchen::Allergens without(const kitchen::Allergens& all, const kitchen::Allergens& others) {
  kitchen::Allergens out;
  std::set_difference(all.begin(), all.end(), others.begin(), others.end(),
                      std::inserter(out, out.end()));
  return out;
}

}  // namespace

DishAllergens allergens_of(const kitchen::Dish& dish,
                           const std::vector<const kitchen::Food*>& foods) {
  DishAllergens out;
  for (std::size_t i = 0; i < dish.ingredients.size(); ++i) {
    const kitchen::Ingredient& ingredient = dish.ingredients[i];
    out.contains.insert(ingredient.contains.begin(), ingredient.contains.end());
    const kitchen::Food* food = i < foods.size() ? foods[i] : nullptr;
    if (food == nullptr || !ingredient.label_read) out.not_known.push_back(ingredient.name);
    if (food == nullptr) continue;
    out.contains.insert(food->contains.begin(), food->contains.end());
    out.check_for.insert(food->check_for.begin(), food->check_for.end());
  }
  out.check_for = without(out.check_for, out.contains);
  return out;
}

Comparison compare(const std::vector<Version>& versions, bool drink) {
  Comparison out;
  for (std::size_t v = 0; v < versions.size(); ++v) {
    const Label label = label_of(versions[v].nutrients, drink);
    for (std::size_t i = 0; i < label.lines.size(); ++i) {
      const LabelLine& line = label.lines[i];
      if (v == 0) out.lines.push_back({line.name, line.unit, line.rounding, {}, {}, {}});
      ComparedLine& compared = out.lines[i];
      compared.portion.push_back(line.portion);
      compared.per_100_g.push_back(line.per_100_g);
      const Figure& first = compared.portion.front();
      std::optional<double> change;
      if (first.whole() && line.portion.whole()) change = line.portion.amount - first.amount;
      compared.change.push_back(change);
    }
    out.colours.push_back(colours(versions[v].nutrients, drink));
    const kitchen::Allergens& here = versions[v].allergens.contains;
    const kitchen::Allergens& there = versions.front().allergens.contains;
    out.gained.push_back(without(here, there));
    out.lost.push_back(without(there, here));
  }
  return out;
}

}  // namespace nutrition
