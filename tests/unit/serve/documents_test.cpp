// Documents: made, read, changed by whoever saw the newest version, undone, put away.
#include <gtest/gtest.h>

#include "desk.h"

namespace {

using namespace serve_test;

class Documents : public DeskTest {
 protected:
  json dish(const std::string& name) {
    json body = desk.document("dish", "fruit-scones").first;
    body["name"] = name;
    return body;
  }
};

TEST_F(Documents, ANewOneGetsAnIdAVersionAndAnETag) {
  const Answer made = desk.post("/api/documents/dish",
                                {{"body", dish("Cheese scones")}, {"what", "Typed in"}});
  ASSERT_EQ(made.status, 201) << made.text;
  EXPECT_EQ(made.body.at("id"), "cheese-scones");
  EXPECT_EQ(made.body.at("version"), 1);
  EXPECT_EQ(made.header("ETag"), "\"1\"");
  const Answer read = desk.get("/api/documents/dish/cheese-scones");
  EXPECT_EQ(read.body.at("body"), dish("Cheese scones"));
  EXPECT_EQ(read.header("ETag"), "\"1\"");
}

TEST_F(Documents, AGivenIdIsKeptAndATakenOneRefused) {
  EXPECT_EQ(desk.post("/api/documents/dish", {{"id", "my-scones"}, {"body", dish("Scones")}})
                .body.at("id"),
            "my-scones");
  EXPECT_EQ(
      desk.post("/api/documents/dish", {{"id", "my-scones"}, {"body", dish("Scones")}}).code(),
      "store.id_taken");
  for (const char* id : {"My Scones", "-x", "x--y", "../etc/passwd", "\xF0\x9F\x8D\x9E", "a/b"})
    EXPECT_EQ(desk.post("/api/documents/dish", {{"id", id}, {"body", dish("Scones")}}).status, 400)
        << id;
}

TEST_F(Documents, WritingToTheVersionReadGivesTheNext) {
  auto [body, version] = desk.document("dish", "fruit-scones");
  body["portions"] = 12;
  const Answer written = desk.put("/api/documents/dish/fruit-scones", {{"body", body}}, version);
  ASSERT_EQ(written.status, 200) << written.text;
  EXPECT_EQ(written.body.at("version"), version + 1);
  EXPECT_EQ(written.header("ETag"), "\"" + std::to_string(version + 1) + "\"");
  EXPECT_EQ(desk.document("dish", "fruit-scones").first, body);
}

TEST_F(Documents, WhoeverIsSecondGetsBothVersions) {
  const Asker hart = desk.person("Ms Hart", store::Role::kHead),
              reed = desk.person("Mr Reed", store::Role::kTeacher);
  json mine = desk.get("/api/documents/dish/fruit-scones", &hart).body.at("body"), theirs = mine;
  theirs["portions"] = 6;
  mine["portions"] = 10;
  ASSERT_EQ(desk.put("/api/documents/dish/fruit-scones", {{"body", theirs}}, 1, &reed).status, 200);
  const Answer clash = desk.put("/api/documents/dish/fruit-scones", {{"body", mine}}, 1, &hart);
  EXPECT_EQ(clash.status, 412);
  EXPECT_EQ(clash.body.at("yours"), mine);
  EXPECT_EQ(clash.body.at("theirs").at("body"), theirs);
  EXPECT_EQ(clash.body.at("theirs").at("version"), 2);
  EXPECT_EQ(clash.header("ETag"), "\"2\"");
  EXPECT_NE(clash.text.find("Mr Reed changed this"), std::string::npos);
  EXPECT_EQ(desk.put("/api/documents/dish/fruit-scones", {{"body", mine}}, 2, &hart).status, 200);
}

TEST_F(Documents, WritingWithoutSayingWhatWasReadIsRefused) {
  const json body = {{"body", dish("Scones")}};
  EXPECT_EQ(desk.ask(Method::kPut, "/api/documents/dish/fruit-scones", body).status, 428);
  EXPECT_EQ(desk.ask(Method::kDelete, "/api/documents/dish/fruit-scones").status, 428);
  for (const char* header :
       {"*", "\"\"", "\"one\"", "\"1.5\"", "\"-1\"", "W/\"1\"", "99999999999999999999"})
    EXPECT_EQ(desk.ask(Method::kPut, "/api/documents/dish/fruit-scones", body, nullptr,
                       {{"If-Match", header}})
                  .status,
              428)
        << header;
}

TEST_F(Documents, UndoGoesBackAndUndoOfUndoForwardAgain) {
  auto [first, version] = desk.document("dish", "fruit-scones");
  json second = first;
  second["portions"] = 12;
  desk.put("/api/documents/dish/fruit-scones", {{"body", second}}, 1);
  const auto undo = [&](long long seen, const json& body = nullptr) {
    return desk.post("/api/documents/dish/fruit-scones/undo", body, nullptr,
                     {{"If-Match", "\"" + std::to_string(seen) + "\""}});
  };
  EXPECT_EQ(undo(2).body.at("body"), first);
  EXPECT_EQ(undo(3).body.at("body"), second);
  EXPECT_EQ(undo(4).body.at("body"), first);
  const Answer to_second = undo(5, {{"to_version", 2}});
  EXPECT_EQ(to_second.body.at("body"), second);
  EXPECT_EQ(to_second.body.at("version"), 6);
  EXPECT_EQ(undo(5).status, 412);
  EXPECT_EQ(undo(6, {{"to_version", 40}}).status, 404);
  EXPECT_EQ(undo(6, {{"to_version", 1.5}}).status, 400);
  EXPECT_EQ(undo(6, {{"to_version", 1e300}}).status, 400);
  EXPECT_EQ(undo(6, {{"to_version", 0}}).status, 409);
  EXPECT_EQ(undo(6, {{"back", 1}}).code(), "request.unknown_member");
}

TEST_F(Documents, TheFirstVersionHasNothingToUndo) {
  const Answer none = desk.post("/api/documents/dish/fruit-scones/undo", nullptr, nullptr,
                                {{"If-Match", "\"1\""}});
  EXPECT_EQ(none.status, 409);
  EXPECT_EQ(none.code(), "document.nothing_to_undo");
}

TEST_F(Documents, OlderVersionsCanBeRead) {
  auto [first, version] = desk.document("dish", "fruit-scones");
  json second = first;
  second["portions"] = 12;
  desk.put("/api/documents/dish/fruit-scones", {{"body", second}}, 1);
  EXPECT_EQ(desk.get("/api/documents/dish/fruit-scones?version=1").body.at("body"), first);
  EXPECT_EQ(desk.get("/api/documents/dish/fruit-scones?version=2").body.at("body"), second);
  for (const char* none : {"0", "3", "-1", "x", "1e300", "99999999999999999999"})
    EXPECT_EQ(desk.get(std::string("/api/documents/dish/fruit-scones?version=") + none).status, 404)
        << none;
}

TEST_F(Documents, TheHistorySaysWhoDidWhatNewestFirst) {
  const Asker reed = desk.person("Mr Reed", store::Role::kTeacher);
  json body = desk.get("/api/documents/dish/fruit-scones", &reed).body.at("body");
  body["portions"] = 12;
  desk.put("/api/documents/dish/fruit-scones", {{"body", body}, {"what", "Twelve portions"}}, 1,
           &reed);
  const json history = desk.get("/api/documents/dish/fruit-scones/history", &reed)
                           .body.at("history");
  ASSERT_EQ(history.size(), 2U);
  EXPECT_EQ(history[0].at("version"), 2);
  EXPECT_EQ(history[0].at("by"), "Mr Reed");
  EXPECT_EQ(history[0].at("what"), "Twelve portions");
  EXPECT_EQ(history[1].at("by"), "");
  EXPECT_EQ(desk.get("/api/documents/dish/no-such-dish/history", &reed).status, 404);
}

TEST_F(Documents, WhatIsUsedIsNotPutAway) {
  const Answer refused = desk.ask(Method::kDelete, "/api/documents/dish/fruit-scones", nullptr,
                                  nullptr, {{"If-Match", "\"1\""}});
  EXPECT_EQ(refused.status, 409);
  EXPECT_EQ(refused.code(), "store.in_use");
  EXPECT_NE(refused.text.find("scones"), std::string::npos);
}

TEST_F(Documents, WhatIsPutAwayComesBackByUndo) {
  desk.post("/api/documents/dish", {{"id", "spare"}, {"body", dish("Spare scones")}});
  EXPECT_EQ(desk.ask(Method::kDelete, "/api/documents/dish/spare", nullptr, nullptr,
                     {{"If-Match", "\"1\""}})
                .status,
            204);
  EXPECT_EQ(desk.get("/api/documents/dish/spare").status, 404);
  EXPECT_EQ(desk.put("/api/documents/dish/spare", {{"body", dish("Spare scones")}}, 2).status, 412);
  const Answer back = desk.post("/api/documents/dish/spare/undo", nullptr, nullptr,
                                {{"If-Match", "\"2\""}});
  EXPECT_EQ(back.status, 200) << back.text;
  EXPECT_EQ(desk.document("dish", "spare").second, 3);
}

TEST_F(Documents, ALessonWithoutHouseRulesGetsTheSchools) {
  json lesson = desk.document("lesson", "b-two-dishes").first;
  lesson.erase("house_rules");
  lesson["title"] = "9K again";
  const Answer made = desk.post("/api/documents/lesson", {{"body", lesson}});
  ASSERT_EQ(made.status, 201) << made.text;
  EXPECT_EQ(made.body.at("body").at("house_rules"), "../house_rules/house-rules.json");
  // So the rules cannot be put away under it.
  EXPECT_EQ(desk.ask(Method::kDelete, "/api/documents/house_rules/house-rules", nullptr, nullptr,
                     {{"If-Match", "\"1\""}})
                .status,
            409);
}

TEST_F(Documents, ABrokenDishIsRefusedWithAllItsProblems) {
  json body = dish("Scones");
  body["portions"] = 0;
  body["method"][0]["attention"] = "juggle";
  body["colour"] = "beige";
  const Answer refused = desk.post("/api/documents/dish", {{"body", body}});
  EXPECT_EQ(refused.status, 400);
  EXPECT_GE(refused.body.at("problems").size(), 3U);
  for (const json& problem : refused.body.at("problems")) {
    EXPECT_NE(problem.at("where"), "");
    EXPECT_NE(problem.at("remedy"), "");
  }
  // The same when asked before keeping it, and nothing was kept.
  EXPECT_EQ(desk.post("/api/check/dish", {{"body", body}}).body.at("problems"),
            refused.body.at("problems"));
  EXPECT_EQ(desk.get("/api/documents/dish?q=scones").body.at("documents").size(), 2U);
}

TEST_F(Documents, ALessonThatCallsForWhatIsNotThereIsRefusedNotUnfound) {
  json lesson = desk.document("lesson", "b-two-dishes").first;
  lesson["dishes"]["soup"] = "../dish/moon-soup.json";
  const Answer refused = desk.post("/api/documents/lesson", {{"body", lesson}});
  EXPECT_EQ(refused.status, 400);
  EXPECT_EQ(refused.body.at("problems")[0].at("where"), "/dishes/soup");
  lesson["dishes"]["soup"] = "../../../etc/passwd";
  EXPECT_EQ(desk.post("/api/documents/lesson", {{"body", lesson}}).status, 400);
}

TEST_F(Documents, AnotherKindOfDocumentIsRefused) {
  EXPECT_EQ(desk.post("/api/documents/room", {{"body", dish("Scones")}}).status, 400);
  EXPECT_EQ(desk.post("/api/documents/scheme", {{"body", {{"kind", "dish"}}}}).code(),
            "document.kind");
  EXPECT_EQ(desk.post("/api/documents/plan", {{"body", {{"kind", "plan"}}}}).status,
            404);  // made
                   // by
                   // the
                   // program
                   // only
  EXPECT_EQ(desk.get("/api/documents/plan").status, 404);
  EXPECT_EQ(desk.get("/api/documents/record").status, 404);
}

TEST_F(Documents, ListsAreByDayAndWords) {
  const auto ids = [&](const std::string& query) {
    std::vector<std::string> out;
    const Answer list = desk.get("/api/documents/lesson" + query);
    for (const json& each : list.body.at("documents")) out.push_back(each.at("id"));
    return out;
  };
  EXPECT_EQ(ids("").size(), 10U);
  EXPECT_EQ(ids("?from=2026-11-16&to=2026-11-22").size(), 5U);
  EXPECT_EQ(ids("?q=two%20dishes"), std::vector<std::string>{"b-two-dishes"});
  EXPECT_EQ(ids("?q=nothing-of-the-sort").size(), 0U);
}

TEST_F(Documents, TablesAreReadBeforeTheyAreKept) {
  auto [table, version] = desk.document("table", "prices");
  table["text"] = "colour,size\nred,3\n";
  EXPECT_EQ(desk.put("/api/documents/table/prices", {{"body", table}}, version).status, 400);
  table["text"] = "food,size,price\nmilk,1 l,1.10\n";
  EXPECT_EQ(desk.put("/api/documents/table/prices", {{"body", table}}, version).status, 200);
}

TEST_F(Documents, EveryChangeIsTold) {
  const std::string before = desk.hub.last_id();
  desk.post("/api/documents/dish", {{"body", dish("Cheese scones")}});
  EXPECT_NE(desk.hub.last_id(), before);
}

TEST_F(Documents, RowsThatWouldBeLeftOutAreToldAndTheTableIsKeptAllTheSame) {
  const json table = {{"kind", "table"},
                      {"version", 1},
                      {"name", "Prices"},
                      {"text",
                       "food,supplier,pack,size,price\nplain flour,Mill,bag,1 kg,1.20\n"
                       "unicorn dust,Mill,bag,1 kg,1.20\n"}};
  const json told = desk.post("/api/check/table", {{"body", table}}).body.at("problems");
  ASSERT_EQ(told.size(), 1U) << told;
  EXPECT_EQ(told[0].at("code"), "prices.food");
  const auto [body, version] = desk.document("table", "prices");
  EXPECT_EQ(desk.put("/api/documents/table/prices", {{"body", table}}, version).status, 200);
}

}  // namespace
