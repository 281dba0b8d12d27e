// The demo school as the desk has it: what belongs together fits together.
#include <gtest/gtest.h>

#include <array>
#include <set>

#include "base/text.h"
#include "desk.h"

namespace {

using namespace serve_test;

using DemoSchool = DeskTest;

constexpr std::array<const char*, 7> kDays = {"Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"};

/// Of a day of which a date is known, 0 for Monday; 1970 began with a Thursday.
int weekday(base::Date date) { return static_cast<int>(((date.days + 3) % 7 + 7) % 7); }

/// From and to of a lesson of the bells; null when that day has none of that name.
json period(const json& school, const std::string& day, const std::string& name) {
  for (const json& set : school.at("bells")) {
    const json& days = set.at("days");
    if (std::find(days.begin(), days.end(), day) == days.end()) continue;
    for (const json& each : set.at("periods"))
      if (each.at("name") == name) return each;
    return nullptr;
  }
  return nullptr;
}

TEST_F(DemoSchool, TheTimetableStandsOnTheBellsWithOneClassAtATime) {
  const json school = desk.document("school", "school").first;
  EXPECT_EQ(school.at("week_one"), "2026-11-16");
  std::set<std::string> taken;
  for (const json& slot : school.at("timetable")) {
    EXPECT_FALSE(period(school, slot.at("day"), slot.at("period")).is_null()) << slot;
    EXPECT_TRUE(taken
                    .insert(slot.at("week").dump() + slot.at("day").get<std::string>() +
                            slot.at("period").get<std::string>())
                    .second)
        << slot;
  }
}

TEST_F(DemoSchool, EveryLessonLiesInALessonThatItsClassHasInTheTimetable) {
  const json school = desk.document("school", "school").first;
  const base::Date week_one = *base::date_in(school.at("week_one").get<std::string>());
  int found = 0;
  const json lessons = desk.get("/api/documents/lesson").body.at("documents");
  for (const json& lesson : lessons) {
    const json body = desk.document("lesson", lesson.at("id")).first;
    const std::string title = body.at("title");
    const std::string group = title.substr(0, title.find(','));
    if (group == "11 Food") continue;  // an assessment of three hours, outside the timetable
    const base::Date date = *base::date_in(body.at("date").get<std::string>());
    const int week = ((date.days - weekday(date) - week_one.days) / 7) % 2 == 0 ? 1 : 2;
    bool inside = false;
    for (const json& slot : school.at("timetable")) {
      if (slot.at("week") != week || slot.at("class") != group ||
          slot.at("day") != kDays.at(static_cast<std::size_t>(weekday(date))))
        continue;
      const json bells = period(school, slot.at("day"), slot.at("period"));
      inside = inside || (bells.at("from").get<std::string>() <= body.at("from") &&
                          body.at("to").get<std::string>() <= bells.at("to"));
    }
    EXPECT_TRUE(inside) << title << ", " << body.at("date");
    ++found;
  }
  EXPECT_EQ(found, 9);
}

}  // namespace
