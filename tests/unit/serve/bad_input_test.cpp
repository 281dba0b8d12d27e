// What strangers and mistakes send: refused in words, kept as it is where it is only unusual, never
// a fault.
#include <gtest/gtest.h>

#include "base/text.h"
#include "desk.h"
#include "serve/desk_server.h"

#include "../http/client.h"

namespace {

using namespace serve_test;

class BadInput : public DeskTest {};

/// Every writing route that takes JSON, with things to fill its address.
std::vector<std::pair<Method, std::string>> json_routes(const Desk& desk) {
  std::vector<std::pair<Method, std::string>> out;
  for (const serve::http::Route& route : desk.router.routes()) {
    const json* said = operation(route.method, route.pattern);
    if (said == nullptr || !said->contains("requestBody") ||
        !said->at("requestBody").at("content").contains("application/json"))
      continue;
    std::string path = route.pattern;
    for (const auto& [name, value] : std::map<std::string, std::string>{
             {"{kind}", "dish"},
             {"{id}", route.pattern.find("/lessons/") != std::string::npos ? "b-two-dishes"
                                                                           : "fruit-scones"},
             {"{person}", "x"}}) {
      if (const auto at = path.find(name); at != std::string::npos)
        path.replace(at, name.size(), value);
    }
    out.emplace_back(route.method, path);
  }
  return out;
}

TEST_F(BadInput, WhatIsNoJsonObjectIsRefusedEverywhere) {
  const auto routes = json_routes(desk);
  EXPECT_GE(routes.size(), 14U);
  std::string deep(70, '[');
  for (const auto& [method, path] : routes) {
    if (path == "/api/people/x")
      continue;  // nobody of that name: not found before anything is read
    for (const std::string& bytes :
         {std::string("not json"), std::string("[]"), std::string("3"), std::string("{"),
          std::string("\"x\""), std::string("{\"a\": 1, \"a\": 2}"), std::string("\xFF\xFE"), deep,
          std::string("null")}) {
      const Answer answer = desk.send(method, path, bytes, nullptr, {{"If-Match", "\"1\""}});
      EXPECT_EQ(answer.status, 400) << path << " took " << bytes;
      EXPECT_FALSE(answer.code().empty()) << path;
    }
  }
}

TEST_F(BadInput, MembersNobodyKnowsAndWrongKindsAreToldWithTheirPlace) {
  for (const auto& [method, path] : json_routes(desk)) {
    if (path == "/api/people/x") continue;
    const Answer odd = desk.ask(method, path, {{"unicorn", 1}}, nullptr, {{"If-Match", "\"1\""}});
    EXPECT_EQ(odd.status, 400) << path;
    EXPECT_EQ(odd.body.at("problems")[0].at("where"), "/unicorn") << path << odd.text;
    // Every member the contract names, as a list of numbers: never of its kind.
    const json& schema_ref = operation(method, desk.router.match(method, path).route->pattern)
                                 ->at("requestBody")
                                 .at("content")
                                 .at("application/json")
                                 .at("schema");
    const json& schema = schema_ref.contains("$ref")
                             ? contract().at(json::json_pointer(
                                   schema_ref.at("$ref").get<std::string>().substr(1)))
                             : schema_ref;
    for (const auto& [member, unused] : schema.at("properties").items()) {
      if (member == "keep") continue;  // a list of its own
      const Answer wrong = desk.ask(method, path, {{member, {1, 2, 3}}}, nullptr,
                                    {{"If-Match", "\"1\""}});
      EXPECT_EQ(wrong.status, 400) << path << " " << member;
      EXPECT_EQ(wrong.body.at("problems")[0].at("where"), "/" + member) << path << wrong.text;
    }
  }
}

TEST_F(BadInput, WeirdIdsAreNotFound) {
  for (const char* id : {"%20", "x'%20or%201=1--", "%F0%9F%8D%9E", "a%00b", "..", "con",
                         "%D7%A9%D7%9C%D7%95%D7%9D"}) {
    for (const char* path :
         {"/api/documents/dish/", "/api/documents/lesson/", "/api/jobs/", "/api/lessons/"}) {
      const std::string whole = std::string(path) + id +
                                (std::string(path) == "/api/lessons/" ? "/plan" : "");
      try {
        EXPECT_EQ(desk.get(whole).status, 404) << whole;
      } catch (const std::runtime_error&) {
        // No address at all: the server refuses it before there is a request (tests/unit/http).
      }
    }
  }
  EXPECT_EQ(desk.get("/api/documents/dish/" + std::string(3000, 'a')).status, 404);
}

TEST_F(BadInput, EmojiAndRightToLeftNamesAreKeptAsTheyAre) {
  json group = desk.document("class", "7b").first;
  const std::string names[] = {"🥕 Karottchen", "نور الهدى", "שלום ל.", "Zoë Łukasz-Ø",
                               "e\u0301mile"};
  group["pupils"] = json::array();
  for (const std::string& name : names) group["pupils"].push_back({{"name", name}});
  group.erase("never_together");
  group.erase("always_together");
  group["name"] = "7🍋";
  const Answer made = desk.post("/api/documents/class",
                                {{"body", group}, {"what", "Neue Liste ✅"}});
  ASSERT_EQ(made.status, 201) << made.text;
  const std::string id = made.body.at("id");
  EXPECT_EQ(desk.document("class", id).first, group);
  const Answer seats = desk.post(
      "/api/seating",
      {{"class", id}, {"room", "food-room-1"}, {"dishes", {"fruit-scones"}}, {"in", "singles"}});
  EXPECT_EQ(seats.body.at("cooks").size(), 5U);
  for (const std::string& name : names)
    EXPECT_NE(seats.body.at("cooks").dump().find(name), std::string::npos) << name;
}

TEST_F(BadInput, ControlCharactersInNamesAreRefused) {
  json group = desk.document("class", "7b").first;
  group["pupils"] = {{{"name", std::string("Ben\x01T.")}}};
  group.erase("never_together");
  group.erase("always_together");
  EXPECT_EQ(desk.post("/api/documents/class", {{"body", group}}).status, 400);
}

TEST_F(BadInput, HugeNumbersAndLongTextsDoNoHarm) {
  json dish = desk.document("dish", "fruit-scones").first;
  dish["portions"] = 1e308;
  EXPECT_EQ(desk.post("/api/documents/dish", {{"body", dish}}).status, 400);
  dish["portions"] = 4;
  dish["name"] = std::string(100'000, 'x');
  EXPECT_EQ(desk.post("/api/documents/dish", {{"body", dish}}).status, 400);
  EXPECT_EQ(desk.get("/api/foods?q=" + std::string(3000, 'x')).status, 200);
  EXPECT_EQ(desk.get("/api/documents/dish?q=" + std::string(3000, 'x')).status, 200);
  EXPECT_EQ(desk.get("/api/documents/lesson?from=x&to=%F0%9F%8D%9E").status, 200);
}

/// The desk behind a socket, for what the server itself refuses.
class Served : public testing::Test {
 protected:
  Folder folder;
  std::unique_ptr<store::Repository> store = filled_store(Fill::kDishes, folder);
  std::unique_ptr<serve::DeskServer> desk;
  int port = 0;

  void SetUp() override {
    serve::DeskOptions options;
    options.today = [] { return *base::date_in("2026-11-17"); };
    desk = std::make_unique<serve::DeskServer>(*store, std::vector<serve::http::Asset>{}, options);
    const auto started = desk->start();
    ASSERT_TRUE(started);
    port = started.value();
  }
};

TEST_F(Served, ABodyOfNineMegabytesIsRefusedAndTheDeskGoesOn) {
  http_test::Client client(port);
  const std::size_t size = 9U << 20U;
  client.try_send(
      "POST /api/read HTTP/1.1\r\nHost: localhost\r\nContent-Type: "
      "application/json\r\nContent-Length: " +
      std::to_string(size) + "\r\n\r\n" + std::string(1U << 16U, ' '));
  EXPECT_EQ(client.answer().status, 413);
  http_test::Client another(port);
  EXPECT_EQ(another.get("/api/week").status, 200);
}

TEST_F(Served, AnAddressOfThePagesThatIsNoFileIsAPage) {
  http_test::Client client(port);
  EXPECT_EQ(client.get("/lessons/9k-dhal").status, 200);
  EXPECT_EQ(client.get("/api/nothing-here").status, 404);
}

}  // namespace
