#include "app/larder_files.h"

#include <chrono>
#include <cstdio>

#include "app/commands.h"
#include "app/files.h"
#include "base/text.h"

namespace app {

base::Result<larder::Week> week_in(const std::string& path) {
  const auto text = read_file(path);
  if (!text) return text.problems();
  return larder::read_week(text.value(), path, file_loader());
}

base::Result<larder::PriceList> prices_in(const std::string& path, const kitchen::Foods& foods) {
  const auto text = read_file(path);
  if (!text) return text.problems();
  auto prices = larder::read_prices(text.value(), path, foods);
  if (prices && !prices.value().faults.empty()) tell(prices.value().faults);
  return prices;
}

base::Result<larder::Stock> stock_in(const std::string& path, const kitchen::Foods& foods) {
  if (path.empty()) return larder::Stock{};
  const auto text = read_file(path);
  if (!text) return text.problems();
  auto stock = larder::read_stock(text.value(), path, foods);
  if (stock && !stock.value().faults.empty()) tell(stock.value().faults);
  return stock;
}

base::Result<base::Date> day_or_today(const std::string& text) {
  if (text.empty()) {
    const auto now = std::chrono::floor<std::chrono::days>(std::chrono::system_clock::now());
    return base::Date{static_cast<int>(now.time_since_epoch().count())};
  }
  if (const auto day = base::date_in(text)) return *day;
  return base::Problem{"day.unreadable", "", "",
                       base::say(base::in_quotes(text), " is not a date."),
                       "Write year, month and day: 2026-11-17."};
}

int give(const Spoken& spoken, const std::string& format, const std::string& out_file) {
  if (format == "xlsx") {
    if (out_file.empty())
      return tell({{"out.missing", "", "", "A spreadsheet needs a file to go into.",
                    "Add --out order.xlsx."}});
    const auto written = print::write_workbook(out_file, spoken.sheets);
    return written ? kFits : tell(written.problems());
  }
  const std::string& said = format == "csv"    ? spoken.csv
                            : format == "json" ? spoken.json
                                               : spoken.text;
  if (out_file.empty()) {
    std::fputs(said.c_str(), stdout);
    return kFits;
  }
  const auto written = write_file(out_file, said);
  return written ? kFits : tell(written.problems());
}

}  // namespace app
