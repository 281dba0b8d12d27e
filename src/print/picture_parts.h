// The parts of the picture, drawn from the top down on one frame. Not for use outside print/.
#pragma once

#include <string>

#include "print/equipment.h"
#include "print/facts.h"
#include "print/picture.h"
#include "print/svg.h"

namespace print {

/// Where time and rows lie. Parts draw at `y` and move it down.
struct Frame {
  Frame(const kitchen::Lesson&, const Answer&, int width);

  const kitchen::Lesson& lesson;
  const Answer& answer;
  double width = 1280;
  double left = 190;    ///< where time begins; names stand before it
  double right = 1262;  ///< where time ends
  Seconds until{0};     ///< last moment drawn: past the bell and the last task
  double row = 22;      ///< one cook; 18 when there are many
  double y = 0;
  Svg body;

  double x(Seconds) const;
  /// Class of a dish's ink, "d1" to "d8".
  std::string ink(int dish) const;
};

void draw_head(Frame&);    ///< verdict, lesson, causes and remedies, chance
void draw_strip(Frame&);   ///< waves, checkpoints, last safe starts
void draw_places(Frame&);  ///< a row for each cook
void draw_ovens(Frame&);
void draw_counts(Frame&);  ///< rings and sinks
void draw_adults(Frame&);
void draw_legend(Frame&);
/// Clock times along the top of a section.
void draw_clock(Frame&);
/// What lies under everything from `top` to `bottom`: windows, five-minute grid, bell.
std::string ground(const Frame&, double top, double bottom);
/// The bell's two lines and times after it, over everything.
std::string bell(const Frame&, double top, double bottom);

/// Tasks of one cook, or of a whole wave, between `y` and `y + height`.
void draw_row(Frame&, const std::vector<Task>&, double y, double height, bool wave);
/// How many bars of a row stand one above the other at most.
std::size_t lanes_needed(const kitchen::Lesson&, const std::vector<Task>&);
/// One bar in the pattern of its attention; `name` is written on it if it fits.
void draw_bar(Frame&, Look, int dish, double x, double y, double w, double h,
              const std::string& tag, const std::string& name);

/// The picture; without its head where the page says the same in words.
std::string picture(const kitchen::Lesson&, const Answer&, const PictureOptions&, bool with_head);
/// Twenty marks about the bell: rings end before it, diamonds after; a mark is 5 lessons in 100.
/// `y` is the foot line.
void draw_marks(Svg&, const kitchen::Lesson&, const std::vector<Seconds>& marks, double x, double y,
                double width);
/// The twenty marks alone, as a small picture of their own; empty without a chance.
std::string marks_svg(const kitchen::Lesson&, const Answer&);
/// Styles and patterns of the picture.
std::string picture_style();
/// The tables of the printed twin.
std::string tables(const kitchen::Lesson&, const Answer&);

}  // namespace print
