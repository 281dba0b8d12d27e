// benchbell delivery: a delivery is ticked in; what came, what is short, what to read again and top
// up.
#include <algorithm>

#include "app/commands.h"
#include "app/files.h"
#include "app/larder_files.h"
#include "app/own_tables.h"
#include "base/csv.h"
#include "base/folding.h"
#include "base/text.h"
#include "larder/order_day.h"
#include "larder/sent_order.h"
#include "print/say_delivery.h"
#include "safety/needs.h"

namespace app {
namespace {

// What is behind us needs nothing any more.
larder::Week from_day(larder::Week week, base::Date today) {
  std::erase_if(week.lessons, [&](const larder::WeekLesson& l) { return l.date < today; });
  return week;
}

// The school's list of needs, for the week's lessons: allergens alone can be held against a label;
// coeliac is gluten. Other diets are a person's to judge.
base::Result<std::vector<larder::Avoids>> avoided(const std::string& file,
                                                  const larder::Week& week) {
  std::vector<larder::Avoids> out;
  if (file.empty()) return out;
  const auto text = read_file(file);
  if (!text) return text.problems();
  const auto table = base::read_csv(text.value(), file);
  if (!table) return table.problems();
  const auto cook = table.value().column("cook"), need = table.value().column("need"),
             where = table.value().column("lesson");
  if (!cook || !need)
    return base::Problem{"needs.column", file, "line 1",
                         "The list of needs lacks a column for the cook or the need.",
                         "Name the columns in the first row: cook, need, reach, lesson."};
  base::Problems problems;
  for (const auto& row : table.value().rows) {
    const std::string word = base::folded(row.cells[*need]);
    auto allergen = kitchen::value_of(kitchen::kAllergenWords, word);
    const auto diet = kitchen::value_of(safety::kDietWords, word);
    if (diet == safety::Diet::kCoeliac) allergen = kitchen::Allergen::kGluten;
    if (!allergen && !diet) {
      problems.push_back(
          {"needs.value", file, base::say("line ", row.line),
           base::say(base::in_quotes(row.cells[*need]), " is no allergen and no diet."),
           "Use the words of docs/methods/allergens.md."});
    }
    if (!allergen) continue;
    const std::string title = where ? row.cells[*where] : "";
    for (std::size_t i = 0; i < week.lessons.size(); ++i) {
      if (title.empty() || title == week.lessons[i].title)
        out.push_back({static_cast<int>(i), row.cells[*cook], {*allergen}});
    }
  }
  if (!problems.empty()) return problems;
  return out;
}

int tick_list(const larder::OrderInput& in, const larder::Order& sent, const DeliveryAsked& asked) {
  const Spoken spoken{print::say_tick_list(in, sent), print::tick_list_csv(in, sent), "", {}};
  if (asked.format == "json")
    return tell({{"delivery.format", "", "", "The list to tick off is not written as JSON.",
                  "Ask for --format text or csv, or add --ticks."}});
  return give(spoken, asked.format, asked.out_file);
}

int take(const larder::OrderInput& in, const larder::Order& sent,
         const std::vector<larder::Ticked>& ticks, const std::vector<larder::Avoids>& avoids,
         base::Date today, const DeliveryAsked& asked) {
  const larder::DeliveryOutcome outcome = larder::take_in(in, sent, ticks, avoids, today);
  std::vector<larder::StockLot> stores = in.stock;
  stores.insert(stores.end(), outcome.lots.begin(), outcome.lots.end());
  const larder::OrderInput now{in.week, in.needs, in.prices, stores, in.foods};
  larder::OrderWish wish;
  wish.today = today;
  const larder::Order more = larder::top_up(now, larder::still_coming(sent, ticks), wish);
  const print::DeliveryView view{now, sent, ticks, outcome, more, today};
  if (!asked.stock_out_file.empty()) {
    const auto written = write_file(asked.stock_out_file, larder::write_stock(stores, in.foods));
    if (!written) return tell(written.problems());
  }
  const int given = give(
      {print::say_delivery(view), print::delivery_csv(view), print::delivery_json(view), {}},
      asked.format, asked.out_file);
  if (given != kFits) return given;
  const bool all_well = outcome.rechecks.empty() && outcome.faults.empty() &&
                        more.shortfalls.empty();
  return all_well ? kFits : kDoesNotFit;
}

}  // namespace

int delivery(const DeliveryAsked& asked) {
  const auto foods = foods_with(asked.own_file);
  if (!foods) return tell(foods.problems());
  const auto week = week_in(asked.week_file);
  const auto prices = prices_in(asked.prices_file, foods.value());
  const auto stock = stock_in(asked.stock_file, foods.value());
  const auto today = day_or_today(asked.today);
  const auto sent_text = read_file(asked.sent_file);
  base::Problems problems;
  base::gather(week, problems);
  base::gather(prices, problems);
  base::gather(stock, problems);
  base::gather(today, problems);
  base::gather(sent_text, problems);
  if (!problems.empty()) return tell(problems);

  const larder::Week ahead = from_day(week.value(), today.value());
  const larder::Needs needs = larder::needs_of(ahead, foods.value());
  const larder::OrderInput in{ahead, needs, prices.value(), stock.value().lots, foods.value()};
  const auto sent = larder::read_sent_order(sent_text.value(), asked.sent_file, in);
  if (!sent) return tell(sent.problems());
  if (asked.ticks_file.empty()) return tick_list(in, sent.value(), asked);

  const auto ticks_text = read_file(asked.ticks_file);
  if (!ticks_text) return tell(ticks_text.problems());
  const auto ticks = larder::read_ticks(ticks_text.value(), asked.ticks_file, sent.value());
  const auto avoids = avoided(asked.needs_file, ahead);
  base::gather(ticks, problems);
  base::gather(avoids, problems);
  if (!problems.empty()) return tell(problems);
  return take(in, sent.value(), ticks.value(), avoids.value(), today.value(), asked);
}

}  // namespace app
