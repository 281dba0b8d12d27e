#include "print/sheets/flow.h"

#include <algorithm>
#include <numeric>

namespace print::sheets {
namespace {

constexpr double kFoot = 16;  // height of the line at the foot of a page
constexpr double kColumnGap = 7;

}  // namespace

Flow::Flow(Document& document, int page, const Box& area)
    : document_(&document),
      page_(page),
      x_(area.x),
      y_(area.y),
      w_(area.w),
      bottom_(area.bottom()) {}

Flow Flow::on_new_page(Document& document) {
  const int page = document.add_page();
  const Size size = document.size_of(page);
  const double top = document.number_of(page) > 1 ? kFoot : 0;  // the running head
  return {document,
          page,
          {kMargin, kMargin + top, size.w - 2 * kMargin, size.h - 2 * kMargin - kFoot - top}};
}

void Flow::next_page() {
  const int page = document_->goes_on(page_) ? page_ + 1 : document_->add_page();
  const Size size = document_->size_of(page);
  page_ = page;
  y_ = kMargin + kFoot;  // under the running head
  bottom_ = size.h - kMargin - kFoot;
}

void Flow::need(double height) {
  const double whole = document_->size_of(page_).h - 2 * (kMargin + kFoot);
  if (y_ + std::min(height, whole) > bottom_ + 0.01) next_page();
}

void Flow::rule(double width) {
  canvas().line(x_, y_, x_ + w_, y_, width);
  y_ += width / 2 + 2;
}

void Flow::heading(const Words& words, double size) {
  const Block block = document_->set(words, {size, true}, w_);
  need(block.height + 34);  // not alone at the foot of a page
  y_ += 5;
  canvas().put(block, x_, y_);
  y_ += block.height + 1.5;
}

void Flow::paragraph(const Words& words, const Type& type) {
  if (words.empty()) return;
  Block block = document_->set(words, type, w_);
  need(block.height);
  if (block.height > left()) block = document_->set_in(words, type, w_, left());
  canvas().put(block, x_, y_);
  y_ += block.height + 2;
}

void Flow::entry(const Words& lead, const Words& words, double lead_width, const Type& type) {
  Type strong = type;
  strong.bold = true;
  const Block first = document_->set_in(lead, strong, lead_width - 4, 200, 6);
  Block block = document_->set(words, type, w_ - lead_width);
  need(std::max(first.height, block.height));
  if (block.height > left()) block = document_->set_in(words, type, w_ - lead_width, left());
  canvas().put(first, x_, y_ + std::max(0.0, block.baseline - first.baseline));
  canvas().put(block, x_ + lead_width, y_);
  y_ += std::max(first.height, block.height) + 2;
}

void Flow::to_fill_in(const Words& words, int lines, const Type& type) {
  const Block block = document_->set(words, type, w_ * 0.75);
  const double line = type.size * 1.75;
  need(block.height + line * lines);
  canvas().put(block, x_, y_);
  y_ += block.height;
  for (int i = 0; i < lines; ++i) {
    const bool beside = i == 0 && block.lines == 1;
    const double from = beside ? x_ + block.width + 5 : x_;
    if (!beside) y_ += line;
    canvas().line(from, y_ - 1, x_ + w_, y_ - 1, 0.5);
  }
  y_ += 4;
}

std::vector<Block> Flow::set_row(const Table& table, const Row& row,
                                 const std::vector<double>& widths, double shrink,
                                 double& height) const {
  std::vector<Block> out;
  height = table.least_row;
  for (std::size_t i = 0; i < table.columns.size(); ++i) {
    if (i >= row.cells.size()) {
      out.emplace_back();
      continue;
    }
    Type type = table.columns[i].type;
    type.bold = type.bold || row.cells[i].strong;
    type.size *= shrink;
    const double width = widths[i] - kColumnGap;
    out.push_back(document_->set(row.cells[i].words, type, width));
    if (!row.cells[i].words.empty()) height = std::max(height, out.back().height + 2 * table.pad);
  }
  return out;
}

void Flow::table_head(const Table& table, const std::vector<double>& widths) {
  if (std::all_of(table.columns.begin(), table.columns.end(),
                  [](const Column& c) { return c.head.empty(); })) {
    canvas().line(x_, y_, x_ + w_, y_, 0.75);
    return;
  }
  double height = 0, x = x_;
  std::vector<Block> heads;
  for (std::size_t i = 0; i < widths.size(); ++i) {
    const Column& column = table.columns[i];
    heads.push_back(
        document_->set(column.head, {kSmall, true, column.type.align}, widths[i] - kColumnGap));
    height = std::max(height, heads.back().height);
  }
  for (std::size_t i = 0; i < widths.size(); ++i) {
    if (!table.columns[i].head.empty()) canvas().put(heads[i], x, y_ + height - heads[i].height);
    x += widths[i];
  }
  y_ += height + 2;
  canvas().line(x_, y_, x_ + w_, y_, 1);
}

/// Columns that may not wrap get the size at which their longest words fit, one size for all rows.
Table Flow::fitted(Table table, const std::vector<double>& widths) const {
  for (std::size_t i = 0; i < table.columns.size(); ++i) {
    Column& column = table.columns[i];
    if (!column.no_wrap) continue;
    double widest = 0;
    for (const Row& row : table.rows) {
      if (i >= row.cells.size()) continue;
      Type type = column.type;
      type.bold = type.bold || row.cells[i].strong;
      widest = std::max(widest, document_->set(row.cells[i].words, type).width);
    }
    const double room = widths[i] - kColumnGap;
    if (widest > room) column.type.size = std::max(5.0, column.type.size * room / widest * 0.99);
  }
  return table;
}

void Flow::table(const Table& asked) {
  const double whole = std::accumulate(asked.columns.begin(), asked.columns.end(), 0.0,
                                       [](double sum, const Column& c) { return sum + c.share; });
  std::vector<double> widths;
  for (const Column& column : asked.columns) widths.push_back(w_ * column.share / whole);
  const Table table = fitted(asked, widths);

  const auto height_of = [&](std::size_t i) {
    double height = 0;
    set_row(table, table.rows[i], widths, 1, height);
    return height;
  };
  if (!table.rows.empty()) need(height_of(0) + 20);
  table_head(table, widths);
  for (std::size_t i = 0; i < table.rows.size(); ++i) {
    const Row& row = table.rows[i];
    double height = 0, shrink = 1;
    std::vector<Block> blocks = set_row(table, row, widths, shrink, height);
    double wanted = height;
    for (std::size_t next = i; table.rows[next].with_next && next + 1 < table.rows.size(); ++next)
      wanted += height_of(next + 1);
    if (y_ + wanted > bottom_) {
      next_page();
      table_head(table, widths);
    }
    while (height > left() && shrink > 0.3) {  // one row longer than a page
      shrink *= 0.9;
      blocks = set_row(table, row, widths, shrink, height);
    }
    double x = x_;
    for (std::size_t c = 0; c < blocks.size(); ++c) {
      const Box cell{x, y_, widths[c] - kColumnGap, height};
      Canvas hand = canvas();
      if (c < row.cells.size() && row.cells[c].draw) row.cells[c].draw(hand, cell);
      if (c < row.cells.size() && !row.cells[c].words.empty())
        hand.put(blocks[c], x, y_ + (height - blocks[c].height) / 2);
      x += widths[c];
    }
    y_ += height;
    if (table.rules) canvas().line(x_, y_, x_ + w_, y_, 0.4, 0.4);
  }
  y_ += 4;
}

double size_that_fits(const std::vector<double>& sizes, int pages,
                      const std::function<void(Document&, double)>& draw) {
  for (const double size : sizes) {
    Document scratch("", "");
    draw(scratch, size);
    if (scratch.pages() <= pages) return size;
  }
  return sizes.back();
}

}  // namespace print::sheets
