// A time plan in kitchen terms: who does what, where, from when to when. Made by the planner,
// judged by verify(), played by chance(), said and drawn by the rest. It lists every cook's every
// task, so it can be judged without knowing how it was found.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "kitchen/lesson.h"

namespace timeplan {

using base::Seconds;

/// What a task is. Besides the steps of a method there are the kinds made from the rules;
/// docs/methods/rules.md says when each must exist, how long it takes and what it uses.
enum class TaskKind : std::int8_t {
  kApronAndHands,       ///< H7
  kCollectIngredients,  ///< K7
  kCollectEquipment,    ///< K7
  kStep,                ///< a step of a method, or one part of it (P1)
  kHandWash,            ///< H5, after a raw group
  kCleanDown,           ///< H3
  kKitWash,             ///< K1
  kFullClean,           ///< K2
  kLook,                ///< Y5, the adult at a gate
  kStore,               ///< C2
  kTakeOutOfStore,      ///< C3
  kPack,                ///< Y12
  kWashUp,              ///< K5, Y6, one part of it
  kWindow,              ///< W1 to W3, Y4; cook = -1
  kBayLook,             ///< Y8; cook = -1
  kKnivesOut,           ///< Y8; cook = -1
  kKnivesIn,            ///< Y8; cook = -1
};

/// One line of the plan. Indices point into the lesson; -1 = does not apply.
struct Task {
  TaskKind kind = TaskKind::kStep;
  int cook = -1;
  int dish = -1;  ///< into Lesson::dishes
  int step = -1;  ///< into the dish's method (kStep, kLook, kHandWash: last raw step of the group;
                  ///< kKitWash: last use)
  int part = 0;   ///< kStep split by P1, kWashUp: 0, 1, ...
  int window = -1;  ///< kWindow
  int bay = -1;     ///< kBayLook
  Seconds start{0};
  Seconds end{0};
  int cooker = -1;                              ///< steps with heat
  std::optional<kitchen::OvenSetting> setting;  ///< oven steps
  int sink_bay = -1;                            ///< bay whose sink position is used
  bool basin = false;          ///< kApronAndHands, kHandWash: at the hand basins (else at sink_bay)
  int kit = -1;                ///< into Room::kit (kKitWash, kFullClean)
  std::vector<int> kit_units;  ///< kStep: unit number of each KitNeed, in order; kKitWash,
                               ///< kFullClean: one
  int adult = -1;              ///< who watches, leads or looks
  friend bool operator==(const Task&, const Task&) = default;
};

struct Served {
  int cook = 0;
  int sitting = 0;
  Seconds at{0};  ///< V_q
  friend bool operator==(const Served&, const Served&) = default;
};

/// A clock time at which a whole wave should have reached something (rule Y3).
struct Checkpoint {
  int wave = 0;
  Seconds at{0};             ///< on the five-minute grid of the clock
  int dish = -1, step = -1;  ///< the step that starts then or later; -1: washing up
  std::string says;          ///< "pans on"
  friend bool operator==(const Checkpoint&, const Checkpoint&) = default;
};

/// What holding checkpoints to the five-minute grid did to a level (rule Y3).
struct OnTheGrid {
  std::int64_t free_value = 0;  ///< of the plan before its checkpoints were set
  std::int64_t bound = 0;       ///< proved for all plans with the same checkpoints
  friend bool operator==(const OnTheGrid&, const OnTheGrid&) = default;
};

/// The goal levels of section 4. `bound` is proved for all plans no worse on the levels before it,
/// with checkpoints or without.
struct Level {
  std::string name;  ///< "G1 overrun"
  std::int64_t value = 0;
  std::int64_t bound = 0;
  bool proved = false;
  std::optional<OnTheGrid> grid;  ///< none where there are no checkpoints
  friend bool operator==(const Level&, const Level&) = default;
};

struct Plan {
  std::vector<Task> tasks;  ///< ordered by start, then cook, then kind, dish, step, part
  std::vector<Served> served;
  std::vector<int> wave_of_cook;  ///< 0, 1, 2; every cook a wave of its own when timelines are own
  int waves = 1;
  std::vector<Seconds> buffer;  ///< b_c of rule 8.1, one a cook
  std::vector<Checkpoint> checkpoints;
  std::vector<Level> levels;  ///< G1, G2, Gw, G3, G4, G6 in the lesson's order; G5 is reported, not
                              ///< bounded
  friend bool operator==(const Plan&, const Plan&) = default;
};

/// One broken rule: which, who, when, by how much, in words.
struct Violation {
  std::string rule;  ///< "A2", "O4", ...
  std::string message;
  std::vector<int> tasks;  ///< indices into Plan::tasks
  Seconds from{0}, to{0};
  friend bool operator==(const Violation&, const Violation&) = default;
};

/// Judges a plan against its lesson by docs/methods/rules.md alone. Returns all violations; empty =
/// proved. Shares no code with the planner or the engine.
std::vector<Violation> verify(const kitchen::Lesson&, const Plan&);

}  // namespace timeplan
