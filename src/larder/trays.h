// Tray lists: what the technician weighs, food by food, and where each pot goes, place by place.
//
// "Red lentils: 13 x 120 g (1.56 kg)" once, then "A1: Lentil dhal: red lentils 120 g, onion 1 ...".
// Trays free of what their cook avoids are weighed first and stand apart. Both views are made from
// the same trays, say the same words for everyone and know nothing of who pays or brings.
#pragma once

#include <string>
#include <vector>

#include "kitchen/foods.h"
#include "kitchen/lesson.h"
#include "larder/measure.h"

namespace larder {

/// One pot of a tray.
struct Pot {
  std::string food;         ///< key, or the ingredient's name when the table does not know it
  std::string name;         ///< as the dish says it
  std::string amount;       ///< as the dish says it: "120 g", "1 onion", "to taste"
  std::string preparation;  ///< "peeled and diced"
  Measure measure;
  Ratio size = 0;      ///< in the measure; 0 = to taste
  bool summed = true;  ///< false: the amount cannot be turned into the food's measure
  bool cold = false;   ///< stays in the fridge until the lesson
  kitchen::Allergens contains;
  friend bool operator==(const Pot&, const Pot&) = default;
};

struct Tray {
  int bay = 0, place = 0;  ///< indices into the room
  int cook = 0;            ///< index into the lesson's cooks
  std::string where;       ///< "Bay A, A1"
  std::vector<std::string> dishes;
  std::vector<Pot> pots;  ///< in the order of the dishes
  bool apart = false;     ///< its cook avoids something: weighed first, covered, stands apart
  friend bool operator==(const Tray&, const Tray&) = default;
};

/// One food weighed once for all trays.
struct Weighing {
  std::string food, name;
  Measure measure;
  struct Portion {
    std::string amount;  ///< as the dish says it
    Ratio size = 0;
    int times = 0;
    std::vector<std::string> places;        ///< where these pots go, in the room's order
    std::vector<std::string> places_apart;  ///< of them, the trays that stand apart
    friend bool operator==(const Portion&, const Portion&) = default;
  };
  std::vector<Portion> portions;  ///< largest first
  Ratio total = 0;
  bool summed = true;
  bool cold = false;
  bool clean_first = false;  ///< wash hands, scoop and scales before it: what came before it is
                             ///< avoided by somebody and this goes on trays that stand apart
  friend bool operator==(const Weighing&, const Weighing&) = default;
};

struct Trays {
  std::vector<Tray> trays;            ///< those apart first, then by bay and place
  std::vector<Weighing> weighings;    ///< foods of the trays apart first; dry before cold
  std::vector<std::string> warnings;  ///< a pot of a tray apart contains what its cook avoids
  friend bool operator==(const Trays&, const Trays&) = default;
};

Trays trays_of(const kitchen::Lesson&, const kitchen::Foods&);

}  // namespace larder
