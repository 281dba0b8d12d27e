// The words of an ingredient line behind its amount, sorted into what they say: qualities, the food
// itself, preparation, notes in brackets.
//
// "large free-range eggs, beaten (optional)" is quality "large free-range", name "eggs",
// preparation "beaten", optional. Only for ingredient_line.cpp.
#pragma once

#include <string>
#include <vector>

#include "kitchen/reading/food_matcher.h"
#include "kitchen/reading/line_tokens.h"

namespace kitchen {

struct LineParts {
  std::string quality;
  std::string name;        ///< the food in the writer's words, with what makes another food of it
  std::string match_name;  ///< what is looked up: may hold a preparation ("grated mozzarella")
  std::string preparation;
  std::vector<std::string> or_instead;
  std::vector<std::string> notes;  ///< what stood in brackets and is no amount
  bool optional = false, garnish = false, to_taste = false;
  bool drained = false, cut = false;
};

/// Sorts the tokens behind the amount. `container`: the amount was of tins or jars, so "chopped
/// tomatoes" are what is in it. `counted`: whole pieces are counted, so "4 chopped tomatoes" are
/// fresh ones.
LineParts line_parts(const std::vector<LineToken>& rest, const FoodMatcher&, bool container,
                     bool counted);

/// The tokens as they were written, with their spaces, without marks at the ends.
std::string as_written(const std::vector<LineToken>& tokens, std::size_t from, std::size_t to);

}  // namespace kitchen
