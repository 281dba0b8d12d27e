// Words for what is made on the way: "the dough", "the guacamole", "the egg mixture".
#pragma once

#include <string>
#include <vector>

namespace kitchen {

/// What the step says it makes, in the singular: "make a batter", "mix to a soft dough", "for the
/// sauce". `words`: the step's own, folded, in the singular.
std::vector<std::string> things_made(const std::vector<std::string>& words);

/// Things a heading names: "For the topping", "To make the sauce".
std::vector<std::string> things_of_heading(const std::string& heading);

/// Whether a word can be what is made: no pan, no place, no measure.
bool can_be_made(const std::string& word);

}  // namespace kitchen
