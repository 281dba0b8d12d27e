// Who cooks with whom and at which place: a class put into a room.
//
// Pairs that were together stay together, seats that were given stay given, so that a plan printed
// yesterday is still true for everybody who has not moved. "Never together" is never broken; what
// cannot be kept is said.
#pragma once

#include <string>
#include <vector>

#include "desk/class_list.h"
#include "kitchen/dish.h"
#include "kitchen/room.h"

namespace desk {

/// One cook of a lesson before it has dishes: who works as one, and where.
struct Seat {
  std::vector<std::string> pupils;  ///< one to three names of the class
  int place = 0;                    ///< index into Room::places
  friend bool operator==(const Seat&, const Seat&) = default;
};

struct SeatingWish {
  int together = 2;               ///< 1, 2 or 3
  std::vector<std::string> away;  ///< pupils who are not there
  std::vector<Seat> keep;         ///< as they sit now; may name pupils who have left
};

struct Seating {
  std::vector<Seat> seats;         ///< in the order of the room's places
  bool shares_places = false;      ///< there are more cooks than places
  std::vector<std::string> notes;  ///< what could not be kept, in words
  friend bool operator==(const Seating&, const Seating&) = default;
};

/// Deterministic: the same class, room and wish give the same seats. Work grows with the square of
/// the class, which has 40 pupils at most.
Seating seat(const Class&, const kitchen::Room&, const SeatingWish&);

/// "Aisha and Ben"; "Aisha, Ben and Cara".
std::string cook_name(const Seat&);

}  // namespace desk
