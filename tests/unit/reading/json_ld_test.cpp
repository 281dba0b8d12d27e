#include "kitchen/reading/json_ld.h"
#include "base/folding.h"
#include "kitchen/reading/line_tokens.h"

#include <gtest/gtest.h>

#include <filesystem>

#include "../../support/lesson_file.h"
#include "../../support/shipped_foods.h"
#include "../../support/shipped_task_times.h"
#include "draft_words.h"
#include "kitchen/weigh.h"

namespace {

using namespace kitchen;
using tests::shipped_foods;

DishDraft read(std::string_view text) {
  auto draft = read_json_ld(text, "page.html", shipped_foods(), tests::shipped_task_times());
  EXPECT_TRUE(draft) << (draft ? "" : draft.problems().front().message);
  return draft ? std::move(draft).value() : DishDraft{};
}

constexpr std::string_view
    kRecipe = R"({"@context":"https://schema.org","@type":["Recipe"],"name":"Pea &amp; mint soup",
 "recipeYield":["4","4 bowls"],"totalTime":"PT1H5M","suitableForDiet":"https://schema.org/VegetarianDiet",
 "recipeIngredient":["500g frozen peas","&frac12; onion, chopped"],
 "recipeInstructions":[{"@type":"HowToSection","name":"Soup","itemListElement":[
   {"@type":"HowToStep","text":"Soften the onion."},{"@type":"HowToStep","text":"<p>Add the peas.</p><p>Blend.</p>"}]}],
 "nutrition":{"@type":"NutritionInformation","calories":"150 kcal"}})";

void judge(const DishDraft& draft) {
  EXPECT_EQ(draft.name.value, "Pea & mint soup");
  EXPECT_EQ(draft.portions.value, 4);
  ASSERT_EQ(draft.ingredients.size(), 2U);
  EXPECT_EQ(draft.ingredients[0].food.value, "peas_frozen");
  EXPECT_EQ(draft.ingredients[1].quantity.value, Quantity::pieces(Ratio(1, 2), ""));
  EXPECT_EQ(tests::lost_words(draft, "Soften the onion. Add the peas. Blend."), "");
  EXPECT_EQ(draft.method[0].group, "Soup");
  std::string unread;
  for (const auto& each : draft.unread) unread += each.line + "\n";
  EXPECT_NE(unread.find("totalTime: 65 min"), std::string::npos) << unread;
  EXPECT_NE(unread.find("VegetarianDiet"), std::string::npos) << unread;
  EXPECT_NE(unread.find("150 kcal"), std::string::npos) << unread;
}

TEST(JsonLd, ARecipeIsReadFromEveryPlaceItMayStand) {
  const std::string recipe(kRecipe);
  judge(read(recipe));
  judge(read("[{\"@type\":\"WebSite\"}," + recipe + "]"));
  judge(read("{\"@context\":\"https://schema.org\",\"@graph\":[{\"@type\":\"Person\"}," + recipe +
             "]}"));
  judge(
      read("<!doctype html><html><script>var a = '<';</script><SCRIPT type='application/ld+json'>" +
           recipe + "</SCRIPT></html>"));
}

TEST(JsonLd, APlainTextOfInstructionsIsReadLineByLine) {
  const DishDraft draft = read(
      R"({"@type":"Recipe","name":"Toast","recipeYield":2,"recipeIngredient":"2 slices white bread\n10 g butter",
    "recipeInstructions":"Toast the bread.\nButter it."})");
  EXPECT_EQ(draft.portions.value, 2);
  EXPECT_EQ(draft.ingredients.size(), 2U);
  EXPECT_EQ(draft.method.size(), 2U);
}

TEST(JsonLd, WhatHoldsNoDishIsRefusedWithAWayOut) {
  for (const char* text : {"{}", "[]", "<html><body>Soup</body></html>", "{\"@type\":\"Person\"}",
                           "{\"@type\":", "<script type='application/ld+json'>{"}) {
    const auto draft = read_json_ld(text, "page.html", shipped_foods(),
                                    tests::shipped_task_times());
    ASSERT_FALSE(draft) << text;
    EXPECT_FALSE(draft.problems().front().remedy.empty());
  }
}

TEST(JsonLd, DurationsAreThoseOfIso8601) {
  // ISO 8601-1:2019, 5.5.2: PnDTnHnMnS, weeks, a decimal in the last part.
  EXPECT_EQ(iso_minutes("PT1H30M"), 90);
  EXPECT_EQ(iso_minutes("PT45M"), 45);
  EXPECT_EQ(iso_minutes("P1DT2H"), 26 * 60);
  EXPECT_EQ(iso_minutes("PT0.5H"), 30);
  EXPECT_EQ(iso_minutes("PT90S"), 1.5);
  EXPECT_EQ(iso_minutes("P1M"), std::nullopt);
  EXPECT_EQ(iso_minutes("45 min"), std::nullopt);
  EXPECT_EQ(iso_duration(Seconds(5400)), "PT1H30M");
  EXPECT_EQ(iso_duration(Seconds(0)), "PT0M");
}

TEST(JsonLd, AnExportedDishReadsBackWithTheSameIngredientsAndSteps) {
  int ingredients = 0;
  for (const auto& entry :
       std::filesystem::directory_iterator(BENCHBELL_SOURCE_DIR "/demo/dishes")) {
    const Dish dish = support::dish_file("demo/dishes/" + entry.path().filename().string());
    DishDraft draft = read(write_json_ld(dish));
    // "Salt and pepper", one line of the dish, is read as two foods.
    const auto same = [](const IngredientDraft& a, const IngredientDraft& b) {
      return a.line == b.line;
    };
    draft.ingredients.erase(std::unique(draft.ingredients.begin(), draft.ingredients.end(), same),
                            draft.ingredients.end());
    EXPECT_EQ(draft.name.value, dish.name);
    EXPECT_EQ(draft.portions.value, dish.portions);
    ASSERT_EQ(draft.ingredients.size(), dish.ingredients.size()) << dish.name;
    for (std::size_t i = 0; i < dish.ingredients.size(); ++i) {
      const Ingredient& was = dish.ingredients[i];
      const IngredientDraft& is = draft.ingredients[i];
      ++ingredients;
      const Quantity amount = quantity_of(was);
      EXPECT_EQ(is.quantity.value.least, amount.least) << dish.name << ": " << is.line;
      EXPECT_EQ(is.quantity.value.unit, amount.unit) << dish.name << ": " << is.line;
      EXPECT_EQ(is.optional, was.optional);
      const Food* food = food_of(was, shipped_foods());
      if (food == nullptr || is.food.value.empty()) continue;
      EXPECT_EQ(is.food.value, food->key) << dish.name << ": " << is.line;
    }
    // The reader may cut a step in two; its words are all there.
    for (const Step& step : dish.method)
      EXPECT_EQ(tests::lost_words(draft, step.says), "") << dish.name << ": " << step.says;
  }
  EXPECT_GT(ingredients, 50);
}

}  // namespace
