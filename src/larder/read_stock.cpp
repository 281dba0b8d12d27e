#include "base/csv.h"
#include "base/folding.h"
#include "base/text.h"
#include "larder/prices.h"
#include "larder/stock.h"

namespace larder {

using base::in_quotes;
using base::say;

namespace {

class StockReader {
 public:
  StockReader(base::Table table, std::string file, const kitchen::Foods& foods)
      : table_(std::move(table)), file_(std::move(file)), foods_(foods) {}

  base::Result<Stock> read() {
    for (const std::string_view needed : {"food", "amount"}) {
      if (!table_.column(needed))
        return base::Problem{"stock.column", file_, "line 1",
                             say("The stock list has no column ", in_quotes(needed), "."),
                             "Name the columns in the first row: food, amount, use_by, opened, "
                             "where."};
    }
    for (const auto& row : table_.rows) {
      row_ = &row;
      good_ = true;
      StockLot lot = read_row();
      if (good_) stock_.lots.push_back(std::move(lot));
    }
    return std::move(stock_);
  }

 private:
  std::string cell(std::string_view column) const {
    const auto at = table_.column(column);
    return at ? row_->cells[*at] : std::string();
  }

  void fault(std::string code, std::string_view column, std::string message, std::string remedy) {
    good_ = false;
    stock_.faults.push_back({std::move(code), file_, say("line ", row_->line, ", ", column),
                             std::move(message), std::move(remedy)});
  }

  StockLot read_row() {
    StockLot lot;
    const std::string name = cell("food");
    const kitchen::Food* food = foods_.find(name);
    if (food == nullptr) food = foods_.named(name);
    if (food == nullptr) {
      std::vector<std::string> near;
      for (const auto& each : foods_.search(name, 3)) near.push_back(in_quotes(each.food->name));
      fault("stock.food", "food", say("No food is called ", in_quotes(name), "."),
            near.empty() ? "Use a name of the table of foods."
                         : say("Did you mean ", base::joined(near, "or"), "?"));
    } else {
      lot.food = food->key;
    }
    if (const auto amount = size_in(cell("amount")))
      lot.amount = *amount;
    else
      fault("stock.amount", "amount",
            say(in_quotes(name), ": ", in_quotes(cell("amount")), " is not an amount above 0."),
            "Write a number and a unit: 1.5 kg, 12 eggs; take the row out when none is left.");
    const std::string date = cell("use_by");
    if (!date.empty()) {
      lot.use_by = base::date_in(date);
      if (!lot.use_by)
        fault("stock.use_by", "use_by",
              say(in_quotes(name), ": ", in_quotes(date), " is not a date."),
              "Write year, month and day: 2026-11-17.");
    }
    const std::string opened = base::folded(cell("opened"));
    lot.opened = opened == "yes" || opened == "y" || opened == "true" || opened == "1";
    lot.where = cell("where");
    return lot;
  }

  base::Table table_;
  std::string file_;
  const kitchen::Foods& foods_;
  Stock stock_;
  const base::Table::Row* row_ = nullptr;
  bool good_ = true;
};

}  // namespace

base::Result<Stock> read_stock(std::string_view csv, std::string file_name,
                               const kitchen::Foods& foods) {
  auto table = base::read_csv(csv, file_name);
  if (!table) return table.problems();
  return StockReader(std::move(table).value(), std::move(file_name), foods).read();
}

std::string write_stock(const std::vector<StockLot>& lots, const kitchen::Foods& foods) {
  std::string out = base::csv_line({"food", "amount", "use_by", "opened", "where"});
  for (const StockLot& lot : lots) {
    const kitchen::Food* food = foods.find(lot.food);
    kitchen::Quantity q = lot.amount;
    // Fractions are for people; a table is read again.
    std::string amount = base::decimal_text(q.middle(), 6);
    const std::string unit(kitchen::unit_word(q.unit));
    if (!unit.empty()) amount += " " + unit;
    if (!q.piece.empty()) amount += " " + q.piece;
    out += base::csv_line({food == nullptr ? lot.food : food->name, amount,
                           lot.use_by ? base::date_text(*lot.use_by) : "", lot.opened ? "yes" : "",
                           lot.where});
  }
  return out;
}

}  // namespace larder
