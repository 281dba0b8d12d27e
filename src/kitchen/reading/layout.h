// A pasted text sorted into title, portions, ingredient lines, method lines and everything else.
//
// Under "Ingredients", "For the topping:" "50 g oats" is an ingredient of the group "For the
// topping". A heading nobody has listed is known by the lines below it, and without headings each
// line is judged by what it looks like: an amount of a known food, a verb and a sentence, known
// ware, words of the page. Every line that is not
// blank is in exactly one role; a line that holds several things ("Ingredients: flour, eggs.
// Method: ...") is cut into parts that make up the whole line.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "kitchen/reading/food_matcher.h"

namespace kitchen {

enum class LineRole : std::int8_t {
  kTitle,
  kPortions,  ///< "Serves 4", "Makes 12 buns"
  kTime,      ///< "Prep time: 20 mins"
  kHeading,   ///< "Ingredients", "Method", "For the topping"
  kIngredient,
  kMethod,
  kUnread,  ///< stories, notes, sources, ratings
};

struct LaidLine {
  int number = 0;    ///< of the text, from 1
  std::string text;  ///< the line or its part, spaces at the ends gone
  LineRole role = LineRole::kUnread;
  std::string group;       ///< the group heading it stands under: "For the topping"; empty = none
  bool continues = false;  ///< goes on with the line before it: "200 g" under "Flour"
  friend bool operator==(const LaidLine&, const LaidLine&) = default;
};

/// "Serves 4 to 6 hungry pupils": 4, and the words.
struct Portions {
  int least = 0, most = 0;  ///< 1 to 500
  std::string words;        ///< "Makes 12 buns"
};

struct Layout {
  std::vector<LaidLine> lines;  ///< in the order of the text
  std::optional<Portions> portions;
  bool american = false;  ///< cups are American cups (see Measures)
};

/// The text must be UTF-8; any line ends. The foods tell an amount of food from other figures.
Layout lay_out(std::string_view text, const FoodMatcher& foods);

/// How many a line says the dish makes or serves; nothing if it says something else.
std::optional<Portions> portions_in(std::string_view tidied_line);

}  // namespace kitchen
