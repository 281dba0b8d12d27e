// Each adult's own plan: the thread through the bays, then time, where and why.
#pragma once

#include "print/sheets/signs.h"

namespace print::sheets {

/// A part for each adult.
void draw_adult_sheets(Document&, const Planned&);
std::string pdf_of_adult_sheets(const Planned&);

}  // namespace print::sheets
