// A class of 24 cooks with two dishes each: time to the first schedule, the values and bounds after
// a budget. class_bench [SECONDS] [COOKS] [SEED]
#include <cstdio>
#include <cstdlib>

#include "classroom.h"
#include "scheduler/solve.h"

namespace {

void measure(const char* name, const scheduler::bench::ClassroomOptions& class_options,
             double seconds, unsigned long long seed) {
  const scheduler::Problem problem = scheduler::bench::classroom(class_options);
  scheduler::Options options;
  options.seconds = seconds;
  options.seed = seed;
  options.decide_pairs = false;
  const scheduler::Outcome outcome = scheduler::solve(problem, options);
  static constexpr const char* kStatus[] = {"optimal", "feasible", "infeasible", "unknown"};
  std::printf("%-28s %zu activities: %s, first %.3f s, best %.3f s, end %.3f s, %lld ticks\n", name,
              problem.activities.size(), kStatus[static_cast<int>(outcome.status)],
              outcome.first_seconds, outcome.best_seconds, outcome.seconds,
              static_cast<long long>(outcome.ticks));
  for (std::size_t l = 0; l < outcome.values.size(); ++l) {
    std::printf("  %-10s value %lld bound %lld%s\n", problem.goals[l].name.c_str(),
                static_cast<long long>(outcome.values[l]),
                static_cast<long long>(outcome.bounds[l]), outcome.proved[l] ? " proved" : "");
  }
}

}  // namespace

int main(int argc, char** argv) {
  const double seconds = argc > 1 ? std::atof(argv[1]) : 5.0;
  const unsigned long long seed = argc > 3 ? std::strtoull(argv[3], nullptr, 10) : 1;
  scheduler::bench::ClassroomOptions options;
  if (argc > 2) options.cooks = std::atoi(argv[2]);
  measure("adult watches two", options, seconds, seed);
  options.finish_level = true;
  measure("and an early end", options, seconds, seed);
  options.finish_level = false;
  options.adult_watches = 3;
  measure("adult watches three", options, seconds, seed);
  options.adult_watches = 1;
  measure("adult watches one", options, seconds, seed);
  options.adult_watches = 2;
  options.demo_from = options.demo_to = 20;
  measure("demonstration at 20", options, seconds, seed);
  return 0;
}
