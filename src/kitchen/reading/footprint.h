// The quick way in for a pupil's own dish: only what the room feels of it, in one line.
//
// "chop 10 min, one ring 20 min, mixer 5 min, oven 180 °C 25 min, fridge 1 h" is a whole, checked
// Dish of five steps, one after another; its ingredients and words are left out. Good enough to
// plan a room with twenty different menus in it, not to cook from.
#pragma once

#include <string>
#include <string_view>

#include "base/problem.h"
#include "kitchen/dish.h"

namespace kitchen {

/// Parts are divided by commas, semicolons, "then" or line ends; each says a place (oven, ring,
/// grill, fridge, freezer, kettle, microwave, any kit of the room's own word, or what hands do) and
/// how long. An oven says its temperature: degrees Celsius, Fahrenheit or a gas mark.
/// Errors: footprint.empty, footprint.minutes, footprint.celsius, footprint.part (all at once), and
/// those of read_dish().
base::Result<Dish> read_footprint(std::string_view text, const std::string& name, int portions);

}  // namespace kitchen
