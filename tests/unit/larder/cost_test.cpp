#include "larder/cost.h"

#include <gmock/gmock.h>
#include <rapidcheck/gtest.h>

#include "made.h"

namespace {

using namespace larder;
using kitchen::Ratio;
using tests::line;
using tests::Made;

Made week_of(int first, int second) {
  Made made;
  made.week.suppliers = {
      {"North", 299, 0, false, {{tests::day("2026-11-13"), tests::day("2026-11-16")}}}};
  made.week.lessons = {tests::lesson("9K", "2026-11-17", first, {line("red lentils", 120, "g")}),
                       tests::lesson("8B", "2026-11-19", second, {line("red lentils", 90, "g")})};
  made.prices = tests::prices("red lentils,North,bag,500 g,0.95,,,300,100\n");
  made.plan();
  return made;
}

RC_GTEST_PROP(Costs, LessonsAndWhatIsLeftAddUpToWhatIsPaid, ()) {
  const Made made = week_of(*rc::gen::inRange(1, 40), *rc::gen::inRange(1, 40));
  const Costs costs = costs_of(made.in(), made.order);
  Pence sum = costs.left_over;
  for (const LessonCost& c : costs.lessons) sum += c.bought + c.delivery;
  RC_ASSERT(sum == costs.paid);
}

TEST(Costs, AreHeldAgainstTheBudgetWithTheFigures) {
  Made made = week_of(10, 10);
  made.week.budget.per_pupil = 10;
  made.week.budget.week = 100;
  const Costs costs = costs_of(made.in(), made.order);
  ASSERT_EQ(costs.over_budget.size(), 3U);
  EXPECT_THAT(costs.over_budget[2], testing::HasSubstr("over the budget of \u00a31.00"));
}

TEST(Costs, OfTheStoresCountAtTheCheapestPack) {
  Made made = week_of(10, 10);
  made.stock = tests::stores("red lentils,5 kg,2027-12-01,,\n").lots;
  made.plan();
  const Costs costs = costs_of(made.in(), made.order);
  EXPECT_EQ(costs.paid, 0);
  EXPECT_EQ(costs.lessons[0].stores, 228);  // 1200 g at 95p for 500 g
}

TEST(Costs, TheSplitBetweenSchoolAndFamiliesIsApart) {
  Made made = week_of(10, 10);
  made.week.lessons[0].dishes[0].from_home = {0};
  made.week.lessons[0].dishes[0].school_sets = Ratio(4);
  made.plan();
  // Six families bring 120 g each: 720 g at 0.19p a gram.
  EXPECT_EQ(costs_of(made.in(), made.order).split.families, 137);
}

}  // namespace
