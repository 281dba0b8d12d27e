#include "print/sheets/cook_sheet.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "look_at_pdf.h"
#include "sample.h"

namespace {

using namespace print::sheets;
using testing::HasSubstr;
using testing::Not;

TEST(CookSheet, says_every_start_of_its_cook_and_nobody_elses_name) {
  const sample::Told told = sample::two_waves();
  CookSheets how;
  how.cooks = {3};
  const std::string said = look::words(pdf_of_cook_sheets({told.lesson, told.answer, ""}, how));
  for (const timeplan::Task& task : told.answer.plan->tasks) {
    if (task.cook != 3) continue;
    EXPECT_THAT(said, HasSubstr(kitchen::clock(told.lesson, task.start)));
  }
  EXPECT_THAT(said, HasSubstr(told.lesson.cooks[3].name));
  EXPECT_THAT(said, Not(HasSubstr(told.lesson.cooks[4].name)));
  EXPECT_THAT(said, HasSubstr("You"));
  EXPECT_THAT(said, HasSubstr("Pans"));
  EXPECT_THAT(said, HasSubstr("Look out for"));
}

TEST(CookSheet, is_a_part_of_its_own_for_each_cook_in_the_rooms_order) {
  sample::Told told = sample::two_waves();
  std::swap(told.lesson.cooks[0].place, told.lesson.cooks[5].place);
  Document d("", "");
  draw_cook_sheets(d, {told.lesson, told.answer, ""});
  EXPECT_EQ(d.parts(), static_cast<int>(told.lesson.cooks.size()));
}

TEST(CookSheet, of_two_dishes_is_one_page) {
  const sample::Told told = sample::two_waves();
  EXPECT_EQ(look::pages(pdf_of_cook_sheets({told.lesson, told.answer, ""})),
            static_cast<int>(told.lesson.cooks.size()));
}

TEST(CookSheet, the_frame_is_the_same_at_every_level) {
  const sample::Told told = sample::two_waves();
  const auto heads = [&](Level level) {
    CookSheets how;
    how.level = level;
    how.cooks = {0};
    std::vector<std::pair<std::string, int>> out;
    for (const look::Word& word :
         look::placed_words(pdf_of_cook_sheets({told.lesson, told.answer, ""}, how))) {
      if (word.text == "Start" || word.text == "Probe" || word.text == "Stuck," ||
          word.text == "bell")
        out.push_back({word.text, static_cast<int>(word.left)});
    }
    return out;
  };
  EXPECT_EQ(heads(Level::kFew), heads(Level::kPlain));
  EXPECT_EQ(heads(Level::kPlain), heads(Level::kFull));
}

TEST(CookSheet, allergens_stand_with_their_ingredients_and_unread_labels_are_asked_for) {
  kitchen::Dish dish;
  dish.ingredients.resize(3);
  dish.ingredients[0].name = "butter";
  dish.ingredients[0].contains = {kitchen::Allergen::kMilk};
  dish.ingredients[1].name = "milk";
  dish.ingredients[1].contains = {kitchen::Allergen::kMilk};
  dish.ingredients[2].name = "stock cube";
  dish.ingredients[2].label_read = false;
  dish.ingredients[2].contains = {kitchen::Allergen::kCelery, kitchen::Allergen::kGluten};
  EXPECT_EQ(dish_allergens(dish).plain(), "MILK (butter, milk). Read the label of stock cube.");
  EXPECT_THAT(dish_allergens({}).plain(), HasSubstr("labels decide"));  // never "free from"
}

}  // namespace
