// Tasting before cooking. That raw egg and raw flour must not be tasted is the advice of the Food
// Standards Agency (from memory); the order of steps is worked out by hand here.
#include "kitchen/raw_tasting.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "kitchen/check_lesson.h"
#include "samples.h"

namespace {

using namespace kitchen;
using nlohmann::json;
using ::testing::Contains;
using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;

Step saying(const char* sentence) {
  Step step;
  step.says = sentence;
  return step;
}

Dish scones_with(int step, const char* sentence) {
  json text = samples::dish();
  text["method"][static_cast<std::size_t>(step)]["do"] = sentence;
  return samples::read_dish(text);
}

TEST(RawTasting, AStepTellsToTasteOnlyWhenTheCookIsToPutSomethingInTheMouth) {
  EXPECT_TRUE(says_to_taste(saying("Off the ring; taste and season.")));
  EXPECT_TRUE(says_to_taste(saying("Lick the spoon.")));
  EXPECT_FALSE(says_to_taste(saying("Season to taste.")));
  EXPECT_FALSE(says_to_taste(saying("Do not taste the mixture.")));
  EXPECT_FALSE(says_to_taste(saying("Stir in the tasty bits.")));
}

TEST(RawTasting, DoughWithFlourInItIsRawUntilItIsBaked) {
  // Flour goes in at step 0; step 2 bakes.
  EXPECT_THAT(tasted_raw(scones_with(1, "Rub in the butter and taste.")), ElementsAre(1));
  EXPECT_THAT(tasted_raw(scones_with(4, "Split, butter and taste them.")), IsEmpty());
}

TEST(RawTasting, WhatStewsBesideTheRawDoughMayBeTasted) {
  json text = samples::dish();
  text["ingredients"].push_back({{"name", "plums"}, {"amount", 100}, {"unit", "g"}});
  const json stew = {{"id", "stew"},
                     {"do", "Taste the plums."},
                     {"minutes", 3},
                     {"uses", {"plums"}},
                     {"follows", json::array()}};
  text["method"].insert(text["method"].begin(), stew);
  text["method"][1]["follows"] = json::array();
  EXPECT_THAT(tasted_raw(samples::read_dish(text)), IsEmpty());
}

TEST(RawTasting, EggThatNoStepNamesMayBeInFromTheBeginning) {
  json text = samples::dish();
  text["ingredients"].push_back({{"name", "beaten egg"}, {"amount", 1}, {"unit", "egg"}});
  text["method"][0]["uses"] = {"butter"};
  text["method"][0]["do"] = "Taste the butter.";
  EXPECT_THAT(tasted_raw(samples::read_dish(text)), ElementsAre(0));
  EXPECT_THAT(raw_in(samples::read_dish(text)), ElementsAre("egg", "flour"));
}

TEST(RawTasting, EggNoodlesAreNoRawEggAndCornflourIsNoFlour) {
  json text = samples::dish();
  text["ingredients"] = {{{"name", "egg noodles"}}, {{"name", "cornflour"}}, {{"name", "butter"}}};
  text["method"][0]["uses"] = {"butter"};
  text.erase("variants");
  EXPECT_THAT(raw_in(samples::read_dish(text)), IsEmpty());
}

TEST(RawTasting, AStepMarkedRawIsNamedByItsMeatOrFish) {
  json text = samples::dish();
  text["method"][0]["hygiene"] = "raw";
  EXPECT_THAT(raw_in(samples::read_dish(text)), ElementsAre("flour"));
  text["ingredients"].push_back({{"name", "turkey mince"}, {"amount", 100}, {"unit", "g"}});
  EXPECT_THAT(raw_in(samples::read_dish(text)), ElementsAre("flour", "meat"));
}

TEST(RawTasting, TheRuleIsSaidWhereverSomethingRawIsMixed) {
  json text = samples::lesson();
  EXPECT_THAT(notes(samples::read_lesson(text)), Not(Contains(HasSubstr("nobody tastes"))));
  text["house_rules"]["no_raw_tasting"] = true;
  EXPECT_THAT(notes(samples::read_lesson(text)),
              Contains("House rule: nobody tastes or licks a raw mixture. Raw until it is cooked: "
                       "flour in Cheese scones."));
}

}  // namespace
