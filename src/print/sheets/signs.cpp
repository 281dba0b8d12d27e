#include "print/sheets/signs.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "print/words.h"

namespace print::sheets {

std::string foot_words(const Planned& planned) {
  const kitchen::Lesson& lesson = planned.lesson;
  std::string out = stopped(lesson.title.empty() ? "Lesson" : lesson.title);
  out += " Plan for " + (lesson.date.empty() ? std::string("no date") : day(lesson.date));
  if (!planned.planned_on.empty()) out += ", made " + planned.planned_on;
  return out;
}

std::string under_title(const kitchen::Lesson& lesson) {
  std::vector<std::string> parts;
  if (!lesson.title.empty()) parts.push_back(lesson.title);
  if (!lesson.room.name.empty()) parts.push_back(lesson.room.name);
  if (!lesson.date.empty()) parts.push_back(day(lesson.date));
  return joined(parts, " · ");
}

bool several_dishes(const kitchen::Lesson& lesson, const std::vector<int>& dishes) {
  return std::any_of(dishes.begin(), dishes.end(),
                     [&](int dish) { return tag(lesson, dish) != tag(lesson, dishes.front()); });
}

bool several_dishes(const kitchen::Lesson& lesson) {
  std::vector<int> all;
  for (int d = 0; d < static_cast<int>(lesson.dishes.size()); ++d) all.push_back(d);
  return several_dishes(lesson, all);
}

void draw_head(Flow& flow, const Head& head) {
  Document& d = flow.document();
  Canvas c = flow.canvas();
  const double top = flow.y(), right = flow.x() + flow.width();
  double x = flow.x(), bottom = top;

  double right_width = 0;
  if (!head.right_large.empty()) {
    const Block small = d.set(head.right_small, {10});
    const Block large = d.set_in(head.right_large, {24, true}, flow.width() * 0.3, 36);
    right_width = std::max(small.width, large.width) + (head.bell ? 14 : 0);
    c.put(small, right - small.width - (head.bell ? 12 : 0), top);
    c.put(large, right - large.width - (head.bell ? 12 : 0), top + small.height - 3);
    if (head.bell) draw_bell(c, right - 6, top + 2, small.height + large.height - 9);
    bottom = std::max(bottom, top + small.height + large.height - 4);
    right_width += 12;
  }
  if (!head.large.empty()) {
    const Block large = d.set_in(head.large, {44, true}, flow.width() * 0.28, 62, 12);
    c.put(large, x, top - 10);
    x += large.width + 14;
    bottom = std::max(bottom, top - 10 + large.height);
  }
  const double room = right - right_width - x;
  const Block title = d.set_in(head.title, {18, true}, room, 56, 10);
  const Block under = d.set_in(head.under, {10}, room, head.under.size() > 110 ? 30 : 15, 7.5);
  c.put(title, x, top);
  c.put(under, x, top + title.height);
  bottom = std::max(bottom, top + title.height + under.height);
  flow.gap(bottom + 4 - flow.y());
  c.line(flow.x(), flow.y(), right, flow.y(), 3);
  flow.gap(5);
}

void draw_tick_box(Canvas& c, double x, double y, double side) { c.frame({x, y, side, side}, 0.9); }

void draw_bell(Canvas& c, double x, double y, double height) {
  c.line(x, y, x, y + height, 1.8);
  c.line(x + 4.5, y, x + 4.5, y + height, 1.8);
}

void draw_pin(Canvas& c, double x, double y, double size) {
  const Box box{x, y, size, size};
  c.fill_in(box, Path().arc(50, 28, 24));
  c.fill_in(box, Path().move(42, 48).line(58, 48).line(50, 100).close());
}

void draw_chance(Canvas& c, const kitchen::Lesson& lesson, const std::vector<Seconds>& marks,
                 const Box& box) {
  if (marks.empty()) return;
  const double r = 2.6, step = 2 * r + 1;
  const Seconds first = std::min(*std::min_element(marks.begin(), marks.end()), lesson.bell);
  const Seconds last = std::max(*std::max_element(marks.begin(), marks.end()), lesson.bell);
  const double span = std::max(60.0, static_cast<double>((last - first).count()));
  const auto x_of = [&](Seconds s) {
    return box.x + 6 + (box.w - 12) * static_cast<double>((s - first).count()) / span;
  };
  const double foot = box.bottom();
  c.line(box.x, foot, box.right(), foot, 0.5);
  const double bell = x_of(lesson.bell);
  // Piled in slots on either side of the bell's lines, so that none stands on them.
  std::map<int, int> piled, heights;
  const auto slot_of = [&](Seconds mark) {
    const double slots = (x_of(mark) - bell) / step;
    return mark > lesson.bell ? std::max(1, static_cast<int>(std::ceil(slots)))
                              : std::min(-1, static_cast<int>(std::floor(slots)));
  };
  int tallest = 1;
  for (const Seconds mark : marks) tallest = std::max(tallest, ++heights[slot_of(mark)]);
  const double up = std::min(step, (box.h - 2 * r - 2) / std::max(1, tallest - 1));
  for (const Seconds mark : marks) {
    const bool late = mark > lesson.bell;
    const int slot = slot_of(mark);
    const double x = bell + slot * step + (late ? -step / 2 + 4 : step / 2 - 4);
    const double y = foot - 2 - r - piled[slot]++ * up;
    const Box box_of_mark{x - r, y - r, 2 * r, 2 * r};
    if (late) {
      c.fill_in(box_of_mark, Path().move(50, 0).line(100, 50).line(50, 100).line(0, 50).close());
    } else {
      c.stroke_in(box_of_mark, Path().arc(50, 50, 46), 0.8);
    }
  }
  draw_bell(c, bell - 2.2, box.y, box.h);
}

void draw_key(Flow& flow) {
  static constexpr Look kAll[] = {Look::kHands, Look::kWatch, Look::kLeave, Look::kGrownUp,
                                  Look::kClean};
  flow.need(14);
  Canvas c = flow.canvas();
  double x = flow.x();
  for (const Look look : kAll) {
    c.pattern(look, {x, flow.y() + 1, 20, 9});
    const Block word = flow.document().set(look_word(look), {kSmall, true});
    c.put(word, x + 24, flow.y() - 0.5);
    x += 24 + word.width + 16;
  }
  flow.gap(13);
}

Cell tick_cell() {
  return {"", [](Canvas& c, const Box& b) {
            const double side = std::min(12.0, b.h - 3);
            draw_tick_box(c, b.x + (b.w - side) / 2, b.y + (b.h - side) / 2, side);
          }};
}

Cell line_cell() {
  return {"",
          [](Canvas& c, const Box& b) { c.line(b.x, b.bottom() - 3, b.right(), b.bottom() - 3); }};
}

Cell look_cell(Look look) {
  return {"", [look](Canvas& c, const Box& b) {
            c.pattern(look, {b.x, b.y + 2, std::min(b.w, 16.0), b.h - 4});
          }};
}

}  // namespace print::sheets
