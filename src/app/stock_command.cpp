// benchbell stock: the stores after a week's planned use and a person's few corrections.
#include <cstdio>

#include "app/commands.h"
#include "app/files.h"
#include "app/larder_files.h"
#include "app/own_tables.h"
#include "base/text.h"
#include "print/say_stock.h"

namespace app {
namespace {

// "milk=2 l", "eggs@2026-11-20=12", "cream=0".
base::Result<larder::Correction> correction(const std::string& text, const kitchen::Foods& foods) {
  const auto equals = text.find('=');
  const std::string left = text.substr(0, equals);
  const auto at = left.find('@');
  const std::string name = left.substr(0, at);
  const kitchen::Food* food = foods.find(name);
  if (food == nullptr) food = foods.named(name);
  const std::string amount = equals == std::string::npos ? "" : text.substr(equals + 1);
  const bool none = base::number_in(amount) == 0.0;
  const auto there = larder::size_in(amount);
  const auto date = at == std::string::npos ? std::nullopt : base::date_in(left.substr(at + 1));
  if (food == nullptr || (!there && !none) || (at != std::string::npos && !date)) {
    return base::Problem{"stock.correction", "", "",
                         base::say(base::in_quotes(text), " is not a correction",
                                   food == nullptr ? ": the food is not known." : "."),
                         "Write food=amount or food@use-by=amount: \"milk=2 l\", "
                         "\"eggs@2026-11-20=12\", \"cream=0\"."};
  }
  // None left is none in any unit.
  const kitchen::Quantity left_there = none ? kitchen::Quantity::of(kitchen::Ratio(0),
                                                                    kitchen::Unit::kGram)
                                            : *there;
  return larder::Correction{food->key, date, left_there};
}

}  // namespace

int stock(const StockAsked& asked) {
  const auto foods = foods_with(asked.own_file);
  if (!foods) return tell(foods.problems());
  const auto stock = stock_in(asked.stock_file, foods.value());
  if (!stock) return tell(stock.problems());
  const auto today = day_or_today(asked.today);
  if (!today) return tell(today.problems());
  larder::StockAfter after{stock.value().lots, {}};
  if (!asked.week_file.empty()) {
    const auto week = week_in(asked.week_file);
    if (!week) return tell(week.problems());
    const auto from = asked.from.empty() ? base::Result<base::Date>(base::Date{0})
                                         : day_or_today(asked.from);
    const auto to = day_or_today(asked.to);
    if (!from) return tell(from.problems());
    if (!to) return tell(to.problems());
    const larder::Needs needs = larder::needs_of(week.value(), foods.value());
    after = larder::deduct(after.lots, needs, week.value(), foods.value(), from.value(),
                           to.value());
  }
  base::Problems problems;
  std::vector<larder::Correction> corrections;
  for (const std::string& text : asked.corrections) {
    const auto one = correction(text, foods.value());
    if (one)
      corrections.push_back(one.value());
    else
      base::gather(one, problems);
  }
  if (!problems.empty()) return tell(problems);
  auto corrected = larder::corrected(after.lots, corrections, foods.value());
  if (!corrected) return tell(corrected.problems());
  const auto& lots = corrected.value();
  std::fputs(
      print::say_stock(lots, larder::to_look_at(lots, today.value()), after.warnings, foods.value())
          .c_str(),
      stdout);
  if (asked.out_file.empty()) return kFits;
  const auto written = write_file(asked.out_file, larder::write_stock(lots, foods.value()));
  return written ? kFits : tell(written.problems());
}

}  // namespace app
