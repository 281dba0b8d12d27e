// Planning as jobs: started, watched, stopped; a kept plan is read, goes stale, and is on the week.
#include <algorithm>

#include <gtest/gtest.h>

#include <thread>

#include "desk.h"
#include "serve/desk_server.h"

namespace {

using namespace serve_test;
using serve::JobState;
using serve::JobView;

class Plans : public DeskTest {
 protected:
  static json quick(json more = json::object()) {
    json body = {{"dishes", {"tomato-bean-soup"}},
                 {"pupils", 8},
                 {"cookers", 4},
                 {"from", "09:00"},
                 {"to", "10:30"}};
    body.update(more);
    return {{"quick", body}, {"seconds", 1}};
  }
  JobView end_of(const Answer& started) { return desk.ended(started.body.at("job")); }
  json result_of(const Answer& started) {
    EXPECT_EQ(started.status, 202) << started.text;
    const JobView view = end_of(started);
    EXPECT_EQ(view.state, JobState::kDone) << view.says;
    return desk.get("/api/jobs/" + view.id).body;
  }
};

TEST_F(Plans, FourAnswersGiveAPlan) {
  const json job = result_of(desk.post("/api/plan", quick()));
  EXPECT_EQ(job.at("state"), "done");
  const json& plan = job.at("result");
  EXPECT_TRUE(plan.at("lesson").is_null());
  EXPECT_EQ(plan.at("answer").at("verdict"), "fits");
  EXPECT_EQ(plan.at("body").at("cooks").size(), 4U);  // eight pupils in pairs
  EXPECT_EQ(desk.get("/api/documents/lesson").body.at("documents").size(), 10U);  // nothing was
                                                                                  // kept
}

TEST_F(Plans, AQuickPlanIsKeptWhenAsked) {
  json body = quick();
  body["keep"] = true;
  body["date"] = "2026-11-18";
  const json job = result_of(desk.post("/api/plan", body));
  const std::string id = job.at("lesson");
  auto [lesson, version] = desk.document("lesson", id);
  EXPECT_EQ(lesson.at("date"), "2026-11-18");
  // The dish is still the kept one, so mending it mends the lesson.
  EXPECT_NE(lesson.at("dishes").dump().find("../dish/tomato-bean-soup.json"), std::string::npos);
  EXPECT_EQ(lesson.at("house_rules"), "../house_rules/house-rules.json");
  EXPECT_EQ(desk.get("/api/lessons/" + id + "/plan").body.at("answer").at("verdict"), "fits");
  EXPECT_EQ(desk.get("/api/week").body.at("lessons").size(), 6U);
}

TEST_F(Plans, AQuickPlanForAClassHasItsYearAndItsName) {
  json body = quick({{"class", "7b"}});
  body["keep"] = true;
  const json lesson = desk.document("lesson", result_of(desk.post("/api/plan", body)).at("lesson"))
                          .first;
  EXPECT_EQ(lesson.at("year"), 7);
  EXPECT_EQ(lesson.at("title").get<std::string>().substr(0, 4), "7B, ");
  EXPECT_EQ(lesson.at("about").at("class"), "7b");
  // The house rules are those of that year: no hot oil before year 9 in the demo school.
  const Answer fried = desk.post("/api/plan",
                                 quick({{"class", "7b"}, {"dishes", {"spring-rolls"}}}));
  EXPECT_EQ(fried.status, 400);
  EXPECT_NE(fried.text.find("rules.frying_year"), std::string::npos);
  EXPECT_EQ(desk.post("/api/plan", quick({{"class", "no-class"}})).status, 404);
}

TEST_F(Plans, AQuickPlanForAClassIsCookedByItsPupilsAndMindsWhatTheyMustAvoid) {
  json body = quick(
      {{"class", "9k"}, {"dishes", {"fruit-scones"}}, {"pupils", 24}, {"cookers", 6}});
  body["keep"] = true;
  const std::string id = result_of(desk.post("/api/plan", body)).at("lesson");
  const json lesson = desk.document("lesson", id).first;
  int pupils = 0;
  bool milk = false;
  for (const json& cook : lesson.at("cooks")) {
    pupils += static_cast<int>(lesson.at("about").at("seats").at(cook.at("name")).size());
    if (!cook.contains("avoids") || cook.at("avoids") != json{"milk"}) continue;
    milk = true;
    EXPECT_EQ(cook.at("dishes"), json{"fruit-scones: oat drink and spread"});
  }
  EXPECT_EQ(pupils, 24);
  EXPECT_TRUE(milk);
}

TEST_F(Plans, AQuickPlanForAClassNamesItsDishesAsTheLessonDoes) {
  // Kept as tomato-bean-soup, called by its name in the lesson: "Tomato and bean soup".
  json body = quick({{"class", "9k"}, {"pupils", 24}, {"cookers", 6}});
  body["keep"] = true;
  const std::string id = result_of(desk.post("/api/plan", body)).at("lesson");
  const json lesson = desk.document("lesson", id).first;
  EXPECT_EQ(lesson.at("about").at("seats").size(), lesson.at("cooks").size());
}

TEST_F(Plans, AClassOfAnotherLengthIsNotSeatedAndTheWeekSaysThatNobodyLookedAtItsAllergies) {
  json body = quick({{"class", "9k"}, {"pupils", 23}, {"cookers", 6}});
  body["keep"] = true;
  body["date"] = "2026-11-18";
  const std::string id = result_of(desk.post("/api/plan", body)).at("lesson");
  const json week = desk.get("/api/week").body;
  const auto& lessons = week.at("lessons");
  const auto row = std::find_if(lessons.begin(), lessons.end(),
                                [&](const json& one) { return one.at("id") == id; });
  ASSERT_NE(row, lessons.end());
  ASSERT_EQ(row->at("allergies").size(), 1U);
  EXPECT_EQ(row->at("allergies")[0].at("allergen"), "not looked at");
}

TEST_F(Plans, ATechnicianPlansButKeepsNoLesson) {
  const Asker doyle = desk.person("Mrs Doyle", store::Role::kTechnician);
  json body = quick();
  EXPECT_EQ(desk.post("/api/plan", body, &doyle).status, 202);
  body["keep"] = true;
  EXPECT_EQ(desk.post("/api/plan", body, &doyle).status, 403);
}

TEST_F(Plans, WhatAQuickPlanLacksIsSaidWithItsPlace) {
  struct Fault {
    json more;
    const char* where;
  };
  for (const Fault& each :
       std::vector<Fault>{{{{"pupils", "eight"}}, "/quick/pupils"},
                          {{{"pupils", 7.5}}, "/quick/pupils"},
                          {{{"cookers", 1e300}}, "/quick/cookers"},
                          {{{"from", "nine"}}, "/quick/from"},
                          {{{"to", "24:30"}}, "/quick/to"},
                          {{{"in", "fours"}}, "/quick/in"},
                          {{{"purpose", "fun"}}, "/quick/purpose"},
                          {{{"dishes", {"fruit-scones: chocolate"}}}, "/quick/dishes"},
                          {{{"dishes", "soup"}}, "/quick/dishes"},
                          {{{"colour", "red"}}, "/quick/colour"}}) {
    const Answer refused = desk.post("/api/plan", quick(each.more));
    ASSERT_EQ(refused.status, 400) << each.more.dump();
    EXPECT_EQ(refused.body.at("problems")[0].at("where"), each.where) << refused.text;
  }
  for (const json& more : {json{{"pupils", 0}}, json{{"pupils", 41}}, json{{"cookers", 0}},
                           json{{"to", "08:00"}}, json{{"dishes", json::array()}}})
    EXPECT_EQ(desk.post("/api/plan", quick(more)).status, 400) << more.dump();
  json missing = quick();
  missing["quick"].erase("pupils");
  EXPECT_EQ(desk.post("/api/plan", missing).code(), "request.missing_member");
  EXPECT_EQ(desk.post("/api/plan", quick({{"dishes", {"moon-soup"}}})).status, 404);
  json dated = quick();
  dated["date"] = "tomorrow";
  EXPECT_EQ(desk.post("/api/plan", dated).code(), "quick.date");
}

TEST_F(Plans, OneThingIsPlannedAtATime) {
  EXPECT_EQ(desk.post("/api/plan", json::object()).code(), "plan.nothing");
  json both = quick();
  both["lesson"] = "e-does-not-fit";
  EXPECT_EQ(desk.post("/api/plan", both).code(), "plan.too_much");
  EXPECT_EQ(desk.post("/api/plan", {{"lesson", "no-lesson"}}).status, 404);
}

TEST_F(Plans, ALessonThatIsNotKeptIsPlannedAsItIs) {
  json body = desk.document("lesson", "e-does-not-fit").first;
  while (body["cooks"].size() > 4) body["cooks"].erase(body["cooks"].size() - 1);
  const json job = result_of(desk.post("/api/plan", {{"body", body}, {"seconds", 1}}));
  EXPECT_TRUE(job.at("result").at("lesson").is_null());
  body["to"] = "13:00";
  EXPECT_EQ(desk.post("/api/plan", {{"body", body}}).status, 400);
}

TEST_F(Plans, AKeptLessonsPlanIsKeptWithItsVersions) {
  EXPECT_EQ(desk.get("/api/lessons/e-does-not-fit/plan").status, 404);
  const json plan = desk.plan("e-does-not-fit");
  EXPECT_EQ(plan.at("lesson"), "e-does-not-fit");
  EXPECT_EQ(plan.at("stale"), false);
  EXPECT_EQ(plan.at("versions").size(), 1U);
  const json again = desk.get("/api/lessons/e-does-not-fit/plan").body;
  EXPECT_EQ(again.at("answer").at("verdict"), plan.at("answer").at("verdict"));
  EXPECT_EQ(again.at("body"), desk.document("lesson", "e-does-not-fit").first);
  desk.plan("e-does-not-fit");
  const json third = desk.get("/api/lessons/e-does-not-fit/plan").body;
  EXPECT_EQ(third.at("versions").size(), 2U);
  EXPECT_EQ(third.at("changed").size(), 0U);  // the same lesson, the same plan
  EXPECT_EQ(desk.get("/api/lessons/e-does-not-fit/plan?version=1").status, 200);
  for (const char* none : {"9", "0", "x"})
    EXPECT_EQ(desk.get(std::string("/api/lessons/e-does-not-fit/plan?version=") + none).status, 404)
        << none;
}

TEST_F(Plans, AStoppedJobKeepsTheBestSoFar) {
  const Answer started = desk.post("/api/plan", {{"lesson", "b-two-dishes"}, {"seconds", 60}});
  ASSERT_EQ(started.status, 202);
  const std::string id = started.body.at("job");
  desk.started(id);
  EXPECT_EQ(desk.ask(Method::kDelete, "/api/jobs/" + id).status, 200);
  const JobView view = desk.ended(id);
  // It may have been done the moment before.
  EXPECT_TRUE(view.state == JobState::kStopped || view.state == JobState::kDone);
  const json job = desk.get("/api/jobs/" + id).body;
  EXPECT_FALSE(job.at("result").is_null());
  EXPECT_EQ(desk.get("/api/lessons/b-two-dishes/plan").status, 200);
}

/// Work that waits until the test lets it go.
class Gate {
 public:
  serve::Work work() {
    return [this](serve::JobDesk& job) -> base::Result<std::string> {
      job.says("At the gate.");
      std::unique_lock lock(mutex_);
      wake_.wait(lock, [this] { return open_; });
      return std::string("null");
    };
  }
  void open() {
    const std::lock_guard lock(mutex_);
    open_ = true;
    wake_.notify_all();
  }

 private:
  std::mutex mutex_;
  std::condition_variable wake_;
  bool open_ = false;
};

TEST_F(Plans, TooManyAreRefusedUntilSomeAreDone) {
  Gate gate;
  const auto first = desk.jobs->start("", "", gate.work());
  ASSERT_TRUE(first);
  desk.started(first->id);
  std::vector<std::string> waiting;
  for (std::size_t i = 0; i < serve::Jobs::kMostWaiting; ++i) {
    const Answer started = desk.post("/api/plan", {{"lesson", "e-does-not-fit"}, {"seconds", 0.1}});
    ASSERT_EQ(started.status, 202) << i;
    EXPECT_EQ(started.body.at("state"), "waiting");
    EXPECT_EQ(started.body.at("says"), "Waiting for the plan before it.");
    waiting.push_back(started.body.at("job"));
  }
  const Answer refused = desk.post("/api/plan", {{"lesson", "e-does-not-fit"}});
  EXPECT_EQ(refused.status, 429);
  EXPECT_EQ(refused.code(), "plan.too_many");
  // Those that wait are stopped at once, and then there is room.
  for (const std::string& id : waiting)
    EXPECT_EQ(desk.ask(Method::kDelete, "/api/jobs/" + id).body.at("state"), "stopped");
  const Answer room = desk.post("/api/plan", {{"lesson", "no-such"}});
  EXPECT_EQ(room.status, 404);
  EXPECT_EQ(desk.post("/api/plan", quick()).status, 202);
  gate.open();
  EXPECT_EQ(desk.ended(first->id).state, JobState::kDone);
}

TEST_F(Plans, AJobTellsHowGoodItsBestIsAndWhatItCannotBeBetterThan) {
  const Answer started = desk.post("/api/plan", quick());
  ASSERT_EQ(started.status, 202);
  const std::string id = started.body.at("job");
  desk.ended(id);
  const json gap = desk.get("/api/jobs/" + id).body.at("gap");
  ASSERT_TRUE(gap.is_object()) << gap;
  EXPECT_GE(gap.at("best").get<int>(), gap.at("bound").get<int>());
  EXPECT_FALSE(gap.at("of").get<std::string>().empty());
}

TEST_F(Plans, AJobThatThrowsFailsInWordsAndTheNextOneRuns) {
  const auto broken = desk.jobs->start("", "", [](serve::JobDesk&) -> base::Result<std::string> {
    throw std::logic_error("a promise was broken");
  });
  const JobView view = desk.ended(broken->id);
  EXPECT_EQ(view.state, JobState::kFailed);
  EXPECT_EQ(view.says.find("promise"), std::string::npos);
  result_of(desk.post("/api/plan", quick()));
}

TEST_F(Plans, AJobIsTheBusinessOfWhoStartedIt) {
  const Asker hart = desk.person("Ms Hart", store::Role::kHead),
              reed = desk.person("Mr Reed", store::Role::kTeacher);
  const std::string id = desk.post("/api/plan", quick(), &hart).body.at("job");
  EXPECT_EQ(desk.get("/api/jobs/" + id, &hart).status, 200);
  EXPECT_EQ(desk.get("/api/jobs/" + id, &reed).status, 404);
  EXPECT_EQ(desk.ask(Method::kDelete, "/api/jobs/" + id, nullptr, &reed).status, 404);
  desk.ended(id);
}

TEST_F(Plans, OldJobsAreForgotten) {
  std::string first;
  for (std::size_t i = 0; i < serve::Jobs::kKept + 2; ++i) {
    const auto job = desk.jobs->start(
        "", "", [](serve::JobDesk&) -> base::Result<std::string> { return std::string("null"); });
    ASSERT_TRUE(job);
    if (first.empty()) first = job->id;
    desk.ended(job->id);
  }
  EXPECT_FALSE(desk.jobs->view(first));
}

TEST_F(Plans, ADeskThatClosesStopsWhatItPlans) {
  const Answer started = desk.post("/api/plan", {{"lesson", "b-two-dishes"}, {"seconds", 60}});
  ASSERT_EQ(started.status, 202);
  desk.started(started.body.at("job"));
  const auto begin = std::chrono::steady_clock::now();
  desk.jobs.reset();
  EXPECT_LT(std::chrono::steady_clock::now() - begin, std::chrono::seconds(30));  // not the sixty
                                                                                  // that were asked
                                                                                  // for
}

TEST(DeskServer, ClosesWhileItPlans) {
  const Folder folder;
  const auto store = filled_store(Fill::kSchool, folder);
  serve::DeskOptions options;
  options.today = [] { return *base::date_in("2026-11-17"); };
  options.plan_seconds = 30;
  serve::DeskServer desk(*store, {}, options);
  ASSERT_TRUE(desk.start());
  desk.plan_unplanned();
  EXPECT_TRUE(desk.stop(std::chrono::seconds(5)));
}

TEST(DeskServer, IsNotOpenToOtherMachinesBeforeSomebodyMustSignIn) {
  const Folder folder;
  const auto store = filled_store(Fill::kNothing, folder);
  serve::DeskOptions options;
  options.http.address = "0.0.0.0";
  options.today = [] { return *base::date_in("2026-11-17"); };
  serve::DeskServer desk(*store, {}, options);
  const auto refused = desk.start();
  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.problems().front().code, "serve.needs_sign_in");
}

}  // namespace
