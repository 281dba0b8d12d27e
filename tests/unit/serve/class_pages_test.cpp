// Class lists from files, and pupils put at places, through the API.
#include <gtest/gtest.h>
#include <sodium.h>

#include <set>

#include "desk.h"

namespace {

using namespace serve_test;

class ClassPages : public DeskTest {
 protected:
  json seats(json more = json::object()) {
    json body = {{"class", "7b"}, {"room", "food-room-1"}, {"dishes", {"fruit-scones"}}};
    body.update(more);
    const Answer answer = desk.post("/api/seating", body);
    EXPECT_EQ(answer.status, 200) << answer.text;
    return answer.body;
  }
};

std::string base64(const std::string& bytes) {
  std::string out(sodium_base64_ENCODED_LEN(bytes.size(), sodium_base64_VARIANT_ORIGINAL), '\0');
  sodium_bin2base64(out.data(), out.size(), reinterpret_cast<const unsigned char*>(bytes.data()),
                    bytes.size(), sodium_base64_VARIANT_ORIGINAL);
  out.pop_back();
  return out;
}

TEST_F(ClassPages, AListIsPreviewedAndThePreviewCanBeKept) {
  const Answer preview = desk.post(
      "/api/classes/from-csv",
      {{"text", "Name,Class,Allergies\n\"Khan, Aisha\",7C,milk\nBen T.,7C,kiwi\n"}});
  ASSERT_EQ(preview.status, 200) << preview.text;
  EXPECT_EQ(preview.body.at("pupils"), 2);
  EXPECT_EQ(preview.body.at("columns")[2].at("meaning"), "allergies");
  EXPECT_EQ(preview.body.at("notes").size(), 1U);
  EXPECT_EQ(desk.get("/api/documents/class").body.at("documents").size(), 2U);  // nothing kept yet
  EXPECT_EQ(desk.post("/api/documents/class", {{"body", preview.body.at("body")}}).status, 201);
}

TEST_F(ClassPages, BytesComeInBase64) {
  const Answer preview = desk.post("/api/classes/from-csv",
                                   {{"text", base64("Name\nZo\xEB M.\n")}, {"base64", true}});
  ASSERT_EQ(preview.status, 200) << preview.text;
  EXPECT_EQ(preview.body.at("body").at("pupils")[0].at("name"), "Zoë M.");
  EXPECT_EQ(desk.post("/api/classes/from-csv", {{"text", "!!"}, {"base64", true}}).code(),
            "class.csv.base64");
}

TEST_F(ClassPages, AColumnCanBePutRight) {
  const json body = {{"text", "Who,Eats\nAisha,milk\n"},
                     {"columns", {{"Who", "name"}, {"Eats", "allergies"}}}};
  EXPECT_EQ(desk.post("/api/classes/from-csv", body).body.at("pupils"), 1);
  EXPECT_EQ(desk.post("/api/classes/from-csv", {{"text", "Who\nAisha\n"}}).code(),
            "class.csv.no_name");
  EXPECT_EQ(
      desk.post("/api/classes/from-csv", {{"text", "Who\nA\n"}, {"columns", {{"Who", 3}}}}).code(),
      "request.wrong_kind");
}

TEST_F(ClassPages, AClassIsSeatedAndItsCooksAreALesson) {
  const json made = seats();
  auto [lesson, version] = desk.document("lesson", "e-does-not-fit");
  lesson["cooks"] = made.at("cooks");
  lesson["room"] = "../room/food-room-1.json";
  lesson["dishes"] = {{"fruit-scones", "../dish/fruit-scones.json"}};
  lesson["about"] = {{"class", "7b"}, {"seats", made.at("seats")}};
  const Answer kept = desk.put("/api/documents/lesson/e-does-not-fit", {{"body", lesson}}, version);
  EXPECT_EQ(kept.status, 200) << kept.text;
}

TEST_F(ClassPages, WhoAvoidsEggsCooksAVersionWithoutThemOrItIsSaid) {
  const json made = seats();
  bool seen = false;
  for (const json& cook : made.at("cooks")) {
    if (cook.value("avoids", json::array()) != json::array({"eggs"})) continue;
    seen = true;
    EXPECT_NE(cook.at("name").get<std::string>().find("Hana S."), std::string::npos);
  }
  EXPECT_TRUE(seen);
}

// The dish says nothing of milk any more; the table of foods does, and a version is chosen by it.
TEST_F(ClassPages, TheTableOfFoodsSpeaksForWhatADishForgotToSay) {
  auto [dish, version] = desk.document("dish", "fruit-scones");
  for (json& ingredient : dish["ingredients"]) ingredient.erase("contains");
  ASSERT_EQ(desk.put("/api/documents/dish/fruit-scones", {{"body", dish}}, version).status, 200);
  json group = desk.document("class", "7b").first;
  group["name"] = "7M";
  group["pupils"] = {
      {{"name", "Daisy M."}, {"needs", {{{"need", "milk"}, {"reach", "may not eat"}}}}}};
  group.erase("never_together");
  group.erase("always_together");
  ASSERT_EQ(desk.post("/api/documents/class", {{"id", "7m"}, {"body", group}}).status, 201);
  const json made = seats({{"class", "7m"}});
  const bool chosen = made.at("cooks")[0].at("dishes")[0] != "fruit-scones";
  const bool said = made.at("notes").dump().find("no version of") != std::string::npos;
  EXPECT_TRUE(chosen || said) << made.dump();
}

TEST_F(ClassPages, SeatsGivenBeforeAreKept) {
  const json first = seats();
  // The cooks of a lesson carry their names, and the seats beside them the pupils.
  json keep = first.at("cooks");
  EXPECT_EQ(seats({{"keep", keep}}).at("cooks"), first.at("cooks"));
  for (json& cook : keep) cook["pupils"] = first.at("seats").at(cook.at("name").get<std::string>());
  EXPECT_EQ(seats({{"keep", keep}}).at("cooks"), first.at("cooks"));
}

TEST_F(ClassPages, WhoIsAwayHasNoSeat) {
  const json made = seats({{"away", {"Aisha K."}}, {"in", "singles"}});
  EXPECT_EQ(made.at("seats").dump().find("Aisha K."), std::string::npos);
  for (const json& cook : made.at("cooks")) EXPECT_EQ(cook.at("people"), 1);
}

TEST_F(ClassPages, WhatIsNotThereIsSaid) {
  const json body = {{"class", "7b"}, {"room", "food-room-1"}, {"dishes", {"fruit-scones"}}};
  for (const auto& [key, value] :
       std::map<std::string, json>{{"class", "12z"}, {"room", "hall"}, {"dishes", {"moon"}}}) {
    json other = body;
    other[key] = value;
    EXPECT_EQ(desk.post("/api/seating", other).status, 404) << key;
  }
  json other = body;
  other["in"] = "fours";
  EXPECT_EQ(desk.post("/api/seating", other).code(), "seating.in");
}

}  // namespace
