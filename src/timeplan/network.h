// The lesson as a network of tasks: every task every cook must or may do, how long it takes, what
// it uses, and the waits between them. Made once from the lesson by rules.md; the engine's problem
// and the simulation are both built from it. verify() does not use it: it derives everything a
// second time.
//
// Example: "cook 3, dhal, dice the onion, 7 min, busy hands, board class 1" is one Node; "start it
// after collecting" is a Wait; "the large pan stays on its ring from softening to serving" is a
// Held.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "timeplan/plan.h"

namespace timeplan {

enum class PoolKind : std::int8_t {
  kSink,   ///< index: bay; capacity in positions
  kBasin,  ///< capacity in positions
  kTable,
  kKit,    ///< index: Room::kit; capacity in units
  kRings,  ///< index: cooker
  kOven,   ///< index: cooker; capacity in twelfths of a shelf; has settings
  kGrill,  ///< index: cooker with an eye-level grill
  kFridge,
  kFreezer,
  kAdult,  ///< index: adult; capacity 100 hundredths
};

struct Pool {
  PoolKind kind = PoolKind::kSink;
  int index = 0;
  int unit = -1;  ///< kKit: 0 = the unit kept for cooks who avoid an allergen, -1 = all the others
  friend auto operator<=>(const Pool&, const Pool&) = default;
};

/// What a task or a held thing takes of one pool.
struct Need {
  Pool pool;
  int amount = 1;
  std::vector<kitchen::OvenSetting> settings;  ///< ovens: any one of these
  Seconds door_shut{0};
  std::optional<kitchen::Hazard> hazard;  ///< adults
  friend bool operator==(const Need&, const Need&) = default;
};

/// One way of doing it: everything in it is taken together.
using Way = std::vector<Need>;

struct Node {
  Task task;          ///< what it is; times and choices empty
  Seconds least{60};  ///< planned length on the grid (the mean for hands-on steps)
  Seconds most{60};
  Seconds median{0};  ///< the pupil's median before rounding, pace not included (7.1); 0 = fixed
                      ///< length
  double spread = 0;  ///< sigma of its logarithm; 0 = fixed length
  int attention = 0;  ///< tenths over all its people
  int busy = 0;       ///< halves of a person, rule A3: 2 for >= 8, 1 for 5, else 0; times people
  int people = 1;
  bool closing = false;   ///< take-out, drain, kit wash, hand-wash, clean-down: urgent when ready
                          ///< (rule D3)
  bool optional = false;  ///< clean-downs and full cleans
  bool queued = false;    ///< own start for every cook even in a wave (rule Y2)
  bool heated = false;    ///< uses ring, oven or grill: may not run in a break (rule W3)
  Seconds earliest{0};
  std::optional<Seconds> latest_end;
  int pin = -1;  ///< into Lesson::pins: it starts then and not otherwise (rule W8); -1 = free
  std::optional<kitchen::Hygiene> hygiene;                  ///< at the cook's place
  kitchen::Hygiene cleans = kitchen::Hygiene::kReadyToEat;  ///< clean-downs: the class they clean
  std::vector<Way> ways;        ///< alternatives; empty = needs nothing shared
  kitchen::Allergens contains;  ///< what it leaves on a kept unit of kit (rule K2)
  kitchen::Allergens avoids;    ///< what may not be on that unit before it
  int allergen_kit = -1;    ///< into Room::kit: kit whose kept unit it uses (or cleans), -1 = none
  std::vector<int> heldby;  ///< indices into Network::held whose cooker it must share (the vessel)
};

enum class WaitWhy : std::int8_t {
  kMethod,
  kCollect,
  kHands,
  kClosing,
  kParts,
  kGate,
  kWindow,
  kServe,
  kHold,
  kWash,
  kPack,
  kStore,
  kKit,
  kKnives,
  kBayLook,
  kTray
};

/// least <= moment(to) - moment(from) <= most.
struct Wait {
  int from = 0;
  kitchen::Moment from_moment = kitchen::Moment::kEnd;
  int to = 0;
  kitchen::Moment to_moment = kitchen::Moment::kStart;
  Seconds least{0};
  std::optional<Seconds> most;
  bool safety = false;
  WaitWhy why = WaitWhy::kMethod;
};

/// Something taken from the start of one task to the end (or start) of another, waiting included: a
/// pan's ring, a tray's shelf, kit until it is washed, a raw group's hands, food held hot.
struct Held {
  int cook = 0;
  int dish = -1;
  std::string what;  ///< "large pan"
  int from = 0;
  kitchen::Moment from_moment = kitchen::Moment::kStart;
  int to = 0;  ///< -1 = until the bell
  kitchen::Moment to_moment = kitchen::Moment::kEnd;
  std::vector<Way> ways;  ///< alternatives (cookers within reach); chosen once for the whole time
  std::vector<int> shuts_out;  ///< nodes that may not overlap it (rule H5)
  std::vector<int> nodes;      ///< tasks that use the vessel
};

/// A moment: serving. It takes no time and carries waits.
struct ServeMoment {
  int cook = 0;
  int sitting = 0;
  int node = 0;  ///< a node of length 0 stands for it in the network
};

struct Network {
  std::vector<Node> nodes;
  std::vector<Wait> waits;
  std::vector<Held> held;
  std::vector<ServeMoment> serves;
  std::vector<std::vector<int>> last_of_dish;  ///< [cook][position in Cook::dishes] node whose end
                                               ///< is R_k, -1 = carried over
  std::vector<std::vector<int>> wash_up;       ///< [cook] wash-up parts in order
  std::vector<int> line_of_cook;  ///< cooks of one line share the start of every task that is not
                                  ///< queued
  int lines = 1;
  std::vector<Seconds> buffer;  ///< b_c (8.1)
};

/// The network for a lesson whose cooks are split into waves. `wave_of_cook`: 0-based; ignored for
/// own timelines. Cooks of one wave with the same list of dishes form a line.
Network network(const kitchen::Lesson&, const std::vector<int>& wave_of_cook);

/// Capacity of a pool in this lesson.
int capacity(const kitchen::Lesson&, Pool);

}  // namespace timeplan
