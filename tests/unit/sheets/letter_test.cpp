#include "print/sheets/letter.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "look_at_pdf.h"
#include "sample.h"

namespace {

using namespace print::sheets;
using testing::HasSubstr;
using testing::Not;

larder::BringList list() {
  return {"Soup", {{"carrot", "1 carrot", "We use 1 carrot.", std::nullopt}}};
}

TEST(Letter, asks_for_what_is_on_the_list_and_says_how_it_is_settled_quietly) {
  const sample::Told told = sample::two_waves();
  const Letter letter{told.lesson, {list()}, "Fri 13 Nov"};
  const std::string pdf = look::words(pdf_of_letter(letter));
  for (const std::string& said : {pdf, text_of_letter(letter)}) {
    EXPECT_THAT(said, HasSubstr("Tue 17 Nov"));
    EXPECT_THAT(said, HasSubstr("1 carrot"));
    EXPECT_THAT(said, HasSubstr("Fri 13 Nov"));
    EXPECT_THAT(said, HasSubstr("10:50"));
    EXPECT_THAT(said, HasSubstr("settled"));
    for (const kitchen::Cook& cook : told.lesson.cooks)
      EXPECT_THAT(said, Not(HasSubstr(cook.name)));
  }
}

TEST(Letter, says_that_the_food_comes_home_cold_where_the_school_has_that_rule) {
  sample::Told told = sample::two_waves();
  EXPECT_THAT(text_of_letter({told.lesson, {}, ""}), Not(HasSubstr("chilled at school")));
  told.lesson.rules.food_home_chilled = true;
  const Letter letter{told.lesson, {}, ""};
  EXPECT_THAT(text_of_letter(letter), HasSubstr("chilled at school"));
  EXPECT_THAT(look::words(pdf_of_letter(letter)), HasSubstr("chilled at school"));
}

TEST(Letter, without_a_list_the_school_has_everything) {
  const sample::Told told = sample::two_waves();
  const std::string said = text_of_letter({told.lesson, {}, ""});
  EXPECT_THAT(said, HasSubstr("The school has all the ingredients ready."));
  EXPECT_THAT(said, HasSubstr("box with a lid"));  // it goes home
  EXPECT_THAT(said, Not(HasSubstr("supply it")));
}

}  // namespace
