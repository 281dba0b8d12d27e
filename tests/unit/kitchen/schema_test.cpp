// The published schemas and the readers say the same: the same fields, the same words. And
// docs/files.md is true.
#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <set>

#include <nlohmann/json.hpp>

#include "base/text.h"
#include "kitchen/field_lists.h"
#include "kitchen/words.h"
#include "samples.h"

namespace {

using namespace kitchen;
using nlohmann::json;

json schema(std::string_view name) {
  return json::parse(samples::file(base::say("schemas/", name, ".schema.json")));
}

std::set<std::string> keys(const json& object) {
  std::set<std::string> out;
  for (const auto& [key, value] : object.items()) out.insert(key);
  return out;
}

TEST(Schema, KnowsExactlyTheFieldsTheReaderAccepts) {
  for (const FieldList& list : field_lists()) {
    const json object = schema(list.schema).at(json::json_pointer(std::string(list.pointer)));
    const std::set<std::string> read(list.fields.begin(), list.fields.end());
    EXPECT_EQ(keys(object.at("properties")), read) << list.schema << list.pointer;
    EXPECT_EQ(object.at("additionalProperties"), false) << list.schema << list.pointer;
  }
}

TEST(Schema, HasNoObjectTheReaderDoesNotKnow) {
  std::set<std::string> known;
  for (const FieldList& list : field_lists())
    known.insert(std::string(list.schema) + std::string(list.pointer));
  for (const char* name : {"dish", "room", "house_rules", "lesson"}) {
    const json document = schema(name);
    for (const auto& [key, definition] : document.at("$defs").items()) {
      if (!definition.contains("properties")) continue;
      EXPECT_EQ(known.count(std::string(name) + "/$defs/" + key), 1U) << name << " " << key;
    }
  }
}

void expect_words(const char* file, const char* pointer, std::vector<std::string> words) {
  std::vector<std::string> in_schema;
  const json document = schema(file);
  for (const json& word : document.at(json::json_pointer(pointer))) {
    if (word.is_string()) in_schema.push_back(word);
  }
  std::sort(words.begin(), words.end());
  std::sort(in_schema.begin(), in_schema.end());
  EXPECT_EQ(in_schema, words) << file << " " << pointer;
}

TEST(Schema, KnowsExactlyTheWordsTheReaderAccepts) {
  expect_words("dish", "/$defs/ingredient/properties/contains/items/enum",
               spellings(kAllergenWords));
  expect_words("dish", "/$defs/step/properties/attention/enum", spellings(kAttentionWords));
  expect_words("dish", "/$defs/step/properties/hygiene/enum", spellings(kHygieneWords));
  expect_words("dish", "/$defs/step/properties/hazard/enum", spellings(kHazardWords));
  expect_words("dish", "/$defs/step/properties/at/items/enum", spellings(kSpotWords));
  expect_words("dish", "/$defs/oven/properties/kind/enum", spellings(kOvenKindWords));
  expect_words("dish", "/$defs/follows/properties/from/enum", spellings(kMomentWords));
  expect_words("dish", "/$defs/follows/properties/moment/enum", spellings(kMomentWords));
  expect_words("dish", "/$defs/hold/properties/kind/enum", spellings(kHoldKindWords));
  expect_words("dish", "/$defs/hold/properties/in/enum", spellings(kHoldInWords));
  expect_words("dish", "/$defs/split/properties/kept/enum", spellings(kKeptInWords));
  expect_words("room", "/$defs/cooker/properties/grill/enum", spellings(kGrillWords));
  expect_words("room", "/$defs/cooker/properties/gas/enum", spellings(kGasWords));
  expect_words("house_rules", "/properties/watch/propertyNames/enum", spellings(kHazardWords));
  expect_words("lesson", "/properties/purpose/enum", spellings(kPurposeWords));
  expect_words("lesson", "/properties/timelines/enum", spellings(kTimelinesWords));
  expect_words("lesson", "/$defs/cook/properties/avoids/items/enum", spellings(kAllergenWords));
  expect_words("lesson", "/$defs/class/properties/in/enum", spellings(kGroupWords));
  expect_words("lesson", "/$defs/adult/properties/may_watch/items/enum", spellings(kHazardWords));
  expect_words("lesson", "/$defs/window/properties/kind/enum", spellings(kWindowWords));
  expect_words("lesson", "/$defs/ban/properties/hazard/enum", spellings(kHazardWords));
  expect_words("lesson", "/$defs/carry/properties/half/enum", spellings(kHalfWords));
  expect_words("lesson", "/$defs/oven_set/properties/kind/enum", spellings(kOvenKindWords));
}

TEST(Schema, FieldsThatMustBeGivenAreTheOnesTheReaderMisses) {
  const json lesson = schema("lesson");
  for (const json& field : lesson.at("required")) {
    json text = samples::lesson();
    text.erase(field.get<std::string>());
    EXPECT_FALSE(samples::problems_of("lesson", text.dump()).empty()) << field;
  }
  const json dish = schema("dish");
  for (const json& field : dish.at("/$defs/step/required"_json_pointer)) {
    json text = samples::dish();
    text["method"][0].erase(field.get<std::string>());
    EXPECT_FALSE(samples::problems_of("dish", text.dump()).empty()) << field;
  }
}

/// The four examples of docs/files.md, by kind.
std::map<std::string, std::string> examples() {
  std::map<std::string, std::string> out;
  const std::string text = samples::file("docs/files.md");
  const std::string open = "```json\n";
  for (auto at = text.find(open); at != std::string::npos; at = text.find(open, at + 1)) {
    const auto begin = at + open.size();
    const std::string example = text.substr(begin, text.find("```", begin) - begin);
    out[json::parse(example).at("kind")] = example;
  }
  return out;
}

TEST(Docs, TheExamplesAreWholeAndTheLessonReadsTheOthers) {
  const auto example = examples();
  ASSERT_EQ(example.size(), 4U);
  const Loader loader = [&](const std::string& path) -> base::Result<std::string> {
    const std::map<std::string, std::string> kinds = {{"food-room-2.json", "room"},
                                                      {"house-rules.json", "house_rules"},
                                                      {"lentil-dhal.json", "dish"}};
    return example.at(kinds.at(path));
  };
  const auto lesson = read_lesson(example.at("lesson"), "lesson.json", loader);
  ASSERT_TRUE(lesson) << samples::told(lesson.problems());
  EXPECT_EQ(lesson.value().cooks.size(), 3U);
}

TEST(Docs, EveryFieldIsDescribed) {
  const std::string text = samples::file("docs/files.md");
  for (const FieldList& list : field_lists()) {
    for (const std::string_view field : list.fields) {
      if (field == "variant") continue;  // written by the program, not by hand
      const bool named = text.find(base::say("`", field, "`")) != std::string::npos ||
                         text.find(base::say("\"", field, "\"")) != std::string::npos;
      EXPECT_TRUE(named) << field << " of " << list.schema << list.pointer;
    }
  }
}

}  // namespace
