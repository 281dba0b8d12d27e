#include "base/folding.h"

#include <gtest/gtest.h>

namespace {

using namespace base;

TEST(Folding, AccentsCaseAndWidthDoNotMakeAnotherWord) {
  EXPECT_EQ(folded("  Crème   FRAÎCHE "), "creme fraiche");
  EXPECT_EQ(folded("Jalapen\xCC\x83o"), "jalapeno");  // a combining tilde
  EXPECT_EQ(folded("Gruyère\xC2\xA0rösti"), "gruyere rosti");
  EXPECT_EQ(folded("Straße"), "strasse");
}

TEST(Folding, FractionsStayWhatTheyAre) { EXPECT_EQ(folded("1\u00BD Tsp"), "1\u00BD tsp"); }

TEST(Folding, InvisibleMarksAndRightToLeftMarksGo) {
  EXPECT_EQ(folded("\u200Fflour\u200E\uFEFF"), "flour");
  EXPECT_EQ(folded("دقيق 200"), "دقيق 200");
}

TEST(Folding, WhatIsNotUtf8BecomesTheReplacementMark) {
  EXPECT_EQ(folded("a\xFF"
                   "b"),
            "a\uFFFDb");
}

TEST(Folding, WordsAreLettersDigitsAndApostrophes) {
  EXPECT_EQ(words_of("hen's egg, whole (large)"),
            (std::vector<std::string>{"hen's", "egg", "whole", "large"}));
}

TEST(Folding, AFileIsReadInTheEncodingItIsIn) {
  EXPECT_EQ(decoded("\xEF\xBB\xBFrösti\r\n")->text, "rösti\n");
  EXPECT_EQ(decoded("r\xF6sti")->text, "rösti");
  EXPECT_EQ(decoded("r\xF6sti")->was, Encoding::kWindows1252);
  EXPECT_EQ(decoded(std::string("\xFF\xFE"
                                "a\0\xF6\0",
                                6))
                ->text,
            "aö");
  EXPECT_EQ(decoded(std::string("\xFE\xFF\0a\0\xF6", 6))->text, "aö");
}

TEST(Folding, ABrokenSixteenBitFileIsNotGuessedAt) {
  EXPECT_EQ(decoded(std::string("\xFF\xFE\x00\xD8", 4)), std::nullopt);
}

}  // namespace
