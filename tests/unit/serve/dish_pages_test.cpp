// Dishes as their pages show them: the numbers are those of the libraries.
#include <gtest/gtest.h>

#include <algorithm>

#include "desk.h"
#include "desk/strands.h"
#include "larder/dish_cost.h"
#include "safety/statements.h"

namespace {

using namespace serve_test;

class DishPages : public DeskTest {
 protected:
  std::vector<kitchen::Dish> versions(const std::string& id) {
    const auto read = desk.kept.dish(id);
    EXPECT_TRUE(read);
    return read.value();
  }
  json row(const std::string& id) {
    const json all = desk.get("/api/dishes").body;
    for (const json& each : all.at("dishes"))
      if (each.at("id") == id) return each;
    return nullptr;
  }
};

int up_to_minutes(base::Seconds s) { return static_cast<int>((s.count() + 59) / 60); }

TEST_F(DishPages, EveryShippedDishHasARowWithTheLibrariesNumbers) {
  const json rows = desk.get("/api/dishes").body.at("dishes");
  EXPECT_EQ(rows.size(), desk.get("/api/documents/dish").body.at("documents").size());
  const auto prices = desk.kept.prices();
  const auto foods = desk.kept.foods();
  for (const json& each : rows) {
    const kitchen::Dish dish = versions(each.at("id")).front();
    const desk::Strands strands = desk::strands(dish);
    EXPECT_EQ(each.at("name"), dish.name);
    EXPECT_EQ(each.at("minutes"), up_to_minutes(strands.length)) << dish.name;
    EXPECT_EQ(each.at("hands_minutes"), up_to_minutes(strands.hands)) << dish.name;
    const larder::DishCost cost = larder::dish_cost(dish, *prices, *foods);
    if (!cost.complete)
      EXPECT_TRUE(each.at("cost_per_portion").is_null()) << dish.name;
    else
      EXPECT_EQ(each.at("cost_per_portion"),
                larder::pounds_text(cost.known / base::Ratio(dish.portions)))
          << dish.name;
  }
}

TEST_F(DishPages, AllergensOfARowAreThoseOfTheStatements) {
  const kitchen::Dish dish = versions("fruit-scones").front();
  const auto summary = safety::summary(dish, *desk.kept.foods(), *desk.kept.labels());
  std::vector<std::string> contains;
  for (const auto allergen : safety::kFourteen)
    if (summary[safety::at(allergen)] == safety::Stated::kContains)
      contains.emplace_back(kitchen::word(allergen));
  EXPECT_EQ(row("fruit-scones").at("allergens").get<std::vector<std::string>>(), contains);
  EXPECT_NE(std::find(contains.begin(), contains.end(), "milk"), contains.end());
}

TEST_F(DishPages, ARowFollowsItsDishAndThePrices) {
  const json before = row("fruit-scones");
  auto [dish, version] = desk.document("dish", "fruit-scones");
  dish["name"] = "Plain scones";
  desk.put("/api/documents/dish/fruit-scones", {{"body", dish}}, version);
  EXPECT_EQ(row("fruit-scones").at("name"), "Plain scones");
  auto [prices, prices_version] = desk.document("table", "prices");
  prices["text"] = "food,size,price\n";
  desk.put("/api/documents/table/prices", {{"body", prices}}, prices_version);
  EXPECT_TRUE(row("fruit-scones").at("cost_per_portion").is_null());
}

TEST_F(DishPages, TwoDesksKeepTheirDishesApart) {
  Desk other;
  auto [dish, version] = desk.document("dish", "fruit-scones");
  dish["name"] = "Ours";
  desk.put("/api/documents/dish/fruit-scones", {{"body", dish}}, version);
  dish["name"] = "Theirs";
  other.put("/api/documents/dish/fruit-scones", {{"body", dish}}, version);
  EXPECT_EQ(desk.get("/api/dishes/fruit-scones/view").body.at("row").at("name"), "Ours");
  EXPECT_EQ(other.get("/api/dishes/fruit-scones/view").body.at("row").at("name"), "Theirs");
  EXPECT_EQ(row("fruit-scones").at("name"), "Ours");
}

TEST_F(DishPages, TheViewHasTheDishItsStrandsAndItsCost) {
  const Answer answer = desk.get("/api/dishes/fruit-scones/view");
  ASSERT_EQ(answer.status, 200);
  EXPECT_EQ(answer.body.at("body"), desk.document("dish", "fruit-scones").first);
  EXPECT_EQ(answer.body.at("row"), row("fruit-scones"));
  const kitchen::Dish dish = versions("fruit-scones").front();
  const desk::Strands strands = desk::strands(dish);
  ASSERT_EQ(answer.body.at("strands").size(), strands.steps.size());
  for (std::size_t i = 0; i < strands.steps.size(); ++i) {
    const json& shown = answer.body.at("strands")[i];
    EXPECT_EQ(shown.at("step"), dish.method[static_cast<std::size_t>(strands.steps[i].step)].id);
    EXPECT_EQ(shown.at("lane"), strands.steps[i].lane);
    EXPECT_EQ(shown.at("from"), strands.steps[i].from.count() / 60);
  }
  const larder::DishCost cost = larder::dish_cost(dish, *desk.kept.prices(), *desk.kept.foods());
  EXPECT_EQ(answer.body.at("cost").at("lines").size(), cost.lines.size());
  EXPECT_FALSE(answer.body.at("label").is_null());
  EXPECT_FALSE(answer.body.at("ratios").empty());  // a scone dough is a known preparation
}

TEST_F(DishPages, AVariantHasAViewOfItsOwnAndAnUnknownOneNone) {
  const std::string path = "/api/dishes/fruit-scones/view?variant=";
  const Answer oat = desk.get(path + "oat%20drink%20and%20spread");
  ASSERT_EQ(oat.status, 200);
  const json& contains = oat.body.at("allergens").at("contains");
  EXPECT_EQ(std::find(contains.begin(), contains.end(), "milk"), contains.end());
  const json plain = desk.get("/api/dishes/fruit-scones/view").body.at("allergens").at("contains");
  EXPECT_NE(std::find(plain.begin(), plain.end(), "milk"), plain.end());
  EXPECT_EQ(desk.get(path + "chocolate").status, 404);
  EXPECT_EQ(desk.get("/api/dishes/moon-cheese/view").status, 404);
}

TEST_F(DishPages, ADraftIsShownLikeAKeptDish) {
  auto [dish, version] = desk.document("dish", "fruit-scones");
  const json kept = desk.get("/api/dishes/fruit-scones/view").body;
  const Answer draft = desk.post("/api/dish-view", {{"body", dish}});
  ASSERT_EQ(draft.status, 200) << draft.text;
  for (const char* part : {"strands", "ratios", "label", "cost", "allergens", "safety"})
    EXPECT_EQ(draft.body.at(part), kept.at(part)) << part;
  dish.erase("method");
  EXPECT_EQ(desk.post("/api/dish-view", {{"body", dish}}).status, 400);
}

TEST_F(DishPages, StepsThatCanHurtCarryTheirCaution) {
  int cautions = 0;
  for (const char* id : {"chicken-fajitas", "spring-rolls"}) {
    const json view = desk.get(std::string("/api/dishes/") + id + "/view").body;
    for (const json& each : view.at("safety"))
      cautions += each.at("says").get<std::string>().empty() ? 0 : 1;
  }
  EXPECT_GE(cautions, 2);
}

TEST_F(DishPages, ATextIsReadWithHowSureEachLineIs) {
  const Answer read = desk.post(
      "/api/read", {{"text",
                     "Oat scones\nServes 4\n\nIngredients\n200 g self-raising flour\n50 g butter\n"
                     "100 ml milk\n\nMethod\nRub the butter into the flour, 8 minutes.\n"
                     "Stir in the milk and shape, 5 minutes.\nBake at 200 C for 12 minutes.\n"}});
  ASSERT_EQ(read.status, 200) << read.text;
  EXPECT_GE(read.body.at("lines").size(), 6U);
  EXPECT_LE(read.body.at("questions").size(), 3U);
  if (!read.body.at("body").is_null()) {
    EXPECT_EQ(
        desk.post("/api/check/dish", {{"body", read.body.at("body")}}).body.at("problems").size(),
        0U);
  }
  EXPECT_EQ(desk.post("/api/read", {{"text", "   "}}).code(), "read.nothing");
  EXPECT_EQ(desk.post("/api/read", {{"text", std::string(400'001, 'a')}}).code(), "read.too_long");
}

TEST_F(DishPages, FoodsAreFoundBySpelling) {
  const json foods = desk.get("/api/foods?q=red%20lentil").body.at("foods");
  ASSERT_FALSE(foods.empty());
  EXPECT_NE(foods[0].at("name").get<std::string>().find("entil"), std::string::npos);
  EXPECT_EQ(desk.get("/api/foods").status, 400);
  EXPECT_EQ(desk.get("/api/foods?q=%20").status, 400);
}

}  // namespace
