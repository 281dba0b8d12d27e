// A method told as what was done: "The onion was peeled and chopped", "the sauce is then simmered",
// "I heated the oil and fried the onion".
#pragma once

#include <string_view>
#include <vector>

#include "kitchen/reading/actions.h"
#include "kitchen/reading/line_tokens.h"

namespace kitchen {

struct PassiveAction {
  const Action* action = nullptr;
  std::size_t verb = 0;   ///< token of the participle
  std::size_t begin = 0;  ///< token at which its subject begins
};

/// The actions a sentence tells in the passive or as what somebody did, in order. What stands
/// behind "until", "once" or "when" tells how something looks and is none.
std::vector<PassiveAction> passive_actions(const std::vector<LineToken>&);

/// The action of "chopped", "fried", "beaten", "stirring"; nothing for other words.
const Action* action_of_form(std::string_view folded_word);

}  // namespace kitchen
