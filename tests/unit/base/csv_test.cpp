#include "base/csv.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace {

using namespace base;

TEST(Csv, CellsInQuotesMayHoldCommasQuotesAndLineEnds) {
  // RFC 4180, section 2, rules 6 and 7.
  const auto table = read_csv("name,price\r\n\"flour, plain\",\"1\"\"2\"\r\n\"two\nlines\",3\r\n",
                              "p.csv");
  ASSERT_TRUE(table);
  EXPECT_EQ(table.value().rows[0].cells, (std::vector<std::string>{"flour, plain", "1\"2"}));
  EXPECT_EQ(table.value().rows[1].cells[0], "two\nlines");
  EXPECT_EQ(table.value().rows[1].line, 3);
}

TEST(Csv, ASemicolonOrATabSeparatesWhenTheFirstLineSaysSo) {
  EXPECT_EQ(read_csv("name;price\nflour;1,20\n", "p").value().rows[0].cells[1], "1,20");
  EXPECT_EQ(read_csv("name\tprice\nflour\t1,20\n", "p").value().rows[0].cells[1], "1,20");
}

TEST(Csv, APriceWithACommaIsRefusedRatherThanShifted) {
  const auto table = read_csv("name,price,pack\nflour,1,20,1500\n", "p.csv");
  ASSERT_FALSE(table);
  EXPECT_EQ(table.problems()[0].code, "table.row_long");
  EXPECT_EQ(table.problems()[0].where, "line 2");
}

TEST(Csv, BlankRowsAreSkippedAndShortOnesFilled) {
  const auto table = read_csv("a,b\n\n,\n1\n", "p").value();
  ASSERT_EQ(table.rows.size(), 1U);
  EXPECT_EQ(table.rows[0].cells, (std::vector<std::string>{"1", ""}));
}

TEST(Csv, AnOpenQuotationMarkIsToldWithItsLine) {
  const auto table = read_csv("a,b\n1,\"open\n2,3\n", "p");
  ASSERT_FALSE(table);
  EXPECT_EQ(table.problems()[0].code, "table.quote");
  EXPECT_EQ(table.problems()[0].where, "line 2");
}

TEST(Csv, ColumnsAreFoundWhateverTheirCaseAndAccents) {
  EXPECT_EQ(read_csv(" Näme ,Price\n1,2\n", "p").value().column("NAME"), 0U);
}

TEST(Csv, TheFilesOfOldSpreadsheetsAreRead) {
  EXPECT_EQ(read_csv("name,price\ncr\xE8me,\xA3"
                     "1\n",
                     "p")
                .value()
                .rows[0]
                .cells[0],
            "crème");
  EXPECT_EQ(read_csv("name\ncr\xE8me\n", "p").value().encoding, "Windows-1252");
}

TEST(Csv, ACellThatASpreadsheetWouldRunIsMadeText) {
  EXPECT_EQ(csv_cell("=1+2"), "'=1+2");
  EXPECT_EQ(csv_cell("-5"), "-5");
}

RC_GTEST_PROP(Csv, WhatIsWrittenIsReadBack, (const std::vector<std::string>& any)) {
  std::vector<std::string> cells{"first"};
  for (std::string cell : any) {
    for (char& c : cell) {
      if (static_cast<unsigned char>(c) < 0x20 || static_cast<unsigned char>(c) > 0x7E) c = 'x';
    }
    // Spaces at the ends are not kept, and a formula gets its apostrophe.
    cells.push_back("c" + cell + "c");
  }
  RC_PRE(cells.size() < kMostColumns);
  const auto table = read_csv(csv_line(cells) + csv_line(cells), "p");
  RC_ASSERT(static_cast<bool>(table));
  RC_ASSERT(table.value().rows.size() == 1U);
  RC_ASSERT(table.value().rows[0].cells == cells);
}

}  // namespace
