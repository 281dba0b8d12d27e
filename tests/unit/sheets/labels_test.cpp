#include "print/sheets/labels.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "../../support/shipped_foods.h"
#include "look_at_pdf.h"
#include "sample.h"

namespace {

using namespace print::sheets;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::Not;

kitchen::Ingredient ingredient(const char* name, double amount, const char* unit,
                               kitchen::Allergens contains = {}) {
  kitchen::Ingredient out;
  out.name = name;
  out.amount = amount;
  out.unit = unit;
  out.contains = std::move(contains);
  return out;
}

class Labels : public testing::Test {
 protected:
  safety::Labels read_;
  safety::Hidden hidden_;
  safety::Evidence evidence_{tests::shipped_foods(), read_, hidden_};
};

TEST_F(Labels, ingredients_fall_in_weight_and_the_cereal_is_named) {
  kitchen::Dish dish;
  dish.name = "Scones";
  dish.ingredients = {ingredient("butter", 50, "g", {kitchen::Allergen::kMilk}),
                      ingredient("plain flour", 225, "g", {kitchen::Allergen::kGluten}),
                      ingredient("caster sugar", 25, "g"),
                      ingredient("semi-skimmed milk", 150, "ml", {kitchen::Allergen::kMilk})};
  const IngredientList list = ingredient_list(dish, evidence_);
  // 225 g, about 155 g (150 ml), 50 g, 25 g.
  EXPECT_EQ(list.words.plain(),
            "plain flour (WHEAT), semi-skimmed milk (MILK), butter (MILK), caster sugar");
  EXPECT_THAT(list.missing, ElementsAre());
  EXPECT_THAT(list.words.markup(), HasSubstr("<b>WHEAT</b>"));
}

TEST_F(Labels, an_unread_packet_is_asked_for_and_the_list_is_not_whole) {
  kitchen::Dish dish;
  dish.name = "Soup";
  dish.ingredients = {ingredient("vegetable stock cube", 10, "g")};
  EXPECT_THAT(contains_words(dish, evidence_).plain(),
              HasSubstr("READ THE PACKET: vegetable stock cube"));
  EXPECT_THAT(ingredient_list(dish, evidence_).missing,
              ElementsAre("the packet of vegetable stock cube"));
  dish.ingredients = {ingredient("unicorn dust", 3, "g")};
  EXPECT_FALSE(ingredient_list(dish, evidence_).missing.empty());
}

TEST_F(Labels, a_label_that_was_read_speaks) {
  read_ = {
      {"vegetable_stock_cube", "our brand", "2026-11-02", {kitchen::Allergen::kCelery}, {}, true}};
  kitchen::Dish dish;
  dish.ingredients = {ingredient("vegetable stock cube", 10, "g")};
  EXPECT_EQ(contains_words(dish, evidence_).plain(), "CELERY");
}

TEST_F(Labels, nothing_listed_is_not_called_free_from) {
  kitchen::Dish dish;
  dish.ingredients = {ingredient("carrot", 60, "g")};
  EXPECT_EQ(contains_words(dish, evidence_).plain(), "none of the fourteen is listed");
}

TEST(Stickers, known_sheets_and_measured_ones_stand_in_the_middle) {
  const StickerSheet sheet = sticker_sheet("3x7").value();
  EXPECT_EQ(sheet.columns, 3);
  // Three times 63.5 and two gaps of 2.5 are 195.5; what is left of 210 is shared.
  EXPECT_NEAR(sheet.left, 7.25, 1e-9);
  EXPECT_NEAR(sheet.top, (297 - 7 * 38.1) / 2, 1e-9);
  const StickerSheet own = sticker_sheet("2x4 99x68 step 101.5x68").value();
  EXPECT_EQ(own.rows, 4);
  EXPECT_NEAR(own.across, 101.5, 1e-9);
}

TEST(Stickers, what_cannot_be_is_told) {
  EXPECT_EQ(sticker_sheet("many").problems().front().code, "stickers.unreadable");
  EXPECT_EQ(sticker_sheet("2.5x4 99x68").problems().front().code, "stickers.unreadable");
  EXPECT_EQ(sticker_sheet("4x7 63.5x38.1").problems().front().code, "stickers.off_page");
  EXPECT_EQ(sticker_sheet("2x2 99x68 step 90x68").problems().front().code, "stickers.off_page");
}

TEST_F(Labels, every_word_keeps_inside_its_own_sticker) {
  sample::Told told = sample::two_waves();
  for (kitchen::Cook& cook : told.lesson.cooks) cook.name += " with quite a long name";
  for (const char* said : {"3x7", "5x13", "2x4"}) {
    LabelWish wish{sticker_sheet(said).value(), false, true, 3, ""};
    Document d("", "");
    const LabelsDrawn drawn = draw_labels(d, told.lesson, evidence_, wish);
    EXPECT_GT(drawn.labels, 12);
    const StickerSheet& s = wish.sheet;
    const double half = 0.5;
    for (const look::Word& word : look::placed_words(d.pdf())) {
      const double x = (word.left / kMm - s.left) / s.across, y = (word.top / kMm - s.top) / s.down;
      const double right = (word.right / kMm - s.left) - std::floor(x) * s.across;
      EXPECT_LE(right, s.wide + half) << said << " " << word.text;
      EXPECT_GE(x, 0) << word.text;
      const double bottom = (word.bottom / kMm - s.top) - std::floor(y) * s.down;
      EXPECT_LE(bottom, s.high + half) << said << " " << word.text;
    }
  }
}

TEST_F(Labels, numbers_stand_for_names_when_asked) {
  const sample::Told told = sample::two_waves();
  LabelWish wish{sticker_sheet("3x7").value(), true, false, 0, "Ours to say."};
  const std::string said = look::words(pdf_of_labels(told.lesson, evidence_, wish));
  EXPECT_THAT(said, Not(HasSubstr("Aisha")));
  EXPECT_THAT(said, HasSubstr("A1"));
  EXPECT_THAT(said, HasSubstr("Ours to say."));
}

TEST(Labels_keep, rice_is_eaten_within_a_day) {
  kitchen::Dish dish;
  EXPECT_THAT(keep_words(dish), HasSubstr("2 days"));
  dish.ingredients = {ingredient("basmati rice", 100, "g")};
  EXPECT_THAT(keep_words(dish), HasSubstr("1 day"));
}

}  // namespace
