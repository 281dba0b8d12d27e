#include "print/sheets/page.h"

#include <fontconfig/fontconfig.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "look_at_pdf.h"

namespace {

using namespace print::sheets;
using testing::HasSubstr;
using testing::Not;

std::string one_page(const Words& words, const Type& type = {}) {
  Document d("A sheet", "2026-11-17");
  d.begin_part(kA4, "Foot");
  const int page = d.add_page();
  d.on(page).put(d.set(words, type, 400), kMargin, kMargin);
  return d.pdf();
}

// The typeface every sheet is set in must be on the machine; without it Pango takes whatever there
// is. Outside opinion: fontconfig's own matching.
TEST(PrintedPage, the_machine_has_noto_sans_and_dejavu_sans) {
  for (const char* wanted : {"Noto Sans", "DejaVu Sans"}) {
    FcPattern* pattern = FcNameParse(reinterpret_cast<const FcChar8*>(wanted));
    FcConfigSubstitute(nullptr, pattern, FcMatchPattern);
    FcDefaultSubstitute(pattern);
    FcResult result = FcResultMatch;
    FcPattern* match = FcFontMatch(nullptr, pattern, &result);
    FcChar8* family = nullptr;
    ASSERT_EQ(FcPatternGetString(match, FC_FAMILY, 0, &family), FcResultMatch);
    EXPECT_STREQ(reinterpret_cast<const char*>(family), wanted);
    FcPatternDestroy(match);
    FcPatternDestroy(pattern);
  }
}

TEST(PrintedPage, a_page_is_set_in_noto_sans) {
  EXPECT_THAT(look::faces(one_page("Plain words")), HasSubstr("NotoSans"));
}

TEST(PrintedPage, the_same_words_are_the_same_bytes) {
  const std::string first = one_page(Words("Peel the ").bold("onion"));
  EXPECT_GT(first.size(), 1000U);
  EXPECT_EQ(first, one_page(Words("Peel the ").bold("onion")));
  EXPECT_NE(first, one_page("Peel the carrot"));
}

TEST(PrintedPage, what_looks_like_markup_prints_as_it_was_written) {
  EXPECT_THAT(look::words(one_page("<b>Ben</b> & <span size='1'>\"Jo\"</span>")),
              HasSubstr("<b>Ben</b> & <span size='1'>\"Jo\"</span>"));
  EXPECT_EQ(Words("a<b").bold("c&d").markup(), "a&lt;b<b>c&amp;d</b>");
}

TEST(PrintedPage, a_line_end_in_a_name_does_not_begin_a_line) {
  Document d("", "");
  EXPECT_EQ(d.set("Ben\nof two lines", {}).lines, 1);
  EXPECT_EQ(d.set(Words("Ben").line().add("second"), {}).lines, 2);
}

TEST(PrintedPage, words_shrink_into_their_box_and_never_leave_it) {
  Document d("", "");
  const Block large = d.set_in("Short", {30, true}, 400, 50);
  EXPECT_DOUBLE_EQ(large.size, 30);
  const Block small = d.set_in("Featherstonehaugh-Cholmondeley and a good deal more to say",
                               {30, true}, 120, 40);
  EXPECT_LT(small.size, 30);
  EXPECT_LE(small.height, 40);
  EXPECT_LE(small.width, 120.5);
}

TEST(PrintedPage, a_word_without_a_break_shrinks_before_it_is_broken) {
  Document d("", "");
  const Block word = d.set_in("Donaudampfschifffahrtsgesellschaft", {20}, 100, 200);
  EXPECT_EQ(word.lines, 1);
  EXPECT_LE(word.width, 100);
}

TEST(PrintedPage, a_name_from_right_to_left_stands_at_the_left) {
  const auto words = look::placed_words(one_page("עבד שלום"));
  ASSERT_FALSE(words.empty());
  EXPECT_LT(words.front().left, 200);
}

TEST(PrintedPage, a_name_from_right_to_left_leaves_figures_beside_it_where_they_are) {
  // Without isolation "11" would be shown before the name: it follows a figure that follows it.
  double name = 0, eleven = 0;
  for (const look::Word& word : look::placed_words(one_page("שלום 3 · 11 Food"))) {
    if (word.text == "11") eleven = word.left;
    if (word.text.find('\xD7') != std::string::npos) name = word.left;  // Hebrew letters begin so
  }
  EXPECT_GT(name, 0);
  EXPECT_GT(eleven, name);
  EXPECT_EQ(Words("Ben").markup(), "Ben");
}

TEST(PrintedPage, letters_no_typeface_has_are_counted) {
  Document d("", "");
  (void)d.set("Dhal, crème, 75 °C, £2, ½, Łukasz, Ñandú, Ωμέγα, Жанна, عبد, שלום", {});
  EXPECT_EQ(d.unknown_letters(), 0);
  (void)d.set("\xF3\xB0\x80\x80", {});  // a private letter, U+F0000
  EXPECT_GT(d.unknown_letters(), 0);
}

TEST(PrintedPage, the_foot_counts_the_pages_of_its_own_part) {
  Document d("", "2026-11-17");
  d.begin_part(kA4, "Ben's sheet");
  d.add_page();
  d.add_page();
  d.begin_part(kA4Wide, "Risks", "Running head");
  d.add_page();
  const std::string said = look::words(d.pdf());
  EXPECT_THAT(said, HasSubstr("page 1 of 2"));
  EXPECT_THAT(said, HasSubstr("page 2 of 2"));
  EXPECT_THAT(said, HasSubstr("page 1 of 1"));
  EXPECT_THAT(said, Not(HasSubstr("Running head")));  // only from the second page on
}

TEST(PrintedPage, a_document_is_written_once_and_a_page_belongs_to_a_part) {
  Document d("", "");
  EXPECT_THROW(d.add_page(), std::logic_error);
  d.begin_part(kA4, "");
  d.add_page();
  (void)d.pdf();
  EXPECT_THROW((void)d.pdf(), std::logic_error);
}

}  // namespace
