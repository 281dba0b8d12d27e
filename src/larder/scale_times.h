// What does not grow with the amounts: times, pans, ovens and bowls.
//
// Four times the mixture in one pan is not fried in four times the minutes: it steams. A class that
// cooks the dish in sets needs none of this; one big batch does. Qualitative on purpose: a figure
// would be guessed. Common practice, no source, but for the pan's load (row DR111 of
// data/ratios.csv: 150 to 350 g for a 28 cm pan).
#pragma once

#include <string>
#include <vector>

#include "kitchen/dish.h"
#include "kitchen/foods.h"
#include "larder/scale_round.h"

namespace larder {

struct TimeWarning {
  int step = 0;  ///< index into Dish::method
  std::string says;
  friend bool operator==(const TimeWarning&, const TimeWarning&) = default;
};

/// Of one batch `factor` times as large; `depth_factor`: how many times as deep it lies in its tin
/// or dish (1 = a larger tin or more of them). Nothing for a factor within a tenth of 1.
std::vector<TimeWarning> times_that_do_not_scale(const kitchen::Dish&, const Ratio& factor,
                                                 const Ratio& depth_factor, const kitchen::Foods&);

}  // namespace larder
