// Class lists: what is written can be read again, and every fault is told with its place.
#include "desk/class_list.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <set>

#include "../../support/lesson_file.h"
#include "random_class.h"

namespace {

using desk::Class;
using desk::Limit;
using desk::Pupil;
using kitchen::Allergen;

RC_GTEST_PROP(ClassList, WhatIsWrittenIsReadAgain, ()) {
  const Class group = desk_test::any_class(0);
  const auto again = desk::read_class(desk::write_class(group), "class.json");
  RC_ASSERT(static_cast<bool>(again));
  RC_ASSERT(again.value() == group);
}

RC_GTEST_PROP(ClassList, WritingIsCanonical, ()) {
  const std::string text = desk::write_class(desk_test::any_class(0));
  RC_ASSERT(desk::write_class(desk::read_class(text, "").value()) == text);
}

TEST(ClassList, TheDemoClassesAreRead) {
  for (const char* name : {"7b", "9k"}) {
    const auto text = support::text_of(std::string(BENCHBELL_SOURCE_DIR) + "/demo/classes/" + name +
                                       ".json");
    ASSERT_TRUE(text);
    const auto group = desk::read_class(text.value(), name);
    ASSERT_TRUE(group) << group.problems().front().message;
    EXPECT_GE(group.value().pupils.size(), 20U);
  }
}

TEST(ClassList, WhatAPupilAvoidsAreTheAllergensWhateverTheReachAndNotTheDiets) {
  Pupil pupil;
  pupil.name = "Hana S.";
  pupil.needs = {{Allergen::kEggs, safety::Reach::kEat},
                 {Allergen::kPeanuts, safety::Reach::kRoom},
                 {safety::Diet::kHalal, safety::Reach::kEat}};
  EXPECT_EQ(desk::avoids(pupil), (kitchen::Allergens{Allergen::kEggs, Allergen::kPeanuts}));
}

TEST(ClassList, EveryLimitHasItsOwnWord) {
  std::set<std::string_view> words;
  for (const Limit limit :
       {Limit::kLowBench, Limit::kNotAtHobAlone, Limit::kLeftHanded, Limit::kNearTeacher})
    words.insert(desk::word(limit));
  EXPECT_EQ(words.size(), 4U);
  EXPECT_EQ(words.count(""), 0U);
}

std::string with(const std::string& members) {
  return R"({"kind": "class", "version": 1, )" + members + "}";
}

void expect_fault(const std::string& text, const std::string& code, const std::string& where) {
  const auto read = desk::read_class(text, "class.json");
  ASSERT_FALSE(read) << text;
  const base::Problems& all = read.problems();
  const auto found = std::find_if(all.begin(), all.end(),
                                  [&](const base::Problem& p) { return p.code == code; });
  ASSERT_NE(found, all.end()) << code << " for " << text << "; told: " << all.front().code << " "
                              << all.front().message;
  EXPECT_EQ(found->where, where) << text;
  EXPECT_EQ(found->file, "class.json");
  EXPECT_FALSE(found->message.empty());
  EXPECT_FALSE(found->remedy.empty());
}

TEST(ClassList, EveryFaultIsToldWithItsPlace) {
  expect_fault("", "file.empty", "");
  expect_fault("{", "file.syntax", "");
  expect_fault(R"({"kind": "room", "version": 1})", "class.kind", "");
  expect_fault(R"({"kind": "class", "version": 2})", "class.kind", "");
  expect_fault(with(R"("year": 7, "pupils": [])"), "field.missing", "");
  expect_fault(with(R"("name": "7B", "year": 14, "pupils": [])"), "field.out_of_range", "/year");
  expect_fault(with(R"("name": "7B", "year": 7, "in": "fours", "pupils": [])"),
               "field.unknown_word", "/in");
  expect_fault(with(R"("name": "7B", "year": 7, "pupils": [], "colour": "blue")"), "field.unknown",
               "/colour");
  expect_fault(with(R"("name": "7B", "year": 7, "pupils": [{"name": "Ben T.", "pace": 3}])"),
               "field.out_of_range", "/pupils/0/pace");
  expect_fault(
      with(R"("name": "7B", "year": 7, "pupils": [{"name": "Ben T.", "limits": ["tall"]}])"),
      "field.unknown_word", "/pupils/0/limits/0");
  expect_fault(
      with(R"("name": "7B", "year": 7, "pupils": [{"name": "Ben T."}, {"name": "Ben T."}])"),
      "class.name_twice", "/pupils/1/name");
  expect_fault(
      with(
          R"("name": "7B", "year": 7, "pupils": [{"name": "Ben T.", "needs": [{"need": "milc"}]}])"),
      "class.unknown_need", "/pupils/0/needs/0/need");
  expect_fault(
      with(
          R"("name": "7B", "year": 7, "pupils": [{"name": "Ben T.", "needs": [{"need": "milk", "reach": "far"}]}])"),
      "field.unknown_word", "/pupils/0/needs/0/reach");
  const std::string
      two = R"("name": "7B", "year": 7, "pupils": [{"name": "Ben T."}, {"name": "Elif O."}], )";
  expect_fault(with(two + R"("never_together": [["Ben T."]])"), "class.not_a_pair",
               "/never_together/0");
  expect_fault(with(two + R"("never_together": ["Ben T."])"), "class.not_a_pair",
               "/never_together/0");
  expect_fault(with(two + R"("always_together": [["Ben T.", "Ellif O."]])"), "class.unknown_pupil",
               "/always_together/0/1");
  expect_fault(
      with(
          two +
          R"("never_together": [["Ben T.", "Elif O."]], "always_together": [["Elif O.", "Ben T."]])"),
      "class.together_and_not", "/always_together");
  expect_fault(with(two + R"("never_together": [["Ben T.", "Ben T."]])"), "class.not_a_pair",
               "/never_together/0");
}

TEST(ClassList, AllFaultsAreToldAtOnce) {
  const auto read = desk::read_class(
      with(R"("year": 99, "pupils": [{"name": "Ben T.", "needs": [{"need": "moon dust"}]}])"),
      "class.json");
  ASSERT_FALSE(read);
  EXPECT_GE(read.problems().size(), 3U);  // no name, a year that is none, a need nobody knows
}

TEST(ClassList, ANameNearAKnownOneIsOffered) {
  const auto read = desk::read_class(
      with(
          R"("name": "7B", "year": 7, "pupils": [{"name": "Aisha K."}], "never_together": [["Aisha K.", "Aisa K."]])"),
      "");
  ASSERT_FALSE(read);
  EXPECT_NE(read.problems().front().message.find("Aisha K."), std::string::npos);
}

}  // namespace
