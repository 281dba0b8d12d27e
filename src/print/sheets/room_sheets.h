// Sheets that hang in the room with a pencil beside them: the bay check with the knife count, the
// probe log, and the rota of jobs.
#pragma once

#include "print/sheets/signs.h"

namespace print::sheets {

/// Bay by bay what the adult looks at before dismissal, and knives counted out and in.
void draw_bay_check(Document&, const Planned&);
std::string pdf_of_bay_check(const Planned&);

/// A line for each dish of each cook that wants the probe, and lines to spare; fridge and hot-held
/// food below.
void draw_probe_log(Document&, const Planned&);
std::string pdf_of_probe_log(const Planned&);
/// Raw meat, fish or egg in it, a step with the probe, or served hot: not a scone (common practice,
/// no source).
bool wants_probe(const kitchen::Dish&);

/// Jobs by bay. `turn` moves everybody on by one job; the week of the year if it is below 0.
void draw_rota(Document&, const Planned&, int turn = -1);
std::string pdf_of_rota(const Planned&, int turn = -1);

}  // namespace print::sheets
