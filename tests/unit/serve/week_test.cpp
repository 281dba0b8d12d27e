// The week's page, its order and who must not have what: the numbers are those of the libraries.
#include <gtest/gtest.h>

#include <algorithm>

#include "desk.h"
#include "larder/cost.h"
#include "serve/order_desk.h"
#include "serve/week_days.h"

namespace {

using namespace serve_test;

class Week : public DeskTest {
 protected:
  json lesson(const std::string& id, const std::string& query = "") {
    const json week = desk.get("/api/week" + query).body;
    for (const json& each : week.at("lessons"))
      if (each.at("id") == id) return each;
    return nullptr;
  }
};

TEST_F(Week, ShowsTheLessonsOfItsDaysInOrder) {
  const json week = desk.get("/api/week").body;
  EXPECT_EQ(week.at("from"), "2026-11-16");
  EXPECT_EQ(week.at("to"), "2026-11-22");
  EXPECT_EQ(week.at("today"), "2026-11-17");
  EXPECT_EQ(week.at("headline"), "Nothing is planned yet this week.");
  std::vector<std::string> when;
  for (const json& each : week.at("lessons"))
    when.push_back(each.at("date").get<std::string>() + each.at("from").get<std::string>());
  EXPECT_EQ(when.size(), 5U);
  EXPECT_TRUE(std::is_sorted(when.begin(), when.end()));
  const json& dates = week.at("dates");
  EXPECT_NE(std::find(dates.begin(), dates.end(), "2026-11-16"), dates.end());
}

TEST_F(Week, AnyDayOfAWeekMeansItsMonday) {
  for (const char* day : {"2026-11-16", "2026-11-19", "2026-11-22"})
    EXPECT_EQ(desk.get(std::string("/api/week?from=") + day).body.at("from"), "2026-11-16") << day;
  EXPECT_EQ(desk.get("/api/week?from=2026-11-23").body.at("from"), "2026-11-23");
  EXPECT_EQ(desk.get("/api/week?from=tomorrow").status, 400);
  EXPECT_EQ(desk.get("/api/week?from=2030-01-01").body.at("headline"), "No lessons this week.");
}

// 17 November 2026 is a Tuesday (by hand: 1 January 1970 was a Thursday, 20,774 days on).
TEST_F(Week, FromSaturdayOnTheNextWeekIsShown) {
  const auto monday = [&](const char* today) {
    desk.context.today = [today] { return *base::date_in(today); };
    return desk.get("/api/week").body.at("from").get<std::string>();
  };
  EXPECT_EQ(monday("2026-11-20"), "2026-11-16");
  EXPECT_EQ(monday("2026-11-21"), "2026-11-23");
  EXPECT_EQ(monday("2026-11-22"), "2026-11-23");
  EXPECT_EQ(monday("2026-11-23"), "2026-11-23");
}

TEST_F(Week, ARowSaysWhatTheLessonIs) {
  const json row = lesson("b-two-dishes");
  EXPECT_EQ(row.at("cooks"), 24);
  EXPECT_EQ(row.at("pupils"), 24);
  EXPECT_EQ(row.at("from"), "10:50");
  EXPECT_EQ(row.at("to"), "12:30");
  EXPECT_EQ(row.at("class"), "9K");
  EXPECT_EQ(row.at("verdict"), "not planned");
  EXPECT_EQ(row.at("dishes").size(), 3U);
  ASSERT_EQ(row.at("allergies").size(), 1U);
  EXPECT_EQ(row.at("allergies")[0].at("allergen"), "milk");
  EXPECT_EQ(row.at("allergies")[0].at("says"), "1 cook: A4");
}

TEST_F(Week, AChangedLessonDishOrRoomIsSeenAtOnce) {
  EXPECT_EQ(lesson("e-does-not-fit").at("room"),
            desk.document("room", "food-room-3").first.at("name"));
  auto [room, version] = desk.document("room", "food-room-3");
  room["name"] = "Food Room 3 at the end";
  ASSERT_EQ(desk.put("/api/documents/room/food-room-3", {{"body", room}}, version).status, 200);
  EXPECT_EQ(lesson("e-does-not-fit").at("room"), "Food Room 3 at the end");
  auto [body, lesson_version] = desk.document("lesson", "e-does-not-fit");
  body["title"] = "8C, scones";
  body["cooks"].erase(0);
  ASSERT_EQ(
      desk.put("/api/documents/lesson/e-does-not-fit", {{"body", body}}, lesson_version).status,
      200);
  EXPECT_EQ(lesson("e-does-not-fit").at("cooks"), 23);
  auto [dish, dish_version] = desk.document("dish", "fruit-scones");
  dish["name"] = "Plain scones";
  ASSERT_EQ(desk.put("/api/documents/dish/fruit-scones", {{"body", dish}}, dish_version).status,
            200);
  EXPECT_EQ(lesson("e-does-not-fit").at("dishes")[0], "Plain scones");
}

TEST_F(Week, ALessonThatHasToBeMendedIsShownWithItsReason) {
  auto [body, version] = desk.document("dish", "fruit-scones");
  // Nobody's scones have an oat version any more, and one cook of 9K makes it.
  body.erase("variants");
  ASSERT_EQ(desk.put("/api/documents/dish/fruit-scones", {{"body", body}}, version).status, 200);
  const json row = lesson("b-two-dishes");
  EXPECT_EQ(row.at("says"), "Something in it has to be mended");
  EXPECT_NE(row.at("reason"), "");
  EXPECT_EQ(desk.get("/api/stores/order").body.at("unknown").size() > 0, true);
}

TEST_F(Week, APlanGivesItsVerdictAndAChangeMakesItStale) {
  desk.plan("e-does-not-fit");
  json row = lesson("e-does-not-fit");
  EXPECT_EQ(row.at("verdict"), "does not fit");
  EXPECT_EQ(row.at("stale"), false);
  EXPECT_NE(row.at("reason"), "");
  auto [body, version] = desk.document("lesson", "e-does-not-fit");
  body["title"] = "8C, scones";
  ASSERT_EQ(desk.put("/api/documents/lesson/e-does-not-fit", {{"body", body}}, version).status,
            200);
  row = lesson("e-does-not-fit");
  EXPECT_EQ(row.at("stale"), true);
  EXPECT_EQ(row.at("verdict"), "does not fit");
  EXPECT_NE(desk.get("/api/week")
                .body.at("headline")
                .get<std::string>()
                .find("8C, scones does not fit yet."),
            std::string::npos);
}

TEST_F(Week, APlanStaysWithALessonThatMovesToAnotherWeek) {
  desk.plan("e-does-not-fit");
  auto [body, version] = desk.document("lesson", "e-does-not-fit");
  body["date"] = "2026-12-01";
  ASSERT_EQ(desk.put("/api/documents/lesson/e-does-not-fit", {{"body", body}}, version).status,
            200);
  EXPECT_EQ(lesson("e-does-not-fit", "?from=2026-12-01").at("verdict"), "does not fit");
}

TEST_F(Week, TheOrderIsTheLardersOrder) {
  const Answer order = desk.get("/api/stores/order?from=2026-11-18");
  ASSERT_EQ(order.status, 200);
  EXPECT_EQ(order.body.at("from"), "2026-11-16");
  const auto made = serve::order_for(desk.context, serve::monday_of(*base::date_in("2026-11-18")));
  ASSERT_TRUE(made);
  EXPECT_EQ(order.body.at("order").at("lines").size(), made.value()->worked.order.lines.size());
  EXPECT_GT(made.value()->worked.order.lines.size(), 10U);
  EXPECT_EQ(order.body.at("summary").at("total"),
            larder::pounds_text(made.value()->worked.costs.paid));
  EXPECT_EQ(order.body.at("stock").size(), made.value()->stock->lots.size());
  // Now the week's page has it as well.
  EXPECT_EQ(desk.get("/api/week").body.at("order").at("total"),
            order.body.at("summary").at("total"));
}

TEST_F(Week, TheOrderFollowsItsLessonsAndPrices) {
  const std::string before = desk.get("/api/stores/order").text;
  EXPECT_EQ(desk.get("/api/stores/order").text, before);
  auto [body, version] = desk.document("lesson", "b-two-dishes");
  body["cooks"].erase(0);
  ASSERT_EQ(desk.put("/api/documents/lesson/b-two-dishes", {{"body", body}}, version).status, 200);
  EXPECT_NE(desk.get("/api/stores/order").text, before);
}

TEST_F(Week, TheOrderComesAsFiles) {
  const Answer csv = desk.get("/api/stores/order-file/csv");
  ASSERT_EQ(csv.status, 200);
  EXPECT_NE(csv.header("Content-Disposition").find("order-2026-11-16.csv"), std::string::npos);
  const json lines = desk.get("/api/stores/order").body.at("order").at("lines");
  EXPECT_GT(static_cast<std::size_t>(std::count(csv.text.begin(), csv.text.end(), '\n')),
            lines.size());
  const Answer sheet = desk.get("/api/stores/order-file/xlsx");
  ASSERT_EQ(sheet.status, 200);
  EXPECT_EQ(sheet.text.substr(0, 2), "PK");  // a zip, as Office Open XML files are (ECMA-376, part
                                             // 2)
  EXPECT_EQ(desk.get("/api/stores/order-file/pdf").status, 404);
  EXPECT_EQ(desk.get("/api/stores/order?from=x").status, 400);
}

TEST_F(Week, WhoMustNotHaveWhatIsToldForALesson) {
  const Answer answer = desk.get("/api/lessons/b-two-dishes/allergens");
  ASSERT_EQ(answer.status, 200);
  EXPECT_NE(answer.text.find("Daisy M."), std::string::npos);
  EXPECT_EQ(desk.get("/api/lessons/no-lesson/allergens").status, 404);
}

}  // namespace
