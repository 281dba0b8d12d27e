// Clusters that are the same problem under other names.
#include <gtest/gtest.h>

#include "scheduler/alike.h"
#include "scheduler/problem.h"

namespace scheduler::testing {
namespace {

int add_resource(Problem& problem, int capacity) {
  Resource resource;
  resource.capacity = capacity;
  problem.resources.push_back(resource);
  return static_cast<int>(problem.resources.size()) - 1;
}

void take(Activity& activity, int resource, int amount) {
  Use use;
  use.resource = resource;
  use.amount = amount;
  activity.modes[0].uses.push_back(use);
}

Activity task(int minutes, int team) {
  Activity activity;
  activity.duration_min = activity.duration_max = minutes;
  activity.team = team;
  return activity;
}

/// Three pairs of teams, each at a sink of their own, an adult who looks round each sink when its
/// four tasks are done, and a register that takes everybody's hands.
Problem three_bays() {
  Problem problem;
  problem.horizon = 60;
  const int adult = add_resource(problem, 1);
  Activity everyone = task(3, -1);
  take(everyone, adult, 1);
  GoalLevel early;
  for (int bay = 0; bay < 3; ++bay) {
    const int sink = add_resource(problem, 1);
    const int look = 5 * bay + 4;
    for (int team = 2 * bay; team < 2 * bay + 2; ++team) {
      const int hands = add_resource(problem, 10);
      take(everyone, hands, 10);
      Activity cook = task(7, team), wash = task(5, team);
      take(cook, hands, 8);
      take(wash, hands, 8);
      take(wash, sink, 1);
      const int first = static_cast<int>(problem.activities.size());
      problem.activities.push_back(cook);
      problem.activities.push_back(wash);
      problem.lags.push_back({{first, Side::kEnd}, {first + 1, Side::kStart}});
      problem.lags.push_back({{first + 1, Side::kEnd}, {look, Side::kStart}});
      Term end;
      end.high = {{first + 1, Side::kEnd}};
      end.team = team;
      early.terms.push_back(end);
    }
    problem.activities.push_back(task(1, -1));
    take(problem.activities.back(), adult, 1);
  }
  problem.activities.push_back(everyone);
  problem.goals.push_back(early);
  return problem;
}

TEST(alike, bays_with_the_same_work_are_one_problem) {
  const Problem problem = three_bays();
  const Clusters clusters(problem);
  ASSERT_EQ(clusters.count(), 3);
  EXPECT_EQ(first_alike(problem, clusters), (std::vector<int>{0, 0, 0}));
}

TEST(alike, one_minute_more_for_one_task_is_another_problem) {
  Problem problem = three_bays();
  problem.activities[5].duration_max = 8;
  EXPECT_EQ(first_alike(problem, Clusters(problem)), (std::vector<int>{0, 1, 0}));
}

TEST(alike, a_limit_a_weight_a_window_or_a_lag_of_one_bay_is_seen) {
  const std::vector<int> third_differs{0, 0, 2};
  Problem wider = three_bays();
  for (const Use& use : wider.activities[11].modes[0].uses)
    wider.resources[static_cast<std::size_t>(use.resource)].capacity += 1;
  EXPECT_EQ(first_alike(wider, Clusters(wider)), third_differs);
  Problem weighted = three_bays();
  weighted.goals[0].terms[4].weight = 2;
  EXPECT_EQ(first_alike(weighted, Clusters(weighted)), third_differs);
  Problem later = three_bays();
  later.activities[10].earliest = 4;
  EXPECT_EQ(first_alike(later, Clusters(later)), third_differs);
  Problem tighter = three_bays();
  tighter.lags.back().max = 3;
  EXPECT_EQ(first_alike(tighter, Clusters(tighter)), third_differs);
  Problem banned = three_bays();
  banned.blocked.push_back({5, 9, {12}});
  EXPECT_EQ(first_alike(banned, Clusters(banned)), third_differs);
}

}  // namespace
}  // namespace scheduler::testing
