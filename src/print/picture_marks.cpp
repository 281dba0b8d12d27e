// The chance as twenty marks about the bell.
#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "print/chance_words.h"
#include "print/picture_parts.h"

namespace print {

void draw_marks(Svg& out, const kitchen::Lesson& lesson, const std::vector<Seconds>& marks,
                double x, double y, double width) {
  if (marks.empty()) return;
  const Seconds bell = lesson.bell;
  Seconds reach = base::minutes(5);
  for (const Seconds m : marks) reach = std::max(reach, m > bell ? m - bell : bell - m);
  // whole fives, so that the ends of the line are plain clock times
  reach = base::minutes((reach.count() + 299) / 300 * 5);
  const double per_second = (width / 2 - 10) / static_cast<double>(reach.count());
  const double middle = x + width / 2;
  const auto column_of = [&](Seconds m) {
    const double at = static_cast<double>((m - bell).count()) * per_second;
    return static_cast<int>(at / 11) + (m > bell ? 1 : -1);
  };
  std::map<int, int> stacked, highest;  // marks in a column 11 px wide: so far, and in all
  int most = 1;
  for (const Seconds m : marks) most = std::max(most, ++highest[column_of(m)]);
  // a high stack is pushed together, so that it stays below the heading
  const double step = std::min(11.0, 62.0 / most);
  for (const Seconds m : marks) {
    const bool late = m > bell;
    const int column = column_of(m);
    const double cx = middle + column * 11 + (late ? -3.0 : 3.0);
    const double cy = y - 7 - step * stacked[column]++;
    if (late) {
      out.path({{cx, cy - 5}, {cx + 5, cy}, {cx, cy + 5}, {cx - 5, cy}}, true, "late");
    } else {
      out.circle(cx, cy, 4, "ring");
    }
  }
  out.line(x, y, x + width, y, "fine");
  out.line(middle - 1.5, y - 66, middle - 1.5, y, "ink");
  out.line(middle + 2.5, y - 66, middle + 2.5, y, "ink");
  out.text(middle, y + 29, "end of the last washing up; a mark is 5 lessons in 100", "q s11",
           "middle");
  out.text(middle, y + 14, kitchen::clock(lesson, bell), "b", "middle");
  out.text(x, y + 14, kitchen::clock(lesson, bell - reach), "q");
  out.text(x + width, y + 14, kitchen::clock(lesson, bell + reach), "q", "end");
}

std::string marks_svg(const kitchen::Lesson& lesson, const Answer& answer) {
  const std::optional<Likely> chance = likely(lesson, answer);
  if (!chance || chance->marks.empty()) return "";
  Svg out;
  draw_marks(out, lesson, chance->marks, 10, 96, 340);
  return fmt::format(
      R"(<svg width="360" height="132" viewBox="0 0 360 132" role="img" aria-label="{}">{}</svg>)",
      escaped("End of the last washing up in twenty lessons. " + chance->whole), out.str());
}

}  // namespace print
