#include "nutrition/cooking.h"

#include <gmock/gmock.h>

#include "../../support/nutrition_tables.h"

namespace {

using namespace nutrition;
using tests::calculated;
using tests::cooking_tables;

constexpr const char*
    kYieldHead = "id,what,foods,cooking,kind,yield,least,most,source,confidence\n";
constexpr const char* kRetentionHead = "cooking,nutrient,kept,source,confidence\n";

TEST(Cooking, EveryShippedYieldLiesInItsBandAndSaysWhereItIsFrom) {
  EXPECT_EQ(cooking_tables().yields().size(), 59U);
  for (const Yield& row : cooking_tables().yields()) {
    EXPECT_LE(row.least, row.share) << row.id;
    EXPECT_GE(row.most, row.share) << row.id;
    EXPECT_FALSE(row.source.empty()) << row.id;
    EXPECT_FALSE(row.confidence.empty()) << row.id;
    for (const std::string& food : row.foods) {
      if (food.starts_with("mix:")) continue;
      EXPECT_NE(tests::shipped_foods().find(food), nullptr) << row.id << ' ' << food;
    }
  }
}

TEST(Cooking, ARowIsFoundByFoodHeatAndKind) {
  EXPECT_EQ(cooking_tables().yield("chicken_breast", Cooking::kBaked, YieldKind::kLoss)->id,
            "DY007");
  EXPECT_EQ(cooking_tables().yield("chicken_breast", Cooking::kBoiled, YieldKind::kLoss)->id,
            "DY008");
  EXPECT_EQ(cooking_tables().yield("chicken_breast", Cooking::kFried, YieldKind::kLoss), nullptr);
  EXPECT_EQ(cooking_tables().yield("macaroni_dry", Cooking::kRaw, YieldKind::kUptake)->id, "DY018");
}

TEST(Cooking, VitaminsAreLostInHeatAndMineralsAreNot) {
  EXPECT_DOUBLE_EQ(cooking_tables().kept(Cooking::kBoiled, Nutrient::kVitaminC), 0.5);
  EXPECT_DOUBLE_EQ(cooking_tables().kept(Cooking::kRaw, Nutrient::kVitaminC), 1);
  EXPECT_DOUBLE_EQ(cooking_tables().kept(Cooking::kBoiled, Nutrient::kIron), 1);
}

TEST(Cooking, EveryFaultOfTheTablesIsTold) {
  const auto read = read_cooking(
      std::string(kYieldHead) + "X1,x,onion,charred,loss,0,1,1,s,c\n",
      std::string(kRetentionHead) + "boiled,sparkle,0.5,s,c\nboiled,iron_mg,1.5,s,c\n");
  ASSERT_FALSE(read);
  std::vector<std::string> where;
  for (const auto& problem : read.problems()) {
    EXPECT_EQ(problem.code, "cooking.value");
    EXPECT_FALSE(problem.remedy.empty());
    where.push_back(problem.file + " " + problem.where);
  }
  EXPECT_THAT(where,
              testing::ElementsAre("yields.csv line 2, cooking", "yields.csv line 2, yield",
                                   "retention.csv line 2, nutrient", "retention.csv line 3, kept"));
  EXPECT_EQ(read_cooking("id\n1\n", kRetentionHead).problems().front().code, "cooking.column");
}

// One dish from its ingredients (JSON) and method (JSON).
kitchen::Dish dish(const std::string& ingredients, const std::string& method) {
  const auto read = kitchen::read_dish(
      R"({"kind":"dish","version":1,"name":"Test","portions":2,"ingredients":[)" + ingredients +
          R"(],"method":[)" + method + "]}",
      "test.json");
  if (!read) throw std::runtime_error(read.problems().front().message);
  return read.value();
}

TEST(Cooking, PastaThatIsDrainedTakesUpWaterAndItsWaterIsPouredAway) {
  const auto held = calculated(dish(
      R"({"name":"macaroni","amount":100,"unit":"g","food":"macaroni_dry"},
         {"name":"water","amount":1000,"unit":"ml","food":"water"})",
      R"({"id":"boil","do":"Boil the macaroni in the water.","minutes":10,"heat":{"ring":"pan"}},
         {"id":"drain","do":"Drain it.","minutes":1,"closes":"boil"})"));
  EXPECT_EQ(held.lines[0].cooked.yield_id, "DY018");
  EXPECT_EQ(held.lines[0].cooked.heats, std::vector{Cooking::kBoiled});
  EXPECT_NEAR(held.served_grams, 220, 1e-9);
}

TEST(Cooking, LentilsSimmeredInWaterThatIsEatenDoNotTakeItUpTwice) {
  const auto held = calculated(dish(
      R"({"name":"lentils","amount":100,"unit":"g","food":"red_lentils_dry"},
         {"name":"water","amount":400,"unit":"ml","food":"water"})",
      R"({"id":"simmer","do":"Simmer the lentils in the water.","minutes":20,"heat":{"ring":"pan"}})"));
  EXPECT_EQ(held.lines[0].cooked.heats, std::vector{Cooking::kSimmered});
  EXPECT_EQ(held.lines[0].cooked.yield_id, "");
  EXPECT_NEAR(held.served_grams, 500, 1e-9);
}

TEST(Cooking, WhatIsRubbedInIsBakedThoughTheBakingStepDoesNotNameIt) {
  const auto held = calculated(dish(
      R"({"name":"flour","amount":200,"unit":"g","food":"plain_flour"},
         {"name":"butter","amount":100,"unit":"g","food":"butter_unsalted"},
         {"name":"lettuce","amount":50,"unit":"g","food":"lettuce_cos"})",
      R"({"id":"rub","do":"Rub in.","minutes":5,"follows":[],"uses":["flour","butter"]},
         {"id":"bake","do":"Bake until pale gold.","minutes":15,"heat":{"oven":"tray","celsius":180}},
         {"id":"salad","do":"Shred the lettuce.","minutes":3,"follows":[],"uses":["lettuce"]},
         {"id":"plate","do":"Plate it.","minutes":1,"follows":["bake","salad"]})"));
  EXPECT_EQ(held.lines[1].cooked.yield_id, "DY036");
  EXPECT_TRUE(held.lines[2].cooked.heats.empty());
  EXPECT_NEAR(held.served_grams, 300 * 0.88 + 50, 1e-9);
}

TEST(Cooking, ASpongeAndABreadLoseAsAWholeAndACrumbleOnFruitHasNoFigure) {
  const std::string bake = R"({"id":"mix","do":"Mix.","minutes":5,"uses":["a","b","c"]},
      {"id":"bake","do":"Bake.","minutes":15,"heat":{"oven":"tin","celsius":180}})";
  const auto of = [&](const char* a, const char* b, const char* c, const char* grams) {
    const auto one = [](const char* name, const char* food, const std::string& g) {
      return std::string(R"({"name":")") + name + R"(","amount":)" + g + R"(,"unit":"g","food":")" +
             food + "\"}";
    };
    return calculated(
               dish(one("a", a, "100") + "," + one("b", b, grams) + "," + one("c", c, "100"), bake))
        .lines[0]
        .cooked.yield_id;
  };
  EXPECT_EQ(of("plain_flour", "egg_whole", "caster_sugar", "100"), "DY035");
  EXPECT_EQ(of("strong_white_flour", "yeast_fast_action", "water", "5"), "DY034");
  EXPECT_EQ(of("plain_flour", "apple_cooking", "butter_unsalted", "600"), "");
}

TEST(Cooking, OnionSoftenedAndThenSimmeredLosesNothingToTheAir) {
  const auto held = calculated(dish(
      R"({"name":"onion","amount":100,"unit":"g","food":"onion"},
         {"name":"tomatoes","amount":400,"unit":"g","food":"chopped_tomatoes_tinned"})",
      R"({"id":"soften","do":"Soften the onion.","minutes":5,"uses":["onion"],"heat":{"ring":"pan"}},
         {"id":"simmer","do":"Add the tomatoes and simmer.","minutes":15,"uses":["tomatoes"],"heat":{"ring":"pan"}})"));
  EXPECT_EQ(held.lines[0].cooked.heats, (std::vector{Cooking::kFried, Cooking::kSimmered}));
  EXPECT_DOUBLE_EQ(held.lines[0].cooked.weight, 1);
  EXPECT_THAT(held.lines[0].cooked.why, testing::HasSubstr("stays in the dish"));
  // Of vitamin C the lower of 0.70 (fried) and 0.65 (simmered) is left.
  EXPECT_DOUBLE_EQ(held.total(Nutrient::kVitaminC).parts[0].kept, 0.65);
}

TEST(Cooking, TheGrillReachesWhatWasMixedInButNotTheSaladMadeBefore) {
  const auto held = calculated(dish(
      R"({"name":"pork mince","amount":250,"unit":"g","food":"pork_mince"},
         {"name":"apple","amount":60,"unit":"g","food":"apple_eating"},
         {"name":"cabbage","amount":100,"unit":"g","food":"white_cabbage"})",
      R"({"id":"slaw","do":"Shred it finely.","minutes":5,"follows":[],"uses":["cabbage"]},
         {"id":"shape","do":"Mix and shape.","minutes":5,"follows":["slaw"],"uses":["pork mince","apple"]},
         {"id":"grill","do":"Grill.","minutes":10,"follows":["shape"],"uses":["pork mince"],"heat":{"grill":"tray"}},
         {"id":"turn","do":"Turn them over.","minutes":5,"follows":["grill"],"heat":{"grill":"tray"}})"));
  EXPECT_EQ(held.lines[1].cooked.heats.size(), 2U);
  EXPECT_TRUE(held.lines[2].cooked.heats.empty());
}

TEST(Cooking, BothTablesCanBeSwitchedOff) {
  const auto held = calculated(tests::macaroni(), {.yields = false, .retention = false});
  EXPECT_DOUBLE_EQ(held.served_grams, 330);
  EXPECT_DOUBLE_EQ(held.whole(Nutrient::kVitaminC).amount, 7.4);
  EXPECT_TRUE(held.retention_source.empty());
}

}  // namespace
