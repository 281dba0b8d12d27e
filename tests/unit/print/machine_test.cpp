#include "print/machine.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "../../support/schema_walk.h"
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
