// A plan that stands is kept through a change as far as the change lets it.
#include "timeplan/keep.h"

#include <gtest/gtest.h>

#include <map>
#include <string>

#include "../../support/lesson_file.h"
#include "sample.h"

namespace {

using timeplan::Answer;
using timeplan::Verdict;

Answer planned(const kitchen::Lesson& lesson, const kitchen::Lesson* before = nullptr,
               const Answer* standing = nullptr) {
  timeplan::PlanOptions options;
  options.runs = 50;
  options.seconds = 1;
  if (standing != nullptr) options.standing = timeplan::Standing{before, &*standing->plan};
  return timeplan::plan_lesson(lesson, options);
}

/// When each cook starts each step, by names.
std::map<std::string, base::Seconds> starts(const kitchen::Lesson& lesson, const Answer& answer) {
  std::map<std::string, base::Seconds> out;
  for (const timeplan::Task& task : answer.plan->tasks) {
    if (task.kind != timeplan::TaskKind::kStep || task.cook < 0) continue;
    const kitchen::Dish& dish = lesson.dishes[static_cast<std::size_t>(task.dish)];
    out.emplace(lesson.cooks[static_cast<std::size_t>(task.cook)].name + "/" + dish.name + "/" +
                    dish.method[static_cast<std::size_t>(task.step)].id + "/" +
                    std::to_string(task.part),
                task.start);
  }
  return out;
}

int moved(const std::map<std::string, base::Seconds>& before,
          const std::map<std::string, base::Seconds>& after) {
  int count = 0;
  for (const auto& [name, start] : after) {
    const auto found = before.find(name);
    count += found != before.end() && found->second != start ? 1 : 0;
  }
  return count;
}

class KeptPlan : public testing::Test {
 protected:
  kitchen::Lesson lesson = sample::lesson({sample::soup(), sample::crumble()}, 12, 2, 3, 3, 100);
  Answer standing = planned(lesson);
};

TEST_F(KeptPlan, FollowsAPinAndMovesLittleElse) {
  ASSERT_EQ(standing.verdict, Verdict::kFits);
  // The crumble's rubbing in of the first cook's line, three minutes later than it stands.
  const auto first = std::find_if(standing.plan->tasks.begin(), standing.plan->tasks.end(),
                                  [](const timeplan::Task& task) {
                                    return task.kind == timeplan::TaskKind::kStep &&
                                           task.cook == 0 && task.dish == 1 && task.step == 0;
                                  });
  ASSERT_NE(first, standing.plan->tasks.end());
  kitchen::Lesson changed = lesson;
  kitchen::Pin pin{{1, 0}, first->start + base::minutes(3), {}};
  for (std::size_t c = 0; c < lesson.cooks.size(); ++c) {
    if (standing.plan->wave_of_cook[c] == standing.plan->wave_of_cook[0])
      pin.cooks.push_back(static_cast<int>(c));
  }
  changed.pins = {pin};
  const Answer again = planned(changed, &lesson, &standing);
  ASSERT_EQ(again.verdict, Verdict::kFits);
  const auto now = starts(changed, again);
  const std::string name = lesson.cooks[0].name + "/Plum crumble/rub in/0";
  EXPECT_EQ(now.at(name), pin.at);
  EXPECT_LT(moved(starts(lesson, standing), now), static_cast<int>(now.size()));
}

TEST_F(KeptPlan, StaysWholeWhenNothingChanged) {
  ASSERT_EQ(standing.verdict, Verdict::kFits);
  const Answer again = planned(lesson, &lesson, &standing);
  EXPECT_TRUE(again.kept_standing);
  EXPECT_EQ(moved(starts(lesson, standing), starts(lesson, again)), 0);
  EXPECT_EQ(again.plan->wave_of_cook, standing.plan->wave_of_cook);
}

TEST_F(KeptPlan, StaysForTheOthersWhenACookIsNotHere) {
  kitchen::Lesson changed = lesson;
  changed.cooks.erase(changed.cooks.begin() + 2);
  const Answer kept = planned(changed, &lesson, &standing);
  ASSERT_EQ(kept.verdict, Verdict::kFits);
  EXPECT_TRUE(kept.kept_standing);
  EXPECT_EQ(moved(starts(lesson, standing), starts(changed, kept)), 0);
}

TEST_F(KeptPlan, KeepsTheClockWhenTheDoorOpensEarlier) {
  const base::Seconds earlier = base::minutes(5);
  kitchen::Lesson changed = lesson;
  changed.opens_minute -= 5;
  changed.bell += earlier;
  for (kitchen::Cook& cook : changed.cooks) cook.leaves += earlier;
  for (kitchen::Adult& adult : changed.adults) adult.to += earlier;
  for (kitchen::Sitting& sitting : changed.sittings) sitting.latest += earlier;
  const Answer kept = planned(changed, &lesson, &standing);
  ASSERT_EQ(kept.verdict, Verdict::kFits);
  EXPECT_TRUE(kept.kept_standing);
  auto by_the_clock = starts(changed, kept);
  for (auto& [name, start] : by_the_clock) start -= earlier;
  EXPECT_EQ(moved(starts(lesson, standing), by_the_clock), 0);
}

TEST_F(KeptPlan, SaysThatNothingIsProvedOfItButWhatIsNothing) {
  const Answer kept = planned(lesson, &lesson, &standing);
  for (const timeplan::Level& level : kept.plan->levels) {
    if (!level.name.starts_with("Gw")) {
      EXPECT_EQ(level.bound, 0) << level.name;
    }
    EXPECT_LE(level.bound, level.value) << level.name;
  }
}

TEST_F(KeptPlan, LeavesNobodyShorterOfTheBufferThanBefore) {
  kitchen::Lesson changed = lesson;
  for (kitchen::Cook& cook : changed.cooks) cook.pace *= 1.3;
  const Answer afresh = planned(changed, &lesson, &standing);
  ASSERT_EQ(afresh.verdict, Verdict::kFits);
  EXPECT_LE(afresh.plan->levels[1].value, standing.plan->levels[1].value);
}

}  // namespace
