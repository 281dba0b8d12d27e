#include "kitchen/foods.h"

#include <gtest/gtest.h>

#include "../../support/shipped_foods.h"

namespace {

using namespace kitchen;
using tests::shipped_foods;

std::string first(std::string_view words) {
  const auto found = shipped_foods().search(words);
  return found.empty() ? "" : found.front().food->key;
}

TEST(Foods, TheShippedTableHoldsEnoughAndEveryNameIsOneFoods) {
  EXPECT_GE(shipped_foods().all().size(), 350U);
  for (const Food& food : shipped_foods().all()) {
    ASSERT_EQ(shipped_foods().named(food.name), &food) << food.name;
    EXPECT_FALSE(food.source.empty()) << food.name;
  }
}

TEST(Foods, BritishAndAmericanNamesMeanTheSame) {
  EXPECT_EQ(shipped_foods().named("Scallions")->key, "spring_onion");
  EXPECT_EQ(shipped_foods().named("spring onion")->key, "spring_onion");
  EXPECT_EQ(shipped_foods().named("zucchini")->key, "courgette");
  EXPECT_EQ(shipped_foods().named("pepper")->key, "black_pepper");
  EXPECT_EQ(shipped_foods().named("Peppers")->key, "red_pepper");
}

TEST(Foods, SearchBearsMisspellingWordOrderAndBeginnings) {
  EXPECT_EQ(first("tomatos choped tinned"), "chopped_tomatoes_tinned");
  EXPECT_EQ(first("corgette"), "courgette");
  EXPECT_EQ(first("flour self raising"), "self_raising_flour");
  EXPECT_EQ(first("brocoli"), "broccoli");
  EXPECT_EQ(first("xqzv"), "");
  EXPECT_EQ(first(""), "");
}

TEST(Foods, TheSchoolsOwnFoodWinsOverTheShippedOne) {
  const auto own = read_foods(
      "key,name,other_names,match,source,sugars_g\n"
      "our_ketchup,Tomato ketchup,red sauce,label,packet of 12 May,19\n",
      "own.csv");
  ASSERT_TRUE(own);
  const Foods both = shipped_foods().with(own.value());
  EXPECT_EQ(both.named("tomato ketchup")->key, "our_ketchup");
  EXPECT_EQ(both.named("tomato ketchup")->source, "packet of 12 May");
  EXPECT_EQ(both.named("tomato ketchup")->nutrients[Nutrient::kSugars], 19.0);
  EXPECT_EQ(both.named("tomato ketchup")->nutrients[Nutrient::kFat], std::nullopt);
}

TEST(Foods, AMissingFigureIsNotNone) {
  const Food& coconut = *shipped_foods().find("coconut_milk");
  EXPECT_EQ(coconut.nutrients[Nutrient::kSugars], std::nullopt);
}

TEST(Foods, EveryFaultOfATableIsToldWithItsLine) {
  const auto bad = read_foods(
      "key,name,fat_g,contains,units,vegan\n"
      "a,A,101x,fishes,clove:3,perhaps\n"
      "a,B,,,,\n",
      "own.csv");
  ASSERT_FALSE(bad);
  std::vector<std::string> places;
  for (const auto& p : bad.problems()) places.push_back(p.code + " " + p.where);
  EXPECT_EQ(places,
            (std::vector<std::string>{"foods.value line 2, fat_g", "foods.value line 2, units",
                                      "foods.value line 2, contains", "foods.value line 2, vegan",
                                      "foods.key_twice line 3, key"}));
}

TEST(Foods, OneOfManyIsFoundInTheSingular) {
  EXPECT_EQ(singular("tomatoes"), "tomato");
  EXPECT_EQ(singular("leaves"), "leaf");
  EXPECT_EQ(singular("berries"), "berry");
  EXPECT_EQ(singular("couscous"), "couscous");
  EXPECT_EQ(singular("radishes"), "radish");
  EXPECT_EQ(singular("peas"), "pea");
  EXPECT_EQ(singular("chillies"), "chilli");
}

}  // namespace
