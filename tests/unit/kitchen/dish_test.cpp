#include "kitchen/dish.h"

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "samples.h"

namespace {

using namespace kitchen;

TEST(Dish, ContainsWhatItsIngredientsContain) {
  const Dish dish = samples::read_dish(samples::dish());
  EXPECT_EQ(allergens(dish), (Allergens{Allergen::kGluten, Allergen::kMilk}));
}

TEST(Dish, AStepBringsOnlyTheAllergensOfWhatItUses) {
  const Dish dish = samples::read_dish(samples::dish());
  EXPECT_EQ(allergens(dish, 0), Allergens{Allergen::kGluten});  // weighing the flour
  EXPECT_EQ(allergens(dish, 4), allergens(dish));               // filling names nothing: anything
}

TEST(Dish, AnUnreadLabelCountsAsAllFourteen) {
  auto text = samples::dish();
  text["ingredients"][0]["label_read"] = false;
  EXPECT_EQ(allergens(samples::read_dish(text)).size(), 14U);
}

TEST(Dish, IsReadyWithTheLastStepOfItsMethod) {
  EXPECT_EQ(last_step(samples::read_dish(samples::dish())), 4);
}

TEST(Dish, IsReadInTheOrderOfItsWaitsAndAsWrittenOtherwise) {
  auto text = samples::dish();
  text["method"][0]["follows"] = {"rub-in"};  // weighing after rubbing in
  text["method"][1]["follows"] = nlohmann::json::array();
  text["method"][2]["follows"] = {"weigh"};
  EXPECT_EQ(reading_order(samples::read_dish(text)), (std::vector<int>{1, 0, 2, 3, 4}));
}

TEST(Dish, StepsThatStartTogetherAreReadAsWritten) {
  auto text = samples::dish();
  const auto together = [](const char* step) {
    return nlohmann::json{{"step", step}, {"from", "start"}};
  };
  text["method"][0]["follows"] = {together("rub-in")};
  text["method"][1]["follows"] = {together("weigh")};
  EXPECT_EQ(reading_order(samples::read_dish(text)), (std::vector<int>{0, 1, 2, 3, 4}));
}

}  // namespace
