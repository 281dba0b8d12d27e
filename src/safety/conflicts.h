// What in a lesson meets somebody who must not have it: who, which dish, ingredient and step, why,
// how serious, and what would settle it.
//
// "Daisy (milk): Fruit scones contain milk (butter). Use the variant 'oat drink and spread'." And:
// "Food processor: George makes macaroni cheese on it before her." The list never says that a
// lesson is safe; labels and the school's own records decide.
#pragma once

#include <string>
#include <vector>

#include "safety/substitutes.h"

namespace safety {

enum class Why : std::int8_t {
  kOwnDish,     ///< it is in what the cook makes
  kDishBefore,  ///< it is in another dish of the same cook, and this one is free of it
  kSamePlace,   ///< another cook works at the same place with it
  kSharedKit,   ///< another cook uses the same kit for it (rule K2)
  kSharedOil,   ///< another cook of the bay fries food with it
  kAirborne,    ///< flour, dust or steam of it
  kNeighbour,   ///< the bay's sink, cloths and cookers
  kInTheRoom,   ///< it must not be in the room at all
};

/// What must happen, most serious first.
enum class Seriousness : std::int8_t {
  kStop,       ///< not so: change it
  kSettle,     ///< settle it before the lesson: read a label, name a food, ask
  kKeepApart,  ///< goes with care in the lesson
};

struct Remedy {
  enum class Kind : std::int8_t {
    kVariant,
    kSubstitute,
    kLeaveOut,
    kReadLabel,
    kNameFood,
    kAsk,
    kOtherDish,
    kOwnKit,
    kFirstInLine,
    kMove,
    kKeepOut
  };
  Kind kind = Kind::kAsk;
  std::string says;  ///< one sentence without its full stop
  friend bool operator==(const Remedy&, const Remedy&) = default;
};

struct Conflict {
  int cook = 0;  ///< who must not have it: index into Lesson::cooks
  Need need;
  Why why = Why::kOwnDish;
  Seriousness seriousness = Seriousness::kStop;
  Stated stated = Stated::kContains;  ///< the strongest of what brings it
  std::vector<int> dishes;            ///< that bring it: indices into Lesson::dishes; never empty
  std::vector<Stated> of_dishes;      ///< what is stated of each of them; same length
  std::vector<int> others;            ///< the cooks who bring it; empty = the cook's own dish
  int ingredient = -1;                ///< of dishes.front(); -1 = several
  int step = -1;                      ///< of dishes.front(); -1 = any
  std::string thing;                  ///< kit item, or "flour dust", "steam"
  std::string from;                   ///< who says so
  std::vector<Remedy> settled_by;     ///< never empty
  friend bool operator==(const Conflict&, const Conflict&) = default;
};

struct ConflictsAsked {
  const kitchen::Lesson& lesson;
  const LessonNeeds& needs;
  const Evidence& evidence;
  const Substitutes& substitutes;
  /// Dishes known besides those of the lesson, for variants: matched by name.
  const std::vector<kitchen::Dish>& known;
};

/// Every conflict of the lesson, most serious first, then by cook. A cook at whose need nothing is
/// even doubtful has none.
std::vector<Conflict> conflicts(const ConflictsAsked&);

/// The conflict in a sentence: "Fruit scones contain milk: butter (the dish)."
std::string sentence(const kitchen::Lesson&, const Conflict&);
/// "change it", "settle before the lesson", "keep apart".
std::string_view word(Seriousness);

}  // namespace safety
