// Signs of our own drawing: no typeface on a school's machine is sure to have them. Boxes to tick,
// the bell's two lines, the twenty marks of the chance, the key to the patterns, and the head that
// every sheet wears.
#pragma once

#include <string>

#include "print/sheets/flow.h"
#include "timeplan/answer.h"

namespace print::sheets {

/// A lesson, its answer and the day it was planned on ("16 Nov 15:20"; empty = not said).
struct Planned {
  const kitchen::Lesson& lesson;
  const timeplan::Answer& answer;
  std::string planned_on;
};

/// The foot of every sheet: "9K, two dishes. Tue 17 Nov, planned 16 Nov 15:20."
std::string foot_words(const Planned&);
/// "9K · Food Room 2 · Tue 17 Nov" as one line under a title.
std::string under_title(const kitchen::Lesson&);

/// More than one dish by its two letters, variants not counted: then the letters must be said.
bool several_dishes(const kitchen::Lesson&, const std::vector<int>& dishes);
bool several_dishes(const kitchen::Lesson&);

struct Head {
  std::string large;  ///< "B3": read from across a bench; may be empty
  std::string title;
  std::string under;
  std::string right_small, right_large;  ///< "the bell", "12:30"
  bool bell = false;                     ///< the bell's two lines beside the large figures
};
/// The head of a sheet's first page, a heavy line under it; the flow goes on below.
void draw_head(Flow&, const Head&);

void draw_tick_box(Canvas&, double x, double y, double side);
/// Two upright lines: the bell, in every picture.
void draw_bell(Canvas&, double x, double y, double height);
/// A pin: this time was set by hand and stays.
void draw_pin(Canvas&, double x, double y, double size);
/// Twenty marks about the bell, rings before it, diamonds after.
void draw_chance(Canvas&, const kitchen::Lesson&, const std::vector<Seconds>& marks, const Box&);
/// The five patterns with their words on one line.
void draw_key(Flow&);

/// A cell with a box to tick.
Cell tick_cell();
/// A cell with a line to write on.
Cell line_cell();
/// A cell with the pattern of an attention.
Cell look_cell(Look);

}  // namespace print::sheets
