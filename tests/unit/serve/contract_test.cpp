// The program and api/openapi.yaml say the same, both ways.
#include <gtest/gtest.h>

#include <set>

#include "base/text.h"
#include "desk.h"
#include "desk/lesson_change.h"
#include "serve/desk_server.h"
#include "serve/jobs.h"
#include "store/document.h"

namespace {

using namespace serve_test;

std::set<std::string> in_contract() {
  std::set<std::string> out;
  for (const auto& [path, item] : contract().at("paths").items()) {
    for (const auto& [method, operation] : item.items())
      if (method != "parameters") out.insert(method + " " + path);
  }
  return out;
}

std::set<std::string> in_program() {
  const Folder folder;
  const auto store = filled_store(Fill::kNothing, folder);
  serve::DeskOptions options;
  options.today = [] { return *base::date_in("2026-11-17"); };
  const serve::DeskServer desk(*store, {}, options);
  std::set<std::string> out;
  for (const serve::http::Route& route : desk.routes())
    out.insert(base::lower(serve::http::method_text(route.method)) + " " + route.pattern);
  return out;
}

TEST(Contract, EveryRouteIsInIt) {
  const auto written = in_contract();
  for (const std::string& route : in_program()) EXPECT_EQ(written.count(route), 1U) << route;
}

TEST(Contract, EverythingInItIsARoute) {
  const auto routes = in_program();
  const bool paper = routes.count("get /api/paper") > 0;
  for (const std::string& operation : in_contract()) {
    // Sheets come as a whole or not at all.
    if (!paper && operation.starts_with("get /api/paper")) continue;
    EXPECT_EQ(routes.count(operation), 1U) << operation;
  }
}

TEST(Contract, OperationsHaveNamesOfTheirOwn) {
  std::set<std::string> names;
  for (const auto& [path, item] : contract().at("paths").items()) {
    for (const auto& [method, operation] : item.items()) {
      if (method == "parameters") continue;
      EXPECT_TRUE(names.insert(operation.at("operationId").get<std::string>()).second) << path;
    }
  }
}

std::set<std::string> words(const json& list) { return list.get<std::set<std::string>>(); }

TEST(Contract, ItsWordsAreTheProgramsWords) {
  const json& schemas = contract().at("components").at("schemas");
  for (const std::string& word :
       words(schemas.at("LessonChange").at("properties").at("change").at("enum"))) {
    EXPECT_TRUE(desk::change_kind(word)) << word;
  }
  std::set<std::string> states;
  for (const auto state :
       {serve::JobState::kWaiting, serve::JobState::kWorking, serve::JobState::kDone,
        serve::JobState::kStopped, serve::JobState::kFailed})
    states.insert(std::string(serve::name_of(state)));
  EXPECT_EQ(states, words(schemas.at("Job").at("properties").at("state").at("enum")));
  std::set<std::string> roles;
  for (const auto role : {store::Role::kTeacher, store::Role::kTechnician, store::Role::kHead})
    roles.insert(std::string(store::name_of(role)));
  EXPECT_EQ(roles, words(schemas.at("Role").at("enum")));
  for (const std::string& kind :
       words(contract().at("components").at("parameters").at("kind").at("schema").at("enum")))
    EXPECT_TRUE(store::kind_named(kind)) << kind;
}

}  // namespace
