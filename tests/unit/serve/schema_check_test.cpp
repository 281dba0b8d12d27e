// The checker of shapes itself: each keyword notices what it is for. The meaning of the keywords is
// that of JSON Schema 2020-12 (json-schema.org, "Validation").
#include "../../support/schema_check.h"

#include <gtest/gtest.h>

#include "../../support/yaml_file.h"
#include "desk.h"

namespace {

using nlohmann::json;

std::size_t wrong(const char* value, const char* schema, const char* root = "{}") {
  return support::misfits(json::parse(value), json::parse(schema), json::parse(root)).size();
}

TEST(SchemaCheck, TypesAreTold) {
  EXPECT_EQ(wrong("1", R"({"type": "integer"})"), 0U);
  EXPECT_EQ(wrong("1.0", R"({"type": "integer"})"), 0U);  // a number with a zero fraction is an
                                                          // integer
  EXPECT_EQ(wrong("1.5", R"({"type": "integer"})"), 1U);
  EXPECT_EQ(wrong("\"1\"", R"({"type": "number"})"), 1U);
  EXPECT_EQ(wrong("null", R"({"type": ["string", "null"]})"), 0U);
  EXPECT_EQ(wrong("true", R"({"type": ["string", "null"]})"), 1U);
}

TEST(SchemaCheck, MembersAreTold) {
  const char* schema =
      R"({"type": "object", "required": ["a"], "properties": {"a": {"type": "string"}}, "additionalProperties": false})";
  EXPECT_EQ(wrong(R"({"a": "x"})", schema), 0U);
  EXPECT_EQ(wrong(R"({})", schema), 1U);
  EXPECT_EQ(wrong(R"({"a": 1, "b": 2})", schema), 2U);
  EXPECT_EQ(wrong(R"({"b": 2})", R"({"additionalProperties": {"type": "string"}})"), 1U);
}

TEST(SchemaCheck, ItemsEnumsBoundsAndDatesAreTold) {
  EXPECT_EQ(wrong(R"(["a", 1, 2])", R"({"items": {"type": "string"}})"), 2U);
  EXPECT_EQ(wrong("[]", R"({"minItems": 1})"), 1U);
  EXPECT_EQ(wrong("[1, 2]", R"({"maxItems": 1})"), 1U);
  EXPECT_EQ(wrong("\"c\"", R"({"enum": ["a", "b"]})"), 1U);
  EXPECT_EQ(wrong("0", R"({"minimum": 1})"), 1U);
  EXPECT_EQ(wrong("9", R"({"maximum": 8})"), 1U);
  EXPECT_EQ(wrong("\"2026-02-30\"", R"({"format": "date"})"), 1U);
}

TEST(SchemaCheck, ChoicesAndReferencesAreFollowed) {
  const char* root = R"({"a": {"type": "string"}})";
  EXPECT_EQ(wrong("\"x\"", R"({"anyOf": [{"type": "null"}, {"$ref": "#/a"}]})", root), 0U);
  EXPECT_EQ(wrong("1", R"({"anyOf": [{"type": "null"}, {"$ref": "#/a"}]})", root), 1U);
}

TEST(SchemaCheck, AKeywordThatIsNotCheckedIsAMisfit) {
  EXPECT_EQ(wrong("1", R"({"multipleOf": 2})"), 1U);
}

TEST(SchemaCheck, TheWholeContractUsesOnlyWhatIsChecked) {
  for (const auto& [name, schema] : serve_test::contract().at("components").at("schemas").items()) {
    for (const std::string& each : support::misfits(json::object(), schema, serve_test::contract()))
      EXPECT_EQ(each.find("not checked"), std::string::npos) << name << each;
  }
}

TEST(YamlFile, QuotedWordsStayTexts) {
  const json& versions = serve_test::contract().at("openapi");
  EXPECT_EQ(versions, "3.1.0");
  EXPECT_EQ(serve_test::contract()
                .at("components")
                .at("schemas")
                .at("Clash")
                .at("properties")
                .at("yours")
                .at("type"),
            json::parse(R"(["object", "null"])"));
}

}  // namespace
