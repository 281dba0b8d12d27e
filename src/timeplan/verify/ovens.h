// One oven through the lesson: trays, settings, change-overs, the opening, the break, the shut
// door.
#pragma once

#include <string>
#include <vector>

#include "timeplan/verify/case.h"
#include "timeplan/verify/vessels.h"

namespace timeplan::judge {

/// Something that stands in an oven: a bake, or a finished dish kept hot.
struct Tray {
  std::string name;
  Span span;
  kitchen::OvenSetting setting;
  int twelfths = 12;
  std::vector<int> tasks;
  std::vector<Span> door_shut;  ///< when no other tray may go in or come out (rule O7)
};

/// The trays the plan puts into the oven of that cooker.
std::vector<Tray> trays_in(const Case&, const std::vector<Vessel>&, int cooker);
/// Everything wrong with those trays in that oven: O3, O4, O5, O6, O7.
std::vector<Violation> judge_oven(const Case&, int cooker, const std::vector<Tray>&);
/// The part of it about cold ovens: O5 and O6 (cold_start.cpp).
std::vector<Violation> judge_cold_starts(const Case&, int cooker, const std::vector<Tray>&);
/// The breaks of the plan in which ovens are off.
std::vector<Span> breaks_with_ovens_off(const Case&);

}  // namespace timeplan::judge
