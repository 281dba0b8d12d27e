// Outside values: optimal makespans of PSPLIB j30 (R. Kolisch, A. Sprecher 1996, "PSPLIB - a
// project scheduling problem library", European Journal of Operational Research 96, 205-216), from
// the table best_known.csv beside the instances. The instances are not part of this project; the
// test is skipped where they are not at hand.
#include <gtest/gtest.h>

#include "../../../bench/scheduler/best_known.h"
#include "../../../bench/scheduler/project.h"
#include "bench_sets.h"
#include "scheduler/solve.h"

namespace scheduler::testing {
namespace {

constexpr int kStride = 4;  // every fourth of the 240 instances: 60, spread over all parameter
                            // groups
constexpr int kStride120 = 20;

TEST(psplib, j30_instances_reach_and_prove_the_known_optimum) {
  const BenchSet set("j30");
  if (!set.at_hand()) {
    GTEST_SKIP() << "no j30.tar.xz in " << bench_folder()
                 << "; name its folder in the environment variable BENCHBELL_BENCH";
  }
  int index = 0, solved = 0;
  for (const auto& [key, known] : projects::read_best_known(bench_folder() / "best_known.csv")) {
    if (key.first != "j30" || known.proved != "optimal" || index++ % kStride != 0) continue;
    const Problem problem = projects::to_problem(projects::read_project(set.instance(key.second)));
    Options options;
    options.seconds = 10;
    const Outcome outcome = solve(problem, options);
    ASSERT_FALSE(outcome.best.empty()) << key.second;
    EXPECT_EQ(check(problem, outcome.best), std::vector<std::string>{}) << key.second;
    EXPECT_LE(outcome.bounds[0], known.high) << key.second;
    EXPECT_GE(outcome.values[0], known.low) << key.second;
    if (outcome.status != Status::kOptimal) continue;
    EXPECT_EQ(outcome.values[0], known.high) << key.second;
    ++solved;
  }
  EXPECT_GE(solved, 40);
}

TEST(psplib, j120_schedules_are_near_the_best_known_after_little_work) {
  const BenchSet set("j120");
  if (!set.at_hand()) {
    GTEST_SKIP() << "no j120.tar.xz in " << bench_folder()
                 << "; name its folder in the environment variable BENCHBELL_BENCH";
  }
  int index = 0, count = 0;
  double gaps = 0;
  for (const auto& [key, known] : projects::read_best_known(bench_folder() / "best_known.csv")) {
    if (key.first != "j120" || index++ % kStride120 != 0) continue;
    const projects::Project project = projects::read_project(set.instance(key.second));
    Options options;
    options.seconds = 60;
    options.work_limit = 150000000;  // about two seconds
    const Outcome outcome = solve(projects::to_problem(project), options);
    ASSERT_FALSE(outcome.best.empty()) << key.second;
    std::vector<int> starts;
    for (const Placement& placement : outcome.best) starts.push_back(placement.start);
    EXPECT_EQ(projects::breaches(project, starts), std::vector<std::string>{}) << key.second;
    EXPECT_GE(outcome.values[0], known.low) << key.second;
    EXPECT_LE(outcome.bounds[0], known.high) << key.second;
    gaps += 100.0 * static_cast<double>(outcome.values[0] - known.high) / known.high;
    ++count;
  }
  ASSERT_GT(count, 0);
  // On these instances, after 2 s: 3.2 % without lists, 1.9 % with them.
  EXPECT_LE(gaps / count, 2.3);
  RecordProperty("mean_gap_percent", std::to_string(gaps / count));
}

}  // namespace
}  // namespace scheduler::testing
