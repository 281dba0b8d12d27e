// The whole planner on small lessons: what it promises whatever the lesson.
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "../../support/lesson_file.h"
#include "kitchen/check_lesson.h"
#include "sample.h"
#include "timeplan/answer.h"
#include "timeplan/trial.h"

namespace {

using testing::Contains;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;
using timeplan::Answer;
using timeplan::Verdict;

Answer answer_to(const kitchen::Lesson& lesson, std::uint64_t seed = 1) {
  timeplan::PlanOptions options;
  options.runs = 50;
  options.seconds = 2;
  options.seed = seed;
  return timeplan::plan_lesson(lesson, options);
}

TEST(a_plan, of_six_pairs_with_enough_of_everything_fits_in_one_wave) {
  const Answer answer = answer_to(sample::lesson({sample::soup()}, 12, 2, 6, 6, 60));
  ASSERT_EQ(answer.verdict, Verdict::kFits);
  EXPECT_EQ(answer.plan->waves, 1);
}

TEST(a_plan, is_the_same_when_asked_for_twice) {
  const kitchen::Lesson lesson = sample::lesson({sample::soup(), sample::crumble()}, 12, 2, 3, 3,
                                                90);
  EXPECT_EQ(answer_to(lesson).plan, answer_to(lesson).plan);
}

TEST(a_plan, takes_two_waves_when_the_pans_of_one_do_not_fit_on_the_rings) {
  kitchen::Lesson lesson = sample::lesson({sample::soup()}, 8, 2, 1, 4, 75);
  for (kitchen::Cooker& c : lesson.room.cookers) c.rings = 2;  // four pans want to be on at once
  const Answer answer = answer_to(lesson);
  ASSERT_EQ(answer.verdict, Verdict::kFits);
  EXPECT_EQ(answer.plan->waves, 2);
  ASSERT_THAT(answer.trials, Not(IsEmpty()));
  EXPECT_FALSE(answer.trials.front().fits);
  EXPECT_TRUE(answer.trials.front().proved);
}

TEST(a_plan, leaves_gas_rings_to_the_years_that_may_use_them) {
  // Each place reaches a gas hob first and an electric cooker second.
  kitchen::Lesson lesson = sample::lesson({sample::soup()}, 8, 2, 4, 4, 75);
  for (std::size_t k = 0; k < 2; ++k) lesson.room.cookers[k].gas = kitchen::Gas::kRings;
  for (std::size_t p = 0; p < lesson.room.places.size(); ++p)
    lesson.room.places[p].cookers = {static_cast<int>(p % 2), 2 + static_cast<int>(p % 2)};
  const auto on_gas = [&](const Answer& answer) {
    return std::count_if(
        answer.plan->tasks.begin(), answer.plan->tasks.end(),
        [](const timeplan::Task& task) { return task.cooker == 0 || task.cooker == 1; });
  };
  lesson.rules.gas_from_year = lesson.year + 1;
  ASSERT_THAT(kitchen::check(lesson), IsEmpty());
  const Answer young = answer_to(lesson);
  ASSERT_EQ(young.verdict, Verdict::kFits);
  EXPECT_EQ(on_gas(young), 0);
  EXPECT_THAT(kitchen::notes(lesson), Contains(HasSubstr("leaves out the rings of")));

  // With every ring needed at once the older class uses them all.
  for (kitchen::Cooker& cooker : lesson.room.cookers) cooker.rings = 1;
  lesson.rules.gas_from_year = lesson.year;
  const Answer older = answer_to(lesson);
  ASSERT_EQ(older.verdict, Verdict::kFits);
  EXPECT_GT(on_gas(older), 0);
  EXPECT_THAT(kitchen::notes(lesson), IsEmpty());
}

TEST(a_plan,
     puts_what_goes_home_into_the_fridge_within_ninety_minutes_when_the_school_asks_for_it) {
  kitchen::Lesson lesson = sample::lesson({sample::soup()}, 8, 2, 4, 4, 75);
  lesson.purpose = kitchen::Purpose::kTakeHome;
  lesson.sittings.clear();
  lesson.dishes[0].cooling = base::minutes(15);
  lesson.rules.food_home_chilled = true;
  lesson.room.fridge_tenths = 4 * kitchen::kBoxTenths;
  ASSERT_THAT(kitchen::check(lesson), IsEmpty());
  const Answer answer = answer_to(lesson);
  ASSERT_EQ(answer.verdict, Verdict::kFits);
  int packed = 0;
  for (const timeplan::Task& pack : answer.plan->tasks) {
    if (pack.kind != timeplan::TaskKind::kPack) continue;
    ++packed;
    for (const timeplan::Task& task : answer.plan->tasks) {
      if (task.cook != pack.cook || task.kind != timeplan::TaskKind::kStep || task.step != 2)
        continue;
      EXPECT_GE(pack.start, task.end + base::minutes(15));
      EXPECT_LE(pack.end, task.end + base::minutes(90));
    }
  }
  EXPECT_EQ(packed, 4);
  EXPECT_THAT(kitchen::notes(lesson),
              Contains(HasSubstr("Barley soup may go home only out of the fridge")));
}

/// Starts of that step of the first dish, one a cook.
std::vector<base::Seconds> starts_of(const Answer& answer, int step) {
  std::vector<base::Seconds> out;
  for (const timeplan::Task& task : answer.plan->tasks) {
    if (task.kind == timeplan::TaskKind::kStep && task.dish == 0 && task.step == step)
      out.push_back(task.start);
  }
  return out;
}

TEST(a_plan, starts_a_pinned_step_at_its_minute_also_when_it_may_run_longer) {
  kitchen::Lesson lesson = sample::lesson({sample::soup()}, 8, 2, 4, 4, 75);
  lesson.dishes[0].method[1].most = base::minutes(20);
  for (const int minute : {21, 27}) {
    lesson.pins = {{{0, 1}, base::minutes(minute), {}}};
    const Answer answer = answer_to(lesson);
    ASSERT_EQ(answer.verdict, Verdict::kFits) << minute;
    EXPECT_EQ(starts_of(answer, 1), std::vector<base::Seconds>(4, base::minutes(minute)));
  }
}

TEST(a_plan, pins_one_cook_where_the_others_need_not_follow) {
  kitchen::Lesson lesson = sample::lesson({sample::soup()}, 8, 2, 4, 4, 75);
  lesson.timelines = kitchen::Timelines::kOwn;
  lesson.pins = {{{0, 1}, base::minutes(30), {2}}};
  const Answer answer = answer_to(lesson);
  ASSERT_EQ(answer.verdict, Verdict::kFits);
  const auto starts = starts_of(answer, 1);
  EXPECT_EQ(std::count(starts.begin(), starts.end(), base::minutes(30)), 1);
}

TEST(a_plan, that_cannot_keep_a_pin_blames_the_pin_and_offers_to_take_it_off) {
  kitchen::Lesson lesson = sample::lesson({sample::soup()}, 8, 2, 4, 4, 60);
  lesson.pins = {{{0, 1}, base::minutes(55), {}}};  // boiling and washing up end after the bell
  const Answer answer = answer_to(lesson);
  EXPECT_EQ(answer.verdict, Verdict::kDoesNotFit);
  ASSERT_EQ(answer.causes.size(), 1U);
  EXPECT_EQ(answer.causes.front().code, "pin");
  EXPECT_EQ(answer.causes.front().says, "Pinned: boil of 'Barley soup' starts at 09:55.");
  ASSERT_THAT(answer.remedies, Not(IsEmpty()));
  EXPECT_EQ(answer.remedies.front().code, "without pins");
  EXPECT_TRUE(answer.remedies.front().fits);
}

TEST(last_safe_starts, are_not_held_by_a_pin) {
  kitchen::Lesson lesson = sample::lesson({sample::soup()}, 8, 2, 4, 4, 60);
  lesson.pins = {{{0, 1}, base::minutes(20), {}}};
  const Answer answer = answer_to(lesson);
  ASSERT_EQ(answer.verdict, Verdict::kFits);
  const auto boil = std::find_if(
      answer.last_safe_starts.begin(), answer.last_safe_starts.end(),
      [](const timeplan::LastSafeStart& safe) { return safe.says == "boil"; });
  ASSERT_NE(boil, answer.last_safe_starts.end());
  EXPECT_GT(boil->at, base::minutes(20));
}

TEST(a_plan, tells_its_gap_while_it_is_made) {
  std::vector<timeplan::Progress> told;
  timeplan::PlanOptions options;
  options.runs = 50;
  options.seconds = 1;
  options.progress = [&](const timeplan::Progress& now) { told.push_back(now); };
  timeplan::plan_lesson(sample::lesson({sample::soup(), sample::crumble()}, 12, 2, 3, 3, 90),
                        options);
  std::erase_if(told, [](const timeplan::Progress& each) { return each.level.empty(); });
  ASSERT_THAT(told, Not(IsEmpty()));
  for (const timeplan::Progress& each : told) {
    EXPECT_GE(each.best, each.bound);
    EXPECT_THAT(each.says, Not(IsEmpty()));
  }
}

TEST(a_plan, has_its_checkpoints_on_the_five_minutes_of_the_clock) {
  kitchen::Lesson lesson = sample::lesson({sample::crumble()}, 12, 2, 6, 6, 60);
  lesson.opens_minute = 9 * 60 + 7;  // an odd opening: the grid is the clock's, not the lesson's
  const Answer answer = answer_to(lesson);
  ASSERT_EQ(answer.verdict, Verdict::kFits);
  ASSERT_THAT(answer.plan->checkpoints, Not(IsEmpty()));
  for (const timeplan::Checkpoint& c : answer.plan->checkpoints)
    EXPECT_EQ((lesson.opens_minute + c.at.count() / 60) % 5, 0);
}

TEST(a_plan, never_claims_a_bound_above_its_value) {
  const Answer answer = answer_to(
      sample::lesson({sample::soup(), sample::crumble()}, 12, 2, 3, 3, 90));
  ASSERT_EQ(answer.verdict, Verdict::kFits);
  for (const timeplan::Level& level : answer.plan->levels)
    EXPECT_LE(level.bound, level.value) << level.name;
}

TEST(last_safe_starts, raw_meat_is_never_finished_cold_nor_sent_home) {
  const kitchen::Lesson lesson = support::lesson_file(
      "demo/lessons/h-stop-gate-demonstration.json");
  const timeplan::Answer answer = answer_to(lesson);
  int fried = 0;
  for (const timeplan::LastSafeStart& safe : answer.last_safe_starts) {
    if (safe.says.find("chicken") == std::string::npos) continue;
    ++fried;
    EXPECT_THAT(safe.instead, HasSubstr("fridge"));
    EXPECT_THAT(safe.instead, HasSubstr("probed"));
    EXPECT_THAT(safe.instead, Not(HasSubstr("cold, or")));
    EXPECT_THAT(safe.instead, Not(HasSubstr("send it home")));
  }
  EXPECT_GT(fried, 0);
}

TEST(last_safe_starts, are_not_before_the_planned_start) {
  const Answer answer = answer_to(sample::lesson({sample::crumble()}, 12, 2, 6, 6, 60));
  ASSERT_EQ(answer.verdict, Verdict::kFits);
  ASSERT_THAT(answer.last_safe_starts, Not(IsEmpty()));
  for (const timeplan::LastSafeStart& safe : answer.last_safe_starts) {
    EXPECT_GE(safe.at, answer.plan->tasks[static_cast<std::size_t>(safe.task)].start);
    EXPECT_FALSE(safe.instead.empty());
  }
}

TEST(a_lesson_too_short_for_its_dish, is_refused_with_the_dish_itself_as_the_cause) {
  const Answer answer = answer_to(sample::lesson({sample::crumble()}, 4, 2, 2, 2, 25));
  EXPECT_EQ(answer.verdict, Verdict::kDoesNotFit);
  ASSERT_EQ(answer.causes.size(), 1U);
  EXPECT_EQ(answer.causes.front().code, "method");
  EXPECT_GT(answer.overrun, base::Seconds{0});
}

TEST(a_lesson_short_of_sinks, says_sinks_and_offers_what_was_planned_again) {
  // Twelve cooks at two sink positions: 14 min each of washing up are 84 minutes of the two.
  const Answer answer = answer_to(sample::lesson({sample::soup()}, 12, 1, 4, 2, 75));
  EXPECT_EQ(answer.verdict, Verdict::kDoesNotFit);
  ASSERT_THAT(answer.causes, Not(IsEmpty()));
  EXPECT_EQ(answer.causes.front().code, "sinks");
  ASSERT_THAT(answer.remedies, Not(IsEmpty()));
  EXPECT_TRUE(answer.remedies.front().fits);
}

TEST(a_request_to_stop, still_gives_an_answer_and_says_so) {
  timeplan::PlanOptions options;
  options.runs = 50;
  options.stop = [] { return true; };
  const Answer answer = timeplan::plan_lesson(sample::lesson({sample::soup()}, 12, 2, 6, 6, 60),
                                              options);
  EXPECT_TRUE(answer.stopped_early);
}

RC_GTEST_PROP(any_small_lesson, is_planned_within_the_rules_or_refused, ()) {
  const int together = *rc::gen::inRange(1, 4);
  const int cooks = *rc::gen::inRange(1, 7);
  const int cookers = *rc::gen::inRange(1, 4);
  const int sinks = *rc::gen::inRange(1, 4);
  const int minutes = *rc::gen::inRange(30, 110);
  kitchen::Dish first = sample::soup(), second = sample::crumble();
  first.method[0].hygiene = *rc::gen::element(kitchen::Hygiene::kRaw, kitchen::Hygiene::kUnwashed);
  first.method[2].hygiene = kitchen::Hygiene::kReadyToEat;
  if (*rc::gen::arbitrary<bool>()) first.method[1].hazard = kitchen::Hazard::kHotOil;
  if (*rc::gen::arbitrary<bool>())
    second.method[0].gate = kitchen::Gate{"fine crumbs", base::minutes(1), base::minutes(8)};
  const bool both = *rc::gen::arbitrary<bool>();
  kitchen::Lesson lesson = sample::lesson(
      both ? std::vector<kitchen::Dish>{first, second} : std::vector<kitchen::Dish>{first},
      cooks * together, together, cookers, sinks, minutes);
  lesson.purpose = *rc::gen::element(kitchen::Purpose::kEatHere, kitchen::Purpose::kTakeHome);
  if (*rc::gen::arbitrary<bool>()) lesson.timelines = kitchen::Timelines::kOwn;
  timeplan::PlanOptions options;
  options.seconds = 0.5;
  options.runs = 20;
  options.with_remedies = false;
  // plan_lesson throws when the verifier refuses what it made.
  const Answer answer = timeplan::plan_lesson(lesson, options);
  if (answer.verdict == Verdict::kFits) {
    if (answer.own_timelines_needed) lesson.timelines = kitchen::Timelines::kOwn;
    RC_ASSERT(timeplan::verify(lesson, *answer.plan).empty());
  } else {
    RC_ASSERT(!answer.plan || answer.overrun.count() >= 0);
  }
}

TEST(splits, keep_cooks_of_one_cooker_apart_and_leave_no_wave_empty) {
  const kitchen::Lesson lesson = sample::lesson({sample::soup()}, 12, 2, 3, 3, 60);
  for (int waves = 1; waves <= 3; ++waves) {
    for (const std::vector<int>& split : timeplan::splits(lesson, waves)) {
      for (int w = 0; w < waves; ++w) EXPECT_THAT(split, testing::Contains(w));
    }
  }
}

}  // namespace
