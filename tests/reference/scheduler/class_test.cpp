// Outside values for the synthetic class of 24 cooks: Chuffed 0.13.3 (an open-source
// lazy-clause-generation solver, https://github.com/chuffed/chuffed) on a MiniZinc model of the
// same data: optimum 123 when the adult watches two, 108 when three; infeasible when one, and when
// the demonstration is fixed at minute 20.
#include <gtest/gtest.h>

#include "../../../bench/scheduler/classroom.h"
#include "scheduler/solve.h"

namespace scheduler::testing {
namespace {

Outcome run(const bench::ClassroomOptions& class_options, double seconds) {
  Options options;
  options.seconds = seconds;
  return solve(bench::classroom(class_options), options);
}

TEST(class_of_24, value_and_bound_enclose_the_known_optimum) {
  const Outcome outcome = run({}, 10);
  ASSERT_FALSE(outcome.best.empty());
  EXPECT_LE(outcome.bounds[0], 123);
  EXPECT_GE(outcome.values[0], 123);
  EXPECT_GE(outcome.bounds[0], 90);  // each cooker alone gives 108; less would mean the bounds do
                                     // not work
}

TEST(class_of_24, the_optimum_is_108_when_the_adult_watches_three) {
  bench::ClassroomOptions options;
  options.adult_watches = 3;
  const Outcome outcome = run(options, 60);
  EXPECT_EQ(outcome.status, Status::kOptimal);
  EXPECT_EQ(outcome.values, (std::vector<std::int64_t>{108}));
}

TEST(class_of_24, one_hot_oil_step_at_a_time_is_proved_impossible) {
  bench::ClassroomOptions options;
  options.adult_watches = 1;
  EXPECT_EQ(run(options, 60).status, Status::kInfeasible);
}

TEST(class_of_24, a_demonstration_at_20_is_proved_impossible) {
  bench::ClassroomOptions options;
  options.demo_from = options.demo_to = 20;
  EXPECT_EQ(run(options, 60).status, Status::kInfeasible);
}

}  // namespace
}  // namespace scheduler::testing
