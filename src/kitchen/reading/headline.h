// What stands above a dish: its name among other short lines, and how many it serves, wherever the
// text says so.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "kitchen/reading/food_matcher.h"
#include "kitchen/reading/layout.h"

namespace kitchen {

/// How much a short line looks like the name of a dish: "Leek and potato soup" 4 or more, "Food and
/// Nutrition Department" below 0; words that say nothing count nothing.
double dish_likeness(std::string_view line, const FoodMatcher&);

/// A dish a sentence speaks of: "here's the leek and potato soup I did last year". Empty = none.
std::string dish_mentioned(std::string_view sentence, const FoodMatcher&);

/// Portions a line tells in the middle of other words. `people`: it says how many eat ("does 2 of
/// us", "6 covers", "enough for 6"), not only what it makes ("cuts into 12").
struct PortionsTold {
  Portions portions;
  bool people = false;
};
std::optional<PortionsTold> portions_told(std::string_view line);

/// Of a line in parts ("Thursday session - Grilled mackerel with potato salad", "Recipe card:
/// Fishcakes") the one that looks most like a dish, when the rest speaks of something else; else
/// the whole line.
std::string dish_part(const std::string& line, const FoodMatcher&);

/// A name without what is said of portions and classes behind it: "Fish goujons - yr 8 (serves 2)".
std::string name_alone(std::string name);

}  // namespace kitchen
