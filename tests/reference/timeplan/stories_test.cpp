// The stories of docs/stories.md and the demo lessons: what food teachers know of them (common
// practice, no source) against what the planner says. A lesson that works is never refused; one
// that cannot work is never shown as fitting.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "../../support/lesson_file.h"
#include "timeplan/answer.h"

namespace {

using testing::IsEmpty;
using testing::Not;
using timeplan::Answer;
using timeplan::Verdict;

Answer answer_to(const kitchen::Lesson& lesson) {
  timeplan::PlanOptions options;
  options.runs = 100;
  return timeplan::plan_lesson(lesson, options);
}

struct Story {
  const char* file;
  bool fits;
};

class Stories : public testing::TestWithParam<Story> {};

TEST_P(Stories, a_lesson_that_works_is_not_refused_and_one_that_cannot_is_not_shown_as_fitting) {
  const kitchen::Lesson lesson = support::lesson_file(GetParam().file);
  const Answer answer = answer_to(lesson);
  if (GetParam().fits) {
    ASSERT_EQ(answer.verdict, Verdict::kFits);
    kitchen::Lesson as_planned = lesson;
    if (answer.own_timelines_needed) as_planned.timelines = kitchen::Timelines::kOwn;
    EXPECT_THAT(timeplan::verify(as_planned, *answer.plan), IsEmpty());
    EXPECT_THAT(answer.causes, IsEmpty());
  } else {
    EXPECT_EQ(answer.verdict, Verdict::kDoesNotFit) << "refused is right, but it must be proved";
    EXPECT_THAT(answer.causes, Not(IsEmpty()));
  }
}

INSTANTIATE_TEST_SUITE_P(
    all, Stories,
    testing::Values(Story{"tests/stories/01-soup-in-fifty-minutes.json", true},
                    Story{"tests/stories/02-wash-up-while-it-bakes.json", true},
                    Story{"tests/stories/03-twenty-eight-at-six-cookers.json", true},
                    Story{"tests/stories/04-scones-each-in-an-hour.json", true},
                    Story{"tests/stories/05-frying-in-turns.json", true},
                    Story{"tests/stories/06-break-while-dough-proves.json", true},
                    Story{"tests/stories/07-late-pupil.json", true},
                    Story{"tests/stories/08-shared-place-and-an-allergy.json", true},
                    Story{"tests/stories/09-bread-in-forty-five-minutes.json", false},
                    Story{"tests/stories/10-twelve-pairs-frying-in-twenty-minutes.json", false},
                    Story{"tests/stories/11-talk-while-it-bakes.json", true},
                    Story{"tests/stories/12-macaroni-in-threes.json", true},
                    Story{"demo/lessons/a-first-hob.json", true},
                    Story{"demo/lessons/b-two-dishes.json", true},
                    Story{"demo/lessons/c-frying-in-turns.json", true},
                    Story{"demo/lessons/d-half-groups.json", true},
                    Story{"demo/lessons/e-does-not-fit.json", false},
                    Story{"demo/lessons/f-three-dish-practical.json", true},
                    Story{"demo/lessons/g1-overnight-rolls-shape.json", true},
                    Story{"demo/lessons/g2-overnight-rolls-bake.json", true},
                    Story{"demo/lessons/h-stop-gate-demonstration.json", true},
                    Story{"demo/lessons/i-freeze-ahead.json", true}),
    [](const testing::TestParamInfo<Story>& info) {
      std::string name = info.param.file;
      name = name.substr(name.rfind('/') + 1);
      for (char& c : name) c = std::isalnum(static_cast<unsigned char>(c)) != 0 ? c : '_';
      return name;
    });

TEST(the_lesson_that_does_not_fit, has_a_remedy_that_was_planned_again) {
  const Answer answer = answer_to(support::lesson_file("demo/lessons/e-does-not-fit.json"));
  ASSERT_THAT(answer.remedies, Not(IsEmpty()));
  EXPECT_TRUE(answer.remedies.front().fits);
}

}  // namespace
