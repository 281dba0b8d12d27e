// What a line of a dish's text looks like, judged by itself: an ingredient, a step, a heading.
//
// "200 g flour" begins with an amount; "Rub in the butter." begins with a verb and ends with a
// point; "For the topping:" is a heading. Only for layout.cpp, which knows where the line stands.
#pragma once

#include <cstdint>
#include <string_view>
#include <vector>

#include "kitchen/reading/line_tokens.h"

namespace kitchen {

enum class Section : std::int8_t { kNone, kIngredients, kMethod, kOther };

struct LineLooks {
  bool amount_first = false;  ///< "200 g flour", "a pinch of salt", "2 eggs"
  bool measured = false;      ///< that amount has a unit or a word that counts
  bool amount_last = false;   ///< "Flour - 200 g"
  bool amount_alone = false;  ///< "200 g"
  bool verb_first = false;    ///< "Mix the flour", "Then mix", "1. Mix"
  bool numbered = false;      ///< "1.", "2)", "Step 3"
  bool sentence = false;      ///< five words or more that end with a point
  bool bullet = false;
  bool colon_last = false;
  bool capitals = false;  ///< all letters are capitals
  std::size_t words = 0;
};

LineLooks looks_of(std::string_view tidied_line);

/// The section a heading opens ("Ingredients", "Method:", "## What you need"); kNone if the line is
/// none. `rest` is what stands behind its colon on the same line ("Method: rub in ...").
struct HeadingFound {
  Section section = Section::kNone;
  std::size_t rest = 0;  ///< offset in the tidied line; its length when nothing follows
};
HeadingFound section_heading(std::string_view tidied_line);
/// "Equipment", "You will also need", "Kit list: ..."
bool equipment_heading(std::string_view tidied_line);

/// "For the topping", "FILLING", "Pastry:", between ingredients or steps.
bool group_heading(std::string_view tidied_line, const LineLooks&);
/// "Prep time: 20 mins", "Cook 25 minutes", "Ready in 1 hour".
bool time_line(std::string_view tidied_line);
/// Without "##", "**", "1.", "Step 2:" and bullets at its front.
std::string_view without_number(std::string_view tidied_line);
std::string heading_text(std::string_view tidied_line);

}  // namespace kitchen
