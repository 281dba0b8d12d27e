// The everyday lesson: one dish in one wave (steps shared by all cooks), and queues a cook each:
// hands washed at four basins, ingredients from a table for three, one look by the adult, washing
// up at eight sinks in two parts. Levels: overrun of the bell, then waiting between queue and step,
// then an early end. wave_bench [SECONDS] [COOKS]
#include <cstdio>
#include <cstdlib>
#include <string>

#include "scheduler/solve.h"

namespace {

using namespace scheduler;

constexpr Time kSteps[] = {6, 4, 5, 10, 4, 12, 3, 6, 18, 4, 2};

class Lesson {
 public:
  explicit Lesson(int cooks) : cooks_(cooks) {}

  Problem run() {
    problem_.horizon = 120;
    basins_ = resource("basins", 4);
    table_ = resource("table", 3);
    adult_ = resource("adult", 1);
    sinks_ = resource("sinks", 8);
    int before = -1;
    for (const Time length : kSteps) {
      const int step = activity("step " + std::to_string(steps_.size() + 1), length, -1, -1);
      if (before >= 0) lag(before, step, 0, 6);
      steps_.push_back(step);
      before = step;
    }
    GoalLevel overrun{"overrun", {}, 0}, waiting{"waiting", {}, 0}, finish{"finish", {}, 0};
    Term late, end;
    late.allowance = 105;
    for (int cook = 0; cook < cooks_; ++cook) add_cook(cook, late, end, waiting);
    overrun.terms.push_back(late);
    finish.terms.push_back(end);
    problem_.goals = {overrun, waiting, finish};
    return problem_;
  }

 private:
  int resource(const std::string& name, int capacity) {
    Resource made;
    made.name = name;
    made.capacity = capacity;
    problem_.resources.push_back(made);
    return static_cast<int>(problem_.resources.size()) - 1;
  }

  int activity(const std::string& name, Time length, int used, int team) {
    Activity made;
    made.name = name;
    made.duration_min = made.duration_max = length;
    made.team = team;
    if (used >= 0) {
      Use use;
      use.resource = used;
      made.modes[0].uses.push_back(use);
    }
    problem_.activities.push_back(made);
    return static_cast<int>(problem_.activities.size()) - 1;
  }

  void lag(int from, int to, Time least, Time most) {
    problem_.lags.push_back({{from, Side::kEnd}, {to, Side::kStart}, least, most, -1});
  }

  void add_cook(int cook, Term& late, Term& end, GoalLevel& waiting) {
    const std::string name = std::to_string(cook + 1);
    const int hands = activity("hands " + name, 1, basins_, cook);
    const int collect = activity("collect " + name, 2, table_, cook);
    const int look = activity("look " + name, 1, adult_, cook);
    const int wash = activity("wash " + name, 5, sinks_, cook);
    const int pack = activity("pack " + name, 3, table_, cook);
    lag(hands, collect, 0, 10);
    lag(collect, steps_.front(), 0, kNoLimit);
    lag(steps_[5], look, -12, 30);
    lag(look, steps_[8], 0, kNoLimit);
    lag(steps_[7], wash, 0, kNoLimit);
    lag(steps_.back(), pack, 0, kNoLimit);
    lag(wash, pack, 0, kNoLimit);
    late.high.push_back({pack, Side::kEnd});
    end.high.push_back({pack, Side::kEnd});
    Term wait;
    wait.high = {{steps_.front(), Side::kStart}};
    wait.low = {{collect, Side::kEnd}};
    wait.allowance = 4;
    wait.team = cook;
    waiting.terms.push_back(wait);
  }

  int cooks_;
  Problem problem_;
  std::vector<int> steps_;
  int basins_ = 0, table_ = 0, adult_ = 0, sinks_ = 0;
};

}  // namespace

int main(int argc, char** argv) {
  const int cooks = argc > 2 ? std::atoi(argv[2]) : 24;
  const Problem problem = Lesson(cooks).run();
  Options options;
  options.decide_pairs = false;
  options.seconds = argc > 1 ? std::atof(argv[1]) : 5.0;
  const Outcome outcome = solve(problem, options);
  std::printf("one wave, %d cooks, %zu activities: first %.3f s, best %.3f s, end %.3f s\n", cooks,
              problem.activities.size(), outcome.first_seconds, outcome.best_seconds,
              outcome.seconds);
  for (std::size_t l = 0; l < outcome.values.size(); ++l) {
    std::printf("  %-10s value %lld bound %lld%s\n", problem.goals[l].name.c_str(),
                static_cast<long long>(outcome.values[l]),
                static_cast<long long>(outcome.bounds[l]), outcome.proved[l] ? " proved" : "");
  }
  return 0;
}
