// A dish as it was understood from somebody's text: every guess with how sure it is and the words
// it came from, so that a person can mend it. Nothing of the text is dropped silently.
//
// "2 onions, finely chopped" is an IngredientDraft {2 pieces, food onion, "finely chopped"}; "Fry
// for 5-7 minutes until soft" is a StepDraft {5 to 7 min, stand by, a ring, ...}. A draft is not
// valid from birth as a Dish is: dish_from() (make_dish.h) makes the Dish, with what was assumed.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "kitchen/dish.h"
#include "kitchen/foods.h"
#include "kitchen/quantity.h"

namespace kitchen {

/// A value read or guessed.
template <class T>
struct Guess {
  T value{};
  double confidence = 1;  ///< 0 = a blind guess, 1 = it says so in as many words
  std::string from;       ///< the words of the text it came from; empty = assumed
  friend bool operator==(const Guess&, const Guess&) = default;
};

struct IngredientDraft {
  std::string line;     ///< as written
  int line_number = 0;  ///< in the text, from 1; 0 = it stood in no line
  std::string group;    ///< the heading it stands under: "For the topping"; empty = none
  Guess<Quantity> quantity;
  std::string also;  ///< a second amount for the same thing, as written: "(8 oz)"; empty = none
  std::string name;  ///< the food in the writer's own words: "onions"
  Guess<std::string> food;               ///< key of the table; empty = not known
  std::vector<std::string> other_foods;  ///< keys that might be meant instead, nearest first
  std::string preparation;               ///< "finely chopped"
  std::string quality;  ///< size and quality: "large", "ripe", "heaped"; empty = none
  bool optional = false;
  bool garnish = false;                 ///< "to serve", "to garnish", "for dusting", "for greasing"
  std::vector<std::string> or_instead;  ///< what else the line allows: "or margarine"
  double confidence = 1;                ///< of the whole line
};

enum class Where : std::int8_t { kRing, kOven, kGrill, kMicrowave, kKettle, kFridge, kFreezer };

struct HeatDraft {
  Where where = Where::kRing;
  std::string vessel;          ///< "large pan"; guessed from the method when it does not say
  std::optional<int> celsius;  ///< conventional oven, as the dish's own scale says
  OvenKind oven = OvenKind::kConventional;
};

struct StepDraft {
  std::string says;            ///< the words as written, one action or few that belong together
  int line_number = 0;         ///< in the text, from 1
  std::string group;           ///< the heading it stands under
  std::string brief;           ///< at most 12 letters, for the wall
  Guess<Seconds> least, most;  ///< for a pupil; equal unless it says a range
  Guess<Attention> attention;
  std::optional<Guess<HeatDraft>> heat;
  std::vector<Guess<std::string>> equipment;  ///< room words: "large pan", "vegetable knife"
  std::vector<Guess<Hazard>> hazards;
  std::optional<Guess<Hygiene>> hygiene;
  std::vector<Guess<std::string>> skills;
  std::vector<int> uses;     ///< indices into DishDraft::ingredients
  std::vector<int> follows;  ///< indices of earlier steps it must wait for
  bool preheat = false;      ///< an oven set in advance: no hands, no step of its own in the Dish
};

/// What only a person can know. A draft asks at most three.
struct Question {
  std::string asks;                  ///< "How many does it serve?"
  std::vector<std::string> answers;  ///< the likely ones, likeliest first: what is assumed
  std::string about;                 ///< "portions", "ingredient 3", "step 2 minutes"
};

struct DishDraft {
  Guess<std::string> name;
  Guess<int> portions;
  std::vector<IngredientDraft> ingredients;
  std::vector<StepDraft> method;
  std::vector<Question> questions;   ///< at most three
  std::vector<std::string> assumed;  ///< sentences: what was taken for granted
  struct Unread {
    int line_number = 0;
    std::string line;
    friend bool operator==(const Unread&, const Unread&) = default;
  };
  std::vector<Unread> unread;  ///< lines kept but not understood (a story, a source, a rating)
};

}  // namespace kitchen
