// Inside check(): its parts and what they share.
#pragma once

#include <string>
#include <vector>

#include "base/problem.h"
#include "base/text.h"
#include "kitchen/check_lesson.h"
#include "kitchen/json_tree.h"
#include "kitchen/words.h"

namespace kitchen {

using base::in_quotes;
using base::Problems;
using base::say;

inline void add(Problems& problems, std::string code, std::string where, std::string message,
                std::string remedy) {
  problems.push_back(
      {std::move(code), "", std::move(where), std::move(message), std::move(remedy)});
}

/// "dhal" or "dhal (with oil for butter)", in quotes.
std::string dish_name(const Dish&);
inline const Dish& dish_at(const Lesson& lesson, int d) {
  return lesson.dishes[static_cast<std::size_t>(d)];
}
inline const Cook& cook_at(const Lesson& lesson, int c) {
  return lesson.cooks[static_cast<std::size_t>(c)];
}
inline std::string place_in(const char* list, std::size_t i) {
  return below(std::string("/") + list, i);
}
/// Dishes somebody cooks, in order.
std::vector<int> dishes_cooked(const Lesson&);

void check_needs(const Lesson&, Problems&);  ///< cookers, kit, sizes: what the dishes need and the
                                             ///< room has
void check_times(const Lesson&, Problems&);  ///< windows, bans, sittings, who is there when

}  // namespace kitchen
