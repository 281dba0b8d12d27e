#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "kitchen/check_lesson.h"
#include "kitchen/parts_read.h"
#include "samples.h"

namespace {

using namespace kitchen;
using base::minutes;
using nlohmann::json;

json with_class(int pupils, const char* in) {
  json text = samples::lesson();
  text.erase("cooks");
  text["class"] = {{"pupils", pupils}, {"in", in}, {"dishes", {"scones"}}};
  text["room"]["bays"][1]["cookers"][0]["shelves"] = 1;
  return text;
}

std::vector<int> sizes(const Lesson& lesson) {
  std::vector<int> out;
  for (const Cook& cook : lesson.cooks) out.push_back(cook.people);
  return out;
}

TEST(ReadLesson, FilesALessonNamesAreReadFromWhereItStands) {
  std::vector<std::string> asked;
  const Loader loader = [&](const std::string& path) {
    asked.push_back(path);
    return samples::sample_files(path.substr(path.rfind('/') + 1));
  };
  json text = json::parse(samples::file("tests/unit/kitchen/samples/lesson.json"));
  text["room"] = "../rooms/room.json";
  const auto lesson = read_lesson(text.dump(), "year8/lessons/scones.json", loader);
  ASSERT_TRUE(lesson) << samples::told(lesson.problems());
  EXPECT_EQ(asked,
            (std::vector<std::string>{"year8/rooms/room.json", "year8/lessons/house-rules.json",
                                      "year8/lessons/dish.json"}));
  EXPECT_EQ(lesson.value(), samples::read_lesson(samples::lesson()));
}

TEST(ReadLesson, PartsReadBeforeAreTakenOnlyForTheSameText) {
  const std::string text = samples::file("tests/unit/kitchen/samples/lesson.json");
  std::string room = samples::file("tests/unit/kitchen/samples/room.json");
  const Loader loader = [&](const std::string& path) -> base::Result<std::string> {
    if (path == "room.json") return room;
    return samples::sample_files(path);
  };
  PartsRead parts;
  const auto first = read_lesson(text, "lesson.json", loader, &parts);
  ASSERT_TRUE(first) << samples::told(first.problems());
  EXPECT_NE(parts.get<Room>("room.json", room), nullptr);
  EXPECT_EQ(read_lesson(text, "lesson.json", loader, &parts).value(), first.value());
  json renamed = json::parse(room);
  renamed["name"] = "Another room";
  room = renamed.dump();
  EXPECT_EQ(read_lesson(text, "lesson.json", loader, &parts).value().room.name, "Another room");
  room = "{}";
  EXPECT_FALSE(read_lesson(text, "lesson.json", loader, &parts));
  EXPECT_EQ(parts.get<Room>("room.json", room), nullptr);  // what cannot be read is not remembered
}

TEST(ReadLesson, AFaultInAFileItNamesIsToldWithThatFile) {
  json lesson = json::parse(samples::file("tests/unit/kitchen/samples/lesson.json"));
  const Loader loader = [](const std::string& path) -> base::Result<std::string> {
    auto text = samples::sample_files(path);
    if (path != "dish.json") return text;
    json dish = samples::dish();
    dish["method"][0]["minutes"] = 0;
    return dish.dump();
  };
  const auto read = read_lesson(lesson.dump(), "lesson.json", loader);
  ASSERT_FALSE(read);
  ASSERT_EQ(read.problems().size(), 1U) << samples::told(read.problems());
  EXPECT_EQ(read.problems()[0].file, "dish.json");
  EXPECT_EQ(read.problems()[0].where, "/method/0/minutes");
}

TEST(ReadLesson, TimesBecomeSecondsSinceTheOpening) {
  const Lesson lesson = samples::read_lesson(samples::lesson());
  EXPECT_EQ(lesson.opens_minute, 600);
  EXPECT_EQ(lesson.bell, minutes(90));
  EXPECT_EQ(lesson.windows[0].earliest, minutes(0));
  EXPECT_EQ(lesson.adults[1].to, minutes(40));
  EXPECT_EQ(clock(lesson, minutes(75)), "11:15");
}

TEST(ReadLesson, ALessonOverAClockChangeLastsItsRealMinutes) {
  json text = samples::lesson();
  text["date"] = "2026-10-25";  // back from 02:00 to 01:00
  text["from"] = "00:30";
  text["to"] = "02:30";
  text["adults"] = json::array({{{"name", "Ms Hill"}}});
  text["windows"] = json::array();
  const Lesson lesson = samples::read_lesson(text);
  EXPECT_EQ(lesson.bell, minutes(180));
  EXPECT_EQ(clock(lesson, minutes(60)), "01:30");
  EXPECT_EQ(clock(lesson, minutes(120)), "01:30");
  EXPECT_THAT(notes(lesson).back(), ::testing::HasSubstr("clocks change"));
}

TEST(ReadLesson, AnOpeningThatComesTwiceIsTheFirstAndIsNoted) {
  json text = samples::lesson();
  text["date"] = "2026-10-25";
  text["from"] = "01:30";
  text["to"] = "03:00";
  text["adults"] = json::array({{{"name", "Ms Hill"}}});
  text["windows"] = json::array();
  const Lesson lesson = samples::read_lesson(text);
  EXPECT_EQ(lesson.bell, minutes(150));
  EXPECT_EQ(notes(lesson)[1],
            "The clock shows 01:30 twice on 2026-10-25; the lesson starts at the first.");
}

TEST(ReadLesson, OnlyVersionsThatSomebodyCooksAreDishesOfTheLesson) {
  const Lesson both = samples::read_lesson(samples::lesson());
  ASSERT_EQ(both.dishes.size(), 2U);
  EXPECT_EQ(both.cooks[1].dishes, std::vector<int>{1});
  json text = samples::lesson();
  text["cooks"][0]["dishes"] = {"scones: no dairy"};
  EXPECT_EQ(samples::read_lesson(text).dishes.size(), 1U);
}

TEST(ReadLesson, APlainKeyInAWindowMeansTheDishAndItsVariants) {
  json text = samples::lesson();
  text["windows"][0]["before"] = {{{"dish", "scones"}, {"step", "bake"}}};
  EXPECT_EQ(samples::read_lesson(text).windows[0].before, (std::vector<StepRef>{{0, 2}, {1, 2}}));
  text["windows"][0]["before"] = {{{"dish", "scones: no dairy"}, {"step", "bake"}}};
  EXPECT_EQ(samples::read_lesson(text).windows[0].before, (std::vector<StepRef>{{1, 2}}));
}

TEST(ReadLesson, AClassFillsThePlacesAndAnOddPupilMakesAThree) {
  EXPECT_EQ(sizes(samples::read_lesson(with_class(7, "pairs"))), (std::vector<int>{2, 2, 3}));
  EXPECT_EQ(sizes(samples::read_lesson(with_class(8, "pairs"))), (std::vector<int>{2, 2, 2, 2}));
  EXPECT_EQ(sizes(samples::read_lesson(with_class(7, "threes"))), (std::vector<int>{3, 2, 2}));
  EXPECT_EQ(sizes(samples::read_lesson(with_class(8, "threes"))), (std::vector<int>{3, 3, 2}));
  EXPECT_EQ(sizes(samples::read_lesson(with_class(1, "pairs"))), (std::vector<int>{1}));
  EXPECT_EQ(samples::read_lesson(with_class(2, "singles")).cooks[1].name, "A2");
}

TEST(ReadLesson, CooksMayShareAPlaceWhenTheLessonSaysSo) {
  json text = with_class(10, "pairs");
  text["share_places"] = true;
  const Lesson lesson = samples::read_lesson(text);
  ASSERT_EQ(lesson.cooks.size(), 5U);
  EXPECT_EQ(lesson.cooks[4].place, lesson.cooks[0].place);
  EXPECT_EQ(lesson.cooks[4].name, "A1 (2)");
}

TEST(ReadLesson, ACookWithoutAPlaceGetsTheNextFreeOne) {
  json text = samples::lesson();
  text["cooks"][0].erase("place");
  text["cooks"][1]["place"] = "A1";
  EXPECT_EQ(samples::read_lesson(text).cooks[0].place, 1);
}

TEST(ReadLesson, WithoutAdultsOneTeacherLeadsAndMayWatchEverything) {
  json text = samples::lesson();
  text.erase("adults");
  const Lesson lesson = samples::read_lesson(text);
  ASSERT_EQ(lesson.adults.size(), 1U);
  EXPECT_TRUE(lesson.adults[0].leads);
  EXPECT_EQ(lesson.adults[0].may_watch.size(), 6U);
}

TEST(ReadLesson, TheLeaderMayWatchEverythingAndOthersWhatIsListed) {
  const Lesson lesson = samples::read_lesson(samples::lesson());
  EXPECT_EQ(lesson.adults[0].may_watch.size(), 6U);
  EXPECT_EQ(lesson.adults[1].may_watch, std::vector<Hazard>{Hazard::kBlender});
  EXPECT_EQ(lesson.windows[0].led_by, 0);
}

TEST(ReadLesson, OneSittingOverTheWholeLessonUnlessFoodGoesHome) {
  json text = samples::lesson();
  ASSERT_EQ(samples::read_lesson(text).sittings.size(), 1U);
  EXPECT_EQ(samples::read_lesson(text).sittings[0].latest, minutes(90));
  text["purpose"] = "take home";
  EXPECT_TRUE(samples::read_lesson(text).sittings.empty());
}

TEST(ReadLesson, ADishPutAwayNeedsOnlyWhatItsFirstHalfNeeds) {
  json text = samples::lesson();
  text["cooks"][0]["place"] = "B1";  // a hob: no baking there
  EXPECT_EQ(samples::problems_of("lesson", text.dump()).size(), 1U);
  text["carry"] = {{{"dish", "scones"}, {"split", "after rubbing in"}, {"half", "first"}}};
  const Lesson lesson = samples::read_lesson(text);
  EXPECT_EQ(lesson.carry.size(), 2U);  // the dish and its variant
  EXPECT_EQ(steps_done(lesson, 0), (std::vector<bool>{true, true, false, false, false}));
}

TEST(ReadLesson, WhatWasAddedIsNoted) {
  json text = samples::lesson();
  text["dishes"]["scones"]["method"].erase(3);
  const auto said = notes(samples::read_lesson(text));
  ASSERT_EQ(said.size(), 3U);
  EXPECT_EQ(said[0],
            "In 'Cheese scones' the step \"Take the tray out of the oven.\" was added after "
            "'bake': someone must take it off "
            "the heat, within 1 min, and that needs hands.");
  EXPECT_EQ(said[2], "Ben and Cyd cook the variant 'Cheese scones (no dairy)'.");
}

TEST(CheckLesson, AnIndexThatPointsNowhereIsRefusedBeforeAnythingElse) {
  Lesson lesson = samples::read_lesson(samples::lesson());
  lesson.cooks[0].dishes = {7};
  ASSERT_EQ(check(lesson).size(), 1U);
  EXPECT_EQ(check(lesson)[0].code, "lesson.broken_reference");
}

TEST(CheckLesson, ACookOfFourIsRefused) {
  Lesson lesson = samples::read_lesson(samples::lesson());
  lesson.cooks[1].people = 4;
  ASSERT_EQ(check(lesson).size(), 1U);
  EXPECT_EQ(check(lesson)[0].code, "lesson.cook_size");
  EXPECT_EQ(check(lesson)[0].message, "The cook 'Ben and Cyd' has 4 people.");
}

TEST(CheckLesson, ALessonReadWithoutFaultIsWithoutFault) {
  EXPECT_EQ(check(samples::read_lesson(samples::lesson())), base::Problems{});
}

}  // namespace
