// Which tasks a plan must hold, from the lesson alone: every one there once, none besides, each of
// its length.
#pragma once

#include <string>
#include <vector>

#include "timeplan/verify/case.h"

namespace timeplan::judge {

/// A task that must exist, and the rule that is broken when it does not.
struct Expected {
  Key key;
  std::string rule;
};

/// Raw steps of a dish that are neighbours in reading order, of the half cooked here (rule H5).
std::vector<std::vector<int>> raw_groups(const Case&, int dish);
/// Steps of the half that use the room's kit item of that index, in reading order.
std::vector<int> steps_using(const Case&, int dish, int kit);
/// Steps of some cook's dish that use the kit item "knife"?
bool knives_in_use(const Case&);

/// Every task the lesson asks for, except clean-downs and full cleans, which follow from the order
/// of the plan.
std::vector<Expected> expected_tasks(const Case&);

/// Finds each expected task in the plan; reports what is missing, there twice, invented or of wrong
/// length, and times that are no times (rules T2, T3).
void match_tasks(Case&);

}  // namespace timeplan::judge
