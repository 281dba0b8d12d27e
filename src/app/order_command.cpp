// benchbell order: what to buy for a week. benchbell bring: what one pupil is asked to bring.
#include <cstdio>

#include "app/commands.h"
#include "app/files.h"
#include "app/larder_files.h"
#include "app/own_tables.h"
#include "larder/bring_list.h"
#include "larder/worked_order.h"
#include "print/say_order.h"

namespace app {

int order(const OrderAsked& asked) {
  const auto foods = foods_with(asked.own_file);
  if (!foods) return tell(foods.problems());
  const auto week = week_in(asked.week_file);
  const auto prices = prices_in(asked.prices_file, foods.value());
  const auto stock = stock_in(asked.stock_file, foods.value());
  const auto today = day_or_today(asked.today);
  base::Problems problems;
  base::gather(week, problems);
  base::gather(prices, problems);
  base::gather(stock, problems);
  base::gather(today, problems);
  if (!problems.empty()) return tell(problems);

  const larder::Needs needs = larder::needs_of(week.value(), foods.value());
  const larder::OrderInput in{week.value(), needs, prices.value(), stock.value().lots,
                              foods.value()};
  const larder::WorkedOrder made = larder::worked_order(in, today.value());
  const print::OrderView view{in, made.order, made.costs, made.days};
  const Spoken spoken{print::say_order(view, {asked.details, asked.families}),
                      print::order_csv(view),
                      print::order_json(view),
                      {{"Order", print::order_rows(view), {5, 6}}}};
  return give(spoken, asked.format, asked.out_file);
}

int bring(const BringAsked& asked) {
  const auto foods = foods_with(asked.own_file);
  if (!foods) return tell(foods.problems());
  const auto week = week_in(asked.week_file);
  if (!week) return tell(week.problems());
  const auto prices = prices_in(asked.prices_file, foods.value());
  if (!prices) return tell(prices.problems());
  std::string out;
  for (const larder::WeekLesson& lesson : week.value().lessons) {
    for (const larder::DishUse& use : lesson.dishes) {
      if (use.from_home.empty()) continue;
      if (!out.empty()) out += "\n";
      out += lesson.class_name + ": " +
             larder::bring_text(larder::bring_list(use, prices.value(), foods.value()),
                                lesson.date);
    }
  }
  if (out.empty()) out = "Families bring nothing this week.\n";
  std::fputs(out.c_str(), stdout);
  return kFits;
}

}  // namespace app
