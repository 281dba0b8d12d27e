// Thirty cooks, three dishes, names that are long, from right to left, or signs: nothing may leave
// the paper, and nothing is cut off.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "look_at_pdf.h"
#include "print/sheets/cook_sheet.h"
#include "samples_of_sheets.h"

namespace {

using namespace print::sheets;
using testing::HasSubstr;

class WorstCase : public testing::TestWithParam<sample::NamedSheet> {};

TEST_P(WorstCase, keeps_inside_the_margins_school_printers_leave) {
  const sample::Told told = sample::hard_names();
  const std::string pdf = sample::pdf_of(GetParam(), told);
  const double least = 12 * kMm;
  const bool stickers = GetParam().name == "labels";  // the sheet's own margins
  for (const look::Word& word : look::placed_words(pdf)) {
    const double margin = stickers ? 5 * kMm : least;
    EXPECT_GE(word.left, margin) << word.text << " on page " << word.page;
    EXPECT_LE(word.right, word.page_width - margin + 1) << word.text << " on page " << word.page;
    // The upper fifth of a line of Noto Sans is empty above a capital.
    EXPECT_GE(word.top + 0.2 * (word.bottom - word.top), margin)
        << word.text << " on page " << word.page;
    EXPECT_LE(word.bottom, word.page_height - margin + 3) << word.text << " on page " << word.page;
  }
}

TEST_P(WorstCase, says_no_word_in_letters_the_machine_has_not) {
  const sample::Told told = sample::hard_names();
  Document d("", "");
  GetParam().draw(d, told);
  EXPECT_EQ(d.unknown_letters(), 0);
}

INSTANTIATE_TEST_SUITE_P(Sheets, WorstCase, testing::ValuesIn(sample::all_sheets()),
                         [](const auto& info) {
                           std::string name = info.param.name;
                           std::replace(name.begin(), name.end(), '-', '_');
                           return name;
                         });

TEST(WorstCase_cooks, every_cook_gets_a_sheet_with_their_whole_name) {
  const sample::Told told = sample::hard_names();
  CookSheets how;
  how.cooks = {0, 5};
  const std::string said = look::words(pdf_of_cook_sheets({told.lesson, told.answer, ""}, how));
  EXPECT_THAT(said, HasSubstr("Featherstonehaugh-Cholmondeley"));
  EXPECT_THAT(said, HasSubstr("<b>Bold</b> & \"Quoted\""));
}

}  // namespace
