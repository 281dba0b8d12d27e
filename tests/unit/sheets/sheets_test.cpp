// What the sheets say is what the plan says.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "look_at_pdf.h"
#include "print/say_parts.h"
#include "print/sheets/bay_cards.h"
#include "print/sheets/cook_sheet.h"
#include "print/sheets/teacher_page.h"
#include "print/sheets/wall_page.h"
#include "samples_of_sheets.h"

namespace {

using namespace print::sheets;
using testing::HasSubstr;
using testing::Not;

const sample::Told& told() {
  static const sample::Told kTold = sample::two_waves();
  return kTold;
}

std::string squeezed(const std::string& text) {
  std::string out;
  for (const char c : text) {
    const bool space = c == ' ' || c == '\n' || c == '\f';
    if (!space) out += c;
    if (space && !out.empty() && out.back() != ' ') out += ' ';
  }
  return out;
}

std::string clock(print::Seconds s) { return kitchen::clock(told().lesson, s); }

TEST(Sheets, the_teachers_page_says_the_verdict_checkpoints_and_last_starts_of_the_plan) {
  const std::string said = squeezed(
      look::words(pdf_of_teacher_page({told().lesson, told().answer, ""})));
  EXPECT_THAT(said, HasSubstr(print::verdict_words(told().lesson, told().answer)));
  ASSERT_FALSE(told().answer.plan->checkpoints.empty());
  for (const timeplan::Checkpoint& check : told().answer.plan->checkpoints)
    EXPECT_THAT(said, HasSubstr(clock(check.at)));
  ASSERT_FALSE(told().answer.last_safe_starts.empty());
  for (const timeplan::LastSafeStart& last : told().answer.last_safe_starts) {
    EXPECT_THAT(said, HasSubstr(clock(last.at)));
    EXPECT_THAT(said, HasSubstr(print::capital(last.says).substr(0, 12)));
  }
  for (const auto& [when, what] : print::adult_lines(told().lesson, *told().answer.plan, 0))
    EXPECT_THAT(said, HasSubstr(when));
  EXPECT_THAT(said, HasSubstr("Injectors and inhalers"));
}

TEST(Sheets, a_lesson_that_does_not_fit_says_why_and_what_would_help) {
  const sample::Told over = sample::over_the_bell();
  const std::string said = squeezed(
      look::words(pdf_of_teacher_page({over.lesson, over.answer, ""})));
  EXPECT_THAT(said, HasSubstr(print::verdict_words(over.lesson, over.answer)));
  EXPECT_THAT(said, HasSubstr("What stops it"));
  EXPECT_THAT(said, HasSubstr("What would help"));
}

TEST(Sheets, the_wall_page_shows_every_checkpoint_large_enough_for_three_metres) {
  const std::string pdf = pdf_of_wall_page({told().lesson, told().answer, ""});
  for (const timeplan::Checkpoint& check : told().answer.plan->checkpoints) {
    bool found = false;
    for (const look::Word& word : look::placed_words(pdf)) {
      if (word.text != clock(check.at)) continue;
      found = true;
      // A line of Noto Sans is 1.36 times its size high.
      EXPECT_GE(word.bottom - word.top, kFromThreeMetres) << word.text;
    }
    EXPECT_TRUE(found) << clock(check.at);
  }
  EXPECT_THAT(look::words(pdf), HasSubstr("Bell"));
}

TEST(Sheets, a_bay_card_counts_minutes_and_names_nobody) {
  const std::string said = look::words(pdf_of_bay_cards({told().lesson, told().answer, ""}));
  for (const kitchen::Cook& cook : told().lesson.cooks)
    EXPECT_THAT(said, Not(HasSubstr(cook.name)));
  EXPECT_THAT(said, HasSubstr("minutes to the bell"));
  EXPECT_THAT(said, Not(testing::ContainsRegex("1[0-2]:[0-5][0-9]")));
}

TEST(Sheets, a_bay_card_has_a_line_for_everything_its_cooks_do) {
  for (std::size_t bay = 0; bay < told().lesson.room.bays.size(); ++bay) {
    const auto lines = bay_lines(told().lesson, *told().answer.plan, static_cast<int>(bay));
    for (const timeplan::Task& task : told().answer.plan->tasks) {
      if (task.cook < 0 || bay_of(told().lesson, task.cook) != static_cast<int>(bay)) continue;
      const bool said = std::any_of(lines.begin(), lines.end(), [&](const BayLine& line) {
        return line.says == print::sentence(told().lesson, task) && line.from <= task.start &&
               line.to >= task.end;
      });
      EXPECT_TRUE(said) << print::task_words(told().lesson, task);
    }
  }
}

TEST(Sheets, a_bay_card_hides_who_has_a_variant_or_an_allergy) {
  sample::Told changed = told();
  // One cook makes a free-from scone after a full clean; the card must read like before.
  const int cook = 0;
  kitchen::Dish variant = changed.lesson.dishes.at(1);
  variant.variant = "oat drink";
  for (kitchen::Step& step : variant.method) step.says += " Without milk.";
  changed.lesson.dishes.push_back(variant);
  const int made = static_cast<int>(changed.lesson.dishes.size()) - 1;
  for (int& dish : changed.lesson.cooks[cook].dishes) dish = dish == 1 ? made : dish;
  changed.lesson.cooks[cook].avoids = {kitchen::Allergen::kMilk};
  for (timeplan::Task& task : changed.answer.plan->tasks) {
    if (task.cook == cook && task.dish == 1) task.dish = made;
  }
  EXPECT_EQ(bay_lines(changed.lesson, *changed.answer.plan, 0),
            bay_lines(told().lesson, *told().answer.plan, 0));
  const std::string said = look::words(pdf_of_bay_cards({changed.lesson, changed.answer, ""}));
  for (const char* word : {"oat", "Without milk", "allerg"})
    EXPECT_THAT(said, Not(HasSubstr(word)));
}

TEST(Sheets, every_foot_says_the_day_of_the_plan_and_the_page) {
  for (const sample::NamedSheet& sheet : sample::all_sheets()) {
    if (sheet.name == "labels") continue;  // stickers have no foot
    const std::string said = look::words(sample::pdf_of(sheet, told()));
    EXPECT_THAT(said, HasSubstr("Tue 17 Nov")) << sheet.name;
    EXPECT_THAT(said, HasSubstr("page 1 of ")) << sheet.name;
  }
}

TEST(Sheets, two_runs_give_the_same_bytes) {
  for (const sample::NamedSheet& sheet : sample::all_sheets())
    EXPECT_EQ(sample::pdf_of(sheet, told()), sample::pdf_of(sheet, told())) << sheet.name;
}

TEST(Sheets, a_lesson_without_a_plan_breaks_nothing) {
  const sample::Told nothing = sample::nothing();
  for (const sample::NamedSheet& sheet : sample::all_sheets()) {
    Document d("", "");
    EXPECT_NO_THROW(sheet.draw(d, nothing)) << sheet.name;
    EXPECT_NO_THROW((void)d.pdf()) << sheet.name;
  }
}

TEST(Sheets, the_default_print_of_a_class_is_few_pages) {
  // Front and back for the teacher (a third side for a plan that is long), one for the wall, one a
  // bay.
  const Planned planned{told().lesson, told().answer, ""};
  EXPECT_LE(look::pages(pdf_of_teacher_page(planned)), 4);
  EXPECT_EQ(look::pages(pdf_of_wall_page(planned)), 1);
  EXPECT_EQ(look::pages(pdf_of_bay_cards(planned)),
            static_cast<int>(told().lesson.room.bays.size()));
}

}  // namespace
