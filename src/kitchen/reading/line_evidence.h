// What a line speaks for, seen with its neighbours and the table of foods: an amount of a known
// food, a verb, a ware, a heading by its form and by what stands below it. Nothing here knows what
// was decided of the lines before; that is laid_so_far.h. Only for layout.cpp.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "kitchen/reading/food_matcher.h"
#include "kitchen/reading/layout_lines.h"

namespace kitchen {

class LineEvidence {
 public:
  /// Keeps both. Every line asked about is one of `lines`.
  LineEvidence(const std::vector<Line>& lines, const FoodMatcher& foods);

  /// A heading of ingredients, of the method, stands somewhere.
  bool ingredients_named() const { return ingredients_named_; }
  bool method_named() const { return method_named_; }
  /// Whoever writes no capitals begins steps with small letters.
  bool all_small() const { return all_small_; }

  /// The line that names the dish.
  std::optional<std::size_t> title() const;
  /// The line `by` further on; null behind the last one.
  const Line* following(const Line& line, std::size_t by = 1) const;

  bool amount_of_food(const Line&) const;
  bool food_in(const std::string& text) const;
  bool step_evidence(const Line&) const;
  bool verb_led(const Line&) const;
  bool plain_food(const Line&) const;
  bool equipment(const Line&) const;
  static bool chatty(const Line&);
  Section block_below(const Line&) const;
  bool heading_form(const Line&) const;
  bool names_steps(const Line&) const;
  bool plain_among_bullets(const Line&) const;

 private:
  const std::vector<Line>& lines_;
  const FoodMatcher& foods_;
  bool ingredients_named_ = false, method_named_ = false, all_small_ = false;
};

}  // namespace kitchen
