// A step as a cook's paper tells it, at three levels of reading in the same frame, and what to look
// out for. Every word comes from the dish or from the plan.
#pragma once

#include <string>

#include "print/facts.h"

namespace print::sheets {

enum class Level {
  kFew,    ///< a few words: "Dice onion."
  kPlain,  ///< short sentences: "Peel the onion. Dice it."
  kFull,   ///< as the dish says it, with what the time is for
};
/// "few words", "plain", "full".
std::string_view word(Level);

/// What a task says at a level, with its full stop.
std::string told(const kitchen::Lesson&, const Task&, Level);
/// A sentence cut where a second instruction begins: after a semicolon, and at ", then", ", and"
/// before a verb. Never changes a word but for a capital.
std::string in_short_sentences(std::string_view sentence);
/// What to look out for: the gate's words, heat, sharp edges, raw food. Empty when there is
/// nothing. `still_hot`: something of the cook's own is on a ring or in an oven beyond this task.
std::string look_out(const kitchen::Lesson&, const Task&, bool still_hot = false);

}  // namespace print::sheets
