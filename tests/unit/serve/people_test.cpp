// People: the first one, the others, signing in and how often it may be tried.
#include <gtest/gtest.h>

#include "desk.h"

namespace {

using namespace serve_test;

json new_person(const std::string& name, const std::string& role,
                const std::string& password = kPassword) {
  return {{"name", name}, {"password", password}, {"role", role}};
}

class People : public testing::Test {
 protected:
  Desk desk{Fill::kNothing};

  Asker signed_in(const std::string& name, const std::string& password = kPassword) {
    const Asker nobody{};
    const Answer answer = desk.post("/api/sign-in", {{"name", name}, {"password", password}},
                                    &nobody);
    EXPECT_EQ(answer.status, 200) << answer.text;
    const std::string cookie = answer.header("Set-Cookie");
    return {cookie.substr(10, cookie.find(';') - 10), answer.body.at("token"), true};
  }
};

TEST_F(People, TheFirstPersonIsTheHeadWhateverWasAskedAndClosesTheDesk) {
  EXPECT_EQ(desk.get("/api/me").body.at("open"), true);
  EXPECT_EQ(desk.get("/api/me").body.at("first_run"), true);
  const Answer made = desk.post("/api/people", new_person("Ms Hart", "technician"));
  EXPECT_EQ(made.status, 201);
  EXPECT_EQ(made.body.at("role"), "head");
  EXPECT_EQ(desk.get("/api/me").body.at("open"), false);
  EXPECT_EQ(desk.get("/api/week").status, 401);
  EXPECT_EQ(desk.post("/api/people", new_person("Mr Reed", "teacher")).status, 403);
  const Asker head = signed_in("Ms Hart");
  EXPECT_EQ(desk.post("/api/people", new_person("Mr Reed", "teacher"), &head).body.at("role"),
            "teacher");
  EXPECT_EQ(desk.get("/api/people", &head).body.at("people").size(), 2U);
}

TEST_F(People, TheOpenTokenOpensNothingOnceSomebodyMaySignIn) {
  const Asker before = desk.open();
  EXPECT_EQ(desk.post("/api/people", new_person("Ms Hart", "head")).status, 201);
  EXPECT_EQ(desk.post("/api/people", new_person("Somebody", "head"), &before).status, 403);
}

TEST_F(People, AFirstPersonThatIsRefusedLeavesTheDeskOpen) {
  EXPECT_EQ(desk.post("/api/people", new_person("Ms Hart", "head", "short")).code(),
            "people.short_password");
  EXPECT_EQ(desk.post("/api/people", new_person("", "head")).status, 400);
  EXPECT_EQ(desk.post("/api/people", new_person("Ms Hart", "queen")).code(), "people.role");
  EXPECT_EQ(desk.get("/api/me").body.at("open"), true);
}

TEST_F(People, TheSessionCookieIsForTheBrowserOnly) {
  desk.post("/api/people", new_person("Ms Hart", "head"));
  const Asker nobody{};
  const Answer answer = desk.post("/api/sign-in", {{"name", "ms  HART"}, {"password", kPassword}},
                                  &nobody);
  ASSERT_EQ(answer.status, 200);
  const std::string cookie = answer.header("Set-Cookie");
  for (const char* part : {"benchbell=", "HttpOnly", "SameSite=Strict", "Max-Age=43200"})
    EXPECT_NE(cookie.find(part), std::string::npos) << part;
  EXPECT_EQ(answer.body.at("person").at("name"), "Ms Hart");
  EXPECT_EQ(answer.text.find("argon2"), std::string::npos);
}

TEST_F(People, AWrongPasswordAndAnUnknownNameLookTheSame) {
  desk.post("/api/people", new_person("Ms Hart", "head"));
  const Asker nobody{};
  const Answer wrong = desk.post("/api/sign-in",
                                 {{"name", "Ms Hart"}, {"password", "not the right one"}}, &nobody);
  const Answer unknown = desk.post(
      "/api/sign-in", {{"name", "Mr Nobody"}, {"password", "not the right one"}}, &nobody);
  EXPECT_EQ(wrong.status, 401);
  EXPECT_EQ(wrong.text, unknown.text);
}

TEST_F(People, ManyNamesFromOneMachineCannotBeTriedOut) {
  desk.post("/api/people", new_person("Ms Hart", "head"));
  const Asker nobody{};
  for (int i = 0; i < 8; ++i)
    EXPECT_EQ(desk.post("/api/sign-in", {{"name", "Guess " + std::to_string(i)}, {"password", "x"}},
                        &nobody)
                  .status,
              401);
  const Answer refused = desk.post("/api/sign-in", {{"name", "Ms Hart"}, {"password", kPassword}},
                                   &nobody);
  EXPECT_EQ(refused.status, 429);
  EXPECT_GE(std::stoi(refused.header("Retry-After")), 1);
  EXPECT_LE(std::stoi(refused.header("Retry-After")), 30);
}

TEST_F(People, PasswordsAreChangedWithTheOldOne) {
  desk.post("/api/people", new_person("Ms Hart", "head"));
  const Asker head = signed_in("Ms Hart");
  const std::string teacher_id = desk.post("/api/people", new_person("Mr Reed", "teacher"), &head)
                                     .body.at("id");
  const Asker teacher = signed_in("Mr Reed");
  const std::string path = "/api/people/" + teacher_id;
  const auto change = [&](const json& body, const Asker& asker) {
    return desk.ask(Method::kPatch, path, body, &asker);
  };
  EXPECT_EQ(change({{"password", "four wooden spoons"}}, teacher).code(), "people.old_password");
  EXPECT_EQ(change({{"password", "short"}, {"old_password", kPassword}}, teacher).code(),
            "people.short_password");
  EXPECT_EQ(change({{"password", ""}, {"old_password", kPassword}}, teacher).code(),
            "people.short_password");
  EXPECT_EQ(
      change({{"password", "four wooden spoons"}, {"old_password", kPassword}}, teacher).status,
      200);
  EXPECT_EQ(desk.get("/api/week", &teacher).status, 401);  // a new password ends the sessions
  signed_in("Mr Reed", "four wooden spoons");
  EXPECT_EQ(change({{"password", "five wooden spoons"}}, head).status, 200);  // forgotten: the head
                                                                              // gives a new one
}

TEST_F(People, RolesAreGivenByTheHeadAndOneHeadStays) {
  const std::string head_id = desk.post("/api/people", new_person("Ms Hart", "head")).body.at("id");
  const Asker head = signed_in("Ms Hart");
  const std::string teacher_id = desk.post("/api/people", new_person("Mr Reed", "teacher"), &head)
                                     .body.at("id");
  const Asker teacher = signed_in("Mr Reed");
  EXPECT_EQ(
      desk.ask(Method::kPatch, "/api/people/" + teacher_id, {{"role", "head"}}, &teacher).status,
      403);
  EXPECT_EQ(
      desk.ask(Method::kPatch, "/api/people/" + head_id, {{"name", "Mr Reed 2"}}, &teacher).status,
      403);
  EXPECT_EQ(desk.ask(Method::kPatch, "/api/people/" + head_id, {{"role", "teacher"}}, &head).code(),
            "people.last_head");
  EXPECT_EQ(desk.ask(Method::kDelete, "/api/people/" + head_id, nullptr, &head).status, 409);
  EXPECT_EQ(desk.ask(Method::kPatch, "/api/people/" + teacher_id, {{"role", "head"}}, &head).status,
            200);
  EXPECT_EQ(desk.ask(Method::kPatch, "/api/people/" + head_id, {{"role", "teacher"}}, &head).status,
            200);
}

TEST_F(People, TwoOfOneNameAreRefusedWithTheContractsStatus) {
  desk.post("/api/people", new_person("Ms Hart", "head"));
  const Asker head = signed_in("Ms Hart");
  const Answer twice = desk.post("/api/people", new_person("ms hart", "teacher"), &head);
  EXPECT_EQ(twice.status, 400);
  EXPECT_EQ(twice.code(), "store.name_taken");
}

TEST_F(People, WhoeverIsRemovedIsOutAtOnceAndTheirWorkKeepsNoName) {
  desk.post("/api/people", new_person("Ms Hart", "head"));
  const Asker head = signed_in("Ms Hart");
  const std::string teacher_id = desk.post("/api/people", new_person("Mr Reed", "teacher"), &head)
                                     .body.at("id");
  const Asker teacher = signed_in("Mr Reed");
  const json table = {{"kind", "table"}, {"version", 1}, {"name", "Notes"}, {"text", "a,b\n1,2\n"}};
  ASSERT_EQ(desk.post("/api/documents/table", {{"id", "notes"}, {"body", table}}, &teacher).status,
            201);
  EXPECT_EQ(desk.ask(Method::kDelete, "/api/people/" + teacher_id, nullptr, &head).status, 204);
  EXPECT_EQ(desk.ask(Method::kDelete, "/api/people/" + teacher_id, nullptr, &head).status, 404);
  EXPECT_EQ(desk.get("/api/week", &teacher).status, 401);
  EXPECT_EQ(desk.get("/api/documents/table/notes", &head).body.at("changed_by"), "somebody");
}

}  // namespace
