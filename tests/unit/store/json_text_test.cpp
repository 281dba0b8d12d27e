// JSON as text. The canonical form is checked against RFC 8785 (JSON Canonicalization Scheme) and
// ECMAScript's own JSON.stringify: every figure below was also printed by Node 20.
#include "store/json_text.h"

#include <gtest/gtest.h>

#include <bit>
#include <cstdint>
#include <utility>
#include <vector>

#include "base/text.h"
#include "school.h"

namespace {

using namespace store;
using store_test::code;

TEST(CanonicalJson, IsThatOfTheStandardsExample) {
  // RFC 8785, section 3.2.2 (input) and 3.2.4 (output).
  EXPECT_EQ(canonical_json(R"({
      "numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
      "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/",
      "literals": [null, true, false]
    })")
                .value(),
            R"({"literals":[null,true,false],)"
            R"("numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],)"
            R"("string":"€$\u000f\nA'B\"\\\\\"/"})");
}

TEST(CanonicalJson, SortsMembersAsTheStandardDoes) {
  // RFC 8785, section 3.2.3: by UTF-16 units, so that a smiley comes before U+FB33.
  EXPECT_EQ(canonical_json("{\"\\u20ac\":1,\"\\r\":2,\"\\ufb33\":3,\"1\":4,\"\\ud83d\\ude00\":5,"
                           "\"\\u0080\":6,\"\\u00f6\":7}")
                .value(),
            "{\"\\r\":2,\"1\":4,\"\xC2\x80\":6,\"ö\":7,\"€\":1,\"😀\":5,\"\xEF\xAC\xB3\":3}");
}

TEST(CanonicalJson, WritesNumbersAsTheStandardsTableDoes) {
  // RFC 8785, appendix B: the bits of a double and its text.
  const std::vector<std::pair<std::uint64_t, const char*>> table{
      {0x0000000000000000, "0"},
      {0x8000000000000000, "0"},
      {0x0000000000000001, "5e-324"},
      {0x7fefffffffffffff, "1.7976931348623157e+308"},
      {0x4340000000000000, "9007199254740992"},
      {0x4430000000000000, "295147905179352830000"},
      {0x44b52d02c7e14af5, "9.999999999999997e+22"},
      {0x44b52d02c7e14af6, "1e+23"},
      {0x44b52d02c7e14af7, "1.0000000000000001e+23"},
      {0x444b1ae4d6e2ef4e, "999999999999999700000"},
      {0x444b1ae4d6e2ef4f, "999999999999999900000"},
      {0x444b1ae4d6e2ef50, "1e+21"},
      {0x3eb0c6f7a0b5ed8c, "9.999999999999997e-7"},
      {0x3eb0c6f7a0b5ed8d, "0.000001"},
      {0x41b3de4355555553, "333333333.3333332"},
      {0x41b3de4355555554, "333333333.33333325"},
      {0x41b3de4355555555, "333333333.3333333"},
      {0x41b3de4355555556, "333333333.3333334"},
      {0x41b3de4355555557, "333333333.33333343"},
      {0xbecbf647612f3696, "-0.0000033333333333333333"},
      {0x43143ff3c1cb0959, "1424953923781206.2"},
  };
  for (const auto& [bits, text] : table) {
    const std::string written = base::number_text(std::bit_cast<double>(bits));
    EXPECT_EQ(canonical_json("[" + written + "]").value(), "[" + std::string(text) + "]")
        << written;
  }
}

TEST(CanonicalJson, IsTheSameWhenMadeAgain) {
  const std::string once = canonical_json(R"({"b":[1.50,{"z":null,"a":"é"}],"a":-0.0})").value();
  EXPECT_EQ(once, R"({"a":0,"b":[1.5,{"a":"é","z":null}]})");
  EXPECT_EQ(canonical_json(once).value(), once);
}

TEST(JsonBody, KeepsMembersInTheOrderWritten) {
  const JsonBody body = read_body(
                            "{ \"name\": \"Soup\", \"kind\":\"dish\", \"n\": 12345678901234567 }")
                            .value();
  EXPECT_EQ(body.compact, R"({"name":"Soup","kind":"dish","n":12345678901234567})");
  EXPECT_EQ(body.texts.at("name"), "Soup");
  EXPECT_FALSE(body.texts.contains("n"));
}

TEST(JsonBody, IsLaidOutForPeople) {
  EXPECT_EQ(tidy_json(R"({"b":[1,{"a":"x"}],"c":[],"d":{}})").value(),
            "{\n  \"b\": [\n    1,\n    {\n      \"a\": \"x\"\n    }\n  ],\n  \"c\": [],\n  \"d\": "
            "{}\n}\n");
}

TEST(JsonBody, SaysWhatIsWrongWithATextAndWhere) {
  const auto fault = [](const std::string& text) {
    const auto read = read_body(text);
    return read ? "" : read.problems()[0].message;
  };
  EXPECT_EQ(fault("{\"a\":1,\n  \"a\":2}"), "The entry 'a' stands twice in the same place.");
  EXPECT_EQ(fault("{\"a\":1,\n  2}"), "It is not JSON in line 2, column 3.");
  EXPECT_EQ(fault("{\"a\":1e999}"), "It holds a number that is too big.");
  EXPECT_EQ(fault("{\"a\":\"\xFF\"}"), "It is not plain UTF-8 text: byte 6 does not belong.");
  EXPECT_EQ(fault("[]"), "A document is one object in curly brackets, and this is not.");
  EXPECT_EQ(fault("{\"a\":" + std::string(64, '[') + std::string(64, ']') + "}"),
            "Brackets are nested more than 64 deep.");
  EXPECT_EQ(code(read_body(std::string(kLargestBody + 1, ' '))), "store.body_too_big");
  EXPECT_EQ(code(read_body("")), "store.body");
}

}  // namespace
