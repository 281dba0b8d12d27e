// Ovens, rings, sinks and kit as a plan uses them: when to switch on, what goes in, how many at
// once and when.
#pragma once

#include <string>
#include <vector>

#include "print/facts.h"

namespace print {

/// One vessel's stay in an oven; cooks who share a tray are one stay (rules O2, Y7).
struct Tray {
  int dish = 0;
  int step = 0;  ///< first step of the vessel
  std::vector<int> cooks;
  Seconds from{0}, to{0};  ///< from its first step to the end of its closing step
  kitchen::OvenSetting setting;
  int twelfths = 12;  ///< of a shelf
};

/// Trays at one setting without a change between.
struct Batch {
  kitchen::OvenSetting setting;
  Seconds from{0}, to{0};
  std::vector<Tray> trays;
};

/// A hand at the oven knob.
struct KnobTurn {
  Seconds at{0};  ///< latest for switching on; for a change, when the oven is empty
  Seconds ready{0};
  kitchen::OvenSetting to;
  bool from_cold = false;
  bool already_on = false;  ///< set by the technician before the lesson
};

struct OvenUse {
  int cooker = 0;
  std::vector<Batch> batches;   ///< never empty
  std::vector<KnobTurn> knobs;  ///< one for each batch
};
/// Ovens that are used, in the order of the room.
std::vector<OvenUse> oven_use(const kitchen::Lesson&, const Plan&);

/// Ovens with the same settings, times and numbers of trays: one line, one hill.
struct OvensAlike {
  std::vector<OvenUse> ovens;  ///< never empty
  bool own_trays_only = true;  ///< every oven holds one tray a batch, of the one cook who has the
                               ///< cooker first
};
std::vector<OvensAlike> ovens_alike(const kitchen::Lesson&, const std::vector<OvenUse>&);

/// The knob turns of all ovens, those at the same time to the same setting together.
struct KnobRound {
  KnobTurn turn;
  std::vector<int> cookers;
};
std::vector<KnobRound> knob_rounds(const std::vector<OvenUse>&);
/// "Switch on ovens A1 and A2 to 200 °C; ready 11:17".
std::string knob_words(const kitchen::Lesson&, const KnobRound&);

/// How many of something are in use from this moment until the next.
struct Count {
  Seconds from{0};
  int in_use = 0;
};
struct Usage {
  std::vector<Count> counts;  ///< by time; ends with nought
  int most = 0;
  Seconds most_from{0}, most_to{0};  ///< the first time the most are in use
};

Usage ring_use(const kitchen::Lesson&, const Plan&);
Usage sink_use(const kitchen::Lesson&, const Plan&);
/// Uses of a kit item by the steps (not its washing).
Usage kit_use(const kitchen::Lesson&, const Plan&, int kit);
/// Who uses a kit item when, by start.
std::vector<Turn> kit_turns(const kitchen::Lesson&, const Plan&, int kit);

int rings_in_room(const kitchen::Lesson&);
int sinks_in_room(const kitchen::Lesson&);

}  // namespace print
