// A line of a dish's text as numbers, words and signs, the many ways of typing the same thing made
// one.
//
// "1½ Tbsp. crème fraîche" is the number 3/2, the word "Tbsp", the sign ".", the words "crème" and
// "fraîche". Nothing here knows what a food or a unit is.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "base/ratio.h"

namespace kitchen {

struct LineToken {
  enum class Kind : std::int8_t { kNumber, kWord, kSign };
  Kind kind = Kind::kSign;
  std::string text;                ///< as written
  std::string word;                ///< words: small letters without accents; signs: the sign
  base::Ratio value;               ///< numbers only
  bool fraction = false;           ///< a number written with a fraction bar
  bool spaced = false;             ///< there is a space before it
  std::size_t begin = 0, end = 0;  ///< in the tidied line

  bool is(std::string_view w) const { return kind != Kind::kNumber && word == w; }
  bool number() const { return kind == Kind::kNumber; }
};

/// Whether there is an `i`th token and it is the word or sign `word`.
bool at(const std::vector<LineToken>&, std::size_t i, std::string_view word);

/// One kind of dash, quote, space and fraction; no emoji, no invisible marks, no spaces at the
/// ends. "½" becomes "1/2", with a space before it after a digit. The line must be UTF-8.
std::string tidied_line(std::string_view line);

/// The tokens of a tidied line. "1,5" and "0.5" are numbers, "1,000" is a thousand, "1/2" is one
/// number; "400g" is a number and a word; "self-raising" is one word; a row of dots is one dash.
std::vector<LineToken> line_tokens(std::string_view tidied);

/// The letters from token `from` up to token `to` (not itself) of the tidied line, without commas,
/// dashes and spaces at the ends.
std::string words_between(std::string_view tidied, const std::vector<LineToken>& tokens,
                          std::size_t from, std::size_t to);
/// Without commas, colons, dashes and spaces at the ends.
std::string trimmed_marks(std::string_view text);

}  // namespace kitchen
