#include "print/words.h"

#include <gtest/gtest.h>

#include "print/tokens.h"

namespace {

TEST(Words, lengths_are_said_in_minutes_and_never_in_seconds) {
  EXPECT_EQ(print::minutes(base::minutes(6)), "6 min");
  EXPECT_EQ(print::minutes(base::Seconds{61}), "2 min");  // a plan that says less than it takes is
                                                          // late
}

TEST(Words, a_date_is_said_with_its_weekday) {
  EXPECT_EQ(print::day("2026-11-17"), "Tue 17 Nov");
  EXPECT_EQ(print::day("2026-02-30"), "2026-02-30");
  EXPECT_EQ(print::day("next week"), "next week");
}

TEST(Words, lists_end_with_and) {
  EXPECT_EQ(print::listed({}), "");
  EXPECT_EQ(print::listed({"A1"}), "A1");
  EXPECT_EQ(print::listed({"A1", "A2", "B1"}), "A1, A2 and B1");
}

TEST(Words, long_names_are_cut_between_letters_and_not_inside_them) {
  EXPECT_EQ(print::shortened("Zoë and Chloë", 20), "Zoë and Chloë");
  EXPECT_EQ(print::shortened("Zoë and Chloë", 4), "Zoë…");
  EXPECT_EQ(print::letters(print::shortened("ééééééé", 4)), 4U);
}

TEST(Words, everything_that_could_end_an_attribute_or_open_an_element_is_escaped) {
  EXPECT_EQ(print::escaped("<b a=\"1\" b='2'>&"), "&lt;b a=&quot;1&quot; b=&#39;2&#39;&gt;&amp;");
}

TEST(Words, broken_bytes_and_control_characters_become_the_replacement_letter) {
  EXPECT_EQ(print::escaped(std::string("a\x01\xff") + "b"),
            "a\xEF\xBF\xBD\xEF\xBF\xBD"
            "b");
  EXPECT_EQ(print::escaped("\xC0\xBC"), "\xEF\xBF\xBD\xEF\xBF\xBD");  // an overlong "<"
}

TEST(Tokens, contrast_is_the_formula_of_wcag) {
  EXPECT_NEAR(print::token::contrast("#000000", "#FFFFFF"), 21.0, 1e-9);
  EXPECT_NEAR(print::token::contrast("#777777", "#FFFFFF"), 4.48, 0.01);
}

TEST(Tokens, every_pair_of_colours_has_the_contrast_it_needs) {
  for (const print::token::Pair& pair : print::token::pairs()) {
    EXPECT_GE(print::token::contrast(pair.ink, pair.ground), pair.least)
        << pair.what << ": " << pair.ink << " on " << pair.ground;
  }
}

}  // namespace
