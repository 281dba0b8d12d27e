// Words: putting sentences together, numbers without a locale, the nearest word to a misspelt one,
// UTF-8.
//
// say("The step ", in_quotes("bake"), " takes ", minutes_text(base::minutes(20)), ".") is a
// sentence for a teacher. Nothing here knows what a step is.
#pragma once

#include <algorithm>
#include <array>
#include <concepts>
#include <cstddef>
#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/time.h"

namespace base {

/// A number as short as it can be written without loss, with a point, whatever the locale: "0.5",
/// "20".
std::string number_text(double);
/// The number a text says, all of it, without a locale; nothing if it says something else.
std::optional<double> number_in(std::string_view text);
/// "20 min", "1.5 min".
std::string minutes_text(Seconds);
/// The same without its unit, without loss: "20", "1.5".
std::string minutes_number(Seconds);

/// A person's own words in single quotes, cut to 60 letters, control characters shown as spaces.
std::string in_quotes(std::string_view);
/// "a", "a and b", "a, b and c".
std::string joined(const std::vector<std::string>&, std::string_view last = "and");
/// "1 cook", "2 cooks".
std::string counted(long long n, std::string_view one, std::string_view many);

inline void append_part(std::string& out, std::string_view part) { out += part; }
void append_part(std::string& out, std::integral auto part) { out += std::to_string(part); }

/// One sentence from its parts: texts and whole numbers.
template <class... Part>
std::string say(const Part&... parts) {
  std::string out;
  (append_part(out, parts), ...);
  return out;
}

/// Letters (code points), not bytes. The text must be UTF-8.
std::size_t letters(std::string_view);
/// The first `most` letters of a text.
std::string first_letters(std::string_view, std::size_t most);
/// Offset of the first byte that is not UTF-8 (RFC 3629: no surrogates, no overlong forms), or
/// nothing.
std::optional<std::size_t> not_utf8(std::string_view);
std::string lower(std::string_view);  ///< a to z only
/// Whether `word` is among `all`, letter for letter.
bool one_of(std::string_view word, std::initializer_list<std::string_view> all);
template <std::size_t N>
bool one_of(std::string_view word, const std::array<std::string_view, N>& all) {
  return std::find(all.begin(), all.end(), word) != all.end();
}
bool blank(std::string_view);           ///< empty or only spaces
std::string trimmed(std::string_view);  ///< without spaces, tabs and line ends at its ends
/// The trimmed parts between separators; empty parts are left out.
std::vector<std::string> parts(std::string_view, char separator);
std::string replaced(std::string_view text, char from, char to);

/// How many letters must be added, dropped, changed or swapped with their neighbour to make one
/// word the other. Bytes are compared; words longer than 64 bytes are cut.
std::size_t edit_distance(std::string_view, std::string_view);
/// The known word nearest to a misspelt one, or nothing when none is near (more than a third of it
/// differs).
std::optional<std::string> nearest(std::string_view word, const std::vector<std::string>& known);

}  // namespace base
