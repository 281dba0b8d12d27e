// Pans, trays and what they hold: one vessel is one cook's pan or tin for one dish and kind of heat
// (rules O1, O2).
#pragma once

#include <string>
#include <vector>

#include "timeplan/verify/case.h"
#include "timeplan/verify/sweep.h"

namespace timeplan::judge {

struct Vessel {
  int cook = -1;
  int dish = -1;
  std::string name;
  kitchen::HeatKind kind = kitchen::HeatKind::kRing;
  std::vector<int> steps;  ///< heat steps of the half, in reading order
  std::vector<int> tasks;  ///< tasks of those steps and of their closing steps
  int cooker = -1;         ///< of the first heat task; -1 when the plan names none that exists
  kitchen::OvenSetting setting;  ///< of the first heat task, or the stated one
  int amount = 1;                ///< rings, or twelfths of a shelf
  Span span;                     ///< from the first step to the end of the last closing step
};

/// Every vessel of which the plan holds a task.
std::vector<Vessel> all_vessels(const Case&);
/// Can the cooker give that heat: rings, an oven with a fan for fan settings, a grill?
bool able(const kitchen::Cooker&, const kitchen::Heat&);
/// Is the class too young for that heat of that cooker: a gas flame below the year for gas (Y11)?
bool too_young_for(const Case&, int cooker, kitchen::HeatKind);
/// Does the vessel stand in the oven's cavity (a bake, or grilling in an oven)?
bool in_oven(const Case&, const Vessel&);
/// Rings in use on a cooker by vessels.
std::vector<Use> ring_uses(const std::vector<Vessel>&, int cooker);

}  // namespace timeplan::judge
