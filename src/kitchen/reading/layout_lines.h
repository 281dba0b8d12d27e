// The lines of a text before they are sorted into roles: cut at line ends and columns, each with
// what it looks like. Only for layout.cpp.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "kitchen/reading/cells.h"
#include "kitchen/reading/line_looks.h"

namespace kitchen {

struct Line {
  int number = 0;    ///< of the text, from 1
  std::string text;  ///< spaces at the ends gone
  std::string tidy;
  LineLooks looks;
  HeadingFound heading;
  CellKind kind = CellKind::kText;
  bool right = false;  ///< of the right one of two columns
  bool left = false;   ///< of the left one
  bool gap = false;    ///< a blank line stands before it
};

/// The lines that are not blank. A text of one paragraph is cut into its sentences.
std::vector<Line> lines_of(std::string_view text);

bool small_first(const std::string& tidy);
/// "peeled and diced", "cut into chunks", but not "grated nutmeg". `words`: folded.
bool only_prepares(const std::vector<std::string>& words);
/// "2 tbsp chopped fresh": the food stands in the next line.
bool no_food_yet(const std::string& tidy);

}  // namespace kitchen
