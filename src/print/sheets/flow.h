// Words one under the other, over as many pages as they need: headings, paragraphs, entries with a
// lead, and tables whose heads are said again on every page. Two flows side by side on the same
// pages make two columns.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "print/sheets/page.h"

namespace print::sheets {

struct Column {
  std::string head;
  double share = 1;  ///< of the width
  Type type;
  bool no_wrap = false;  ///< shrinks instead: clock times
};

struct Cell {
  Words words;
  std::function<void(Canvas&, const Box&)> draw = nullptr;  ///< in the cell, under the words
  bool strong = false;
};

struct Row {
  std::vector<Cell> cells;
  bool with_next = false;  ///< never the last on a page
};

struct Table {
  std::vector<Column> columns;
  std::vector<Row> rows;
  double least_row = 0;  ///< height
  double pad = 2.5;      ///< above and below the words
  bool rules = true;     ///< a thin line under each row
};

class Flow {
 public:
  /// Begins on `page` inside `area`; further pages use the same left and right, from the top margin
  /// to the foot.
  Flow(Document&, int page, const Box& area);
  /// A new part's first page, or its next: the whole page inside the margins.
  static Flow on_new_page(Document&);

  double y() const { return y_; }
  int page() const { return page_; }
  double x() const { return x_; }
  double width() const { return w_; }
  double left() const { return bottom_ - y_; }  ///< height left on this page
  Document& document() { return *document_; }
  Canvas canvas() { return document_->on(page_); }

  /// Goes to the next page unless so much height is left.
  void need(double height);
  void next_page();
  void gap(double height) { y_ += height; }
  void rule(double width = 0.5);

  void heading(const Words&, double size = 12);
  /// Never breaks inside unless it is longer than a page.
  void paragraph(const Words&, const Type& = {});
  /// `lead` at the left, the words in a column further right.
  void entry(const Words& lead, const Words&, double lead_width, const Type& = {});
  /// A line to write on, after its words.
  void to_fill_in(const Words&, int lines = 1, const Type& = {});
  void table(const Table&);

 private:
  Table fitted(Table, const std::vector<double>& widths) const;
  void table_head(const Table&, const std::vector<double>& widths);
  std::vector<Block> set_row(const Table&, const Row&, const std::vector<double>&, double shrink,
                             double& height) const;

  Document* document_;
  int page_;
  double x_, y_, w_, bottom_;
};

/// The first of the sizes at which `draw` keeps to so many pages; the last when none does. It draws
/// on paper that is thrown away.
double size_that_fits(const std::vector<double>& sizes, int pages,
                      const std::function<void(Document&, double)>& draw);

}  // namespace print::sheets
