// The written model of a whole lesson: a general-purpose solver agrees that the engine's schedule
// keeps every rule of it, and on what each goal level is worth. (That it allows no more than the
// engine does is seen on small problems, in tests/reference/scheduler.)
#include <gtest/gtest.h>

#include <algorithm>

#include "../../support/lesson_file.h"
#include "../../unit/scheduler/minizinc_run.h"
#include "scheduler/minizinc.h"
#include "timeplan/trial.h"

namespace {

using scheduler::Placement;
using scheduler::testing::minizinc_answer;
using scheduler::testing::MinizincAnswer;

std::string held(const std::string& name, const std::vector<int>& values) {
  std::string text;
  for (const int value : values) text += (text.empty() ? "" : ", ") + std::to_string(value);
  return "constraint forall (i in index_set(" + name + ")) (" + name + "[i] = array1d(index_set(" +
         name + "), [" + text + "])[i]);\n";
}

/// The model with every start, end and mode held to the schedule.
std::string held_to(const std::string& model, const scheduler::Schedule& schedule) {
  std::vector<int> start, end, mode;
  for (const Placement& p : schedule) {
    start.push_back(p.present ? p.start : 0);
    end.push_back(p.present ? p.start + p.duration : 0);
    mode.push_back(p.present ? p.mode : 0);
  }
  return model + held("s", start) + held("e", end) + held("m", mode);
}

/// With the fewest waves that a schedule is found for at once.
timeplan::Trial some_trial(const kitchen::Lesson& lesson, const timeplan::BriefOptions& how) {
  timeplan::TrialLimits limits;
  limits.seconds = 2;
  if (lesson.timelines == kitchen::Timelines::kOwn)
    return timeplan::attempt(lesson, {}, how, limits);
  timeplan::Trial trial;
  for (int waves = 1; waves <= lesson.most_waves && !trial.found(); ++waves) {
    for (const std::vector<int>& split : timeplan::splits(lesson, waves)) {
      if (!trial.found()) trial = timeplan::attempt(lesson, split, how, limits);
    }
  }
  return trial;
}

kitchen::Lesson demo(const std::string& name) {
  return support::lesson_file("demo/lessons/" + name + ".json");
}

class LessonModel : public testing::TestWithParam<const char*> {
 protected:
  void SetUp() override {
    if (!scheduler::testing::minizinc_installed())
      GTEST_SKIP() << "minizinc is not installed: nothing was compared";
  }
};

TEST_P(LessonModel, holds_the_engines_schedule_at_the_same_value_and_no_overlong_step) {
  const timeplan::Trial trial = some_trial(demo(GetParam()), {});
  ASSERT_TRUE(trial.found());
  const scheduler::Problem& problem = trial.brief.problem;
  const std::string model = scheduler::minizinc(problem, 0, {});
  const MinizincAnswer answer = minizinc_answer(held_to(model, trial.outcome.best));
  EXPECT_EQ(answer.levels, trial.outcome.values) << answer.said;
  scheduler::Schedule wrong = trial.outcome.best;
  const auto first = std::find_if(wrong.begin(), wrong.end(),
                                  [](const Placement& p) { return p.present; });
  ASSERT_NE(first, wrong.end());
  first->duration = problem.activities[static_cast<std::size_t>(first - wrong.begin())]
                        .duration_max +
                    1;
  EXPECT_TRUE(minizinc_answer(held_to(model, wrong)).refuted);
}

INSTANTIATE_TEST_SUITE_P(demo, LessonModel,
                         testing::Values("a-first-hob", "b-two-dishes", "c-frying-in-turns",
                                         "d-half-groups", "f-three-dish-practical",
                                         "g1-overnight-rolls-shape", "g2-overnight-rolls-bake",
                                         "h-stop-gate-demonstration", "i-freeze-ahead"),
                         [](const testing::TestParamInfo<const char*>& info) {
                           std::string name = info.param;
                           std::replace(name.begin(), name.end(), '-', '_');
                           return name;
                         });

}  // namespace
