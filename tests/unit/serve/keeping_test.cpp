// Copies of everything: out, and in again somewhere else.
#include <gtest/gtest.h>

#include "desk.h"

namespace {

using namespace serve_test;

class Keeping : public DeskTest {
 protected:
  static Answer take(Desk& into, const std::string& zip, bool sure) {
    return into.send(Method::kPost, std::string("/api/copy") + (sure ? "?sure=true" : ""), zip);
  }
};

TEST_F(Keeping, ASchoolMovesToAnotherDeskWhole) {
  const Answer zip = desk.get("/api/copy");
  ASSERT_EQ(zip.status, 200);
  Desk other(Fill::kNothing);
  const Answer preview = take(other, zip.text, false);
  ASSERT_EQ(preview.status, 200) << preview.text;
  EXPECT_EQ(preview.body.at("done"), false);
  EXPECT_GT(preview.body.at("new").size(), 30U);
  EXPECT_EQ(other.get("/api/documents/dish").body.at("documents").size(), 0U);
  EXPECT_EQ(take(other, zip.text, true).body.at("done"), true);
  EXPECT_EQ(other.get("/api/copy").text, zip.text);
  EXPECT_EQ(other.document("lesson", "b-two-dishes").first,
            desk.document("lesson", "b-two-dishes").first);
  const Answer again = take(other, zip.text, true);
  EXPECT_EQ(again.body.at("new").size(), 0U);
  EXPECT_EQ(again.body.at("differs").size(), 0U);
}

TEST_F(Keeping, WhatDiffersIsSaidBeforeItIsTaken) {
  const Answer zip = desk.get("/api/copy");
  auto [dish, version] = desk.document("dish", "fruit-scones");
  dish["portions"] = 6;
  ASSERT_EQ(desk.put("/api/documents/dish/fruit-scones", {{"body", dish}}, version).status, 200);
  const Answer preview = take(desk, zip.text, false);
  ASSERT_EQ(preview.body.at("differs").size(), 1U);
  EXPECT_EQ(preview.body.at("differs")[0], "dish 'Fruit scones'");
  EXPECT_EQ(desk.document("dish", "fruit-scones").first.at("portions"), 6);
  take(desk, zip.text, true);
  EXPECT_NE(desk.document("dish", "fruit-scones").first.at("portions"), 6);
  EXPECT_EQ(desk.document("dish", "fruit-scones").second, 3);  // a new version: it can be undone
}

TEST_F(Keeping, NoPeopleAndNoPasswordsGoOut) {
  const Asker head = desk.person("Ms Hart", store::Role::kHead);
  const Answer zip = desk.get("/api/copy", &head);
  EXPECT_EQ(zip.text.find("Ms Hart"), std::string::npos);
  EXPECT_EQ(zip.text.find("argon2"), std::string::npos);
}

TEST_F(Keeping, WhatIsNoZipIsRefused) {
  for (const std::string& bytes :
       {std::string("not a zip"), std::string("PK\x03\x04 broken"), std::string()})
    EXPECT_EQ(take(desk, bytes, true).status, 400);
}

TEST_F(Keeping, ABackupIsMadeAndNamedWithoutItsFolder) {
  const Answer made = desk.ask(Method::kPost, "/api/backup");
  ASSERT_EQ(made.status, 201) << made.text;
  EXPECT_EQ(made.body.at("name").get<std::string>().find('/'), std::string::npos);
}

}  // namespace
