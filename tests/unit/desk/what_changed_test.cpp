// What a teacher who has printed the plan before wants to hear: seats first, then lines.
#include "desk/what_changed.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "demo_lessons.h"

namespace {

using desk::Printed;
using desk::what_changed;
using desk::WhatChanged;

Printed plan(std::map<std::string, std::string> seats, std::vector<std::string> lines,
             int waves = 1) {
  std::sort(lines.begin(), lines.end());
  return {std::move(seats), waves, std::move(lines)};
}

TEST(WhatChanged, NothingWhenThePrintedPlanStillHolds) {
  const Printed same = plan({{"Aisha", "A1"}}, {"Everybody: 09:05 Rub in (FS)"});
  EXPECT_EQ(what_changed(same, same), WhatChanged{});
}

TEST(WhatChanged, SeatsComeFirst) {
  const auto changed = what_changed(
      plan({{"Aisha", "A1"}, {"Ben", "A2"}}, {"Everybody: 09:05 Rub in (FS)"}),
      plan({{"Aisha", "B1"}, {"Cara", "A2"}}, {"Everybody: 09:10 Rub in (FS)"}));
  EXPECT_EQ(changed.says,
            (std::vector<std::string>{"Aisha moves from A1 to B1.", "Ben is no longer in it.",
                                      "Cara is new, at A2.", "New: Everybody: 09:10 Rub in (FS)"}));
  EXPECT_EQ(changed.seats_moved, 1);
  EXPECT_EQ(changed.lines_moved, 1);
}

// Three lines gone and one new: three lines of the paper are wrong.
TEST(WhatChanged, LinesAreCountedByTheLargerOfGoneAndNew) {
  EXPECT_EQ(what_changed(plan({}, {"a", "b", "c", "d"}), plan({}, {"d", "e"})).lines_moved, 3);
  EXPECT_EQ(what_changed(plan({}, {"d", "e"}), plan({}, {"a", "b", "c", "d"})).lines_moved, 3);
}

TEST(WhatChanged, AnotherNumberOfWavesIsSaid) {
  const auto changed = what_changed(plan({}, {}, 2), plan({}, {}, 1));
  EXPECT_EQ(changed.says, std::vector<std::string>{"1 wave instead of 2."});
}

TEST(WhatChanged, WithoutAPlanBeforeOrAfterOnlySeatsAreCompared) {
  EXPECT_EQ(what_changed(plan({}, {}, 0), plan({}, {"a"}, 1)), WhatChanged{});
  EXPECT_EQ(what_changed(plan({}, {"a"}, 1), plan({}, {}, 0)), WhatChanged{});
}

TEST(WhatChanged, NobodyReadsSixtyLines) {
  std::vector<std::string> lines;
  for (int i = 0; i < 60; ++i) lines.push_back("Wave 1: line " + std::to_string(100 + i));
  const auto changed = what_changed(plan({}, {}), plan({}, lines));
  EXPECT_EQ(changed.says.size(), 13U);
  EXPECT_EQ(changed.says.back(), "and 48 more printed lines.");
  EXPECT_EQ(changed.lines_moved, 60);
}

TEST(Printed, OfALessonWithoutAPlanHoldsItsSeats) {
  const kitchen::Lesson lesson = desk_test::lesson_of(desk_test::document_of("b-two-dishes"));
  const Printed printed = desk::printed(lesson, {});
  EXPECT_EQ(printed.seats.size(), lesson.cooks.size());
  EXPECT_EQ(printed.seats.at("Noah B."), "D2");
  EXPECT_EQ(printed.waves, 0);
  EXPECT_TRUE(printed.lines.empty());
}

TEST(Printed, ALineOfAWaveStandsThereOnceHoweverManyCookIt) {
  const kitchen::Lesson lesson = desk_test::lesson_of(desk_test::document_of("e-does-not-fit"));
  timeplan::Answer answer;
  answer.plan.emplace();
  answer.plan->waves = 1;
  answer.plan->wave_of_cook.assign(lesson.cooks.size(), 0);
  for (int cook = 0; cook < 3; ++cook) {
    timeplan::Task task;
    task.kind = timeplan::TaskKind::kStep;
    task.cook = cook;
    task.dish = 0;
    task.step = 0;
    task.start = base::minutes(5);
    answer.plan->tasks.push_back(task);
  }
  const Printed printed = desk::printed(lesson, answer);
  ASSERT_EQ(printed.lines.size(), 1U);  // opening 14:00 and five minutes
  EXPECT_EQ(printed.lines.front(), "Everybody: 14:05 " + lesson.dishes[0].method[0].brief + " (" +
                                       lesson.dishes[0].tag + ")");
}

}  // namespace
