// Whether a line that does not begin with a verb is a step all the same: "I fried the onion and
// stirred in the flour", "Macaroni in, 10 min"; or names nothing but equipment.
#pragma once

#include <string>

namespace kitchen {

/// Told as what was or is done: "We peeled the carrots and cut them", "They are roasted for 25
/// minutes".
bool tells_actions(const std::string& tidied_line);
/// In a few words: "Grill on", "Under grill 4-5 min", "Butter in".
bool telegraphic(const std::string& tidied_line);
/// "2 mixing bowls", "Rolling pin, cutters and a tray".
bool wares_only(const std::string& tidied_line);

}  // namespace kitchen
