// The invented dishes of the samples.
#pragma once

#include "kitchen/dish.h"

namespace sample {

kitchen::Dish soup();          ///< rings, a gate after chopping, a hand-wash
kitchen::Dish scones();        ///< oven, shared trays
kitchen::Dish spring_rolls();  ///< hot oil, an adult must be there

}  // namespace sample
