// Who may do what: every route, asked by nobody, a technician, a teacher and the head of
// department.
#include <gtest/gtest.h>

#include <map>
#include <set>

#include "base/text.h"
#include "desk.h"

namespace {

using namespace serve_test;

/// What is asked and the status each must get. Statuses beyond the guard are those of requests that
/// lack something (no If-Match: 428, an empty object: 400), so that nothing is changed on the way.
struct Ask {
  Method method;
  const char* pattern;
  const char* path;
  int nobody, technician, teacher, head;
};

constexpr Ask kAsks[] = {
    {Method::kGet, "/api/me", "/api/me", 200, 200, 200, 200},
    {Method::kPost, "/api/sign-in", "/api/sign-in", 400, 400, 400, 400},
    {Method::kGet, "/api/people", "/api/people", 401, 403, 403, 200},
    {Method::kPost, "/api/people", "/api/people", 403, 403, 403, 400},
    {Method::kPatch, "/api/people/{person}", "/api/people/x", 401, 404, 404, 404},
    {Method::kDelete, "/api/people/{person}", "/api/people/x", 401, 403, 403, 404},
    {Method::kGet, "/api/documents/{kind}", "/api/documents/dish", 401, 200, 200, 200},
    {Method::kPost, "/api/documents/{kind}", "/api/documents/dish", 401, 403, 400, 400},
    {Method::kPost, "/api/documents/{kind}", "/api/documents/class", 401, 403, 400, 400},
    {Method::kPost, "/api/documents/{kind}", "/api/documents/room", 401, 403, 400, 400},
    {Method::kPost, "/api/documents/{kind}", "/api/documents/lesson", 401, 403, 400, 400},
    {Method::kPost, "/api/documents/{kind}", "/api/documents/table", 401, 400, 400, 400},
    {Method::kPost, "/api/documents/{kind}", "/api/documents/school", 401, 403, 403, 400},
    {Method::kPost, "/api/documents/{kind}", "/api/documents/house_rules", 401, 403, 403, 400},
    {Method::kGet, "/api/documents/{kind}/{id}", "/api/documents/dish/fruit-scones", 401, 200, 200,
     200},
    {Method::kPut, "/api/documents/{kind}/{id}", "/api/documents/dish/fruit-scones", 401, 403, 428,
     428},
    {Method::kPut, "/api/documents/{kind}/{id}", "/api/documents/table/prices", 401, 428, 428, 428},
    {Method::kPut, "/api/documents/{kind}/{id}", "/api/documents/house_rules/house-rules", 401, 403,
     403, 428},
    {Method::kDelete, "/api/documents/{kind}/{id}", "/api/documents/dish/fruit-scones", 401, 403,
     428, 428},
    {Method::kGet, "/api/documents/{kind}/{id}/history", "/api/documents/dish/fruit-scones/history",
     401, 200, 200, 200},
    {Method::kPost, "/api/documents/{kind}/{id}/undo", "/api/documents/dish/fruit-scones/undo", 401,
     403, 428, 428},
    {Method::kPost, "/api/documents/{kind}/{id}/undo", "/api/documents/table/stock/undo", 401, 428,
     428, 428},
    {Method::kPost, "/api/check/{kind}", "/api/check/dish", 401, 400, 400, 400},
    {Method::kGet, "/api/week", "/api/week", 401, 200, 200, 200},
    {Method::kGet, "/api/dishes", "/api/dishes", 401, 200, 200, 200},
    {Method::kGet, "/api/dishes/{id}/view", "/api/dishes/fruit-scones/view", 401, 200, 200, 200},
    {Method::kPost, "/api/dish-view", "/api/dish-view", 401, 400, 400, 400},
    {Method::kPost, "/api/read", "/api/read", 401, 400, 400, 400},
    {Method::kGet, "/api/foods", "/api/foods?q=milk", 401, 200, 200, 200},
    {Method::kPost, "/api/classes/from-csv", "/api/classes/from-csv", 401, 403, 400, 400},
    {Method::kPost, "/api/seating", "/api/seating", 401, 403, 400, 400},
    {Method::kGet, "/api/stores/order", "/api/stores/order", 401, 200, 200, 200},
    {Method::kGet, "/api/paper", "/api/paper", 401, 200, 200, 200},
    {Method::kGet, "/api/paper/{sheet}", "/api/paper/risks.pdf?lesson=a-first-hob", 401, 200, 200,
     200},
    {Method::kGet, "/api/stores/order-file/{format}", "/api/stores/order-file/csv", 401, 200, 200,
     200},
    {Method::kGet, "/api/lessons/{id}/allergens", "/api/lessons/b-two-dishes/allergens", 401, 200,
     200, 200},
    {Method::kPost, "/api/plan", "/api/plan", 401, 400, 400, 400},
    {Method::kGet, "/api/jobs/{job}", "/api/jobs/job-99", 401, 404, 404, 404},
    {Method::kDelete, "/api/jobs/{job}", "/api/jobs/job-99", 401, 404, 404, 404},
    {Method::kGet, "/api/events", "/api/events", 401, 200, 200, 200},
    {Method::kGet, "/api/lessons/{id}/plan", "/api/lessons/b-two-dishes/plan", 401, 404, 404, 404},
    {Method::kPost, "/api/lessons/{id}/change", "/api/lessons/b-two-dishes/change", 401, 403, 400,
     400},
    {Method::kPost, "/api/lessons/same-again", "/api/lessons/same-again", 401, 403, 400, 400},
    {Method::kGet, "/api/copy", "/api/copy", 401, 403, 403, 200},
    {Method::kPost, "/api/copy", "/api/copy", 401, 403, 403, 400},
    {Method::kPost, "/api/backup", "/api/backup", 401, 403, 403, 201},
    {Method::kPost, "/api/sign-out", "/api/sign-out", 401, 204, 204, 204},
};

bool writes(Method method) { return method != Method::kGet; }

std::string name_of(const Ask& ask) {
  return std::string(serve::http::method_text(ask.method)) + " " + ask.path;
}

TEST(Roles, EveryRouteGivesEachRoleWhatItMayHave) {
  Desk desk;
  const Asker head = desk.person("Ms Hart", store::Role::kHead),
              teacher = desk.person("Mr Reed", store::Role::kTeacher),
              technician = desk.person("Mrs Doyle", store::Role::kTechnician), nobody{};
  for (const Ask& ask : kAsks) {
    const json body = writes(ask.method) ? json::object() : json();
    EXPECT_EQ(desk.ask(ask.method, ask.path, body, &nobody).status, ask.nobody)
        << "nobody: " << name_of(ask);
    EXPECT_EQ(desk.ask(ask.method, ask.path, body, &technician).status, ask.technician)
        << "technician: " << name_of(ask);
    EXPECT_EQ(desk.ask(ask.method, ask.path, body, &teacher).status, ask.teacher)
        << "teacher: " << name_of(ask);
    EXPECT_EQ(desk.ask(ask.method, ask.path, body, &head).status, ask.head)
        << "head: " << name_of(ask);
  }
}

TEST(Roles, TheTableAboveKnowsEveryRoute) {
  const Desk desk;
  std::set<std::string> known;
  for (const Ask& ask : kAsks)
    known.insert(std::string(serve::http::method_text(ask.method)) + " " + ask.pattern);
  for (const serve::http::Route& route : desk.router.routes())
    EXPECT_EQ(
        known.count(std::string(serve::http::method_text(route.method)) + " " + route.pattern), 1U)
        << route.pattern;
}

TEST(Roles, AWritingRequestWithoutTheTokenIsRefused) {
  Desk desk;
  Asker head = desk.person("Ms Hart", store::Role::kHead);
  for (const char* token : {"", "something else"}) {
    head.token = token;
    for (const Ask& ask : kAsks) {
      if (!writes(ask.method) || std::string(ask.path) == "/api/sign-in") continue;
      const Answer answer = desk.ask(ask.method, ask.path, json::object(), &head);
      EXPECT_EQ(answer.status, 403) << name_of(ask);
      EXPECT_EQ(answer.code(), "sign_in.token") << name_of(ask);
    }
  }
}

TEST(Roles, TheTokenOfAnotherSessionIsNoToken) {
  Desk desk;
  Asker head = desk.person("Ms Hart", store::Role::kHead);
  head.token = desk.person("Mr Reed", store::Role::kTeacher).token;
  EXPECT_EQ(desk.post("/api/plan", json::object(), &head).code(), "sign_in.token");
}

TEST(Roles, ReadingNeedsNoToken) {
  Desk desk;
  Asker head = desk.person("Ms Hart", store::Role::kHead);
  head.token.clear();
  EXPECT_EQ(desk.get("/api/week", &head).status, 200);
}

TEST(Roles, TheOpenDeskIsOpenOnThisMachineOnly) {
  Desk desk;
  EXPECT_EQ(desk.get("/api/week").status, 200);
  Asker elsewhere = desk.open();
  elsewhere.loopback = false;
  EXPECT_EQ(desk.get("/api/week", &elsewhere).status, 401);
  EXPECT_EQ(desk.post("/api/plan", json::object(), &elsewhere).status, 401);
  EXPECT_EQ(desk.post("/api/people",
                      {{"name", "Ms Hart"}, {"password", kPassword}, {"role", "head"}}, &elsewhere)
                .status,
            403);
  const Answer me = desk.get("/api/me", &elsewhere);
  EXPECT_EQ(me.body.at("signed_in"), false);
  EXPECT_EQ(me.body.at("token"), "");
  EXPECT_EQ(me.body.at("school"), "");
}

TEST(Roles, AnAddressThatDoesNotExistTellsNobodyAnything) {
  Desk desk;
  desk.person("Ms Hart", store::Role::kHead);
  const Asker nobody{};
  EXPECT_EQ(desk.get("/api/documents/unicorn", &nobody).status, 401);
  EXPECT_EQ(desk.get("/api/secret", &nobody).status, 404);
}

TEST(Roles, ASessionThatEndedIsNobody) {
  Desk desk;
  const Asker teacher = desk.person("Mr Reed", store::Role::kTeacher);
  EXPECT_EQ(desk.get("/api/week", &teacher).status, 200);
  EXPECT_EQ(desk.post("/api/sign-out", json::object(), &teacher).status, 204);
  EXPECT_EQ(desk.get("/api/week", &teacher).status, 401);
}

}  // namespace
