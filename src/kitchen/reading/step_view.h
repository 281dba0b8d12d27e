// A gathered step as the passes that find its facts look at it: its clauses, its words, what the
// steps before it left. Each pass (uses, minutes, equipment, hygiene) is a file of its own.
#pragma once

#include <algorithm>
#include <initializer_list>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "base/text.h"
#include "kitchen/reading/draft.h"
#include "kitchen/reading/ingredient_words.h"
#include "kitchen/reading/step_pieces.h"
#include "kitchen/reading/task_times.h"
#include "kitchen/reading/ware_words.h"

namespace kitchen {

/// What the steps so far leave for the next: the oven as it was set, the pan on the ring.
struct SoFar {
  std::optional<Guess<HeatDraft>> oven;  ///< set in advance
  std::string tin;                       ///< the tin, tray or dish that was last spoken of
  bool tin_called_pan = false;           ///< American: a muffin pan, a baking pan
  std::string vessel;                    ///< where the food was last put, by the room's word
  std::string pan;                       ///< the pan that was last spoken of by its kind
  std::map<int, std::string> stands_in;  ///< ingredient -> the vessel it was last put in
  std::optional<HeatDraft> ring;         ///< where the last pan stood
  bool on_ring = false;                  ///< that pan still stands there
  bool deep_oil = false;                 ///< it is a pan of deep oil
  bool liquid = false;                   ///< something to simmer in has been poured into it
  Work heat = Work::kFry;                ///< the last work on heat, for "cook for 5 minutes more"
  std::vector<Work> works;               ///< of each step
  std::set<int> used;                    ///< ingredients
  std::set<std::string> made;            ///< "burger", "dough": what steps said they make
  std::set<int> combined;                ///< ingredients that are mixed or cooked with others
};

struct StepView {
  const StepPieces& pieces;
  const std::vector<Sentence>& sentences;
  const DishDraft& draft;  ///< the ingredients, and the steps before this one
  const IngredientWords& ingredients;
  const TaskTimes& times;
  const SoFar& so_far;

  std::vector<std::string> words;  ///< folded, in the singular
  std::vector<std::string> raw;    ///< as they stand, folded
  std::string phrase;              ///< `words` with a space before, between and behind
  std::vector<NamedWare> wares;    ///< pans, tins and tools that are named
  Work work = Work::kAdd;          ///< what the step as a whole is
  bool inherited = false;          ///< its ingredients are those of the step before
  bool cooked_before = false;      ///< some step before this one was on heat

  bool has(std::initializer_list<std::string_view> any) const {
    return std::any_of(words.begin(), words.end(), [&](const std::string& w) {
      return std::find(any.begin(), any.end(), w) != any.end();
    });
  }
  bool says(std::string_view several) const {
    return phrase.find(base::say(" ", several, " ")) != std::string::npos;
  }
  const std::vector<LineToken>& tokens(const Clause& c) const {
    return sentences[c.sentence].tokens;
  }
};

/// The view without `work`, which needs what the words say.
StepView view_of(const StepPieces&, const std::vector<Sentence>&, const DishDraft&,
                 const IngredientWords&, const TaskTimes&, const SoFar&);

/// What kind of work the step is, seen in its words and in what stands on the ring.
Work work_of(const StepView&);

/// What "the pan" is: the pan or, after the oven, the tin there has been talk of; else a pan.
std::string pan_meant(const StepView&);
/// The pan one takes for work on a ring when none is in use.
std::string usual_pan(Work);
/// The pan, tin or dish that is named; empty = none.
std::string named_vessel(const StepView&);

/// How sure a ring is that no word of the step speaks of.
constexpr double kStillOnTheRing = 0.5;

// Each pass fills its part of the step. `find_uses` comes first: the others ask for it.
void find_uses(StepView&, StepDraft&);
void find_heat(const StepView&, StepDraft&);
void find_minutes(const StepView&, StepDraft&);
void find_attention(const StepView&, StepDraft&);
void find_equipment(const StepView&, StepDraft&);
void find_hazards(const StepView&, StepDraft&);
void find_hygiene(const StepView&, StepDraft&);
/// What only the whole method tells: whether what is cut is cooked later.
void finish_hygiene(DishDraft&, const std::vector<Work>&, const IngredientWords&);
/// Needs the order: what is put together with raw meat or fish is raw until it is cooked; what
/// comes to no heat in any step that waits for it is eaten as it is.
void finish_hygiene_in_order(DishDraft&, const std::vector<Work>&, const IngredientWords&);
/// Needs the order: what is stirred into something is on the ring only if that is.
void finish_rings_in_order(DishDraft&, const std::vector<Work>&);
/// Needs the order: a vessel that is not named is the one of the step before it in the order.
void finish_vessels_in_order(DishDraft&, const std::vector<Work>&);

}  // namespace kitchen
