#include "safety/food_allergens.h"

#include <gtest/gtest.h>

#include "sample.h"

namespace {

using namespace safety;
using tests::shipped_foods;

TEST(FoodAllergens, TheTableAddsWhatTheDishForgotAndAnUnreadLabelCounts) {
  const auto dish = with_food_allergens(samples::dish("Pasta", {"pesto_green"}), shipped_foods());
  EXPECT_EQ(dish.ingredients[0].contains,
            (Allergens{Allergen::kMilk, Allergen::kNuts, Allergen::kEggs}));
}

TEST(FoodAllergens, AReadLabelTakesOnlyTheDoubtAway) {
  const Labels read = {{"pesto_green", "jar", "today", {}, {Allergen::kNuts}, true}};
  const auto dish = with_food_allergens(samples::dish("Pasta", {"pesto_green"}), shipped_foods(),
                                        read);
  EXPECT_EQ(dish.ingredients[0].contains, (Allergens{Allergen::kMilk, Allergen::kNuts}));
}

TEST(FoodAllergens, NamesThatAreOnlyAlikeAndFoodsInNoTableChangeNothing) {
  kitchen::Dish dish;
  dish.ingredients.resize(2);
  dish.ingredients[0].name = "pesto from the garden";
  dish.ingredients[0].contains = {Allergen::kMilk};
  dish.ingredients[1].name = "xqzv";
  EXPECT_EQ(with_food_allergens(dish, shipped_foods()), dish);
}

TEST(FoodAllergens, NothingDeclaredIsEverRemoved) {
  kitchen::Dish dish = samples::dish("Salad", {"carrot"});
  dish.ingredients[0].contains = {Allergen::kCelery};
  EXPECT_EQ(with_food_allergens(dish, shipped_foods()), dish);
}

TEST(FoodAllergens, NotesNameTheLabelsThatMatterAndNoOthers) {
  auto lesson = samples::lesson({samples::dish("Pasta", {"pesto_green"})}, {{0}, {0}});
  EXPECT_FALSE(allergens_matter(lesson));
  EXPECT_TRUE(notes_on_labels(lesson, shipped_foods()).empty());
  lesson.cooks[1].avoids = {Allergen::kEggs};
  EXPECT_TRUE(allergens_matter(lesson));
  const auto notes = notes_on_labels(lesson, shipped_foods());
  ASSERT_EQ(notes.size(), 1U);
  EXPECT_NE(notes[0].find("(eggs)"), std::string::npos) << notes[0];
  EXPECT_EQ(notes[0].find("nuts"), std::string::npos) << notes[0];
}

TEST(FoodAllergens, AHouseWithoutNutsMattersThoughNobodyAvoidsThem) {
  auto lesson = samples::lesson({samples::dish("Pasta", {"pesto_green"})}, {{0}});
  lesson.rules.nuts = false;
  EXPECT_TRUE(allergens_matter(lesson));
  EXPECT_EQ(notes_on_labels(lesson, shipped_foods()).size(), 1U);
}

}  // namespace
