#include "print/paper.h"

#include <gtest/gtest.h>

#include <sstream>

#include "print/words.h"

namespace {

TEST(Paper, no_line_is_longer_than_the_width_unless_one_word_is) {
  print::Paper paper(44, false);
  paper.heading("A heading that is a good deal longer than forty-four letters");
  paper.entry("11:00 to 11:06", "hands: A1 A2 B1 B2, then C1 C2 D1 D2, then E1 E2 F1 F2", 2, 16);
  paper.grid({"10:50 apron on", "10:53 collect food", "10:56 LS Weigh out", "10:59 LS Slice leek"},
             2);
  std::istringstream in(paper.text());
  for (std::string line; std::getline(in, line);) EXPECT_LE(print::letters(line), 44U) << line;
}

TEST(Paper, a_word_longer_than_the_line_is_not_broken) {
  EXPECT_EQ(print::wrapped("a verylongwordindeed b", 6),
            (std::vector<std::string>{"a", "verylongwordindeed", "b"}));
}

TEST(Paper, someone_elses_words_cannot_move_the_cursor_or_change_colours) {
  EXPECT_EQ(print::tame("A\x1b[31m\nB\xC2\x9B"
                        "C"),
            "A[31m BC");
}

TEST(Paper, there_is_no_colour_unless_asked) {
  print::Paper plain(80, false), coloured(80, true);
  plain.heading("It fits", print::Ink::kGood);
  coloured.heading("It fits", print::Ink::kGood);
  EXPECT_EQ(plain.text().find('\x1b'), std::string::npos);
  EXPECT_NE(coloured.text().find('\x1b'), std::string::npos);
}

TEST(Paper, two_spaces_asked_for_make_one_empty_line) {
  print::Paper paper(80, false);
  paper.paragraph("a");
  paper.space();
  paper.space();
  paper.paragraph("b");
  EXPECT_EQ(paper.text(), "a\n\nb\n");
}

}  // namespace
