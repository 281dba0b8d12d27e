// The waves of a lesson as strips of time: what hands do, what cooks on by itself, the checkpoints
// and the bell. With own timelines a strip for each cook. Not for use outside print/sheets.
#pragma once

#include "print/sheets/signs.h"

namespace print::sheets {

/// `bar` is the height of a bar, points.
void draw_strip(Flow&, const Planned&, double bar = 11);

}  // namespace print::sheets
