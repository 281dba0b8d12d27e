#include "kitchen/dish.h"

#include <algorithm>

namespace kitchen {

Allergens allergens(const Dish& dish) {
  Allergens all;
  for (const Ingredient& ingredient : dish.ingredients)
    all.insert(ingredient.contains.begin(), ingredient.contains.end());
  return all;
}

Allergens allergens(const Dish& dish, int step) {
  const std::vector<int>& uses = dish.method[static_cast<std::size_t>(step)].uses;
  if (uses.empty()) return allergens(dish);
  Allergens some;
  for (const int i : uses) {
    const Allergens& contains = dish.ingredients[static_cast<std::size_t>(i)].contains;
    some.insert(contains.begin(), contains.end());
  }
  return some;
}

bool needs_chilling(const Dish& dish) {
  return dish.keep_chilled.value_or(dish.hold.kind != HoldKind::kKeeps ||
                                    dish.hold.in == HoldIn::kFridge);
}

int last_step(const Dish& dish) { return static_cast<int>(dish.method.size()) - 1; }

std::vector<int> reading_order(const Dish& dish) {
  const std::size_t n = dish.method.size();
  std::vector<int> order;
  std::vector<bool> read(n, false);
  const auto ready = [&](std::size_t i) {
    return std::all_of(
        dish.method[i].follows.begin(), dish.method[i].follows.end(), [&](const Follows& wait) {
          return wait.moment == Moment::kEnd || read[static_cast<std::size_t>(wait.step)];
        });
  };
  while (order.size() < n) {
    std::size_t next = n;
    std::size_t first_unread = n;
    for (std::size_t i = 0; i < n && next == n; ++i) {
      if (read[i]) continue;
      if (first_unread == n) first_unread = i;
      if (ready(i)) next = i;
    }
    if (next == n)
      next = first_unread;  // steps that must start together wait for each other: as written
    read[next] = true;
    order.push_back(static_cast<int>(next));
  }
  return order;
}

}  // namespace kitchen
