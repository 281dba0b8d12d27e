// Who goes first at a shared thing, so that a free-from dish stays free with as few full cleans as
// can be.
//
// "Food processor: Daisy first; then the twelve with scones; full clean before Samir." Free-from
// dishes come before all others; where two cooks each bring what the other must not have, a full
// clean stands between. Times are the planner's (rule K2); this is the order to keep when there is
// no plan, at the ingredients table and at the sinks.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "safety/diets.h"

namespace safety {

/// One use of a thing: what it leaves and what it minds, a bit for each thing somebody must not
/// have.
struct ThingUse {
  std::uint32_t brings = 0;
  std::uint32_t minds = 0;
  friend bool operator==(const ThingUse&, const ThingUse&) = default;
};

struct UseOrder {
  std::vector<int> order;          ///< indices into the uses, each once
  std::vector<bool> clean_before;  ///< same length: a full clean before this use
  int cleans() const;
  friend bool operator==(const UseOrder&, const UseOrder&) = default;
};

/// Free-from uses first (those who mind most first among them, then as given), then the order with
/// the fewest full cleans: exact up to twelve different kinds of use, beyond that by always taking
/// what needs no clean and leaves least. Cost: 2^kinds times what lies about.
UseOrder free_from_first(const std::vector<ThingUse>&);

/// Some cooks in a row at a thing.
struct Turn {
  std::vector<int> cooks;   ///< indices into Lesson::cooks
  std::vector<int> dishes;  ///< what they make with it
  bool clean_before = false;
  friend bool operator==(const Turn&, const Turn&) = default;
};

struct ThingOrder {
  std::string thing;  ///< "food processor", "ingredients table", "place A1", "sink of bay A"
  std::vector<Turn> turns;
  friend bool operator==(const ThingOrder&, const ThingOrder&) = default;
};

/// For each thing at which somebody could meet what they must not have: kit, ingredients table
/// (unless trays stand at the places), shared places, sinks of bays. Things nobody can meet
/// anything at are left out.
std::vector<ThingOrder> order_at_things(const kitchen::Lesson&, const LessonNeeds&,
                                        const Evidence&);

}  // namespace safety
