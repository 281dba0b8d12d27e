#include "desk/lesson_allergens.h"

#include <algorithm>

#include "kitchen/check_lesson.h"
#include "safety/food_allergens.h"

namespace desk {

base::Result<std::vector<std::string>> add_allergens(kitchen::Lesson& lesson,
                                                     const kitchen::Foods& foods,
                                                     const safety::Labels& labels) {
  if (!safety::allergens_matter(lesson)) return std::vector<std::string>{};
  kitchen::Lesson all_said = lesson;
  for (kitchen::Dish& dish : all_said.dishes)
    dish = safety::with_food_allergens(dish, foods, labels);
  base::Problems wrong = kitchen::check(all_said);
  for (base::Problem& problem : wrong) {
    if (problem.code != "lesson.cook_avoids" && problem.code != "rules.nuts") continue;
    problem.remedy +=
        " The table of foods says so, or leaves it to the label: record the labels you read.";
  }
  if (!wrong.empty()) return wrong;
  auto notes = safety::notes_on_labels(lesson, foods, labels);
  const bool avoided = std::any_of(lesson.cooks.begin(), lesson.cooks.end(),
                                   [](const kitchen::Cook& cook) { return !cook.avoids.empty(); });
  if (avoided) lesson = std::move(all_said);
  return notes;
}

}  // namespace desk
