// The places by time: a row for each cook, grouped by wave and bay.
#include <fmt/format.h>

#include <algorithm>

#include "base/index.h"
#include "print/picture_parts.h"
#include "print/say_parts.h"

namespace print {
namespace {

using base::at;

/// Windows only some cooks attend shade only their rows.
void own_windows(Frame& frame, int cook) {
  for (const Task& task : frame.answer.plan->tasks) {
    if (task.kind != TaskKind::kWindow) continue;
    const kitchen::Window& window = frame.lesson.windows[at(task.window)];
    if (window.audience.empty() ||
        std::find(window.audience.begin(), window.audience.end(), cook) == window.audience.end())
      continue;
    frame.body.open("window", task_words(frame.lesson, task), R"(role="img")");
    frame.body.rect(frame.x(task.start), frame.y, frame.x(task.end) - frame.x(task.start),
                    frame.row, "band");
    frame.body.close();
  }
}

void draw_cook(Frame& frame, int cook) {
  const kitchen::Cook& who = frame.lesson.cooks[at(cook)];
  const std::string& place = frame.lesson.room.places[at(who.place)].name;
  frame.body.open("cook", place + " " + who.name, R"(role="group")");
  own_windows(frame, cook);
  const double base = frame.y + frame.row / 2 + 3.5;
  frame.body.text(44, base, shortened(place, 4), "b");
  frame.body.text(72, base, shortened(who.name, 14), "");
  std::vector<Task> own;
  for (const Task& task : frame.answer.plan->tasks) {
    if (task.cook == cook) own.push_back(task);
  }
  draw_row(frame, own, frame.y, frame.row, false);
  frame.body.raw("</g>\n");
  frame.y += frame.row;
}

void draw_group(Frame& frame, const std::vector<int>& cooks) {
  int bay = -1;
  for (const int cook : cooks) {
    const int here = bay_of(frame.lesson, cook);
    if (here != bay) {
      if (bay >= 0) {
        frame.body.line(18, frame.y + 1.5, frame.right, frame.y + 1.5, "edge");
        frame.y += 4;
      }
      frame.body.text(18, frame.y + 20, shortened(frame.lesson.room.bays[at(here)].name, 2),
                      "h s25");
      bay = here;
    }
    draw_cook(frame, cook);
  }
}

}  // namespace

void draw_places(Frame& frame) {
  if (frame.lesson.cooks.empty()) return;
  const bool own = own_timelines(frame.lesson, frame.answer);
  std::vector<std::vector<int>> groups;
  const std::vector<Wave> all = waves(frame.lesson, *frame.answer.plan);
  for (const Wave& wave : all) {
    if (own && !groups.empty()) {
      groups.front().insert(groups.front().end(), wave.cooks.begin(), wave.cooks.end());
    } else {
      groups.push_back(wave.cooks);
    }
  }
  draw_clock(frame);
  for (std::size_t g = 0; g < groups.size(); ++g) {
    std::stable_sort(groups[g].begin(), groups[g].end(), [&](int a, int b) {
      return frame.lesson.cooks[at(a)].place < frame.lesson.cooks[at(b)].place;
    });
    if (!own && groups.size() > 1) {
      if (g > 0) frame.body.line(18, frame.y + 2, frame.right, frame.y + 2, "ink");
      frame.body.text(18, frame.y + 17, fmt::format("Wave {}", all[g].number + 1), "h s14");
      frame.y += 22;
    }
    draw_group(frame, groups[g]);
    frame.y += 4;
  }
}

}  // namespace print
