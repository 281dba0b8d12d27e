#include "print/sheets/flow.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "look_at_pdf.h"

namespace {

using namespace print::sheets;

std::size_t count(const std::string& text, const std::string& what) {
  std::size_t n = 0;
  for (std::size_t at = text.find(what); at != std::string::npos; at = text.find(what, at + 1)) ++n;
  return n;
}

Table numbers(int rows) {
  Table table;
  table.columns = {{"Number", 20, {10, true}, true}, {"Words", 80, {10}}};
  for (int i = 1; i <= rows; ++i)
    table.rows.push_back({{{"row " + std::to_string(i)}, {"some words"}}});
  return table;
}

TEST(Flow, a_table_goes_on_over_pages_and_says_its_heads_again) {
  Document d("", "");
  d.begin_part(kA4, "Foot");
  Flow flow = Flow::on_new_page(d);
  flow.table(numbers(120));
  const int pages = d.pages();
  EXPECT_GE(pages, 3);
  const std::string said = look::words(d.pdf());
  EXPECT_EQ(count(said, "Number"), static_cast<std::size_t>(pages));
  EXPECT_EQ(count(said, "some words"), 120U);  // none lost, none twice
}

TEST(Flow, two_columns_share_their_pages) {
  Document d("", "");
  d.begin_part(kA4, "");
  Flow whole = Flow::on_new_page(d);
  Flow left(d, whole.page(), {whole.x(), whole.y(), 200, whole.left()});
  Flow right(d, whole.page(), {whole.x() + 250, whole.y(), 200, whole.left()});
  left.table(numbers(80));
  right.table(numbers(80));
  EXPECT_EQ(left.page(), right.page());
  EXPECT_EQ(d.pages(), left.page() + 1);
}

TEST(Flow, a_row_longer_than_a_page_is_set_smaller_and_whole) {
  Document d("", "");
  d.begin_part(kA4, "");
  Flow flow = Flow::on_new_page(d);
  Table table;
  table.columns = {{"", 10, {10}}, {"", 20, {14}}};
  std::string much;
  for (int i = 0; i < 500; ++i) much += "word" + std::to_string(i) + " ";
  table.rows.push_back({{{"much"}, {much}}});
  flow.table(table);
  const auto words = look::placed_words(d.pdf());
  bool last = false;
  for (const look::Word& word : words) {
    last = last || word.text == "word499";
    EXPECT_LT(word.bottom, kA4.h - kMargin) << word.text;
  }
  EXPECT_TRUE(last);
}

TEST(Flow, clock_times_of_a_column_have_one_size) {
  // "10:50" alone would fit at full size; beside "10:50 to 11:05" it is set like it.
  Document d("", "");
  d.begin_part(kA4, "");
  Flow flow = Flow::on_new_page(d);
  Table table;
  table.columns = {{"", 10, {14, true}, true}, {"", 90, {10}}};
  table.rows = {{{{"10:50"}, {"x"}}}, {{{"10:50 to 11:05"}, {"y"}}}};
  flow.table(table);
  std::vector<double> heights;
  for (const look::Word& word : look::placed_words(d.pdf())) {
    if (word.text == "10:50") heights.push_back(word.bottom - word.top);
  }
  ASSERT_EQ(heights.size(), 2U);
  EXPECT_NEAR(heights[0], heights[1], 0.01);
}

TEST(Flow, the_largest_size_that_keeps_to_the_pages_is_taken) {
  const auto draw = [](Document& d, double size) {
    d.begin_part(kA4, "");
    Flow flow = Flow::on_new_page(d);
    Table table = numbers(20);
    table.columns[1].type.size = size;
    flow.table(table);
  };
  const double one = size_that_fits({40, 20, 10, 5}, 1, draw);
  EXPECT_LT(one, 40);
  EXPECT_GT(one, 5);
  EXPECT_EQ(size_that_fits({40, 30}, 0, draw), 30);  // none keeps to it: the last
}

}  // namespace
