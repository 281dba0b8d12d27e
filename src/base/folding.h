// Text as a person means it: the same word whether typed "Crème Fraîche", "creme fraiche" or
// "CREME FRAICHE", and files in the encodings that schools' computers write.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace base {

/// Lower case without accents, compatibility forms resolved ("½" stays; "ﬁ" becomes "fi"), every
/// run of spaces and invisible marks one space, none at the ends. The text must be UTF-8; what is
/// not is replaced by U+FFFD.
std::string folded(std::string_view);

/// The words of a folded text: runs of letters, digits and apostrophes.
std::vector<std::string> words_of(std::string_view folded_text);

enum class Encoding { kUtf8, kUtf16, kWindows1252 };

struct Decoded {
  std::string text;  ///< UTF-8, no byte order mark, line ends as "\n"
  Encoding was = Encoding::kUtf8;
};

/// Bytes of a file as text: UTF-16 by its byte order mark, UTF-8 if it is that, else Windows-1252.
/// Nothing when a UTF-16 text is broken.
std::optional<Decoded> decoded(std::string_view bytes);

}  // namespace base
