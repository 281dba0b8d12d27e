// A pasted text as a DishDraft: layout, ingredient lines, then the method.
//
// "Bean tacos\nServes 4\n2 tins black beans\n...": name, portions, ingredients with their foods,
// steps, questions for what only a person can know, and every line that was not understood.
#pragma once

#include <string_view>
#include <vector>

#include "kitchen/foods.h"
#include "kitchen/reading/draft.h"
#include "kitchen/reading/food_matcher.h"
#include "kitchen/reading/task_times.h"

namespace kitchen {

inline constexpr std::size_t kLongestText = 1U << 20U;  ///< bytes; what is beyond is not read, and
                                                        ///< said so

/// Never fails: what cannot be understood is kept in `unread`, what is missing is assumed and said.
/// Bytes that are not UTF-8 are read as Windows-1252.
DishDraft read_dish_text(std::string_view text, const Foods& foods, const TaskTimes& times);
/// The same for many texts: sorting the names of the table takes a third of the time, and whoever
/// reads on keeps the matcher.
DishDraft read_dish_text(std::string_view text, const FoodMatcher& foods, const TaskTimes& times);

/// The same from lists that are already apart, as a data file has them: ingredient lines, and steps
/// with their groups.
struct DishParts {
  std::string name;
  int portions = 0;  ///< 0 = not said
  std::string portions_words;
  struct Line {
    std::string text, group;
  };
  std::vector<Line> ingredients, method;
  std::vector<std::string> unread;
};
DishDraft read_dish_parts(const DishParts&, const Foods& foods, const TaskTimes& times);

}  // namespace kitchen
