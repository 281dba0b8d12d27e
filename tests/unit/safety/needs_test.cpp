#include "safety/needs.h"

#include <gtest/gtest.h>

#include "sample.h"

namespace {

using namespace safety;
using kitchen::Allergen;

kitchen::Lesson two_cooks() {
  auto lesson = samples::lesson({samples::dish("Salad", {"carrot"})}, {{0}, {0}});
  lesson.cooks[0].avoids = {Allergen::kMilk};
  return lesson;
}

TEST(Needs, ALessonsOwnAllergiesAreMayNotEat) {
  EXPECT_EQ(needs_in(two_cooks()), (LessonNeeds{{0, {{Allergen::kMilk, Reach::kEat}}}}));
}

TEST(Needs, TheSchoolsListAddsAndTheFartherReachCounts) {
  const auto needs = read_needs(
      "cook,need,reach\ncook a,milk,not in the room\nCook B,no pork,may not touch\n"
      "cook a,milk,may not eat\n",
      "needs.csv", two_cooks());
  ASSERT_TRUE(needs);
  EXPECT_EQ(needs.value(), (LessonNeeds{{0, {{Allergen::kMilk, Reach::kRoom}}},
                                        {1, {{Diet::kNoPork, Reach::kTouch}}}}));
}

TEST(Needs, ALineForAnotherLessonIsLeftToThatLesson) {
  const auto needs = read_needs("cook,need,reach,lesson\nSomebody,milk,may not eat,10B\n",
                                "needs.csv", two_cooks());
  ASSERT_TRUE(needs);
  EXPECT_EQ(needs.value(), needs_in(two_cooks()));
}

TEST(Needs, EveryFaultIsToldAndNoneIsGuessed) {
  const auto needs = read_needs(
      "cook,need,reach\nCook C,milk,may not eat\nCook A,milks,sometimes\n", "needs.csv",
      two_cooks());
  ASSERT_FALSE(needs);
  ASSERT_EQ(needs.problems().size(), 3U);
  EXPECT_EQ(needs.problems()[0].code, "needs.cook");
  EXPECT_NE(needs.problems()[1].message.find("did you mean 'milk'"), std::string::npos);
  EXPECT_EQ(needs.problems()[2].where, "line 3, reach");
}

}  // namespace
