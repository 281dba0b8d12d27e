// The quick way in: four answers make a whole lesson, and wrong answers are all named at once.
#include "timeplan/quick_lesson.h"

#include <gtest/gtest.h>

#include "kitchen/check_lesson.h"
#include "sample.h"

namespace {

timeplan::QuickWish wish() {
  timeplan::QuickWish w;
  w.dishes = {sample::soup()};
  w.rules = sample::rules();
  return w;
}

TEST(a_quick_lesson, has_nothing_wrong_with_it) {
  const auto lesson = timeplan::quick_lesson(wish());
  ASSERT_TRUE(lesson);
  EXPECT_TRUE(kitchen::check(lesson.value()).empty());
  EXPECT_EQ(lesson.value().cooks.size(), 12U);
}

TEST(a_quick_lesson, with_an_odd_class_has_one_pupil_alone) {
  timeplan::QuickWish w = wish();
  w.pupils = 23;
  const auto lesson = timeplan::quick_lesson(w);
  ASSERT_TRUE(lesson);
  EXPECT_EQ(lesson.value().cooks.size(), 12U);
  EXPECT_EQ(lesson.value().cooks.back().people, 1);
}

TEST(a_quick_lesson, shares_out_every_sink_and_cooker) {
  timeplan::QuickWish w = wish();
  w.cookers = 5;
  w.sinks = 8;
  const auto lesson = timeplan::quick_lesson(w);
  ASSERT_TRUE(lesson);
  int sinks = 0;
  for (const kitchen::Bay& b : lesson.value().room.bays) sinks += b.sinks;
  EXPECT_EQ(sinks, 8);
  EXPECT_EQ(lesson.value().room.cookers.size(), 5U);
}

TEST(wrong_answers, are_all_named_at_once) {
  timeplan::QuickWish w = wish();
  w.pupils = 0;
  w.cookers = 99;
  w.to_minute = w.from_minute;
  w.dishes.clear();
  const auto lesson = timeplan::quick_lesson(w);
  ASSERT_FALSE(lesson);
  EXPECT_EQ(lesson.problems().size(), 4U);
  for (const base::Problem& p : lesson.problems()) EXPECT_FALSE(p.remedy.empty());
}

}  // namespace
