#include "print/say_allergens.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "../safety/sample.h"

namespace {

using testing::HasSubstr;
using testing::Not;

class AllergenSheet : public ::testing::Test {
 protected:
  AllergenSheet() {
    kitchen::Dish scones = samples::dish("Scones", {"plain_flour", "butter_salted"});
    samples::add_step(scones, "Rub the butter in.", {0, 1}, {"scales"});
    kitchen::Dish salad = samples::dish("Salad", {"carrot"});
    samples::add_step(salad, "Weigh.", {0}, {"scales"});
    lesson_ = samples::lesson({scones, salad}, {{0}, {0}, {1}});
    lesson_.cooks[1].avoids = {kitchen::Allergen::kMilk};
    needs_ = safety::needs_in(lesson_);
    sheet_.lessons.push_back(
        {lesson_, needs_,
         safety::conflicts({lesson_, needs_, evidence_, samples::shipped_substitutes(), known_}),
         safety::order_at_things(lesson_, needs_, evidence_)});
  }

  std::string said(bool details = false) const {
    return print::say_allergens(sheet_, {details, 80, false});
  }

  safety::Evidence evidence_ = samples::evidence();
  kitchen::Lesson lesson_;
  safety::LessonNeeds needs_;
  std::vector<kitchen::Dish> known_;
  print::AllergenSheet sheet_{{}, {}, {}, evidence_};
};

TEST_F(AllergenSheet, TheCautionStandsUnderEverySheet) {
  EXPECT_THAT(said(), HasSubstr("Labels and the school's own records decide"));
  EXPECT_THAT(said(true), HasSubstr("\"Not listed\" is not"));
  EXPECT_THAT(print::say_allergens({{}, {}, {}, evidence_}, {}),
              HasSubstr("Labels and the school's own records decide"));
  EXPECT_THAT(print::allergens_json({{}, {}, {}, evidence_}), HasSubstr("records decide"));
}

TEST_F(AllergenSheet, OnlyCooksWithANeedAppear) {
  EXPECT_THAT(said(), HasSubstr("Cook B, A2: milk, may not eat"));
  EXPECT_THAT(said(), Not(HasSubstr("Cook C, B1")));
  EXPECT_THAT(said(), HasSubstr("Scones: contains milk"));
}

TEST_F(AllergenSheet, NothingIsCalledFreeFromOrSafe) {
  std::string text = said(true);
  text.resize(text.find("Labels and the school's own records"));
  EXPECT_THAT(text, Not(HasSubstr("free from")));
  EXPECT_THAT(text, Not(HasSubstr(" safe")));
}

TEST_F(AllergenSheet, WordsStandWhereOthersUseColour) {
  EXPECT_THAT(said(), HasSubstr("gluten        contains         not listed"));
}

TEST_F(AllergenSheet, ADishSaysWhichDietsItDoesNotFitAndWhy) {
  const print::AllergenSheet mousse{
      {samples::dish("Mousse", {"gelatine", "raspberries"})}, {}, {}, evidence_};
  const std::string text = print::say_allergens(mousse, {});
  EXPECT_THAT(text, HasSubstr("Does not fit"));
  EXPECT_THAT(text, HasSubstr("vegetarian, vegan and no gelatine"));
  EXPECT_THAT(text, HasSubstr("Check labels for"));
}

TEST_F(AllergenSheet, MachinesReadTheSame) {
  const auto json = nlohmann::json::parse(print::allergens_json(sheet_));
  const auto& lesson = json["lessons"][0];
  EXPECT_EQ(lesson["dishes"][0]["allergens"]["milk"], "contains");
  EXPECT_EQ(lesson["dishes"][0]["allergens"].size(), 14U);
  EXPECT_EQ(lesson["needs"][0]["reach"], "may not eat");
  EXPECT_EQ(lesson["conflicts"][0]["seriousness"], "change it");
  EXPECT_FALSE(lesson["order"].empty());
}

}  // namespace
