// What is in the cupboards and fridges: lots with their use-by dates, oldest used first.
//
// The planned use of every lesson is taken off by itself; on Friday a person looks at twenty
// perishables and corrects only those that are wrong. Too little is a warning, never a refusal.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "larder/needs.h"

namespace larder {

struct StockLot {
  std::string food;            ///< key of the table of foods
  kitchen::Quantity amount;    ///< as counted: "1.5 kg", "12 eggs", "3 sheets"
  std::optional<Date> use_by;  ///< nothing: it keeps until somebody says otherwise
  bool opened = false;
  std::string where;  ///< "fridge 2"
  friend bool operator==(const StockLot&, const StockLot&) = default;
};

struct Stock {
  std::vector<StockLot> lots;
  base::Problems faults;  ///< rows that could not be read
};

/// Columns food, amount, use_by, opened, where. Errors: table.*, stock.column. Faults (a row is
/// left out): stock.food, stock.amount, stock.use_by.
base::Result<Stock> read_stock(std::string_view csv, std::string file_name, const kitchen::Foods&);
/// The same columns, ready to be read again.
std::string write_stock(const std::vector<StockLot>&, const kitchen::Foods&);

/// A shortfall or a date that has passed: told, and the lesson goes on.
struct StockWarning {
  std::string food;  ///< its name
  std::string text;  ///< a sentence
  int lesson = -1;   ///< index into Week::lessons, if one is short
  friend bool operator==(const StockWarning&, const StockWarning&) = default;
};

struct StockAfter {
  std::vector<StockLot> lots;
  std::vector<StockWarning> warnings;
};

/// Takes off what the lessons from `first` to `last` (days, both in it) plan to use, first-expired
/// first and never a lot past its use-by date; opened before closed at the same date.
StockAfter deduct(std::vector<StockLot> lots, const Needs&, const Week&, const kitchen::Foods&,
                  Date first, Date last);

/// A person's correction: what is really there of a food, or of one lot of it.
struct Correction {
  std::string food;
  std::optional<Date> use_by;  ///< of which lot; nothing = the food as a whole
  kitchen::Quantity there;     ///< 0 = none left
};
/// More than was thought goes to the lot that keeps longest; less is taken off first-expired first.
/// Errors: stock.not_counted (a unit that cannot be turned into the lot's).
base::Result<std::vector<StockLot>> corrected(std::vector<StockLot> lots,
                                              const std::vector<Correction>&,
                                              const kitchen::Foods&);

/// The at most `most` lots worth a look: opened or with a use-by date within `days`, soonest first.
/// The rest is taken on trust.
std::vector<StockLot> to_look_at(const std::vector<StockLot>&, Date today, int days = 7,
                                 std::size_t most = 20);

}  // namespace larder
