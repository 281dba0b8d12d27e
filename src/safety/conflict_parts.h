// The parts of the conflict list; for conflicts.cpp only.
#pragma once

#include <set>

#include "safety/conflicts.h"

namespace safety {

inline const kitchen::Dish& dish_at(const kitchen::Lesson& lesson, int d) {
  return lesson.dishes[static_cast<std::size_t>(d)];
}
inline const kitchen::Cook& cook_at(const kitchen::Lesson& lesson, int c) {
  return lesson.cooks[static_cast<std::size_t>(c)];
}

/// What a cook's own dishes bring.
void find_in_own_dishes(const ConflictsAsked&, const CookNeeds&, std::vector<Conflict>&);
/// What others bring to place, kit, oil, bay and room.
void find_around(const ConflictsAsked&, const CookNeeds&, std::vector<Conflict>&);

/// What would settle a finding in the cook's own dish.
std::vector<Remedy> remedies_in_dish(const ConflictsAsked&, const CookNeeds&, const Conflict&);
/// A bay without any of it and a free place, or nothing.
std::vector<Remedy> remedies_by_moving(const ConflictsAsked&, const Conflict&);

/// How it gets about when a step is done: "flour dust", "steam", "dust", or empty.
std::string flies(const kitchen::Dish&, int step, const Need&, const Evidence&);

/// "Fruit scones" or "Fruit scones (oat drink and spread)".
std::string full_name(const kitchen::Dish&);
/// "Read the label of the mature cheese": what settles a doubt about an ingredient.
Remedy doubt_settled(const kitchen::Ingredient&, Stated, const Need&);

}  // namespace safety
