// The shapes of the pictograms in a square of 100 by 100, drawn for this program: solid first, then
// white cut out of it, then lines on top. Not for use outside print/sheets.
#pragma once

#include <vector>

#include "print/sheets/pictograms.h"

namespace print::sheets {

struct Shapes {
  std::vector<Path> solid, white, lines;
};
Shapes shapes_of(Pictogram);

}  // namespace print::sheets
