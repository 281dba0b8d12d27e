// A remedy that was offered, applied by its code, gives a lesson that plans to a fit.
#include <gtest/gtest.h>

#include "demo_lessons.h"
#include "desk/lesson_change.h"
#include "desk/what_changed.h"
#include "timeplan/answer.h"

namespace {

using namespace desk_test;

timeplan::Answer planned(const kitchen::Lesson& lesson, bool remedies) {
  timeplan::PlanOptions options;
  options.seconds = 20;
  options.with_remedies = remedies;
  options.with_chance = false;
  options.with_last_safe_starts = false;
  return timeplan::plan_lesson(lesson, options);
}

TEST(Remedies, OfTheLessonThatDoesNotFitMakeItFitWhenAppliedByTheirCode) {
  const std::string before = document_of("e-does-not-fit");
  const timeplan::Answer answer = planned(lesson_of(before), true);
  ASSERT_EQ(answer.verdict, timeplan::Verdict::kDoesNotFit);
  int applied = 0;
  for (const timeplan::Remedy& remedy : answer.remedies) {
    if (!remedy.fits || applied == 3) continue;
    desk::LessonChange change;
    change.kind = desk::ChangeKind::kRemedy;
    change.code = remedy.code;
    const auto made = desk::changed(before, "lessons/x.json", demo_loader(), change);
    ASSERT_TRUE(made) << remedy.code << ": " << made.problems().front().message;
    const kitchen::Lesson lesson = lesson_of(made.value().text);
    const timeplan::Answer after = planned(lesson, false);
    EXPECT_EQ(after.verdict, timeplan::Verdict::kFits) << remedy.code;
    EXPECT_GT(desk::printed(lesson, after).lines.size(), 5U);
    ++applied;
  }
  EXPECT_GE(applied, 1);
}

}  // namespace
