// Outside values: optimal makespans of PSPLIB j30 (R. Kolisch, A. Sprecher 1996, "PSPLIB - a
// project scheduling problem library", European Journal of Operational Research 96, 205-216), from
// the table best_known.csv beside the instances. The instances are not part of this project; the
// test is skipped where they are not at hand.
#include <gtest/gtest.h>

#include <cstdlib>
#include <filesystem>

#include "../../../bench/scheduler/best_known.h"
#include "../../../bench/scheduler/project.h"
#include "scheduler/solve.h"

namespace scheduler::testing {
namespace {

namespace fs = std::filesystem;

constexpr int kStride = 4;  // every fourth of the 240 instances: 60, spread over all parameter
                            // groups

fs::path bench_folder() {
  if (const char* named = std::getenv("BENCHBELL_BENCH")) return named;
  return fs::path(BENCHBELL_SOURCE_DIR) / ".." / "shared" / "bench";
}

TEST(psplib, j30_instances_reach_and_prove_the_known_optimum) {
  const fs::path folder = bench_folder();
  if (!fs::exists(folder / "j30.tar.xz") || !fs::exists(folder / "best_known.csv")) {
    GTEST_SKIP() << "no j30.tar.xz and best_known.csv in " << folder
                 << "; name their folder in the environment variable BENCHBELL_BENCH";
  }
  const fs::path unpacked = fs::path(::testing::TempDir()) / "benchbell_j30";
  fs::create_directories(unpacked);
  const std::string command = "tar -xJf '" + (folder / "j30.tar.xz").string() + "' -C '" +
                              unpacked.string() + "'";
  ASSERT_EQ(std::system(command.c_str()), 0) << command;
  int index = 0, solved = 0;
  for (const auto& [key, known] : projects::read_best_known(folder / "best_known.csv")) {
    if (key.first != "j30" || known.proved != "optimal" || index++ % kStride != 0) continue;
    const Problem problem = projects::to_problem(
        projects::read_project(unpacked / "j30" / key.second));
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
  fs::remove_all(unpacked);
  EXPECT_GE(solved, 40);
}

}  // namespace
}  // namespace scheduler::testing
