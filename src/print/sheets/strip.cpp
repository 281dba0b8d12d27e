#include "print/sheets/strip.h"

#include <algorithm>

#include "base/index.h"
#include "print/say_parts.h"

namespace print::sheets {
namespace {

using base::at;

struct Scale {
  double left = 0, right = 0;
  Seconds until{0};
  double x(Seconds s) const {
    return left + (right - left) * static_cast<double>(s.count()) /
                      static_cast<double>(std::max<std::int64_t>(60, until.count()));
  }
};

Seconds last_moment(const Planned& p) {
  Seconds last = p.lesson.bell;
  for (const Task& task : p.answer.plan->tasks) last = std::max(last, task.end);
  return last + base::minutes(2);
}

void draw_clock_line(Flow& flow, const Planned& p, const Scale& scale) {
  Canvas c = flow.canvas();
  const int every = p.lesson.bell > base::minutes(130) ? 20 : 10;
  // The first round clock time of the lesson.
  const int start = (every - p.lesson.opens_minute % every) % every;
  for (int m = start; base::minutes(m) < scale.until; m += every) {
    const double x = scale.x(base::minutes(m));
    if (x > scale.x(p.lesson.bell) - 26 && x < scale.x(p.lesson.bell) + 26) continue;
    const Block time = flow.document().set(kitchen::clock(p.lesson, base::minutes(m)), {8});
    c.put(time, std::max(scale.left, x - time.width / 2), flow.y());
  }
  const Block bell = flow.document().set(kitchen::clock(p.lesson, p.lesson.bell), {8.5, true});
  c.put(bell, std::min(scale.x(p.lesson.bell) - bell.width / 2, scale.right - bell.width),
        flow.y() - 0.5);
  flow.gap(12);
}

void draw_ground(Flow& flow, const Planned& p, const Scale& scale, double top, double bottom) {
  Canvas c = flow.canvas();
  const int start = (5 - p.lesson.opens_minute % 5) % 5;
  for (int m = start; base::minutes(m) < scale.until; m += 5)
    c.line(scale.x(base::minutes(m)), top, scale.x(base::minutes(m)), bottom, 0.3, 0.75);
  draw_bell(c, scale.x(p.lesson.bell), top - 2, bottom - top + 2);
}

/// Which lane each doing lies in, so that none covers another.
std::vector<int> lanes_of(const std::vector<const Doing*>& doings) {
  std::vector<Seconds> free;
  std::vector<int> out;
  for (const Doing* doing : doings) {
    std::size_t lane = 0;
    while (lane < free.size() && free[lane] > doing->start) ++lane;
    if (lane == free.size()) free.push_back(Seconds{0});
    free[lane] = doing->end;
    out.push_back(static_cast<int>(lane));
  }
  return out;
}

void draw_bar(Flow& flow, const kitchen::Lesson& lesson, const Doing& doing, const Scale& scale,
              double y, double height, bool tags) {
  Canvas c = flow.canvas();
  const double x = scale.x(doing.start), w = std::max(1.5, scale.x(doing.end) - x - 0.8);
  const bool window = doing.example.kind == TaskKind::kWindow;
  const Look l = look(lesson, doing.example);
  if (window) {
    c.fill({x, y, w, height}, 0.87);
  } else {
    c.pattern(l, {x, y, w, height});
  }
  std::string name = brief(lesson, doing.example);
  if (tags && doing.example.dish >= 0) name = tag(lesson, doing.example.dish) + " " + name;
  const bool on_black = l == Look::kHands || l == Look::kGrownUp;
  Type type{std::min(9.0, height * 0.68), true, Align::kLeft, on_black && !window ? 1.0 : 0.0};
  Block words = flow.document().set(name, type);
  const double inset = l == Look::kGrownUp && !window ? 11 : 2;
  if (words.width + inset + 2 > w && tags && doing.example.dish >= 0)
    words = flow.document().set(tag(lesson, doing.example.dish), type);
  if (words.width + inset + 1 > w) return;
  const double ty = y + (height - words.height) / 2;
  if (!window && (l == Look::kWatch || l == Look::kClean))
    c.fill({x + inset - 1, y + 1, words.width + 2, height - 2}, 1);
  c.put(words, x + inset, ty);
}

void draw_flags(Flow& flow, const Planned& p, const Scale& scale, int wave, double top,
                double bottom) {
  Canvas c = flow.canvas();
  for (const timeplan::Checkpoint& check : p.answer.plan->checkpoints) {
    if (check.wave != wave) continue;
    const double x = scale.x(check.at);
    c.line(x, top, x, bottom, 1);
    c.fill({x, top - 1, 5, 5});
  }
}

void draw_wave(Flow& flow, const Planned& p, const Wave& wave, Scale scale, bool own,
               double high_bar) {
  const kitchen::Lesson& lesson = p.lesson;
  std::vector<const Doing*> busy, alone;
  for (const Doing& doing : wave.doings) {
    const bool hands = doing.example.kind == TaskKind::kWindow ||
                       keeps_hands_busy(lesson, doing.example);
    (hands ? busy : alone).push_back(&doing);
  }
  const std::vector<int> high = lanes_of(busy), low = lanes_of(alone);
  const auto most = [](const std::vector<int>& v) {
    return v.empty() ? 0 : *std::max_element(v.begin(), v.end()) + 1;
  };
  const double bar = own ? 8 : high_bar, foot = own ? 3.5 : high_bar - 2, step = bar + 1,
               foot_step = foot + 1.5;
  const double height = most(high) * step + most(low) * foot_step;
  flow.need(height + 16);
  if (!own) {
    const Block name = flow.document().set_in(wave_words(lesson, wave), {9, true},
                                              flow.width() - 10, 14);
    flow.canvas().put(name, flow.x(), flow.y());
    flow.gap(name.height + 1);
  } else {
    const kitchen::Cook& cook = lesson.cooks[at(wave.cooks.front())];
    const Block name = flow.document().set_in(
        bold(lesson.room.places[at(cook.place)].name).add(" " + shortened(cook.name, 18)), {8},
        scale.left - flow.x() - 4, 11, 5);
    flow.canvas().put(name, flow.x(), flow.y() - 1);
  }
  const double top = flow.y();
  draw_ground(flow, p, scale, top, top + height);
  const bool tags = several_dishes(lesson, wave.dishes);
  for (std::size_t i = 0; i < busy.size(); ++i)
    draw_bar(flow, lesson, *busy[i], scale, top + high[i] * step, bar, tags);
  for (std::size_t i = 0; i < alone.size(); ++i)
    draw_bar(flow, lesson, *alone[i], scale, top + most(high) * step + low[i] * foot_step, foot,
             tags);
  if (!own) draw_flags(flow, p, scale, wave.number, top - 1, top + height);
  flow.gap(height + (own ? 2 : 4));
}

}  // namespace

void draw_strip(Flow& flow, const Planned& p, double bar) {
  if (!p.answer.plan) return;
  const bool own = own_timelines(p.lesson, p.answer);
  Scale scale{flow.x() + (own ? 92 : 0), flow.x() + flow.width() - 6, last_moment(p)};
  draw_clock_line(flow, p, scale);
  for (const Wave& wave : waves(p.lesson, *p.answer.plan)) {
    if (!wave.cooks.empty()) draw_wave(flow, p, wave, scale, own, bar);
  }
}

}  // namespace print::sheets
