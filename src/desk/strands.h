// A dish's method as lines that meet: when each step would run if one cook had the room to
// themselves. For the picture of a method and for "how long does it take".
#pragma once

#include <vector>

#include "kitchen/dish.h"

namespace desk {

/// One step of the picture; times after the start of the dish.
struct Strand {
  int step = 0;  ///< index into Dish::method
  int lane = 0;  ///< 0 = what hands do; 1, 2, ... = what runs beside them
  base::Seconds from{0}, to{0};
  friend bool operator==(const Strand&, const Strand&) = default;
};

struct Strands {
  std::vector<Strand> steps;  ///< by start
  base::Seconds length{0};    ///< until the dish is ready
  base::Seconds hands{0};     ///< of it with hands busy
};

/// A plain forward schedule: steps in reading order, each as early as its waits allow, hands-on
/// ones one after another. It keeps least waits; longest waits are kept where that needs no looking
/// ahead, so this is a picture and not a plan.
Strands strands(const kitchen::Dish&);

}  // namespace desk
