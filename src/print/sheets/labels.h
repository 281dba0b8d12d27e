// Labels for what is taken home, sold or given out, on sheets of stickers. The same label for
// everyone: who has an allergy is not to be seen, what is in the food is.
#pragma once

#include <string>
#include <vector>

#include "base/problem.h"
#include "print/sheets/signs.h"

namespace print::sheets {

/// A sheet of stickers in plain dimensions, millimetres.
struct StickerSheet {
  int rows = 7, columns = 3;
  double wide = 63.5, high = 38.1;  ///< of one label
  double left = 7.2, top = 15.2;    ///< of the first
  double across = 66.0, down = 38.1;  ///< from one to the next
  friend bool operator==(const StickerSheet&, const StickerSheet&) = default;
};
/// "3x7" (63.5 x 38.1 mm), "2x7", "2x4", "1x2" and so on for what is sold everywhere, or in full
/// "3x7 63.5x38.1 from 7.2,15.2 step 66,38.1".
/// Problems: labels.sheet (unreadable), labels.off_page (does not fit an A4 page).
base::Result<StickerSheet> sticker_sheet(std::string_view);

struct LabelWish {
  StickerSheet sheet;
  bool numbers = false;        ///< the place instead of the name
  bool given_out = false;      ///< sold or given to others: all ingredients in falling weight
  int first = 0;               ///< labels already gone from the first sheet
  std::string keep_and_reheat; ///< the school's own words; empty = ours
};

/// One label for each cook and dish.
void draw_labels(Document&, const kitchen::Lesson&, const LabelWish&);
std::string pdf_of_labels(const kitchen::Lesson&, const LabelWish&);

/// The ingredients in falling order of weight, allergens bold, as Articles 18 and 21 of Regulation
/// (EU) No 1169/2011 (kept in UK law) want them; amounts in pieces count by the word of the dish
/// alone and stand where they are written. `complete` is false when a weight or a label is unknown.
struct IngredientList {
  Words words;
  bool complete = true;
};
IngredientList ingredient_list(const kitchen::Dish&);
/// "Cool within 90 min, then fridge ..."; ours, from published advice, to be checked by the school.
std::string keep_words(const kitchen::Dish&);

}  // namespace print::sheets
