// The verbs of a method: what kind of work each is, where it is done, what it needs.
//
// "simmer" is a pan on a ring that wants a glance; "knead" is hands on a bench. Common practice, no
// source.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "kitchen/reading/draft.h"
#include "kitchen/reading/line_tokens.h"

namespace kitchen {

enum class Work : std::int8_t {
  kCut,  ///< peel, chop, slice: knife and board
  kGrate,
  kWash,
  kWeigh,
  kMix,  ///< stir, beat, fold, rub in: a bowl
  kWhisk,
  kKnead,
  kRollOut,
  kShape,
  kAssemble,  ///< spread, fill, layer, pour into a tin
  kLine,      ///< grease and line a tin
  kAdd,       ///< into whatever is being made
  kOpen,      ///< tins and packets
  kDrain,
  kMash,
  kBlend,
  kSeason,
  kProbe,
  kServe,
  kTakeOut,  ///< off the ring, out of the oven
  kSetOven,  ///< in advance
  kFry,
  kDeepFry,
  kMelt,
  kBringToBoil,
  kThicken,
  kBoil,
  kSimmer,
  kCookOn,  ///< "cook": whatever the pan or the oven is doing
  kBake,
  kGrill,
  kMicrowave,
  kKettle,
  kChill,
  kFreeze,
  kStand,  ///< rest, cool, prove, soak, marinate
};

bool on_heat(Work);  ///< a ring, the oven, the grill, the microwave
bool waits(Work);    ///< passes by itself once begun
Attention usual_attention(Work);
Where place_of(Work);  ///< only for work on heat, in the fridge or the freezer

struct Action {
  std::string_view verb;  ///< as the text says it, in the plain form
  Work work;
  std::string_view brief;  ///< for the wall: "Chop"
  std::string_view skill;  ///< empty = none to name
  bool noun_too = false;   ///< "cream", "butter", "roll": a verb only before a determiner
};

/// The action a word names; nothing for other words. "frying", "fried" and "fries" are not
/// instructions and name nothing.
const Action* action_named(std::string_view folded_word);

/// The action that begins at the token: its word, or two ("bring", "rub in", "roll out", "take
/// off"), told apart from the same word as a noun; nothing if none begins there.
const Action* action_at(const std::vector<LineToken>&, std::size_t token);

/// What is done without a word of the table: "Dish up", "Build layers of sauce and pasta".
const Action& some_action();

/// What a pupil fetches for a kind of work, in the room's words.
std::vector<std::string> usual_equipment(Work);

}  // namespace kitchen
