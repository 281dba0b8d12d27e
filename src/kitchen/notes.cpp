#include <algorithm>

#include "kitchen/check_parts.h"
#include "kitchen/lesson_clock.h"

namespace kitchen {

std::vector<std::string> notes(const Lesson& lesson) {
  std::vector<std::string> out;
  for (const int d : dishes_cooked(lesson)) {
    const Dish& dish = dish_at(lesson, d);
    for (const Step& step : dish.method) {
      if (!step.added || !step.closes) continue;
      out.push_back(
          say("In ", dish_name(dish), " the step \"", step.says, "\" was added after ",
              in_quotes(dish.method[static_cast<std::size_t>(*step.closes)].id),
              ": someone must take it off the heat, within 1 min, and that needs hands."));
    }
    if (dish.variant.empty()) continue;
    std::vector<std::string> names;
    for (const Cook& cook : lesson.cooks) {
      if (std::find(cook.dishes.begin(), cook.dishes.end(), d) != cook.dishes.end())
        names.push_back(cook.name);
    }
    out.push_back(say(base::joined(names), names.size() == 1 ? " cooks" : " cook", " the variant ",
                      dish_name(dish), "."));
  }
  const auto date = base::date_in(lesson.date);
  if (date && known_zone(lesson.zone) &&
      meaning_of(lesson.zone, *date, base::minutes(lesson.opens_minute)).kind ==
          LocalKind::kTwice) {
    out.push_back(say("The clock shows ", clock(lesson, Seconds{0}), " twice on ", lesson.date,
                      "; the lesson starts at the first."));
  }
  if (const auto opens = opening_instant(lesson)) {
    const auto before = local_at(lesson.zone, *opens).offset;
    const auto after = local_at(lesson.zone, *opens + lesson.bell).offset;
    if (before != after)
      out.push_back("The clocks change during the lesson; all lengths are real minutes.");
  }
  return out;
}

}  // namespace kitchen
