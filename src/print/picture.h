// The picture of a lesson: waves and checkpoints first, then every place by time, ovens, rings and
// sinks, adults. Self-contained: no network, no packaged fonts, readable in black and white. How to
// read it: docs/reading-the-plan.md
#pragma once

#include <string>

#include "kitchen/lesson.h"
#include "timeplan/answer.h"

namespace print {

struct PictureOptions {
  int width = 1280;  ///< pixels; at least 640
};

/// One SVG file. Every bar carries its words in a title.
std::string picture_svg(const kitchen::Lesson&, const timeplan::Answer&, const PictureOptions&);

/// One HTML page with the same picture, a line of words for the bar in focus, and the printed twin
/// as tables.
std::string picture_html(const kitchen::Lesson&, const timeplan::Answer&, const PictureOptions&);

}  // namespace print
