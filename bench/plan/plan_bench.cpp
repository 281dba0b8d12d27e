// How long it takes to plan, how far from the best possible the plans are, and how much memory it
// takes. One line a lesson; the figures to reach are said at the end of each line. Run from the
// project's top folder.
#include <sys/resource.h>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <string>

#include "../../tests/support/lesson_file.h"
#include "base/memory.h"
#include "timeplan/answer.h"
#include "timeplan/quick_lesson.h"

namespace {

using std::chrono::steady_clock;

double since(steady_clock::time_point start) {
  return std::chrono::duration<double>(steady_clock::now() - start).count();
}

struct Measured {
  double seconds = 0;
  timeplan::Answer answer;
};

Measured planned(const kitchen::Lesson& lesson, double seconds, bool with_chance) {
  timeplan::PlanOptions options;
  options.seconds = seconds;
  options.with_chance = with_chance;
  const auto start = steady_clock::now();
  Measured m;
  m.answer = timeplan::plan_lesson(lesson, options);
  m.seconds = since(start);
  return m;
}

// Widest gap of a goal level in per cent of the lesson (rule Z3), G1 and waves apart: of the plan
// as it stands to the best with its checkpoints, and of the plan before they were set to the best
// without any.
double widest_gap(const kitchen::Lesson& lesson, const timeplan::Plan& plan, bool free) {
  double widest = 0;
  for (const timeplan::Level& level : plan.levels) {
    if (level.name.starts_with("G1") || level.name.starts_with("Gw")) continue;
    const std::int64_t value = free && level.grid ? level.grid->free_value : level.value;
    const std::int64_t bound = !free && level.grid ? level.grid->bound : level.bound;
    const double minutes = static_cast<double>(value - bound) /
                           static_cast<double>(lesson.cooks.size());
    widest = std::max(widest, 100.0 * minutes / (static_cast<double>(lesson.bell.count()) / 60.0));
  }
  return widest;
}

void row(const std::string& what, const kitchen::Lesson& lesson, double budget,
         const char* wanted) {
  const Measured m = planned(lesson, budget, false);
  const bool fits = m.answer.verdict == timeplan::Verdict::kFits;
  std::printf(
      "%-44s %4zu tasks  %-12s first %7.0f ms  all %6.2f s  gap %5.2f %%, before checkpoints "
      "%5.2f %%   (%s)\n",
      what.c_str(), m.answer.plan ? m.answer.plan->tasks.size() : 0, fits ? "fits" : "does not fit",
      1000 * m.answer.first_seconds, m.seconds,
      fits ? widest_gap(lesson, *m.answer.plan, false) : 0.0,
      fits ? widest_gap(lesson, *m.answer.plan, true) : 0.0, wanted);
}

kitchen::Lesson quick(const std::vector<std::string>& dishes, int pupils, int together, int cookers,
                      int minutes, kitchen::Purpose purpose) {
  timeplan::QuickWish wish;
  for (const std::string& d : dishes)
    wish.dishes.push_back(support::dish_file("demo/dishes/" + d + ".json"));
  wish.pupils = pupils;
  wish.together = together;
  wish.cookers = cookers;
  wish.sinks = cookers;
  wish.to_minute = wish.from_minute + minutes;
  wish.purpose = purpose;
  wish.rules = kitchen::read_house_rules(R"({"kind": "house_rules", "version": 1})", "").value();
  return timeplan::quick_lesson(wish).value();
}

}  // namespace

int main() {
  base::keep_freed_memory();
  const kitchen::Lesson pairs = quick({"lentil-dhal"}, 24, 2, 6, 75, kitchen::Purpose::kEatHere);
  row("one dish, twelve pairs, waves", pairs, 5, "first under 100 ms");
  const kitchen::Lesson two = support::lesson_file("demo/lessons/b-two-dishes.json");
  row("24 cooks x 2 dishes", two, 5, "first under 300 ms, gap under 5 % of the lesson after 5 s");
  kitchen::Lesson two_own = two;
  two_own.timelines = kitchen::Timelines::kOwn;
  row("24 cooks x 2 dishes, own timelines", two_own, 5, "first under 300 ms, gap under 5 %");
  row("18 menus of three dishes, own timelines",
      support::lesson_file("demo/lessons/f-three-dish-practical.json"), 5, "first under 1 s");
  const auto start = steady_clock::now();
  const Measured m = planned(quick({"fruit-scones"}, 24, 2, 6, 60, kitchen::Purpose::kTakeHome), 5,
                             true);
  std::printf("%-44s with its chance %.2f s   (under 1 s)\n", "the quick way in", since(start));
  if (m.answer.plan) {
    // The chance alone, on the 24-cook plan.
    const Measured whole = planned(two, 3, false);
    if (whole.answer.verdict == timeplan::Verdict::kFits) {
      kitchen::Lesson as_planned = two;
      if (whole.answer.own_timelines_needed) as_planned.timelines = kitchen::Timelines::kOwn;
      const timeplan::Network net = timeplan::network(as_planned, whole.answer.plan->wave_of_cook);
      timeplan::ChanceOptions how;
      const auto begin = steady_clock::now();
      (void)timeplan::chance(as_planned, net, *whole.answer.plan, how);
      std::printf("%-44s %.2f s, three starts of the lesson each   (2000 lessons under 1 s)\n",
                  "2000 lessons of the 24-cook plan", since(begin));
    }
  }
  rusage use{};
  getrusage(RUSAGE_SELF, &use);
  std::printf("%-44s %.0f MB   (under 300 MB)\n", "peak memory",
              static_cast<double>(use.ru_maxrss) / 1024.0);
}
