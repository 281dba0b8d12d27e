// A pupil's own idea, judged before it is cooked: "swap butter for oil", "leave out the egg",
// "50 g more sugar", "add 30 g cocoa".
//
// The answer says works, works but ..., or will fail because ..., from what the ingredient does in
// that preparation and from the working ratios. Flavourings are free. It knows nothing of taste,
// and of allergens only that a new food may bring some: the labels decide.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "kitchen/ratios/functions.h"
#include "kitchen/ratios/judge.h"

namespace kitchen {

enum class ChangeKind : std::int8_t { kSwap, kTimes, kByAmount, kLeaveOut, kAdd };

struct Change {
  ChangeKind kind = ChangeKind::kLeaveOut;
  std::string what;  ///< the ingredient of the dish; of kAdd the new food
  std::string with;  ///< of kSwap: the new food
  Ratio times = 1;   ///< of kTimes
  Quantity amount;   ///< of kByAmount: what is added (negative = taken away); of kSwap and kAdd the
                     ///< new food's amount, not stated = as much as before by weight
  friend bool operator==(const Change&, const Change&) = default;
};

/// "swap butter for oil", "swap 1 egg for 60 g apple sauce", "leave out the egg", "no egg",
/// "without egg", "more sugar" (a quarter), "less sugar", "double the sugar", "halve the sugar",
/// "50 g more sugar", "2 tbsp less milk", "add 30 g cocoa". Errors: change.words.
base::Result<Change> read_change(std::string_view words);

struct Reason {
  std::string preparation;  ///< name; empty = the whole dish
  Outcome outcome = Outcome::kWorks;
  std::string says;
  friend bool operator==(const Reason&, const Reason&) = default;
};

struct ChangeVerdict {
  Outcome outcome = Outcome::kWorks;  ///< the worst of the reasons
  std::vector<Reason> reasons;
  std::vector<std::string> cautions;  ///< allergens the new food may bring, raw egg
  Dish changed;                       ///< the dish with the change made
};

/// Errors: change.no_ingredient (with the nearest of the dish), change.no_amount (less than nothing
/// would be left).
base::Result<ChangeVerdict> judge_change(const Dish&, const Change&, const Foods&,
                                         const Preparations&);

}  // namespace kitchen
