// What a week's lessons need, food by food, each amount with the lesson and dish it comes from.
//
// Red lentils: 13 sets of 120 g for 9K on Tuesday and 12 sets of 120 g for 8B on Thursday, 3 kg in
// all. What cannot be summed up is told, never left out silently.
#pragma once

#include <string>
#include <vector>

#include "kitchen/foods.h"
#include "larder/week.h"

namespace larder {

/// One ingredient line of one dish of one lesson, all its sets together.
struct Need {
  int lesson = 0;  ///< index into Week::lessons
  int dish = 0;    ///< index into WeekLesson::dishes
  int line = 0;    ///< index into Dish::ingredients
  Date date;
  Ratio sets = 0;    ///< of the school's; those families bring are not in it
  Ratio amount = 0;  ///< in the food's measure, of what is eaten
  friend bool operator==(const Need&, const Need&) = default;
};

struct FoodNeed {
  std::string food;  ///< key of the table of foods
  std::string name;  ///< as the table writes it
  Measure measure;
  std::vector<Need> parts;  ///< by date, then as the week lists them
  Ratio total() const;
  friend bool operator==(const FoodNeed&, const FoodNeed&) = default;
};

struct Needs {
  std::vector<FoodNeed> foods;  ///< by name
  /// What is not settled: needs.no_dish (a lesson without dish), needs.unknown_food,
  /// needs.not_summed (cannot be turned into the measure of the others), needs.unanswered.
  base::Problems unsettled;
};

/// Every ingredient with an amount; "to taste" and tap water are not ordered. What families bring
/// is left out but for the sets the school supplies.
Needs needs_of(const Week&, const kitchen::Foods&);

/// True for what comes from the tap.
bool from_the_tap(const kitchen::Food&);

}  // namespace larder
