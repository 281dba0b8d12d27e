#include "safety/substitutes.h"

#include <gtest/gtest.h>

#include <set>

#include "sample.h"

namespace {

using namespace safety;
using samples::evidence;
using samples::shipped_substitutes;

std::set<std::string> foods_for(const std::string& food, Function function) {
  std::set<std::string> out;
  for (const Substitute* row : substitutes_for(shipped_substitutes(), food, function)) {
    for (const Part& part : row->parts) out.insert(part.food);
  }
  return out;
}

kitchen::Dish with_egg(const std::string& says, std::initializer_list<std::string> more = {}) {
  kitchen::Dish dish = samples::dish("A dish", {"egg_whole"});
  for (const std::string& key : more) dish.ingredients.push_back(samples::of_food(key));
  samples::add_step(dish, says, {0});
  return dish;
}

std::optional<Function> guessed(const std::string& says) {
  return likely_function(with_egg(says), 0, tests::shipped_foods(), shipped_substitutes());
}

TEST(Substitutes, BindingEggIsNotFoamingEgg) {
  EXPECT_TRUE(foods_for("egg_whole", Function::kFoaming).contains("aquafaba"));
  EXPECT_FALSE(foods_for("egg_whole", Function::kFoaming).contains("apple_sauce"));
  EXPECT_FALSE(foods_for("egg_whole", Function::kFoaming).contains("banana"));
  EXPECT_FALSE(foods_for("egg_whole", Function::kFoaming).contains("linseed"));
  EXPECT_TRUE(foods_for("egg_whole", Function::kBinding).contains("linseed"));
  EXPECT_FALSE(foods_for("egg_whole", Function::kSetting).contains("aquafaba"));
}

TEST(Substitutes, NoRowPutsBackWhatItTakesAway) {
  for (const Substitute& row : shipped_substitutes()) {
    EXPECT_FALSE(row.source.empty());
    for (const std::string& food : row.foods) {
      for (const Part& part : row.parts) EXPECT_NE(part.food, food);
    }
  }
}

TEST(Substitutes, AnEggIsReplacedByFoodsWithoutEgg) {
  for (const Substitute& row : shipped_substitutes()) {
    if (row.foods.front() != "egg_whole") continue;
    EXPECT_NE(brought_by(row, evidence())[at(Allergen::kEggs)], Stated::kContains)
        << row.method_change;
  }
}

TEST(Substitutes, WhatTheSubstituteBringsIsFromTheTable) {
  const auto rows = substitutes_for(shipped_substitutes(), "whole_milk", Function::kLiquid);
  bool oat = false;
  for (const Substitute* row : rows) {
    if (row->parts.front().food != "oat_drink") continue;
    oat = true;
    EXPECT_EQ(brought_by(*row, evidence())[at(Allergen::kGluten)], Stated::kContains);
    EXPECT_EQ(brought_by(*row, {Allergen::kGluten, Reach::kEat}, evidence()), Stated::kContains);
  }
  EXPECT_TRUE(oat);
}

// 2 eggs, 7 g linseed and 45 ml water an egg: 14 g and 90 ml.
TEST(Substitutes, AmountsGrowWithTheIngredient) {
  const Substitute&
      linseed = *substitutes_for(shipped_substitutes(), "egg_whole", Function::kBinding).front();
  kitchen::Ingredient eggs = samples::of_food("egg_whole");
  eggs.amount = 2;
  eggs.unit = "eggs";
  const auto words = amount_words(linseed, eggs, tests::shipped_foods());
  EXPECT_NE(words.find("14 g "), std::string::npos) << words;
  EXPECT_NE(words.find("90 ml "), std::string::npos) << words;
  eggs.unit = "g";
  eggs.amount = 100;  // two eggs of 50 g
  EXPECT_EQ(amount_words(linseed, eggs, tests::shipped_foods()), words);
  eggs.amount = 0;
  EXPECT_NE(amount_words(linseed, eggs, tests::shipped_foods()).find("for each egg"),
            std::string::npos);
}

TEST(LikelyFunction, IsReadFromTheWordsOfTheMethod) {
  EXPECT_EQ(guessed("Whisk the eggs and sugar until pale and thick."), Function::kFoaming);
  EXPECT_EQ(guessed("Brush with beaten egg."), Function::kGlazing);
  EXPECT_EQ(guessed("Mix with the mince and shape four burgers."), Function::kBinding);
  EXPECT_EQ(guessed("Dip in egg, then in crumbs."), Function::kCoating);
  EXPECT_EQ(guessed("Pour in and bake until the custard is firm."), Function::kSetting);
  EXPECT_EQ(guessed("Look at it."), std::nullopt);
}

TEST(LikelyFunction, ASpongeNeedsTheFoamOfItsEggs) {
  EXPECT_EQ(guessed("Whisk eggs and sugar until the whisk leaves a trail, for the sponge cake."),
            Function::kFoaming);
}

TEST(Substitutes, EveryFaultOfATableIsTold) {
  const auto read = read_substitutes(
      "foods,function,per,use,method_change,does_not,source\n"
      "egg_whole,glueing,1 eg,water,stir,,memory\n"
      "salt,flavour,5 g,salt=5 g,stir,,memory\n",
      "own.csv", tests::shipped_foods());
  ASSERT_FALSE(read);
  std::vector<std::string> told;
  for (const auto& p : read.problems()) told.push_back(p.code + " " + p.where);
  EXPECT_EQ(told, (std::vector<std::string>{
                      "substitutes.value line 2, function", "substitutes.value line 2, per",
                      "substitutes.value line 2, use", "substitutes.self line 3, use"}));
}

}  // namespace
