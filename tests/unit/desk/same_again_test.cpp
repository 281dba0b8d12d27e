// Last year's lesson again: everything inside it moves with its opening, and nothing else.
#include "desk/same_again.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>

#include "base/clock.h"
#include "demo_lessons.h"

namespace {

using namespace desk_test;
using desk::AgainWish;

AgainWish on(const std::string& date) {
  AgainWish wish;
  wish.date = date;
  wish.same_as = "old";
  return wish;
}

std::string again(const std::string& text, const AgainWish& wish) {
  const auto made = desk::same_again(text, "lessons/x.json", wish);
  if (made) return made.value().text;
  throw std::runtime_error(made.problems().front().message);
}

std::string clock(int minute) { return base::clock_text(base::minutes(minute)); }

/// From 05:00 to 20:00, so that no lesson of the demo runs past midnight.
int any_minute() { return *rc::gen::inRange(5 * 60, 20 * 60); }

RC_GTEST_PROP(SameAgain, EverythingInsideMovesWithTheOpening, ()) {
  const std::string text = document_of(*rc::gen::elementOf(demo_lessons()));
  kitchen::Lesson was = lesson_of(text);
  for (kitchen::Cook& cook : was.cooks) {
    cook.away.clear();
    cook.arrives = base::Seconds{0};
    cook.leaves = was.bell;
  }
  AgainWish wish = on("2027-05-04");
  const int minute = any_minute();
  wish.from = clock(minute);
  kitchen::Lesson now = lesson_of(again(text, wish));
  RC_ASSERT(now.opens_minute == minute);
  RC_ASSERT(now.date == "2027-05-04");
  now.opens_minute = was.opens_minute;
  now.date = was.date;
  RC_ASSERT(now == was);  // windows, serving, bans, adults: all counted from the opening
}

RC_GTEST_PROP(SameAgain, ThereAndBackIsTheSameText, ()) {
  const std::string name = *rc::gen::elementOf(demo_lessons());
  const std::string text = document_of(name);
  const kitchen::Node tree = tree_of(text);
  AgainWish back = on(tree.find("date")->text);
  back.from = tree.find("from")->text;
  const std::string plain = again(text, back);  // what is dropped is dropped
  AgainWish there = on("2027-05-04");
  there.from = clock(any_minute());
  RC_ASSERT(again(again(plain, there), back) == plain);
}

TEST(SameAgain, WithTheSameTimeOnlyTheDayIsAnother) {
  const auto made = desk::same_again(document_of("b-two-dishes"), "", on("2027-11-16"));
  ASSERT_TRUE(made);
  EXPECT_EQ(made.value().differs, std::vector<std::string>{"2027-11-16 instead of 2026-11-17."});
}

TEST(SameAgain, WhatDiffersIsSaid) {
  AgainWish wish = on("2027-11-16");
  wish.from = "09:00";
  wish.to = "10:30";
  wish.room = "../rooms/food-room-2.json";
  const auto made = desk::same_again(document_of("b-two-dishes"), "", wish);
  ASSERT_TRUE(made);
  const std::vector<std::string>& says = made.value().differs;
  const auto said = [&](const std::string& line) {
    return std::find(says.begin(), says.end(), line) != says.end();
  };
  EXPECT_TRUE(said("Begins at 09:00 instead of 10:50."));
  EXPECT_TRUE(said("90 min to the bell instead of 100."));
  EXPECT_TRUE(said("Another room."));
}

TEST(SameAgain, WhoWasAwayIsHereAndItIsSaid) {
  kitchen::Node tree = tree_of(document_of("h-stop-gate-demonstration"));
  kitchen::Node& cook = tree.find("cooks")->items.front();
  kitchen::Node& span = cook.set("away", kitchen::Node::list()).add(kitchen::Node::object());
  span.set("from", kitchen::Node::of("13:30"));
  span.set("to", kitchen::Node::of("13:40"));
  cook.set("arrives", kitchen::Node::of("13:25"));
  const auto made = desk::same_again(kitchen::json_text(tree), "", on("2027-11-16"));
  ASSERT_TRUE(made);
  EXPECT_EQ(lesson_of(made.value().text).cooks.front().away.size(), 0U);
  EXPECT_EQ(lesson_of(made.value().text).cooks.front().arrives, base::Seconds{0});
  EXPECT_EQ(made.value().differs.back(), "Ewan J. and Freya T. is here all the time.");
}

TEST(SameAgain, WhereItComesFromIsKeptAndWhoStaysPutIsNot) {
  kitchen::Node tree = tree_of(document_of("h-stop-gate-demonstration"));
  kitchen::Node& about = tree.set("about", kitchen::Node::object());
  about.set("class", kitchen::Node::of("9t"));
  about.set("pinned", kitchen::Node::list()).add(kitchen::Node::of("Ewan J. and Freya T."));
  AgainWish wish = on("2027-11-16");
  wish.title = "9U, fajitas";
  const kitchen::Node now = tree_of(again(kitchen::json_text(tree), wish));
  EXPECT_EQ(now.find("about")->find("same_as")->text, "old");
  EXPECT_EQ(now.find("about")->find("class")->text, "9t");
  EXPECT_EQ(now.find("about")->find("pinned"), nullptr);
  EXPECT_EQ(now.find("title")->text, "9U, fajitas");
  wish.class_id = "9u";
  EXPECT_EQ(tree_of(again(kitchen::json_text(tree), wish)).find("about")->find("class")->text,
            "9u");
}

TEST(SameAgain, ReferencesStayReferences) {
  const kitchen::Node was = tree_of(document_of("b-two-dishes"));
  AgainWish wish = on("2027-11-16");
  wish.from = "09:00";
  const kitchen::Node now = tree_of(again(kitchen::json_text(was), wish));
  for (const char* key : {"room", "house_rules", "dishes", "cooks", "adults"})
    EXPECT_EQ(kitchen::json_text(*now.find(key)), kitchen::json_text(*was.find(key))) << key;
}

TEST(SameAgain, FaultsHaveWhatWhereAndHow) {
  struct Fault {
    AgainWish wish;
    const char* code;
    const char* where;
  };
  std::vector<Fault> faults{{on("tomorrow"), "again.date", "/date"},
                            {on("2027-02-30"), "again.date", "/date"}};
  faults.push_back({on("2027-05-04"), "again.time", "/from"});
  faults.back().wish.from = "nine";
  faults.push_back({on("2027-05-04"), "again.time", "/to"});
  faults.back().wish.to = "25:00";
  for (const Fault& each : faults) {
    const auto refused = desk::same_again(document_of("b-two-dishes"), "", each.wish);
    ASSERT_FALSE(refused) << each.code;
    EXPECT_EQ(refused.problems().front().code, each.code);
    EXPECT_EQ(refused.problems().front().where, each.where);
    EXPECT_FALSE(refused.problems().front().remedy.empty());
  }
  EXPECT_FALSE(desk::same_again("[", "", on("2027-05-04")));
  EXPECT_FALSE(desk::same_again("{}", "", on("2027-05-04")));
  EXPECT_FALSE(desk::same_again("[]", "", on("2027-05-04")));
}

}  // namespace
