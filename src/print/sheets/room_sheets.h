// Sheets that hang in the room with a pencil beside them: the bay check with the knife count, the
// probe log, and the rota of jobs.
#pragma once

#include "print/sheets/signs.h"

namespace print::sheets {

/// Bay by bay what the adult looks at before dismissal, and knives counted out and in.
void draw_bay_check(Document&, const Planned&);
std::string pdf_of_bay_check(const Planned&);

/// A line for each cooked dish of each cook, and lines to spare; fridge and hot-held food below.
void draw_probe_log(Document&, const Planned&);
std::string pdf_of_probe_log(const Planned&);
/// The dish goes through heat, so that its middle can be probed.
bool is_cooked(const kitchen::Dish&);

/// Jobs by bay. `turn` moves everybody on by one job; the week of the year if it is below 0.
void draw_rota(Document&, const Planned&, int turn = -1);
std::string pdf_of_rota(const Planned&, int turn = -1);

}  // namespace print::sheets
