// A standing schedule mended after a change.
#include <gtest/gtest.h>

#include <stdexcept>

#include "../../../bench/scheduler/classroom.h"
#include "scheduler/mend.h"

namespace scheduler::testing {
namespace {

constexpr Time kNow = 40;
constexpr int kLate = 4;  // minutes

struct Standing {
  Problem problem;
  Schedule schedule;
};

Standing nine_cooks() {
  bench::ClassroomOptions options;
  options.cooks = 9;
  Standing standing{bench::classroom(options), {}};
  Options engine;
  engine.seconds = 1000;
  engine.work_limit = 12000000;
  standing.schedule = solve(standing.problem, engine).best;
  return standing;
}

/// Nothing of this team begins before `minute` any more.
Problem held_up(const Standing& standing, int team, Time minute) {
  Problem changed = standing.problem;
  for (std::size_t i = 0; i < changed.activities.size(); ++i) {
    Activity& activity = changed.activities[i];
    if (activity.team == team && standing.schedule[i].start >= kNow)
      activity.earliest = std::max(activity.earliest, minute);
  }
  return changed;
}

MendOptions for_team(int team) {
  MendOptions options;
  options.now = kNow;
  options.teams = {team};
  options.engine.seconds = 1000;
  options.engine.work_limit = 4000000;
  return options;
}

TEST(mend, a_late_cook_moves_the_cooks_of_one_cooker_and_nobody_else) {
  const Standing standing = nine_cooks();
  ASSERT_FALSE(standing.schedule.empty());
  const int team = standing.problem.activities[1].team;
  const Problem changed = held_up(standing, team, kNow + kLate);
  const Mended mended = mend(changed, standing.schedule, for_team(team));
  ASSERT_FALSE(mended.outcome.best.empty());
  EXPECT_EQ(check(changed, mended.outcome.best), std::vector<std::string>{});
  for (std::size_t i = 0; i < standing.schedule.size(); ++i) {
    if (standing.schedule[i].start < kNow) {
      EXPECT_EQ(mended.outcome.best[i], standing.schedule[i]) << "the past of activity " << i;
    }
    // Three cooks share a cooker: 57 activities, after the demonstration.
    if (mended.width == 0 && i > 57) {
      EXPECT_EQ(mended.outcome.best[i], standing.schedule[i]) << "activity " << i;
    }
  }
}

TEST(mend, a_change_that_breaks_nothing_leaves_all_as_it_stands) {
  const Standing standing = nine_cooks();
  MendOptions options = for_team(0);
  options.engine.first_only = true;
  const Mended mended = mend(standing.problem, standing.schedule, options);
  EXPECT_EQ(mended.width, 0);
  EXPECT_EQ(mended.outcome.best, standing.schedule);
}

TEST(mend, what_nothing_can_save_is_said_to_be_impossible) {
  const Standing standing = nine_cooks();
  const int team = standing.problem.activities[1].team;
  const Problem changed = held_up(standing, team, standing.problem.horizon - 1);
  const Mended mended = mend(changed, standing.schedule, for_team(team));
  EXPECT_EQ(mended.outcome.status, Status::kInfeasible);
  EXPECT_EQ(mended.width, 2);
}

TEST(mend, a_schedule_of_another_problem_is_refused) {
  const Standing standing = nine_cooks();
  EXPECT_THROW((void)mend(standing.problem, {}, MendOptions{}), std::invalid_argument);
}

}  // namespace
}  // namespace scheduler::testing
