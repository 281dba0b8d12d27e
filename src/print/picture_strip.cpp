// The ground everything is drawn on, and the strip a teacher can say aloud: waves, checkpoints,
// last safe starts.
#include <fmt/format.h>

#include <algorithm>

#include "base/index.h"
#include "print/paper.h"
#include "print/picture_parts.h"
#include "print/say_parts.h"

namespace print {
namespace {

using base::at;

/// Minutes from the opening to the first moment on a grid of the clock.
Seconds first_on(const kitchen::Lesson& lesson, int grid) {
  return base::minutes((grid - lesson.opens_minute % grid) % grid);
}

bool for_everyone(const kitchen::Lesson& lesson, const kitchen::Window& window) {
  return window.audience.empty() || window.audience.size() == lesson.cooks.size();
}

/// One tall row for the whole wave: what all do together at one time, what they do in turn from the
/// first to the last.
std::vector<Task> score(const Wave& wave) {
  std::vector<Task> out;
  for (const Doing& doing : wave.doings) {
    if (doing.example.kind == TaskKind::kWindow) continue;
    out.push_back(doing.example);
    out.back().start = doing.start;
    out.back().end = doing.end;
  }
  return out;
}

/// Flags hang under the row of the wave; a flag that would cover the one before it stands a level
/// lower.
double flags(Frame& frame, const Wave& wave, double y) {
  std::vector<double> free_from(4, -1e9);
  double deepest = y;
  for (const timeplan::Checkpoint& check : frame.answer.plan->checkpoints) {
    if (check.wave != wave.number) continue;
    const std::string when = kitchen::clock(frame.lesson, check.at);
    const std::string says = shortened(check.says, 34);
    const double need = text_width(when, 14, true) + text_width(says, 13) + 24;
    double x = frame.x(check.at);
    const bool flip = x + need > frame.right;
    const double from = flip ? x - need : x;
    std::size_t level = 0;
    while (level + 1 < free_from.size() && free_from[level] > from) ++level;
    free_from[level] = from + need;
    const double line = y + 15 + 18 * static_cast<double>(level);
    frame.body.open("check", fmt::format("Checkpoint {}: {}", when, check.says), R"(role="img")");
    frame.body.line(x, y - 2, x, line + 3, "ink");
    frame.body.rect(x - 4, y - 4, 8, 8, "solid");
    frame.body.rect(flip ? from + 4 : x + 2, line - 12, need - 8, 15, "card");
    const double words = flip ? from + 6 : x + 5;
    frame.body.text(words, line, when, "b s14");
    frame.body.text(words + text_width(when, 14, true) + 5, line, says, "");
    frame.body.close();
    deepest = std::max(deepest, line + 8);
  }
  return deepest;
}

/// A wall in the way of starting later, with the way out beside it.
void wall(Frame& frame, const timeplan::LastSafeStart& last) {
  const double x = frame.x(last.at);
  const std::string when = kitchen::clock(frame.lesson, last.at);
  const std::string words = last.says + " by " + when +
                            (last.instead.empty() ? "" : ", or " + last.instead);
  const bool before = x - frame.left > frame.right - x;
  const double space = std::max(x - frame.left, frame.right - x) - 24;
  frame.body.open("last", "Last safe start: " + words, R"(role="img")");
  frame.body.line(x, frame.y + 2, x, frame.y + 16, "stand");
  frame.body.line(x, frame.y + 9, before ? x - 12 : x + 12, frame.y + 9, "ink");
  for (const std::string& line : wrapped(words, static_cast<int>(std::max(12.0, space / 7.6)))) {
    frame.body.text(before ? x - 16 : x + 16, frame.y + 13.5, line, "", before ? "end" : "start");
    frame.y += 17;
  }
  frame.body.close();
  frame.y += 3;
}

void last_safe_starts(Frame& frame) {
  if (frame.answer.last_safe_starts.empty()) return;
  frame.body.text(18, frame.y + 14, "Last safe starts", "h s14");
  std::vector<timeplan::LastSafeStart> sorted = frame.answer.last_safe_starts;
  std::stable_sort(sorted.begin(), sorted.end(),
                   [](const auto& a, const auto& b) { return a.at < b.at; });
  for (timeplan::LastSafeStart& last : sorted) {
    if (frame.answer.plan->waves > 1 && !own_timelines(frame.lesson, frame.answer)) {
      last.says = fmt::format("Wave {}: {}", last.wave + 1, last.says);
    }
    wall(frame, last);
  }
  frame.y += 6;
}

}  // namespace

void draw_clock(Frame& frame) {
  const auto length = frame.until / base::minutes(1);
  const int step = length > 130 ? 20 : 10;
  for (Seconds t = first_on(frame.lesson, step); t <= frame.until; t += base::minutes(step)) {
    // the bell names its own time and needs the space
    if (std::abs(frame.x(t) - frame.x(frame.lesson.bell)) < 70 || frame.x(t) > frame.right - 30)
      continue;
    frame.body.text(frame.x(t), frame.y + 14, kitchen::clock(frame.lesson, t), "b", "middle");
  }
  const double x = frame.x(frame.lesson.bell);
  const bool flip = x + 70 > frame.right;
  frame.body.text(flip ? std::min(x + 20, frame.right) : x, frame.y + 14,
                  "bell " + kitchen::clock(frame.lesson, frame.lesson.bell), "b",
                  flip ? "end" : "middle");
  frame.y += 18;
}

void draw_strip(Frame& frame) {
  std::vector<double> named_until{-1e9, -1e9};
  double names = 0;
  for (const Task& task : frame.answer.plan->tasks) {  // names of the windows, under the clock
    if (task.kind != TaskKind::kWindow) continue;
    const kitchen::Window& window = frame.lesson.windows[at(task.window)];
    if (!for_everyone(frame.lesson, window)) continue;
    const std::string name = shortened(window.name, 24);
    const double x = frame.x(task.start);
    const std::size_t level = named_until[0] > x ? 1 : 0;
    named_until[level] = x + text_width(name, 11) + 8;
    frame.body.text(x + 2, frame.y + 12 + 14 * static_cast<double>(level), name, "s11");
    names = std::max(names, 16 + 14 * static_cast<double>(level));
  }
  frame.y += names + 4;
  if (!own_timelines(frame.lesson, frame.answer)) {
    for (const Wave& wave : waves(frame.lesson, *frame.answer.plan)) {
      const std::string title = wave_words(frame.lesson, wave);
      frame.body.open("wave", title, R"(role="group")");
      frame.body.text(18, frame.y + 17, title.substr(0, title.find(':')), "h s16");
      frame.body.text(18, frame.y + 34, shortened(where_words(frame.lesson, wave), 22), "q");
      const std::vector<Task> tasks = score(wave);
      const double tall = std::max(
          48.0, 8 + 13.5 * static_cast<double>(lanes_needed(frame.lesson, tasks)));
      draw_row(frame, tasks, frame.y, tall, true);
      frame.body.raw("</g>\n");
      frame.y = flags(frame, wave, frame.y + tall + 2) + 10;
    }
  }
  last_safe_starts(frame);
  frame.body.line(18, frame.y, frame.right, frame.y, "ink");
  frame.y += 4;
}

std::string ground(const Frame& frame, double top, double bottom) {
  Svg under;
  under.rect(18, top, frame.right - 18, bottom - top, "card");
  const double x_bell = frame.x(frame.lesson.bell);
  under.rect(x_bell, top, frame.right - x_bell, bottom - top, "deep");
  for (const Task& task : frame.answer.plan->tasks) {
    if (task.kind != TaskKind::kWindow ||
        !for_everyone(frame.lesson, frame.lesson.windows[at(task.window)]))
      continue;
    under.open("window", task_words(frame.lesson, task), R"(role="img")");
    under.rect(frame.x(task.start), top + 18, frame.x(task.end) - frame.x(task.start),
               bottom - top - 18, "band");
    under.close();
  }
  for (Seconds t = first_on(frame.lesson, 5); t <= frame.until; t += base::minutes(5)) {
    const bool ten = (frame.lesson.opens_minute + t / base::minutes(1)) % 10 == 0;
    under.line(frame.x(t), top + 20, frame.x(t), bottom, ten ? "rule" : "thin");
  }
  return under.str();
}

std::string bell(const Frame& frame, double top, double bottom) {
  Svg over;
  const double x = frame.x(frame.lesson.bell);
  over.open("bell", "The bell, " + kitchen::clock(frame.lesson, frame.lesson.bell),
            R"(role="img")");
  over.line(x - 2, top + 18, x - 2, bottom, "ink");
  over.line(x + 2, top + 18, x + 2, bottom, "ink");
  over.close();
  return over.str();
}

}  // namespace print
