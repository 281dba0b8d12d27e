#include "print/machine.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <fstream>
#include <nlohmann/json.hpp>
#include <regex>

#include "sample.h"

namespace {

using Json = nlohmann::json;

Json schema() {
  std::ifstream in(std::string(BENCHBELL_SOURCE_DIR) + "/schemas/answer.schema.json");
  return Json::parse(in);
}

bool is_type(const Json& value, const std::string& type) {
  if (type == "object") return value.is_object();
  if (type == "array") return value.is_array();
  if (type == "string") return value.is_string();
  if (type == "integer") return value.is_number_integer();
  if (type == "number") return value.is_number();
  if (type == "boolean") return value.is_boolean();
  return type == "null" && value.is_null();
}

/// The words of JSON Schema that the published schema uses; any other is a fault of the test.
std::string fault(const Json& all, const Json& rule, const Json& value, const std::string& where) {
  if (rule.contains("$ref")) {
    const std::string ref = rule["$ref"];
    if (const auto f = fault(all, all["$defs"][ref.substr(8)], value, where); !f.empty()) return f;
  }
  if (rule.contains("anyOf")) {
    for (const Json& one : rule["anyOf"]) {
      if (fault(all, one, value, where).empty()) return "";
    }
    return where + " is none of its kinds";
  }
  if (rule.contains("const") && rule["const"] != value) return where + " is not its constant";
  if (rule.contains("enum") &&
      std::find(rule["enum"].begin(), rule["enum"].end(), value) == rule["enum"].end()) {
    return where + " is not one of its words: " + value.dump();
  }
  if (rule.contains("type")) {
    const Json types = rule["type"].is_array() ? rule["type"] : Json::array({rule["type"]});
    if (std::none_of(types.begin(), types.end(), [&](const Json& t) { return is_type(value, t); }))
      return where + " has the wrong type";
  }
  if (rule.contains("pattern") &&
      !std::regex_match(value.get<std::string>(), std::regex(rule["pattern"].get<std::string>()))) {
    return where + " does not look like " + rule["pattern"].get<std::string>();
  }
  if (value.is_object() && rule.contains("properties")) {
    for (const Json& key : rule["required"]) {
      if (!value.contains(key.get<std::string>()))
        return where + " lacks " + key.get<std::string>();
    }
    for (const auto& [key, inside] : value.items()) {
      if (!rule["properties"].contains(key)) return where + " has the unknown key " + key;
      if (const auto f = fault(all, rule["properties"][key], inside, where + "/" + key); !f.empty())
        return f;
    }
  }
  if (value.is_array() && rule.contains("items")) {
    for (std::size_t i = 0; i < value.size(); ++i) {
      if (const auto f = fault(all, rule["items"], value[i], where + "/" + std::to_string(i));
          !f.empty())
        return f;
    }
  }
  return "";
}

TEST(Machine, the_json_keeps_the_published_schema_to_the_last_key) {
  for (const sample::Told& told :
       {sample::two_waves(), sample::over_the_bell(), sample::assessed(30), sample::nothing()}) {
    const Json all = schema();
    EXPECT_EQ(fault(all, all, Json::parse(print::answer_json(told.lesson, told.answer)), ""), "");
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
