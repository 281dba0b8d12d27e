// Labels for what is taken home, sold or given out, on sheets of stickers. The same label for
// everyone: who has an allergy is not to be seen, what is in the food is.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/problem.h"
#include "print/sheets/signs.h"
#include "safety/diets.h"

namespace print::sheets {

/// A sheet of stickers in plain dimensions, millimetres.
struct StickerSheet {
  int columns = 3, rows = 7;
  double wide = 63.5, high = 38.1;  ///< of one label
  double left = 7.25, top = 15.15;  ///< of the first
  double across = 66, down = 38.1;  ///< from one to the next
  friend bool operator==(const StickerSheet&, const StickerSheet&) = default;
};
/// "3x7", "2x7", "3x6", "3x8", "2x4", "2x3" or "5x13", columns by rows, as such sheets are sold
/// (dimensions from memory: lay a print on your sheet first); or in full, columns, rows, one
/// label's width and height, and the step from one to the next: "2x4 99x68 step 101.5x68". The
/// whole stands in the middle of the A4 page.
/// Problems: stickers.unreadable, stickers.off_page.
base::Result<StickerSheet> sticker_sheet(std::string_view);

struct LabelWish {
  StickerSheet sheet;
  bool numbers = false;    ///< the place instead of the name
  bool given_out = false;  ///< sold or given to others: all ingredients in falling weight
  int gone = 0;            ///< labels already gone from the first sheet
  std::string keep;        ///< the school's own words on keeping and reheating; empty = ours
};

/// Least size in which a list of ingredients may be printed: 1.2 mm for the height of an "x"
/// (Article 13(2) of Regulation (EU) No 1169/2011, kept in UK law); Noto Sans' "x" is 0.536 of its
/// size.
inline constexpr double kLeastLabelPrint = 1.2 * kMm / 0.536;

struct LabelsDrawn {
  int labels = 0;
  double smallest = 0;                 ///< points; below kLeastLabelPrint take larger stickers
  std::vector<std::string> not_whole;  ///< dishes whose list of ingredients is not complete
};
/// One label for each cook and dish, in the room's order.
LabelsDrawn draw_labels(Document&, const kitchen::Lesson&, const safety::Evidence&,
                        const LabelWish&);
std::string pdf_of_labels(const kitchen::Lesson&, const safety::Evidence&, const LabelWish&);

/// The ingredients in falling order of weight as they go in, allergens bold and by name, the cereal
/// and the nut too (Articles 18 and 21 and Annex VII of Regulation (EU) No 1169/2011). Not whole
/// when a weight is not known, a label is unread, or an ingredient is a made-up food whose own
/// ingredients only its packet knows.
struct IngredientList {
  Words words;
  std::vector<std::string> missing;  ///< "the packet of vegetable stock"
};
IngredientList ingredient_list(const kitchen::Dish&, const safety::Evidence&);
/// "MILK, gluten (WHEAT)" in bold; "none of the fourteen is listed".
Words contains_words(const kitchen::Dish&, const safety::Evidence&);
/// Ours, by the advice of the Food Standards Agency on left-overs (as published; the school's own
/// words come first).
/// `from_fridge`: it comes out of the school's fridge, cold already.
std::string keep_words(const kitchen::Dish&, bool from_fridge = false);

}  // namespace print::sheets
