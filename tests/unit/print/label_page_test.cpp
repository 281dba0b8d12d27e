// What is said of a dish's nutrition.
#include <gmock/gmock.h>

#include "../../support/nutrition_tables.h"
#include "kitchen/json_tree.h"
#include "nutrition/compare.h"
#include "print/say_compared.h"
#include "print/say_developed.h"
#include "print/say_label.h"

namespace {

using testing::HasSubstr;
using testing::Not;

std::string page(const kitchen::Dish& dish, const print::LabelPage& how = {}) {
  return print::say_label(tests::calculated(dish), tests::cooking_tables(), how);
}

TEST(LabelPage, SaysThePortionTheHundredGramsAndTheCautions) {
  const std::string said = page(tests::macaroni());
  EXPECT_THAT(said, HasSubstr("2 portions of 233 g as served"));
  EXPECT_THAT(said, HasSubstr("2038 kJ"));
  EXPECT_THAT(said, HasSubstr("209 kcal"));
  EXPECT_THAT(said, HasSubstr("labels of your own packets win"));
  EXPECT_THAT(said, HasSubstr("Not medical advice"));
}

TEST(LabelPage, NeverShowsAColourWithoutItsWordAndPattern) {
  const std::string said = page(tests::macaroni());
  EXPECT_THAT(said, HasSubstr("[###] saturates  high (red)"));
  EXPECT_THAT(said, HasSubstr("[   ] salt       low (green)"));
}

TEST(LabelPage, SaysWhatIsMissingAndWhy) {
  auto stranger = tests::ingredient("", 5);
  stranger.name = "dragon\nscales";
  stranger.food.clear();
  const std::string said = page(
      tests::stirred({tests::ingredient("potato", 200), tests::ingredient("salt", 0, ""),
                      tests::ingredient("coconut_milk", 100), stranger}));
  EXPECT_THAT(said, HasSubstr("salt: how much goes in is not said, so salt can be more."));
  EXPECT_THAT(said, HasSubstr("coconut_milk (100 g): the table does not say"));
  EXPECT_THAT(said, HasSubstr("dragon scales: No food of the table is called"));
  EXPECT_THAT(said, HasSubstr("[ ? ] salt"));
}

TEST(LabelPage, DetailsOpenEveryFigureDownToItsSource) {
  EXPECT_THAT(page(tests::macaroni()), Not(HasSubstr("SR26")));
  const std::string said = page(tests::macaroni(),
                                {.details = true, .band = nutrition::Band::kBoys15});
  EXPECT_THAT(said, HasSubstr("USDA SR26 20499"));
  EXPECT_THAT(said, HasSubstr("DY018"));
  EXPECT_THAT(said, HasSubstr("of which 70 % are left after cooking"));
  EXPECT_THAT(said, HasSubstr("boys 15 to 18"));
}

TEST(LabelPage, ForMachinesIsADocumentWithNullWhereNothingBoundsTheMissing) {
  base::Problems problems;
  const auto dish = tests::stirred(
      {tests::ingredient("potato", 200), tests::ingredient("salt", 0, "")});
  const auto read = kitchen::parse_json(
      print::label_json(tests::calculated(dish), tests::cooking_tables(), {}), "label.json",
      problems);
  ASSERT_TRUE(read);
  const kitchen::Node& salt = read->find("lines")->items.back();
  EXPECT_EQ(salt.find("name")->text, "salt");
  EXPECT_EQ(salt.find("portion")->find("known")->text, "at least");
  EXPECT_EQ(salt.find("portion")->find("most")->kind, kitchen::Node::Kind::kNull);
  EXPECT_EQ(read->find("ingredients")->items.size(), 2U);
}

TEST(LabelPage, VersionsStandSideBySide) {
  kitchen::Dish with_oil = tests::macaroni();
  with_oil.name = "With oil";
  with_oil.ingredients[2] = tests::ingredient("rapeseed_oil", 20);
  std::vector<nutrition::Version> versions;
  for (const kitchen::Dish& dish : {tests::macaroni(), with_oil}) {
    nutrition::Version version;
    version.name = dish.name;
    version.nutrients = tests::calculated(dish);
    version.allergens = nutrition::allergens_of(dish,
                                                nutrition::foods_of(dish, tests::shipped_foods()));
    version.pence = 74;
    versions.push_back(std::move(version));
  }
  const std::string said = print::say_compared(versions);
  EXPECT_THAT(said, HasSubstr("B  With oil"));
  EXPECT_THAT(said, HasSubstr("saturates is"));
  EXPECT_THAT(said, HasSubstr("A contains gluten and milk"));
  EXPECT_THAT(said, HasSubstr("pence"));
  EXPECT_THAT(said, Not(HasSubstr("minutes")));
}

nutrition::DevelopAsked asked(const char* goal, double share) {
  nutrition::DevelopAsked out;
  out.dish = tests::macaroni();
  out.foods = nutrition::foods_of(out.dish, tests::shipped_foods());
  const auto held = tests::calculated(out.dish);
  out.allowed = nutrition::usual_changes(out.dish, held, share);
  const auto goals = nutrition::read_goal(goal, held.portion_grams());
  out.goals = goals.value();
  return out;
}

TEST(LabelPage, ASmallestChangeIsSaidInGramsWithBeforeAndAfter) {
  const auto what = asked("fat at most 15 g", 0.5);
  const auto developed = nutrition::develop(what, tests::cooking_tables());
  const std::string said = print::say_developed(what, developed.value());
  EXPECT_THAT(said, HasSubstr("The smallest change that does it:"));
  EXPECT_THAT(said, HasSubstr("g instead of"));
  EXPECT_THAT(said, HasSubstr("taste it before a class does"));
}

TEST(LabelPage, WhatStopsAChangeIsSaidWithItsFigures) {
  const auto what = asked("fat at most 3 g", 0.1);
  const auto developed = nutrition::develop(what, tests::cooking_tables());
  const std::string said = print::say_developed(what, developed.value());
  EXPECT_THAT(said, HasSubstr("No change within these bounds does it."));
  EXPECT_THAT(said, HasSubstr("The nearest that can be reached is fat at most"));
}

}  // namespace
