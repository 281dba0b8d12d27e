// A dish: what is cooked. Ingredients, a method of steps, what it needs and how long it keeps.
//
// "Chop the onion: 6 minutes, busy hands, on the vegetable board; then soften it in the large pan."
// A Dish is a plain value made by the reader (kitchen/read.h), which checks it whole; code after
// the reader may rely on every rule stated here. It knows nothing of cooks, rooms or clocks.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "base/time.h"

namespace kitchen {

using base::Seconds;

/// How much of one person a step takes, in tenths (rule A1). No other values exist.
enum class Attention : std::int8_t {
  kLeave = 0,         ///< "leave": waits by itself
  kGlance = 1,        ///< "glance": look now and then
  kWatch = 2,         ///< "watch": look often
  kStandBy = 5,       ///< "stand by": stirring
  kHands = 8,         ///< "hands": hands busy
  kNothingElse = 10,  ///< "nothing else": eyes and hands (hot oil, caramel, first knife lesson)
};
constexpr int tenths(Attention a) { return static_cast<int>(a); }
constexpr bool hands_on(Attention a) { return tenths(a) >= 5; }

/// What a step leaves on board and bench (rule H1). Higher is dirtier; going down needs a
/// clean-down between.
enum class Hygiene : std::int8_t { kReadyToEat = 0, kUnwashed = 1, kRaw = 2 };

/// Why an adult must be near (rule V1).
enum class Hazard : std::int8_t { kHotOil, kFirstKnife, kLargePan, kBlender, kProbing, kAdultOnly };

/// The fourteen of Annex II, Regulation (EU) No 1169/2011 as kept in UK law.
enum class Allergen : std::int8_t {
  kCelery,
  kGluten,
  kCrustaceans,
  kEggs,
  kFish,
  kLupin,
  kMilk,
  kMolluscs,
  kMustard,
  kNuts,
  kPeanuts,
  kSesame,
  kSoya,
  kSulphites
};
using Allergens = std::set<Allergen>;

struct Ingredient {
  std::string name;
  double amount = 0;   ///< for the whole dish as written; 0 = "to taste"
  std::string unit;    ///< g, ml, or a word ("egg", "pinch")
  Allergens contains;  ///< all fourteen when the label is unread (rule K2)
  bool label_read = true;
  std::string food;         ///< key of the table of foods; empty = found by its name
  std::string preparation;  ///< "peeled and diced"; empty when there is none
  bool optional = false;    ///< may be left out
  friend bool operator==(const Ingredient&, const Ingredient&) = default;
};

enum class HeatKind : std::int8_t { kRing, kOven, kGrill };
enum class OvenKind : std::int8_t { kConventional, kFan, kGrill };

/// One position of the oven knob: whole tens of degrees and the kind of heat (rule O3).
struct OvenSetting {
  int celsius = 180;  ///< 50 to 260, a multiple of 10
  OvenKind kind = OvenKind::kConventional;
  friend auto operator<=>(const OvenSetting&, const OvenSetting&) = default;
};

/// Where a step's heat comes from. Steps with one vessel stay on one cooker; a pan keeps its ring,
/// a tray its shelf, from its first step to the end of its closing step (rules O1, O2).
struct Heat {
  HeatKind with = HeatKind::kRing;
  std::string vessel;   ///< "large pan", "tin"; one name = one vessel within a dish; never empty
  OvenSetting setting;  ///< ovens and in-oven grills only
  int tolerance = 0;    ///< degrees either way that do as well (multiple of 10)
  int shelf_twelfths = 12;   ///< share of a shelf, 1 to 24 (rule Y7); ovens only
  bool shared_tray = false;  ///< cooks who share a tray go in and come out together (rule Y7)
  int rings = 1;             ///< rings taken; 1 or 2
  Seconds door_shut{0};      ///< from the start of the bake (rule O7)
  friend bool operator==(const Heat&, const Heat&) = default;
};

struct KitNeed {
  std::string item;  ///< the room's word for it: "food processor"
  int count = 1;
  friend bool operator==(const KitNeed&, const KitNeed&) = default;
};

enum class Moment : std::int8_t { kStart, kEnd };

/// This step may come only after another of the same dish: `least <= moment(this) - moment(other)
/// <= most`. Words in files: "straight away" = at most 1 min, "within 5 min", "can wait" = no most
/// (rule L1).
struct Follows {
  int step = 0;                    ///< index into Dish::method, earlier or later, never itself
  Moment of = Moment::kEnd;        ///< moment of the other step
  Moment moment = Moment::kStart;  ///< moment of this step
  Seconds least{0};
  std::optional<Seconds> most;
  bool safety = false;  ///< breaking it is a safety matter, not only quality
  friend bool operator==(const Follows&, const Follows&) = default;
};

/// The adult looks at each cook's result after this step, before what follows it (rule Y5).
struct Gate {
  std::string look_for;
  Seconds length{60};
  Seconds within{300};  ///< longest wait for the look
  friend bool operator==(const Gate&, const Gate&) = default;
};

struct Step {
  std::string id;        ///< unique in its dish: "dice-onion"
  std::string says;      ///< one sentence to a pupil: "Peel and dice the onion."
  std::string brief;     ///< at most 12 letters, for bars and the wall: "Dice onion"
  Seconds least{60};     ///< hands-on: the pupil's median; passive: stated minutes
  Seconds most{60};      ///< > least only for passive steps that may run longer (rule L2)
  double spread = 0.3;   ///< sigma of the logarithm of the duration, 0 to 1.5
  int elastic_loss = 0;  ///< quality points a minute beyond `least`
  Attention attention = Attention::kHands;
  int people = 1;  ///< 2 = two people at once (rule A4)
  std::vector<Follows> follows;
  std::optional<Hygiene> hygiene;  ///< none = uses no board or bench
  std::optional<Heat> heat;
  std::optional<int> closes;  ///< index of the heat step this one takes out, drains or lifts (rule
                              ///< L3)
  bool added = false;         ///< the reader added this closing step and said so
  std::vector<KitNeed> kit;
  std::vector<int> uses;  ///< indices into Dish::ingredients; empty = any of them (allergens, rule
                          ///< K2)
  int sink = 0;           ///< sink positions taken while it runs (0 or 1)
  bool at_table = false;  ///< at the common ingredients table
  int fridge_tenths = 0;  ///< fridge space in tenths of a shelf while it runs
  int freezer_tenths = 0;
  std::optional<Hazard> hazard;
  bool can_put_down = false;  ///< may be split into parts of at most 5 min (rule P1)
  std::optional<Gate> gate;
  std::vector<std::string> skills;
  friend bool operator==(const Step&, const Step&) = default;
};

enum class HoldKind : std::int8_t { kHot, kCrisp, kKeeps };
enum class HoldIn : std::int8_t { kNone, kOven80, kRing, kFridge };

/// How long the dish may wait between ready and served, and what it takes up meanwhile (rules S3,
/// S4).
struct Hold {
  HoldKind kind = HoldKind::kHot;
  Seconds most{1200};  ///< hot 20 min, crisp 10 min, keeps: the safety limit (4 h chilled food out,
                       ///< A028-A035)
  HoldIn in = HoldIn::kNone;
  friend bool operator==(const Hold&, const Hold&) = default;
};

enum class KeptIn : std::int8_t { kFridge, kFreezer, kProveInFridge };

/// A place in the method where a dish may be put away until the next lesson (rule C1).
struct Split {
  std::string name;    ///< "after shaping"
  int after_step = 0;  ///< last step done in the first lesson (and everything it follows)
  KeptIn kept = KeptIn::kFridge;
  Seconds longest{0};  ///< fridge at most 2 days, prove in fridge at most 24 h, freezer: as written
  Seconds cooling{0};  ///< least minutes between the end of cooking and the fridge; 0 = not cooked
  int fridge_tenths = 2;
  friend bool operator==(const Split&, const Split&) = default;
};

/// What is cooked. Invariants (the reader refuses anything else): at least one step; ids unique;
/// the waits of the method do not contradict each other; every oven, grill, boil and fry step has a
/// closing step; only passive steps are elastic; the last step is the one whose end makes the dish
/// ready.
struct Dish {
  std::string name;
  std::string tag;  ///< two letters on every bar: "LD"
  int portions = 1;
  std::vector<Ingredient> ingredients;
  std::vector<Step> method;
  Hold hold;
  Seconds cooling{0};                ///< from coming out until it may be lidded to go home
  std::optional<bool> keep_chilled;  ///< kept in a fridge once it is cold; none = as the hold tells
  int wash_after = 0;  ///< index of the step after which its first washing up can be done (rule Y6)
  std::vector<Split> splits;
  std::string variant;  ///< name of the variant this value is, empty for the dish as written
  std::string aim;      ///< what it is cooked to learn, one sentence; may be empty
  std::vector<std::string> key_words;  ///< to know afterwards
  std::vector<std::string> questions;  ///< for the waiting minutes
  friend bool operator==(const Dish&, const Dish&) = default;
};

/// Everything the dish contains, over all its ingredients.
Allergens allergens(const Dish&);
/// What step `step` of the dish brings to its kit: of the ingredients it names, or of all of them.
Allergens allergens(const Dish&, int step);
/// Whether the food is kept in a fridge once it is cold: as the dish says; otherwise all food but
/// what keeps out of one (bread, biscuits: the hold "keeps", not in the fridge).
bool needs_chilling(const Dish&);
/// Index of the step whose end makes the dish ready (rule S1): the last of the method.
int last_step(const Dish&);
/// Stable order in which a pupil reads the method: by the waits, ties as written.
std::vector<int> reading_order(const Dish&);

}  // namespace kitchen
