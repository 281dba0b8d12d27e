#include "print/sheets/adult_sheets.h"

#include <algorithm>

#include "base/index.h"
#include "print/say_parts.h"

namespace print::sheets {
namespace {

using base::at;

/// The adult's way through the bays: heavy where they stand, thin where they walk, an upright
/// before each place where they must be.
void draw_thread(Flow& flow, const Planned& p, const std::vector<Stand>& all) {
  const kitchen::Lesson& lesson = p.lesson;
  const double row = 15, name = 34;
  const double left = flow.x() + name, right = flow.x() + flow.width() - 8;
  const std::size_t rows = lesson.room.bays.size() + 1;
  flow.need(row * static_cast<double>(rows) + 24);
  Document& d = flow.document();
  Canvas c = flow.canvas();
  const auto x_of = [&](Seconds s) {
    return left + (right - left) * static_cast<double>(s.count()) /
                      static_cast<double>(std::max<std::int64_t>(60, lesson.bell.count()));
  };
  const int every = lesson.bell > base::minutes(130) ? 20 : 10;
  for (int m = (every - lesson.opens_minute % every) % every; base::minutes(m) < lesson.bell;
       m += every) {
    const double x = x_of(base::minutes(m));
    const Block time = d.set(kitchen::clock(lesson, base::minutes(m)), {8});
    if (x < right - 40) c.put(time, std::max(left, x - time.width / 2), flow.y());
    c.line(x, flow.y() + 12, x, flow.y() + 12 + row * static_cast<double>(rows), 0.3, 0.75);
  }
  const Block bell = d.set(kitchen::clock(lesson, lesson.bell), {8.5, true});
  c.put(bell, right + 6 - bell.width, flow.y());
  flow.gap(12);
  const double top = flow.y();
  draw_bell(c, right, top - 2, row * static_cast<double>(rows) + 2);
  const auto y_of = [&](int bay) { return top + row * (bay + 1) + row / 2; };
  for (int bay = -1; bay < static_cast<int>(lesson.room.bays.size()); ++bay) {
    const Block word = d.set_in(bay < 0 ? "front" : lesson.room.bays[at(bay)].name, {9, bay >= 0},
                                name - 6, 12);
    c.put(word, flow.x(), y_of(bay) - word.height / 2);
    c.line(left, y_of(bay) + row / 2, right, y_of(bay) + row / 2, 0.25, 0.7);
  }
  std::vector<Visit> visits;
  for (const Stand& stand : all)
    visits.insert(visits.end(), stand.visits.begin(), stand.visits.end());
  std::stable_sort(visits.begin(), visits.end(),
                   [](const Visit& a, const Visit& b) { return a.from < b.from; });
  for (std::size_t i = 0; i < visits.size(); ++i) {
    const Visit& v = visits[i];
    const double y = y_of(v.bay), x = x_of(v.from);
    c.line(x, y, std::max(x + 2, x_of(v.to)), y, 4);
    c.line(x, y - 5, x, y + 5, 1);
    if (i + 1 < visits.size())
      c.line(x_of(v.to), y, std::max(x_of(v.to), x_of(visits[i + 1].from)), y_of(visits[i + 1].bay),
             0.7);
  }
  flow.gap(row * static_cast<double>(rows) + 6);
}

void draw_one(Document& document, const Planned& p, int a, double size) {
  const kitchen::Adult& adult = p.lesson.adults[at(a)];
  document.begin_part(kA4, foot_words(p), adult.name);
  Flow flow = Flow::on_new_page(document);
  std::string under = under_title(p.lesson);
  if (adult.from > Seconds{0} || adult.to < p.lesson.bell)
    under += " · in the room " + span(p.lesson, adult.from, adult.to);
  draw_head(flow,
            {"", "Where " + adult.name + " stands" + (adult.leads ? " (leads the lesson)" : ""),
             under, "the bell", kitchen::clock(p.lesson, p.lesson.bell), true});
  const std::vector<Stand> all = stands(p.lesson, *p.answer.plan, a);
  if (!all.empty()) draw_thread(flow, p, all);
  const auto lines = adult_lines(p.lesson, *p.answer.plan, a);
  if (lines.empty()) {
    flow.paragraph("Free to help anywhere.", {14});
  } else {
    Table table;
    table.columns = {
        {"When", 25, {size + 1, true}, true}, {"Where and why", 69, {size}}, {"", 6, {}}};
    table.least_row = size * 1.9;
    for (const auto& [when, what] : lines) table.rows.push_back({{{when}, {what}, tick_cell()}});
    flow.table(table);
  }
  flow.paragraph("Between these: walk the room, hands free, backs to the wall, eyes on the hobs.",
                 {size});
  flow.gap(6);
  flow.paragraph(caution_words(), {9, true});
}

}  // namespace

void draw_adult_sheets(Document& document, const Planned& p) {
  if (!p.answer.plan) return;
  for (int a = 0; at(a) < p.lesson.adults.size(); ++a) {
    const double size = size_that_fits({13, 12, 11, 10, 9.5, 9}, 1,
                                       [&](Document& d, double s) { draw_one(d, p, a, s); });
    draw_one(document, p, a, size);
  }
}

std::string pdf_of_adult_sheets(const Planned& p) {
  Document document(p.lesson.title, p.lesson.date);
  draw_adult_sheets(document, p);
  return document.pdf();
}

}  // namespace print::sheets
