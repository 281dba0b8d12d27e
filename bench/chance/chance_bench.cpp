// How long two thousand runs of a full class take: 24 cooks, 18 steps each, four rings to three
// cooks, an oven each eight of them share, sinks, one adult, a demonstration. Invented. Prints
// activities and milliseconds; play and draw apart.
#include <chrono>
#include <cstdio>

#include "timeplan/chance/draw.h"

namespace {

using namespace timeplan;

constexpr int kCooks = 24, kSteps = 18;

class Class {
 public:
  LessonModel make() {
    model_.play.cooks.resize(kCooks);
    for (int i = 0; i < 8; ++i) model_.play.resources.push_back({4, {}});  // rings of a cooker
    for (int i = 0; i < 4; ++i) model_.play.resources.push_back({2, {}});  // sinks of a bay
    model_.play.resources.push_back({100, {}});                            // the adult
    model_.play.helpers = {12};
    for (int i = 0; i < 8; ++i)
      model_.play.ovens.push_back({24, 3, 0, {0, 600, 720, 0, 0, 240, 0, 360, 0}});
    for (int s = 0; s < kSteps; ++s)
      model_.step_ids.push_back(static_cast<std::uint64_t>(s) + 1000);
    for (int c = 0; c < kCooks; ++c) add_cook(c);
    return model_;
  }

 private:
  int add(int cook, int step, int attention, int minutes, double spread) {
    PlayActivity a;
    a.cook = cook;
    a.attention = attention;
    a.busy = attention >= 8 ? 2 : 0;
    a.hands_on = a.calls = attention >= 5;
    a.planned_start = at_;
    a.planned = 60 * minutes;
    at_ += a.planned;
    a.finish = step == kSteps - 1;
    a.due = a.finish ? 100 * 60 : kNever;
    const int id = static_cast<int>(model_.play.activities.size());
    if (step > 0)
      model_.play.waits.push_back(
          {id - 1, true, id, false, 0, attention == 8 && step % 6 == 4 ? 60 : kNever, false});
    model_.play.activities.push_back(a);
    model_.length.push_back({0.93 * 60 * minutes, spread, a.hands_on, cook, step});
    model_.task.push_back(-1);
    model_.part.push_back(0);
    return id;
  }

  void add_cook(int c) {
    model_.cook_ids.push_back(static_cast<std::uint64_t>(c) + 1);
    at_ = 60 * (c % 3);
    int pan = -1, bake = -1;
    for (int s = 0; s < kSteps; ++s) {
      const int kind = s % 6;
      const int a = add(c, s,
                        kind == 3   ? 1
                        : kind == 2 ? 2
                                    : 8,
                        kind == 3 ? 12 : 3 + s % 3, kind == 3 ? 0.1 : 0.3);
      PlayActivity& it = model_.play.activities.back();
      if (kind == 2) pan = a;
      if (s == 9) bake = a;
      if (kind == 4) {
        it.closing = true;
        it.ways = {PlayWay{{{8 + c / 6, 1}}, kNever}};
        if (s == 10) {
          model_.play.spans.push_back({bake, a, true, {}, c / 3, 1 + c % 2, 8, {}});
        } else {
          model_.play.spans.push_back(
              {pan, a, true, {PlayWay{{{c / 3, 1}}, kNever}}, -1, 0, 0, {}});
        }
      }
      if (s == 6) {
        it.ways = {PlayWay{{{12, 20}}, kNever}};
        it.calls = false;
      }
      if (s == kSteps - 1) it.ways = {PlayWay{{{8 + c / 6, 1}}, kNever}};
    }
  }

  LessonModel model_;
  int at_ = 0;
};

double milliseconds(std::chrono::steady_clock::duration d) {
  return std::chrono::duration<double, std::milli>(d).count();
}

}  // namespace

int main() {
  const LessonModel model = Class().make();
  const auto start = std::chrono::steady_clock::now();
  RoomPlayer player(model.play);
  Draw draw(model, 1);
  const auto ready = std::chrono::steady_clock::now();
  std::chrono::steady_clock::duration drawing{}, playing{};
  constexpr int kRuns = 2000;
  long finish = 0, in_time = 0;
  for (std::uint64_t run = 0; run < kRuns; ++run) {
    const auto a = std::chrono::steady_clock::now();
    const Luck luck = draw.of_run(run, 0);
    const auto b = std::chrono::steady_clock::now();
    const Run& played = player.play(luck);
    const auto c = std::chrono::steady_clock::now();
    drawing += b - a;
    playing += c - b;
    for (const int f : played.finish) finish += f;
    for (const char good : played.in_time) in_time += good;
  }
  std::printf(
      "chance: %zu activities, %d runs: ready %.1f ms, draw %.0f ms, play %.0f ms; mean finish "
      "%.1f min, %.1f of %d in time\n",
      model.play.activities.size(), kRuns, milliseconds(ready - start), milliseconds(drawing),
      milliseconds(playing), static_cast<double>(finish) / kRuns / kCooks / 60,
      static_cast<double>(in_time) / kRuns, kCooks);
}
