#include "print/sheets/wall_page.h"

#include <fmt/format.h>

#include <algorithm>

#include "print/say_parts.h"

namespace print::sheets {
namespace {

struct Line {
  std::string time, says;
};

std::vector<Line> lines_of(const Planned& p, const Wave& wave) {
  std::vector<Line> out;
  const auto dish_words = [&](int dish) {
    return several_dishes(p.lesson) && dish >= 0 ? " (" + tag(p.lesson, dish) + ")" : "";
  };
  for (const timeplan::Checkpoint& check : p.answer.plan->checkpoints) {
    if (check.wave != wave.number) continue;
    out.push_back(
        {kitchen::clock(p.lesson, check.at), capital(check.says) + dish_words(check.dish)});
  }
  if (!out.empty()) return out;
  // A wave without checkpoints: by when the last of them has begun what needs heat, and washing up.
  std::vector<std::pair<Seconds, std::string>> begun;
  for (const Doing& doing : wave.doings) {
    const kitchen::Step* step = step_of(p.lesson, doing.example);
    const bool heat = doing.example.kind == TaskKind::kStep && step != nullptr && step->heat &&
                      kitchen::hands_on(step->attention);
    const bool wash = doing.example.kind == TaskKind::kWashUp && doing.example.part == 0;
    if (!heat && !wash) continue;
    begun.push_back({doing.turns.back().start,
                     capital(brief(p.lesson, doing.example)) + dish_words(doing.example.dish)});
  }
  std::stable_sort(begun.begin(), begun.end(),
                   [](const auto& a, const auto& b) { return a.first < b.first; });
  for (const auto& [when, says] : begun)
    out.push_back({"by " + kitchen::clock(p.lesson, when), says});
  return out;
}

/// The height of one line at a size of type, its words on as many lines as they need.
double height_of(Document& d, const Line& line, double size, double width) {
  const Block time = d.set(line.time, {size * 1.25, true});
  const Block says = d.set(line.says, {size}, width - time.width - size * 0.4);
  return std::max(time.height, says.height) + size * 0.18;
}

void put_line(Flow& flow, const Line& line, double size, double times_width) {
  Document& d = flow.document();
  const Block time = d.set(line.time, {size * 1.25, true});
  const double indent = times_width + size * 0.4;
  const Block says = d.set(line.says, {size}, flow.width() - indent);
  const double height = std::max(time.height, says.height) + size * 0.18;
  flow.need(height);
  flow.canvas().put(time, flow.x(), flow.y());
  flow.canvas().put(says, flow.x() + indent,
                    flow.y() + std::max(0.0, time.baseline - says.baseline));
  flow.gap(height);
}

/// The largest size at which the waves' lines fit one page of this height, if possible with every
/// line unbroken; below the least for three metres it is that least and there will be several
/// pages.
double size_for(Document& d, const std::vector<std::vector<Line>>& waves, double width,
                double height) {
  const auto fits = [&](double size, bool unbroken) {
    double sum = 0;
    for (const auto& wave : waves) {
      if (waves.size() > 1) sum += kFromThreeMetres * 1.4;
      for (const Line& line : wave) {
        const double one = height_of(d, line, size, width);
        if (unbroken && one > height_of(d, {line.time, "x"}, size, width) + 1) return false;
        sum += one;
      }
    }
    return sum <= height;
  };
  for (const bool unbroken : {true, false}) {
    for (double size = 58; size > kFromThreeMetres; size -= 2) {
      if (fits(size, unbroken)) return size;
    }
  }
  return kFromThreeMetres;
}

void put_bell(Flow& flow, const Planned& p) {
  Document& d = flow.document();
  const Block bell = d.set(kitchen::clock(p.lesson, p.lesson.bell), {80, true});
  const Block word = d.set("Bell", {48, true});
  flow.need(bell.height + 10);
  Canvas c = flow.canvas();
  const double bottom = p.answer.plan ? flow.y() + flow.left() : flow.y() + bell.height;
  const double top = bottom - bell.height;
  c.line(flow.x(), top, flow.x() + flow.width(), top, 3);
  c.put(word, flow.x(), top + bell.baseline - word.baseline);
  c.put(bell, flow.x() + flow.width() - bell.width - 24, top);
  c.line(flow.x() + flow.width() - 12, top + 14, flow.x() + flow.width() - 12, bottom - 12, 4);
  c.line(flow.x() + flow.width() - 2, top + 14, flow.x() + flow.width() - 2, bottom - 12, 4);
  flow.gap(flow.left());
}

}  // namespace

void draw_wall_page(Document& document, const Planned& p) {
  if (!p.answer.plan) return;
  document.begin_part(kA4, foot_words(p));
  const bool own = own_timelines(p.lesson, p.answer);
  const std::vector<Wave> all = own ? std::vector<Wave>{} : waves(p.lesson, *p.answer.plan);
  std::vector<std::vector<Line>> lines;
  for (const Wave& wave : all) lines.push_back(lines_of(p, wave));

  constexpr double kBell = 112, kHead = 70;
  Flow flow = Flow::on_new_page(document);
  const double room = flow.left() - kBell - kHead;
  const double size = size_for(document, lines, flow.width(), room);
  const auto head = [&](const std::string& text) {
    const Block title = document.set_in(text, {kFromThreeMetres, true}, flow.width(), 110,
                                        kFromThreeMetres * 0.8);
    flow.canvas().put(title, flow.x(), flow.y());
    flow.gap(title.height);
    flow.rule(3);
    flow.gap(6);
  };
  if (own) {
    head("Everybody has their own times");
    for (const kitchen::Window& window : p.lesson.windows)
      put_line(flow, {kitchen::clock(p.lesson, window.earliest), window.name}, kFromThreeMetres,
               130);
  }
  double times_width = 0;
  for (const auto& wave : lines) {
    for (const Line& line : wave)
      times_width = std::max(times_width, document.set(line.time, {size * 1.25, true}).width);
  }
  for (std::size_t w = 0; w < all.size(); ++w) {
    double need = kFromThreeMetres * 1.6;
    for (const Line& line : lines[w]) need += height_of(document, line, size, flow.width());
    if (w > 0 && need > flow.left() - kBell) {
      put_bell(flow, p);
      flow.next_page();
    }
    std::string where = where_words(p.lesson, all[w]);
    if (all.size() > 1) where = fmt::format("Wave {}: {}", w + 1, where);
    head(capital(where));
    for (const Line& line : lines[w]) put_line(flow, line, size, times_width);
    flow.gap(8);
  }
  put_bell(flow, p);
}

std::string pdf_of_wall_page(const Planned& p) {
  Document document(p.lesson.title, p.lesson.date);
  draw_wall_page(document, p);
  return document.pdf();
}

}  // namespace print::sheets
