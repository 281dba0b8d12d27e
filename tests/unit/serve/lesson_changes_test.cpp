// One click changes a lesson and its plan: what it says, whom it moves, and what it leaves alone.
#include <gtest/gtest.h>

#include "desk.h"
#include "serve/planning.h"

namespace {

using namespace serve_test;

class LessonChanges : public DeskTest {
 protected:
  Answer change(const std::string& lesson, const json& body, long long seen,
                const Asker* asker = nullptr) {
    return desk.post("/api/lessons/" + lesson + "/change", body, asker,
                     {{"If-Match", "\"" + std::to_string(seen) + "\""}});
  }
  std::map<std::string, std::string> seats(const std::string& lesson) {
    std::map<std::string, std::string> out;
    const json body = desk.document("lesson", lesson).first;
    for (const json& cook : body.at("cooks")) out[cook.at("name")] = cook.at("place");
    return out;
  }
  static std::map<std::string, std::string> starts(const json& plan) {
    std::map<std::string, std::string> out;
    for (const json& task : plan.at("tasks")) {
      if (task.at("kind") != "step" || task.at("cook").is_null()) continue;
      out[task.at("cook").get<std::string>() + " " + task.at("step").get<std::string>() + " " +
          task.at("part").dump()] = task.at("start");
    }
    return out;
  }
};

TEST_F(LessonChanges, AChangeIsWrittenPlannedAndTold) {
  desk.plan("h-stop-gate-demonstration");
  const auto before = seats("h-stop-gate-demonstration");
  const Answer changed = change(
      "h-stop-gate-demonstration",
      {{"change", "pace"}, {"cook", "Marek D. and Nadia H."}, {"pace", 1.4}}, 1);
  ASSERT_EQ(changed.status, 200) << changed.text;
  EXPECT_EQ(changed.body.at("lesson_version"), 2);
  EXPECT_EQ(changed.body.at("stale"), false);
  EXPECT_EQ(changed.body.at("versions").size(), 2U);
  EXPECT_EQ(seats("h-stop-gate-demonstration"), before);  // nobody's seat moves
  for (const json& line : changed.body.at("changed"))
    EXPECT_EQ(line.get<std::string>().find(" moves from "), std::string::npos);
  const json history = desk.get("/api/documents/lesson/h-stop-gate-demonstration/history")
                           .body.at("history");
  EXPECT_EQ(history[0].at("what"), "Marek D. and Nadia H. is slower: 1.4 times the minutes.");
}

TEST_F(LessonChanges, ASwapMovesTheTwoAndSaysSoFirst) {
  desk.plan("h-stop-gate-demonstration");
  const auto before = seats("h-stop-gate-demonstration");
  const Answer changed = change(
      "h-stop-gate-demonstration",
      {{"change", "swap"}, {"cook", "Ewan J. and Freya T."}, {"other", "Tomasz K. and Uma B."}}, 1);
  ASSERT_EQ(changed.status, 200) << changed.text;
  ASSERT_GE(changed.body.at("changed").size(), 2U);
  EXPECT_EQ(changed.body.at("changed")[0], "Ewan J. and Freya T. moves from A1 to D3.");
  EXPECT_EQ(changed.body.at("changed")[1], "Tomasz K. and Uma B. moves from D3 to A1.");
  auto after = seats("h-stop-gate-demonstration");
  std::swap(after["Ewan J. and Freya T."], after["Tomasz K. and Uma B."]);
  EXPECT_EQ(after, before);
}

TEST_F(LessonChanges, ACookerThatIsClosedMovesNoPrintedLineWhileTheOthersWillDo) {
  desk.plan("a-first-hob");
  const Answer changed = change("a-first-hob", {{"change", "close cooker"}, {"cooker", "A2"}}, 1);
  ASSERT_EQ(changed.status, 200) << changed.text;
  EXPECT_EQ(changed.body.at("answer").at("verdict"), "fits");
  EXPECT_EQ(changed.body.at("lines_moved"), 0) << changed.body.at("changed");
  EXPECT_EQ(changed.body.at("answer").at("work").at("kept_standing"), true);
}

TEST_F(LessonChanges, APinnedStepStartsWhenItIsWantedUntilThePinIsTakenOff) {
  const std::string id = "a-first-hob";
  const json plan = desk.plan(id).at("answer").at("plan");
  // A step the whole wave starts together: ten minutes before the bell is too late for it, five
  // minutes later than now is not.
  const auto step = std::find_if(plan.at("tasks").begin(), plan.at("tasks").end(),
                                 [](const json& task) { return task.at("step") == "simmer"; });
  ASSERT_NE(step, plan.at("tasks").end());
  const json cooks = {step->at("cook")};
  const std::string start = step->at("start").get<std::string>();
  const json asked = {{"change", "pin step"},
                      {"dish", step->at("dish")},
                      {"step", "simmer"},
                      {"from", "09:38"},
                      {"cooks", cooks}};
  const Answer pinned = change(id, asked, 1);
  ASSERT_EQ(pinned.status, 200) << pinned.text;
  EXPECT_EQ(pinned.body.at("answer").at("verdict"), "fits");
  for (const json& task : pinned.body.at("answer").at("plan").at("tasks")) {
    if (task.at("step") != "simmer" || task.at("cook") != step->at("cook")) continue;
    EXPECT_NE(task.at("start").get<std::string>().find("09:38"), std::string::npos);
    EXPECT_EQ(task.at("pinned"), true);
  }
  EXPECT_EQ(desk.document("lesson", id).first.at("pins").size(), 1U);
  // Planned at leisure it stays where it is pinned.
  EXPECT_EQ(desk.plan(id).at("answer").at("notes").dump().find("Pinned") != std::string::npos,
            true);
  const Answer off = change(
      id, {{"change", "unpin step"}, {"dish", step->at("dish")}, {"step", "simmer"}}, 2);
  ASSERT_EQ(off.status, 200) << off.text;
  EXPECT_FALSE(desk.document("lesson", id).first.contains("pins"));
  // The lesson is what it was, and so are its times.
  EXPECT_EQ(starts(off.body.at("answer").at("plan")), starts(plan));
}

TEST_F(LessonChanges, AChangeThatNoPlanFollowsIsTakenBackByItsRemedyAndMovesNothing) {
  const std::string id = "h-stop-gate-demonstration";
  const json plan = desk.plan(id).at("answer").at("plan");
  const auto step = std::find_if(
      plan.at("tasks").begin(), plan.at("tasks").end(),
      [](const json& task) { return task.at("kind") == "step" && !task.at("cook").is_null(); });
  ASSERT_NE(step, plan.at("tasks").end());
  // The bell is at 14:40: washing up no longer follows.
  const json asked = {{"change", "pin step"},
                      {"dish", step->at("dish")},
                      {"step", step->at("step")},
                      {"from", "14:37"},
                      {"cooks", json::array({step->at("cook")})}};
  const Answer late = change(id, asked, 1);
  ASSERT_EQ(late.status, 200) << late.text;
  ASSERT_NE(late.body.at("answer").at("verdict"), "fits");
  const json& remedies = late.body.at("answer").at("remedies");
  const auto off = std::find_if(remedies.begin(), remedies.end(),
                                [](const json& one) { return one.at("code") == "without pins"; });
  ASSERT_NE(off, remedies.end()) << remedies;
  EXPECT_EQ(off->at("fits"), true) << remedies;
  const Answer back = change(id, {{"change", "remedy"}, {"code", "without pins"}}, 2);
  ASSERT_EQ(back.status, 200) << back.text;
  EXPECT_EQ(back.body.at("answer").at("verdict"), "fits");
  EXPECT_EQ(back.body.at("answer").at("work").at("kept_standing"), true);
  for (const json& task : back.body.at("answer").at("plan").at("tasks")) {
    const auto before = std::find_if(
        plan.at("tasks").begin(), plan.at("tasks").end(), [&](const json& one) {
          return one.at("kind") == "step" && one.at("cook") == task.at("cook") &&
                 one.at("dish") == task.at("dish") && one.at("step") == task.at("step") &&
                 one.at("part") == task.at("part");
        });
    if (task.at("kind") != "step" || before == plan.at("tasks").end()) continue;
    EXPECT_EQ(task.at("start"), before->at("start")) << task;
  }
}

TEST_F(LessonChanges, PaperAfterANewStartHasTheTimesThatWereKept) {
  const std::string id = "h-stop-gate-demonstration";
  desk.plan(id);
  const Answer changed = change(
      id, {{"change", "swap"}, {"cook", "Ewan J. and Freya T."}, {"other", "Tomasz K. and Uma B."}},
      1);
  ASSERT_EQ(changed.status, 200) << changed.text;
  ASSERT_EQ(changed.body.at("answer").at("work").at("kept_standing"), true);
  // What was made is forgotten, as at a new start.
  for (int i = 0; i < 100; ++i)
    desk.context.workings.plans.put(std::to_string(i), "", serve::Planned{});
  ASSERT_EQ(desk.context.workings.plans.get(id, "2"), nullptr);
  const auto paper = serve::planned_for_paper(desk.context, id);
  ASSERT_TRUE(paper);
  const auto plan = desk.context.store.get(store::Kind::kPlan, id).value();
  const json kept = json::parse(plan->body).at("printed").at("lines");
  EXPECT_EQ(json(desk::printed(paper.value()->lesson, paper.value()->answer).lines), kept);
}

TEST_F(LessonChanges, ARemedyThatWasOfferedMakesTheLessonFit) {
  const json plan = desk.plan("e-does-not-fit", 10);
  ASSERT_EQ(plan.at("answer").at("verdict"), "does not fit");
  std::string code;
  const json shown = desk.get("/api/week").body;
  for (const json& week : shown.at("lessons"))
    if (week.at("id") == "e-does-not-fit" && !week.at("remedy").is_null())
      code = week.at("remedy").at("code");
  ASSERT_NE(code, "");
  const Answer changed = change("e-does-not-fit", {{"change", "remedy"}, {"code", code}}, 1);
  ASSERT_EQ(changed.status, 200) << changed.text;
  EXPECT_EQ(desk.plan("e-does-not-fit", 10).at("answer").at("verdict"), "fits") << code;
}

TEST_F(LessonChanges, WhoeverIsSecondGetsTheLessonAsItIs) {
  ASSERT_EQ(change("h-stop-gate-demonstration", {{"change", "bell"}, {"to", "14:45"}}, 1).status,
            200);
  // Stale, and also no longer possible: the clash is what matters.
  const json asked = {{"change", "pace"}, {"cook", "Nobody N."}, {"pace", 1.2}};
  const Answer clash = change("h-stop-gate-demonstration", asked, 1);
  EXPECT_EQ(clash.status, 412);
  EXPECT_EQ(clash.body.at("yours"), asked);
  EXPECT_EQ(clash.body.at("theirs").at("body").at("to"), "14:45");
  EXPECT_EQ(clash.header("ETag"), "\"2\"");
}

TEST_F(LessonChanges, AChangeThatIsRefusedChangesNothing) {
  const json before = desk.document("lesson", "b-two-dishes").first;
  for (const json& asked :
       {json{{"change", "pace"}, {"cook", "Nobody N."}, {"pace", 1.2}}, json{{"change", "explode"}},
        json{{"change", "bell"}}, json{{"change", "pin"}, {"cook", "Aisha K."}, {"place", "Z9"}},
        json{{"change", "pace"}, {"cook", "Aisha K."}, {"pace", "fast"}}}) {
    const Answer refused = change("b-two-dishes", asked, 1);
    EXPECT_EQ(refused.status, 400) << asked.dump();
    EXPECT_NE(refused.body.at("problems")[0].at("remedy"), "");
  }
  EXPECT_EQ(desk.document("lesson", "b-two-dishes"), (std::pair<json, long long>(before, 1)));
  EXPECT_EQ(
      desk.post("/api/lessons/b-two-dishes/change", {{"change", "bell"}, {"to", "12:40"}}).status,
      428);
  EXPECT_EQ(change("no-lesson", {{"change", "bell"}, {"to", "12:40"}}, 1).status, 404);
}

// The school buys an oat drink that holds milk: there is nothing that Daisy may cook any more, so
// no change to the lesson can be planned, and none is written.
TEST_F(LessonChanges, ALessonThatMayNotBeCookedIsNotWrittenFirst) {
  const std::string key = desk.get("/api/foods?q=oat%20drink").body.at("foods")[0].at("key");
  const json foods = {{"kind", "table"},
                      {"version", 1},
                      {"name", "Foods"},
                      {"text", "key,name,contains\n" + key + ",oat drink,milk\n"}};
  const Answer kept = desk.post("/api/documents/table", {{"id", "foods"}, {"body", foods}});
  ASSERT_EQ(kept.status, 201) << kept.text;
  const Answer refused = change("b-two-dishes", {{"change", "bell"}, {"to", "12:35"}}, 1);
  EXPECT_EQ(refused.status, 400) << refused.text.substr(0, 300);
  EXPECT_EQ(refused.code(), "lesson.cook_avoids");
  EXPECT_EQ(desk.document("lesson", "b-two-dishes").second, 1);
  const json week = desk.get("/api/week").body;
  for (const json& row : week.at("lessons")) {
    if (row.at("id") == "b-two-dishes") {
      EXPECT_EQ(row.at("says"), "Cannot be planned yet");
    }
  }
}

class SameAgain : public LessonChanges {
 protected:
  Answer again(json more) {
    json body = {{"lesson", "b-two-dishes"}, {"date", "2026-11-19"}};
    body.update(more);
    return desk.post("/api/lessons/same-again", body);
  }
};

TEST_F(SameAgain, IsANewLessonOnAnotherDay) {
  const Answer made = again({{"from", "09:00"}});
  ASSERT_EQ(made.status, 201) << made.text;
  const json& lesson = made.body.at("lesson");
  EXPECT_EQ(lesson.at("body").at("date"), "2026-11-19");
  EXPECT_EQ(lesson.at("body").at("to"), "10:40");
  EXPECT_EQ(lesson.at("body").at("windows")[0].at("from"), "09:00");
  EXPECT_EQ(lesson.at("body").at("about").at("same_as"), "b-two-dishes");
  EXPECT_EQ(desk.document("lesson", "b-two-dishes").second, 1);
}

TEST_F(SameAgain, AnotherClassIsSeatedAndCooksWhatTheOldOneDid) {
  const Answer made = again({{"class", "9k"}});
  ASSERT_EQ(made.status, 201) << made.text;
  const json& body = made.body.at("lesson").at("body");
  int people = 0, soup = 0, macaroni = 0;
  for (const json& cook : body.at("cooks")) {
    people += cook.at("people").get<int>();
    EXPECT_EQ(cook.at("dishes").size(), 2U) << cook.dump();
    const std::string first = cook.at("dishes")[0];
    soup += first.starts_with("soup") ? 1 : 0;
    macaroni += first.starts_with("macaroni") ? 1 : 0;
  }
  EXPECT_EQ(people, static_cast<int>(desk.document("class", "9k").first.at("pupils").size()));
  EXPECT_LE(std::abs(soup - macaroni), 1);  // half the old class made soup, half macaroni
  EXPECT_EQ(body.at("about").at("class"), "9k");
  EXPECT_EQ(body.at("about").at("seats").size(), body.at("cooks").size());
}

TEST_F(SameAgain, AnotherRoomNeedsItsOwnSeats) {
  EXPECT_EQ(again({{"class", "9k"}, {"room", "food-room-2"}}).status, 201);
  const Answer places = again({{"room", "food-room-3"}});
  EXPECT_EQ(places.status, 400);  // the old seats are not all in that room, and it is said which
  EXPECT_NE(places.text.find("place"), std::string::npos);
}

TEST_F(SameAgain, WhatIsNotThereIsSaid) {
  EXPECT_EQ(again({{"lesson", "no-lesson"}}).status, 404);
  EXPECT_EQ(again({{"class", "no-class"}}).status, 404);
  EXPECT_EQ(again({{"date", "soon"}}).code(), "again.date");
  EXPECT_EQ(again({{"from", "soon"}}).code(), "again.time");
  EXPECT_EQ(again({{"colour", "red"}}).code(), "request.unknown_member");
}

}  // namespace
