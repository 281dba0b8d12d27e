// The small words everything print/ says is made of: "6 min", "11:00 to 11:06", "A1, A2 and B1",
// "180 °C fan". British spelling, minutes never seconds. Knows nothing of plans; lengths of text
// are counted in letters, not bytes.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "kitchen/lesson.h"

namespace print {

using base::Seconds;

/// "6 min"; seconds are rounded up, because a plan that says less than it takes is late.
std::string minutes(Seconds);
/// "11:00 to 11:06".
std::string span(const kitchen::Lesson&, Seconds from, Seconds to);
/// "Tue 17 Nov" of "2026-11-17"; the text itself when it is no date.
std::string day(const std::string& date);
/// "one" to "twelve", then figures.
std::string count_word(int);
/// "1 cook", "12 cooks".
std::string counted(int, std::string_view one, std::string_view many);
/// "A1, A2 and B1".
std::string listed(const std::vector<std::string>&);
/// "A1 A2 B1".
std::string joined(const std::vector<std::string>&, std::string_view between = " ");
/// "180 °C fan", "200 °C", "grill 240 °C".
std::string setting(kitchen::OvenSetting);
/// What an adult is needed for: "hot oil".
std::string hazard(kitchen::Hazard);
/// "fits" with a capital: "Fits". Only the first ASCII letter changes.
std::string capital(std::string);
/// The sentence with its full stop, unless it ends in one.
std::string stopped(std::string);

/// "A1 A2", with commas when a name has a space of its own: "A1 Ben, A1 Dan".
std::string together(const std::vector<std::string>& names);

/// Letters in UTF-8 text; a broken byte counts as one.
std::size_t letters(std::string_view);
/// At most `most` letters, the last one an ellipsis when something was cut.
std::string shortened(std::string_view, std::size_t most);
/// Safe inside SVG and HTML, in text and in quoted attributes. Control characters and broken UTF-8
/// become U+FFFD.
std::string escaped(std::string_view);

}  // namespace print
