// A teaching kitchen: bays of places with cookers and sinks, and the things everybody shares.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "base/time.h"
#include "kitchen/dish.h"

namespace kitchen {

enum class GrillKind : std::int8_t { kNone, kInOven, kEyeLevel };

/// What of a cooker burns gas; the rest is electric.
enum class Gas : std::int8_t { kNone, kRings, kAll };

struct Cooker {
  std::string name;  ///< unique in the room: "A1"
  int bay = 0;       ///< index into Room::bays
  int rings = 4;
  int shelves = 2;  ///< 0 = a hob without oven
  GrillKind grill = GrillKind::kInOven;
  int grill_places = 1;  ///< eye-level grill only
  bool fan = true;       ///< the oven has a fan
  Gas gas = Gas::kNone;  ///< for the house rule on who may use gas (rule Y11)
  friend bool operator==(const Cooker&, const Cooker&) = default;
};

struct Place {
  std::string name;  ///< unique in the room: "A1"
  int bay = 0;
  std::vector<int> cookers;  ///< within reach, own one first; indices into Room::cookers; never
                             ///< empty
  friend bool operator==(const Place&, const Place&) = default;
};

struct Bay {
  std::string name;  ///< "A"
  int sinks = 1;     ///< sink positions; draining, washing vegetables, kit, washing up
  friend bool operator==(const Bay&, const Bay&) = default;
};

struct Kit {
  std::string item;  ///< "food processor"
  int count = 1;
  bool washed_between = false;  ///< held until its user has washed it (rule K1)
  Seconds full_clean{360};      ///< full clean for allergens (rule K2)
  friend bool operator==(const Kit&, const Kit&) = default;
};

/// How long an oven takes from one setting to another (rule O4). All in whole minutes after T3.
/// Defaults are from memory except FD011 (cold to 180 degrees, 10 min).
struct ChangeOver {
  Seconds cold_to_180{600};
  Seconds cold_more_per_10{60};  ///< above 180, and less below it
  Seconds heat_per_10{60};       ///< from warm, upwards
  int cool_degrees_per_minute = 7;
  friend bool operator==(const ChangeOver&, const ChangeOver&) = default;
};

/// Minutes from `from` to `to` for a warm oven; equal settings 0; another kind of heat counts as 1
/// min at least. Satisfies the triangle inequality for every ChangeOver the reader lets through.
Seconds change_over(const ChangeOver&, OvenSetting from, OvenSetting to);
/// Minutes from a cold oven (20 degrees, or after a break).
Seconds heat_up(const ChangeOver&, OvenSetting to);

struct Room {
  std::string name;
  std::vector<Bay> bays;
  std::vector<Place> places;
  std::vector<Cooker> cookers;
  int hand_basins = 1;         ///< positions at basins kept for hands
  bool hands_at_sinks = true;  ///< bay sinks may serve for washing hands as well
  int table_positions = 6;     ///< cooks at the ingredients table at once (rule K7)
  int fridge_tenths = 40;
  int freezer_tenths = 10;
  std::vector<Kit> kit;
  ChangeOver change_over;
  /// Sets of bays one adult can see from one standing point (rule V4); empty = all see all.
  std::vector<std::vector<int>> seen_together;
  friend bool operator==(const Room&, const Room&) = default;
};

/// Whether heat of that kind on this cooker is a gas flame.
bool burns_gas(const Cooker&, HeatKind);
/// The kit of that name, or nothing.
const Kit* find_kit(const Room&, const std::string& item);

}  // namespace kitchen
