// A lesson: dishes, room, class, adults, windows and the bell. The one value every plan is made
// from and checked against. All times are seconds since the opening; `opens` ties them to the wall
// clock for printing only.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "base/time.h"
#include "kitchen/dish.h"
#include "kitchen/room.h"

namespace kitchen {

/// What "done" means (rule Y12).
enum class Purpose : std::int8_t { kTakeHome, kEatHere, kTaste, kJudged, kDemonstrate, kEvent };

/// How much of one adult a hazard takes, in hundredths, and how many at once (rules V1, V2).
struct Watch {
  int hundredths = 50;
  int at_once = 1000;
  friend bool operator==(const Watch&, const Watch&) = default;
};

/// The school's own switches, hard in every plan (rule Y11), and its minutes (common practice where
/// nothing is said).
struct HouseRules {
  std::string school;
  bool frying = true;        ///< hot oil allowed
  int frying_from_year = 7;  ///< lowest year group that may fry
  int knives_from_year = 7;
  int gas_from_year = 7;  ///< lowest year group that may cook on gas; 14 = none
  bool nuts = true;       ///< nuts and peanuts allowed in the room
  bool second_adult_for_frying = false;
  bool food_home_chilled = false;  ///< what needs the fridge goes home only out of it
  bool no_raw_tasting = false;     ///< nobody tastes a mixture with raw egg, flour, meat or fish
  int second_adult_above = 0;      ///< pupils one adult may have alone; 0 = the house does not say
  bool count_knives = true;        ///< count out and in, 2 min each (rule Y8)
  bool look_at_bays = true;        ///< the adult's look at each bay before dismissal (rule Y8)
  std::map<Hazard, Watch> watch;   ///< complete: every hazard has an entry
  Seconds apron_and_hands{120};    ///< FD001
  Seconds collect_ingredients{180};  ///< FD002
  Seconds collect_equipment{180};    ///< FD003
  Seconds clean_after_raw{240};      ///< FD038 less the hand-wash
  Seconds clean_after_unwashed{120};
  Seconds hand_wash{60};
  Seconds kit_wash{120};
  Seconds kit_wash_within{900};
  Seconds store{120};        ///< cover, label and put away (rule C2)
  Seconds pack{120};         ///< lid and label to go home (rule Y12)
  Seconds wash_up_one{840};  ///< for a cook of one, two, three people and one dish
  Seconds wash_up_two{600};
  Seconds wash_up_three{480};
  Seconds wash_up_more{180};  ///< each further dish
  bool wash_in_parts = true;  ///< rule Y6
  friend bool operator==(const HouseRules&, const HouseRules&) = default;
};

struct Adult {
  std::string name;
  bool leads = false;  ///< the teacher in charge: looks at gates, bays and knives, leads windows
  std::vector<Hazard> may_watch;  ///< rule V3
  Seconds from{0};
  Seconds to{0};  ///< in the room [from, to)
  friend bool operator==(const Adult&, const Adult&) = default;
};

struct Away {
  Seconds from{0}, to{0};
  friend bool operator==(const Away&, const Away&) = default;
};

/// One pupil, pair or group of three working as one at a place.
struct Cook {
  std::string name;         ///< "Aisha and Ben", unique in the lesson
  int people = 1;           ///< 1 to 3
  int place = 0;            ///< index into Room::places; two cooks may share a place
  std::vector<int> dishes;  ///< indices into Lesson::dishes
  Allergens avoids;
  double pace = 1.0;       ///< 0.5 to 2; minutes are multiplied by it
  Seconds arrives{0};      ///< rule W7
  Seconds leaves{0};       ///< their own bell
  std::vector<Away> away;  ///< one person of the cook is out (rule Y9)
  friend bool operator==(const Cook&, const Cook&) = default;
};

enum class WindowKind : std::int8_t {
  kHandsOff,  ///< register, demonstration, tasting talk (rule W2)
  kStop,      ///< everybody stops and looks, tied to steps (rule Y4)
  kBreak,     ///< rule W3, O6
};

/// A step of a dish of this lesson.
struct StepRef {
  int dish = 0;  ///< index into Lesson::dishes
  int step = 0;  ///< index into its method
  friend bool operator==(const StepRef&, const StepRef&) = default;
};

struct Window {
  std::string name;  ///< "Register"
  WindowKind kind = WindowKind::kHandsOff;
  Seconds earliest{0};  ///< start range (rule W1); equal = fixed
  Seconds latest{0};
  Seconds length{0};
  std::vector<int> audience;    ///< cooks; empty = everyone
  std::optional<int> led_by;    ///< adult; breaks have none
  std::vector<StepRef> after;   ///< starts after these have ended for the audience (rule Y4)
  std::vector<StepRef> before;  ///< these start only after it (rules W6, Y4)
  bool ovens_stay_on = false;   ///< a named adult stays (rule Y10); breaks only
  bool tasting = false;         ///< starts at or after every serve moment of its audience (rule S2)
  friend bool operator==(const Window&, const Window&) = default;
};

/// A step whose start somebody has fixed: "the simmer starts at 10:25" (rule W8).
struct Pin {
  StepRef step;
  Seconds at{0};           ///< whole minutes
  std::vector<int> cooks;  ///< empty = everybody who makes the dish
  friend bool operator==(const Pin&, const Pin&) = default;
};

struct Ban {
  Hazard hazard = Hazard::kHotOil;  ///< must have ENDED by `after` (rule W5)
  Seconds after{0};
  friend bool operator==(const Ban&, const Ban&) = default;
};

/// Dishes served together. Every dish of every cook belongs to one sitting.
struct Sitting {
  std::string name;
  Seconds earliest{0}, latest{0};  ///< bounds of the serve moment (rule S2)
  std::vector<int> dishes;         ///< indices into Lesson::dishes; empty = all
  friend bool operator==(const Sitting&, const Sitting&) = default;
};

enum class Timelines : std::int8_t {
  kWaves,
  kOwn
};  ///< same steps at the same times, or each cook their own (Y1)

/// Which split of a dish this lesson uses (rule C1), first half or second.
struct CarryOver {
  int dish = 0;
  int split = 0;
  bool second_half = false;
  friend bool operator==(const CarryOver&, const CarryOver&) = default;
};

struct OvenAtOpening {
  int cooker = 0;
  OvenSetting setting;  ///< set by the technician; ovens not named are cold (rule O5)
  friend bool operator==(const OvenAtOpening&, const OvenAtOpening&) = default;
};

struct Lesson {
  std::string title;     ///< "9K, lentil dhal"
  std::string date;      ///< "2026-11-17"
  int opens_minute = 0;  ///< opening on the clock, minutes after midnight local time (printing
                         ///< only)
  std::string zone = "Europe/London";
  Seconds bell{0};       ///< B: washed up and out
  Seconds check_out{0};  ///< kept free before the bell for checking out (rule K5)
  int year = 9;          ///< year group, for house rules
  Purpose purpose = Purpose::kEatHere;
  Timelines timelines = Timelines::kWaves;
  int most_waves = 3;
  Room room;
  HouseRules rules;
  std::vector<Dish> dishes;  ///< variants are dishes of their own here
  std::vector<Cook> cooks;
  std::vector<Adult> adults;  ///< at least one; exactly one leads
  std::vector<Window> windows;
  std::vector<Pin> pins;
  std::vector<Ban> bans;
  std::vector<Sitting> sittings;  ///< at least one unless purpose is take home
  std::vector<CarryOver> carry;
  std::vector<OvenAtOpening> ovens;
  bool trays_at_places = false;  ///< the technician has set trays out: no collecting (rule K7)
  bool taste_after_washing_up = false;  ///< rule S6
  bool spread_before_buffer = false;    ///< rule Z5: swap G2 and G3
  std::optional<int> rack_for;          ///< adult who sees to dishes left on the rack (rule Y12)
  Seconds opens_late{0};                ///< usual lateness of this class, for the chance (7.1)
  friend bool operator==(const Lesson&, const Lesson&) = default;
};

/// A clock time of the lesson, "10:50".
std::string clock(const Lesson&, Seconds since_opening);
/// Whether the house rules let this class use that heat of that cooker (gas by year, rule Y11).
bool may_use(const Lesson&, const Cooker&, HeatKind);
/// What one box of food to take home takes in the fridge, tenths of a shelf.
inline constexpr int kBoxTenths = 2;
/// Cooked food is cooled and in the cold within so long of cooking (handbook row A040).
inline constexpr Seconds kIntoTheFridge = base::minutes(90);
/// Whether the dish waits in the fridge to go home: food that needs it, going home from this
/// lesson, by the house rules (rule Y12). Left on the rack too; then an adult sees to it.
bool chilled_before_home(const Lesson&, int dish);
/// The pin of that cook's step, an index into Lesson::pins; -1 = it starts when it can.
int pin_of(const Lesson&, int cook, StepRef);
/// The bay of a cook's place, an index into Room::bays.
int bay_of(const Lesson&, int cook);

}  // namespace kitchen
