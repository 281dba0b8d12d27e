// Files of the larder's commands: week, prices, stores, and where an answer goes.
#pragma once

#include <string>
#include <vector>

#include "base/clock.h"
#include "base/problem.h"
#include "kitchen/foods.h"
#include "larder/prices.h"
#include "larder/stock.h"
#include "larder/week.h"
#include "print/workbook.h"

namespace app {

base::Result<larder::Week> week_in(const std::string& path);
/// Rows that cannot be read are told on the error stream, and the rest is used.
base::Result<larder::PriceList> prices_in(const std::string& path, const kitchen::Foods&);
/// The same; an empty path is empty stores.
base::Result<larder::Stock> stock_in(const std::string& path, const kitchen::Foods&);

/// The day a text says, or today by the clock of this machine. Problems: day.unreadable.
base::Result<base::Date> day_or_today(const std::string& text);

/// What a command has to say in each form; `sheets` becomes the workbook.
struct Spoken {
  std::string text, csv, json;
  std::vector<print::Sheet> sheets;
};
/// Prints or writes the form asked for: text, csv, json, xlsx (which needs a file). Returns the
/// exit code.
int give(const Spoken&, const std::string& format, const std::string& out_file);

}  // namespace app
