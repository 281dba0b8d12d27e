#include "safety/food_allergens.h"

#include <algorithm>
#include <map>
#include <set>

#include "base/text.h"
#include "kitchen/words.h"

namespace safety {
namespace {

Allergens that_matter(const kitchen::Lesson& lesson) {
  Allergens out;
  for (const kitchen::Cook& cook : lesson.cooks) out.insert(cook.avoids.begin(), cook.avoids.end());
  if (!lesson.rules.nuts) out.insert({Allergen::kNuts, Allergen::kPeanuts});
  return out;
}

}  // namespace

kitchen::Dish with_food_allergens(kitchen::Dish dish, const kitchen::Foods& foods,
                                  const Labels& labels) {
  for (kitchen::Ingredient& ingredient : dish.ingredients) {
    const Statements said = statements(ingredient, foods, labels);
    for (const Allergen a : kFourteen) {
      // What is not known stays as the dish declares it: an unread label is all fourteen already.
      if (said[at(a)].stated >= Stated::kCheckLabel) ingredient.contains.insert(a);
    }
  }
  return dish;
}

bool allergens_matter(const kitchen::Lesson& lesson) { return !that_matter(lesson).empty(); }

std::vector<std::string> notes_on_labels(const kitchen::Lesson& lesson, const kitchen::Foods& foods,
                                         const Labels& labels) {
  std::map<std::string, std::set<std::string>> by_ingredient;
  std::set<int> cooked;
  for (const kitchen::Cook& cook : lesson.cooks)
    cooked.insert(cook.dishes.begin(), cook.dishes.end());
  for (const int d : cooked) {
    for (const kitchen::Ingredient& ingredient :
         lesson.dishes[static_cast<std::size_t>(d)].ingredients) {
      const Statements said = statements(ingredient, foods, labels);
      for (const Allergen a : that_matter(lesson)) {
        if (said[at(a)].stated == Stated::kCheckLabel)
          by_ingredient[ingredient.name].insert(std::string(kitchen::word(a)));
      }
    }
  }
  if (by_ingredient.empty()) return {};
  std::vector<std::string> labels_to_read;
  for (const auto& [name, allergens] : by_ingredient)
    labels_to_read.push_back(
        base::say(name, " (", base::joined({allergens.begin(), allergens.end()}), ")"));
  return {base::say("Read the labels of ", base::joined(labels_to_read),
                    ": until then the plan takes them as containing it.")};
}

}  // namespace safety
