// The cook's sheet: one cook's time plan, the classroom's three columns (time, do, look out for)
// with tracks added: what hands do ("You") and what cooks on by itself meanwhile ("Pans"). The
// same frame for every cook, whatever the reading level.
#pragma once

#include "print/sheets/signs.h"
#include "print/sheets/told_step.h"

namespace print::sheets {

struct CookSheets {
  Level level = Level::kPlain;
  std::vector<std::pair<int, Level>> levels;  ///< cook and level, where they differ
  std::vector<int> cooks;                     ///< empty = all, in the room's order
};

/// A part for each cook.
void draw_cook_sheets(Document&, const Planned&, const CookSheets& = {});
std::string pdf_of_cook_sheets(const Planned&, const CookSheets& = {});

/// What is in a dish, for every cook who makes it: "MILK (butter, milk)", and the labels nobody has
/// read yet.
Words dish_allergens(const kitchen::Dish&);

}  // namespace print::sheets
