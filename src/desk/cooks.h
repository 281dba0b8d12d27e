// Seated pupils made into the cooks of a lesson's document: names, places, what each avoids, how
// fast they are, and for each dish the version that leaves out what they must not have.
#pragma once

#include <string>
#include <vector>

#include "desk/seating.h"
#include "kitchen/json_tree.h"

namespace desk {

/// A dish of the lesson under its key, as written first, then its variants.
struct KeyedDish {
  std::string key;
  std::vector<kitchen::Dish> versions;  ///< never empty; with what the table of foods says of
                                        ///< allergens
};

struct Cooks {
  kitchen::Node list;              ///< "cooks" of a lesson's document
  kitchen::Node seats;             ///< "seats" of its "about": cook's name -> pupils' names
  std::vector<std::string> notes;  ///< variants chosen, and where none does
};

/// The pace of a cook is that of its slowest pupil.
Cooks cooks_of(const Class&, const kitchen::Room&, const Seating&, const std::vector<KeyedDish>&);

}  // namespace desk
