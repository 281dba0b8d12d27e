#include "print/machine.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>
#include <tuple>

#include "../../support/schema_walk.h"
#include "kitchen/json_tree.h"
#include "print/read_plan.h"
#include "sample.h"

namespace {

using Json = nlohmann::json;

Json schema() { return tests::schema("answer"); }

TEST(Machine, the_json_keeps_the_published_schema_to_the_last_key) {
  for (const sample::Told& told :
       {sample::two_waves(), sample::over_the_bell(), sample::assessed(30), sample::nothing()}) {
    const Json all = schema();
    EXPECT_EQ(tests::schema_fault(all, all,
                                  Json::parse(print::answer_json(told.lesson, told.answer)), ""),
              "");
  }
}

TEST(Machine, a_plan_is_read_out_of_the_json_with_its_times_waves_and_checkpoints) {
  for (const sample::Told& told : {sample::two_waves(), sample::assessed(30)}) {
    base::Problems broken;
    const auto json = kitchen::parse_json(print::answer_json(told.lesson, told.answer), "", broken);
    ASSERT_TRUE(json);
    const auto read = print::plan_in(told.lesson, *json);
    ASSERT_TRUE(read);
    timeplan::Plan wanted = *told.answer.plan;
    ASSERT_EQ(read->tasks.size(), wanted.tasks.size());
    for (std::size_t i = 0; i < wanted.tasks.size(); ++i) {
      const timeplan::Task &a = read->tasks[i], &b = wanted.tasks[i];
      EXPECT_EQ(
          std::tie(a.kind, a.cook, a.dish, a.step, a.part, a.window, a.bay, a.kit, a.start, a.end),
          std::tie(b.kind, b.cook, b.dish, b.step, b.part, b.window, b.bay, b.kit, b.start, b.end))
          << i;
    }
    EXPECT_EQ(read->waves, wanted.waves);
    EXPECT_EQ(read->wave_of_cook, wanted.wave_of_cook);
    EXPECT_EQ(read->checkpoints, wanted.checkpoints);
  }
  // Of another lesson's answer nothing is made.
  const sample::Told one = sample::two_waves(), other = sample::assessed(30);
  base::Problems broken;
  const auto json = kitchen::parse_json(print::answer_json(one.lesson, one.answer), "", broken);
  EXPECT_FALSE(print::plan_in(other.lesson, *json));
}

TEST(Machine, the_schema_asks_for_every_key_it_names) {
  const Json all = schema();
  EXPECT_EQ(all["required"].size(), all["properties"].size());
  EXPECT_EQ(all["$defs"]["task"]["required"].size(), all["$defs"]["task"]["properties"].size());
}

TEST(Machine, times_are_local_date_times_of_the_lesson) {
  const sample::Told told = sample::two_waves();
  const Json out = Json::parse(print::answer_json(told.lesson, told.answer));
  EXPECT_EQ(out["lesson"]["opens"], "2026-11-17T10:50:00");
  EXPECT_EQ(out["lesson"]["bell"], "2026-11-17T12:45:00");  // 115 minutes later
  EXPECT_EQ(out["lesson"]["zone"], "Europe/London");
  EXPECT_EQ(out["plan"]["checkpoints"][0]["at"], "2026-11-17T11:20:00");
}

TEST(Machine, a_time_between_two_minutes_is_written_once) {
  sample::Told told = sample::two_waves();
  told.answer.last_safe_starts.front().at = base::Seconds{3680};  // 61 min and 20 s after 10:50
  const Json out = Json::parse(print::answer_json(told.lesson, told.answer));
  EXPECT_THAT(out.dump(), testing::HasSubstr("2026-11-17T11:51:20\""));
}

TEST(Machine, a_lesson_past_midnight_moves_the_date) {
  sample::Told told = sample::nothing();
  told.lesson.date = "2026-12-31";
  told.lesson.opens_minute = 23 * 60 + 30;
  const Json out = Json::parse(print::answer_json(told.lesson, told.answer));
  EXPECT_EQ(out["lesson"]["bell"], "2027-01-01T00:30:00");
}

TEST(Machine, every_task_is_there_in_trade_words) {
  const sample::Told told = sample::two_waves();
  const Json out = Json::parse(print::answer_json(told.lesson, told.answer));
  ASSERT_EQ(out["plan"]["tasks"].size(), told.answer.plan->tasks.size());
  EXPECT_EQ(out["plan"]["tasks"][0]["kind"], "window");
  EXPECT_EQ(out["plan"]["tasks"][0]["window"], "Register");
  EXPECT_EQ(out["verdict"], "fits");
  EXPECT_EQ(out["trials"][0]["misses_by_minutes"], 9);
}

TEST(Machine, broken_letters_in_a_name_do_not_stop_the_output) {
  sample::Told told = sample::two_waves();
  told.lesson.cooks[0].name = "A\xff\"<&";
  const Json out = Json::parse(print::answer_json(told.lesson, told.answer));
  EXPECT_EQ(out["plan"]["cooks"][0]["name"], "A\xEF\xBF\xBD\"<&");
}

TEST(Machine, the_same_answer_gives_the_same_bytes) {
  const sample::Told told = sample::two_waves();
  EXPECT_EQ(print::answer_json(told.lesson, told.answer),
            print::answer_json(told.lesson, told.answer));
}

}  // namespace
