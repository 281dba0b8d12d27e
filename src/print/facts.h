// What a plan means to the people in the room, worked out once for text, picture and machines: who
// is in which wave, what a wave does together and what it does in turn, where each adult stands,
// when each oven is switched on. Everything here is read off the plan; nothing is planned again.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "print/words.h"
#include "timeplan/answer.h"

namespace print {

using timeplan::Answer;
using timeplan::Plan;
using timeplan::Task;
using timeplan::TaskKind;

/// The five ways a cook's time looks, in patterns and words (docs/reading-the-plan.md).
enum class Look : std::int8_t { kHands, kWatch, kLeave, kGrownUp, kClean };

Look look(const kitchen::Lesson&, const Task&);
/// "hands", "watch", "leave", "grown-up", "clean".
std::string look_word(Look);
/// The cook can do nothing beside it: drawn as the bar itself, never as a foot line.
bool keeps_hands_busy(const kitchen::Lesson&, const Task&);

/// The step a task belongs to, if any.
const kitchen::Step* step_of(const kitchen::Lesson&, const Task&);
/// At most fourteen letters: "Dice onion", "wash up 2".
std::string brief(const kitchen::Lesson&, const Task&);
/// One sentence without its full stop: "Peel and dice the onion".
std::string sentence(const kitchen::Lesson&, const Task&);
/// Everything about one task in a sentence or two: what, who and where, when, attention, oven, kit,
/// adult.
std::string task_words(const kitchen::Lesson&, const Task&);
/// "Fajitas", or "Fajitas, with beans" for a variant.
std::string dish_name(const kitchen::Dish&);
/// The dish's two letters, or nothing.
std::string tag(const kitchen::Lesson&, int dish);
/// What to call across the room: "A1", or "A1 Ben" when two cooks share the place.
std::string call(const kitchen::Lesson&, int cook);
/// The cooks of an audience; an empty audience is everyone.
std::vector<int> audience(const kitchen::Lesson&, const kitchen::Window&);

/// Cooks who start the same thing at the same time.
struct Turn {
  Seconds start{0}, end{0};
  std::vector<int> cooks;  ///< in the order of the lesson; empty for windows
};

/// One thing a wave does: together (one turn) or in turn.
struct Doing {
  Task example;              ///< kind, dish, step, part, window, adult of the first
  Seconds start{0}, end{0};  ///< first start, last end
  std::vector<Turn> turns;   ///< by start
  bool in_turn() const { return turns.size() > 1; }
};

struct Wave {
  int number = 0;  ///< from 0
  std::vector<int> cooks;
  std::vector<int> bays;      ///< of its cooks, each once
  std::vector<int> dishes;    ///< of its cooks, each once
  std::vector<Doing> doings;  ///< by start; the windows it attends among them
};

/// The waves of a plan; one entry for each cook when every cook has a timeline of their own.
std::vector<Wave> waves(const kitchen::Lesson&, const Plan&);
/// "A1 A2 B1, then C1 C2"; one after another when nobody starts together.
std::string call_order(const kitchen::Lesson&, const Doing&);

/// A moment of a stand: who is seen to, and in which bay.
struct Visit {
  Seconds from{0}, to{0};
  int bay = -1;     ///< -1 = at the front
  std::string who;  ///< "A1", "bay A"; empty at the front
};

/// Where an adult must be, for how long and why. Visits to one purpose close together are one
/// stand.
struct Stand {
  Seconds from{0}, to{0};
  std::string why;            ///< "hot oil: fry rolls"
  std::vector<Visit> visits;  ///< never empty
  std::optional<kitchen::Hazard> hazard;
};
/// "front", "A1", "11:18 A1 B1, 11:19 A2": clock times only when the adult moves on.
std::string where_words(const kitchen::Lesson&, const Stand&);
/// "Front: Register", "Hot oil: fry rolls: 12:39 A1, 12:45 A2".
std::string stand_words(const kitchen::Lesson&, const Stand&);
std::vector<Stand> stands(const kitchen::Lesson&, const Plan&, int adult);

}  // namespace print
