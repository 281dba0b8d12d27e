// The wall page: checkpoints in figures that can be read from three metres, the waves, the bell.
// No name, no allergy.
#pragma once

#include "print/sheets/signs.h"

namespace print::sheets {

/// Least size of anything on it, in points. A capital of Noto Sans is 0.714 of it, 9 mm; at 3 m
/// that is 10.4 minutes of arc, twice the letter that normal sight just reads (5 minutes of arc,
/// ISO 8596).
inline constexpr double kFromThreeMetres = 36;

/// One page a wave when two would not fit in that size. Draws nothing without a plan.
void draw_wall_page(Document&, const Planned&);
std::string pdf_of_wall_page(const Planned&);

}  // namespace print::sheets
