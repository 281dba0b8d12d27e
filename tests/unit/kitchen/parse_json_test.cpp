#include <gtest/gtest.h>

#include "base/text.h"
#include "kitchen/json_tree.h"
#include "kitchen/read.h"

namespace {

using kitchen::Node;

std::string code_of(const std::string& text) {
  base::Problems problems;
  const auto node = kitchen::parse_json(text, "x.json", problems);
  if (node) return "read";
  return problems.empty() ? "silent" : problems.front().code;
}

TEST(ParseJson, AnOrdinaryFileBecomesATreeInItsOwnOrder) {
  base::Problems problems;
  const auto node = kitchen::parse_json(R"({"b": [1, "zwei", true, null], "a": {}})", "x.json",
                                        problems);
  ASSERT_TRUE(node);
  EXPECT_EQ(node->keys, (std::vector<std::string>{"b", "a"}));
  EXPECT_EQ(node->find("b")->items[1].text, "zwei");
}

TEST(ParseJson, AByteOrderMarkIsPassedOver) { EXPECT_EQ(code_of("\xEF\xBB\xBF{}"), "read"); }

TEST(ParseJson, TenMegabytesOfNoiseAreRefusedAtOnce) {
  std::string noise(10'000'000, '[');
  EXPECT_EQ(code_of(noise), "file.too_big");
  noise.resize(kitchen::kLargestFile);
  EXPECT_EQ(code_of(noise), "file.too_deep");
}

TEST(ParseJson, SixtyFourBracketsDeepAreReadAndSixtyFiveRefused) {
  const auto nested = [](int n) {
    return std::string(static_cast<std::size_t>(n), '[') +
           std::string(static_cast<std::size_t>(n), ']');
  };
  EXPECT_EQ(code_of(nested(64)), "read");
  EXPECT_EQ(code_of(nested(65)), "file.too_deep");
}

TEST(ParseJson, TooManyValuesAreRefusedBeforeTheyFillTheMemory) {
  std::string many = "[1";
  for (int i = 0; i < 250'000; ++i) many += ",1";
  EXPECT_EQ(code_of(many + "]"), "file.too_many_values");
}

TEST(ParseJson, BytesThatAreNotUtf8AreRefusedWithTheirPlace) {
  base::Problems problems;
  EXPECT_FALSE(kitchen::parse_json("{\"a\": \"cr\xE8me\"}", "x.json", problems));
  EXPECT_EQ(problems.front().code, "file.not_utf8");
  EXPECT_EQ(problems.front().message,
            "The file is not plain UTF-8 text: byte 9 (counted from 0) does not belong.");
}

TEST(ParseJson, AQuarterOfAMillionUnknownFieldsAreNotListedOneByOne) {
  std::string text = R"({"kind": "dish", "version": 1)";
  for (int i = 0; i < 5000; ++i) text += base::say(", \"z", i, "\": 1");
  const auto result = kitchen::read_dish(text + "}", "x.json");
  ASSERT_FALSE(result);
  EXPECT_EQ(result.problems().size(), 201U);
  EXPECT_EQ(result.problems().back().code, "file.too_many_problems");
}

TEST(ParseJson, WrittenTextReadsBackEqualAndKeepsShortThingsOnOneLine) {
  base::Problems problems;
  const std::string text =
      "{\n  \"name\": \"Crème \\\"fine\\\" \\\\ \\u0001\",\n  \"short\": [1, 2.5, {\"a\": "
      "true}]\n}\n";
  const auto node = kitchen::parse_json(text, "x.json", problems);
  ASSERT_TRUE(node);
  const std::string again = kitchen::json_text(*node);
  EXPECT_EQ(kitchen::json_text(*kitchen::parse_json(again, "x.json", problems)), again);
  EXPECT_NE(again.find("[1, 2.5, {\"a\": true}]"), std::string::npos);
}

TEST(ParseJson, PointersEscapeTheirTwoSigns) {
  EXPECT_EQ(kitchen::below("/a", "b/c~d"), "/a/b~1c~0d");
  EXPECT_EQ(kitchen::below("", std::size_t{3}), "/3");
}

TEST(DocumentKind, AFileSaysWhatItIs) {
  EXPECT_EQ(kitchen::document_kind(R"({"kind": "room"})", "x").value(),
            kitchen::DocumentKind::kRoom);
  EXPECT_EQ(kitchen::document_kind(R"({"kind": "house_rules"})", "x").value(),
            kitchen::DocumentKind::kHouseRules);
  EXPECT_FALSE(kitchen::document_kind(R"({"kind": "recipe"})", "x"));
  EXPECT_FALSE(kitchen::document_kind("[]", "x"));
}

}  // namespace
