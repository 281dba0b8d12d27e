// Picture cards: a dish step by step, one step a card, to cut out or keep as a page. The same frame
// and the same order for everybody; a card says its number, its picture, a few words, its pattern
// and its minutes.
#pragma once

#include "print/sheets/signs.h"

namespace print::sheets {

/// A part for each dish; variants have their own.
void draw_picture_cards(Document&, const Planned&);
std::string pdf_of_picture_cards(const Planned&);

}  // namespace print::sheets
