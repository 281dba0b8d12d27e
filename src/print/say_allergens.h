// Allergens and diets on paper: what is stated of each dish in words, and for each cook with a need
// what meets it and what would settle it.
//
// Cooks without a need do not appear. The caution that labels and the school's own records decide
// stands under every sheet.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "safety/conflicts.h"
#include "safety/kit_order.h"
#include "safety/room_ban.h"

namespace print {

/// Under every sheet of allergens, on paper and in JSON.
inline constexpr std::string_view kLabelsDecide =
    "Labels and the school's own records decide, not this sheet. \"Not listed\" is not \"free "
    "from\": recipes and brands change, and traces are not covered. Ask the pupil's family and "
    "follow the care plan.";

/// One lesson with everything found out about it.
struct AllergenLesson {
  const kitchen::Lesson& lesson;
  const safety::LessonNeeds& needs;
  std::vector<safety::Conflict> conflicts;
  std::vector<safety::ThingOrder> order;
};

struct AllergenSheet {
  std::vector<kitchen::Dish> dishes;  ///< asked for by name
  std::vector<AllergenLesson> lessons;
  std::vector<safety::Leftover> leftovers;  ///< indices into `lessons`
  const safety::Evidence& evidence;
};

struct AllergenSay {
  bool details = false;  ///< every ingredient with who says what
  int width = 80;
  bool colour = false;
};

/// "Food processor, who goes first: Daisy; full clean; then Samir.": one line of the same list.
std::string who_goes_first(const kitchen::Lesson&, const safety::ThingOrder&);

std::string say_allergens(const AllergenSheet&, const AllergenSay&);
/// The same for machines; says "caution" too.
std::string allergens_json(const AllergenSheet&);

/// The dishes of a lesson that some cook makes, in its order.
std::vector<int> dishes_made(const kitchen::Lesson&);

}  // namespace print
