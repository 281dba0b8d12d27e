#include "print/sheets/larder_sheets.h"

#include <algorithm>

#include "base/index.h"
#include "base/text.h"
#include "print/say_trays.h"
#include "print/words.h"

namespace print::sheets {
namespace {

using base::at;

constexpr const char*
    kRecordsDecide = "Allergies: the school's own records and the labels decide, not this list.";

void weigh_table(Flow& flow, const larder::Trays& trays) {
  flow.heading("Weigh, each food once", 14);
  const bool any_apart = std::any_of(trays.trays.begin(), trays.trays.end(),
                                     [](const larder::Tray& tray) { return tray.apart; });
  if (any_apart)
    flow.paragraph(
        "Clean scales, scoop and hands to begin with. What is set apart comes first, lid on.",
        {10, true});
  Table table;
  table.columns = {{"", 5, {}},           {"Food", 25, {10.5, true}},
                   {"In all", 13, {9.5}}, {"", 9, {12, true, Align::kRight}, true},
                   {"each", 14, {10.5}},  {"Set apart for", 12, {10, true}},
                   {"For", 28, {9.5}}};
  const auto rows = print::weighing_rows(trays);
  std::string last;
  for (std::size_t i = 1; i < rows.size(); ++i) {
    const std::vector<std::string>& row = rows[i];
    const bool same = row[0] == last;
    last = row[0];
    if (!same && row[7] == "yes")
      table.rows.push_back({{{}, {}, {}, {}, {}, {}, {"Wash hands, scoop and scales."}}, true});
    Words food(same ? "" : row[0]);
    if (!same && !row[6].empty()) food.add(" (fridge)");
    table.rows.push_back({{tick_cell(),
                           {food},
                           {same ? "" : row[1]},
                           {row[2] + " x"},
                           {row[3]},
                           {row[4]},
                           {row[5]}}});
  }
  flow.table(table);
}

void set_out_table(Flow& flow, const larder::Trays& trays) {
  flow.heading("Set out", 14);
  Table table;
  table.columns = {
      {"", 5, {}}, {"Place", 16, {11, true}}, {"Dishes", 24, {10}}, {"On the tray", 61, {10}}};
  for (const larder::Tray& tray : trays.trays) {
    Words pots;
    for (const larder::Pot& pot : tray.pots) {
      if (!pots.empty()) pots.add("; ");
      pots.add(pot.name + " ").bold(pot.amount);
      if (!pot.preparation.empty()) pots.add(", " + pot.preparation);
      if (pot.cold) pots.add(" (fridge)");
    }
    Words where(tray.where);
    if (tray.apart) where.add(", covered, apart");
    table.rows.push_back({{tick_cell(), {where}, {base::joined(tray.dishes)}, {pots}}});
  }
  flow.table(table);
}

Table order_table(const OrderView& view, const larder::VanOrder& van) {
  Table table;
  table.columns = {
      {"Food", 32, {10.5, true}}, {"Packs", 26, {10.5}}, {"Price", 11, {10, false, Align::kRight}},
      {"Ordered", 10, {}},        {"Came", 9, {}},       {"Label read", 12, {}}};
  table.least_row = 17;
  const auto money = [&](const char* what, larder::Pence pence) {
    table.rows.push_back({{{}, {what}, {bold(larder::pounds_text(pence))}, {}, {}, {}}});
  };
  for (const larder::OrderLine& line : view.order.lines) {
    if (line.supplier != van.supplier || line.arrives != van.arrives) continue;
    table.rows.push_back({{{food_name(view, line.food)},
                           {base::say(line.count, " x ", pack_words(pack_of(view, line)))},
                           {larder::pounds_text(line.pence)},
                           tick_cell(),
                           tick_cell(),
                           tick_cell()}});
  }
  money("goods", van.goods);
  if (van.delivery > 0) money("delivery", van.delivery);
  if (van.below_minimum > 0)
    money("below the supplier's minimum: fill up or pay", van.below_minimum);
  return table;
}

void from_stores(Flow& flow, const OrderView& view) {
  if (view.order.from_stock.empty()) return;
  flow.heading("Out of the stores, first to expire first");
  Table table;
  table.columns = {{"Food", 40, {10}}, {"Amount", 20, {10}}, {"", 30, {10}}, {"", 6, {}}};
  for (const larder::StockUse& use : view.order.from_stock) {
    larder::Ratio sum = 0;
    for (const larder::LessonUse& each : use.uses) sum += each.amount;
    std::string date;
    if (at(use.lot) >= view.in.stock.size()) {
      date = "on its way";
    } else if (view.in.stock[at(use.lot)].use_by) {
      date = "use by " + larder::day_text(*view.in.stock[at(use.lot)].use_by);
    }
    table.rows.push_back({{{food_name(view, use.food)},
                           {larder::amount_text(sum, measure_of(view, use.food))},
                           {date},
                           tick_cell()}});
  }
  flow.table(table);
}

void not_covered(Flow& flow, const OrderView& view) {
  if (!view.order.shortfalls.empty())
    flow.heading("Short (the lessons can go on; find another way for these)");
  for (const larder::Shortfall& s : view.order.shortfalls)
    flow.paragraph(base::say(larder::amount_text(s.amount, measure_of(view, s.food)), " of ",
                             food_name(view, s.food), " for ", lesson_name(view, s.lesson), ": ",
                             s.why, "."));
  if (!view.count_down.unsettled.empty()) flow.heading("Not settled");
  for (const base::Problem& problem : view.count_down.unsettled)
    flow.paragraph(Words(problem.message).add(" " + problem.remedy));
}

}  // namespace

void draw_tray_list(Document& document, const kitchen::Lesson& lesson, const larder::Trays& trays) {
  const std::string foot = stopped(lesson.title.empty() ? "Lesson" : lesson.title) + " Trays for " +
                           day(lesson.date);
  document.begin_part(kA4, foot, "Trays");
  Flow flow = Flow::on_new_page(document);
  draw_head(flow, {"", "Trays", under_title(lesson), "lesson begins",
                   kitchen::clock(lesson, Seconds{0}), false});
  for (const std::string& warning : trays.warnings)
    flow.paragraph(Words().bold("Check first: ").add(warning), {10});
  weigh_table(flow, trays);
  set_out_table(flow, trays);
  flow.paragraph(kRecordsDecide, {10, true});
}

void draw_order(Document& document, const OrderView& view) {
  document.begin_part(kA4, stopped(view.in.week.title) + " Order", view.in.week.title);
  Flow flow = Flow::on_new_page(document);
  draw_head(flow, {"", "Order", view.in.week.title, "to pay",
                   larder::pounds_text(view.order.total()), false});
  for (const larder::OrderDay& each : view.count_down.ahead)
    flow.paragraph(bold(larder::order_day_text(each, view.in.week)), {11});
  for (const larder::OrderDay& each : view.count_down.gone)
    flow.paragraph(larder::order_day_text(each, view.in.week), {10});
  for (const larder::VanOrder& van : view.order.vans) {
    const larder::Supplier& supplier = view.order.suppliers[at(van.supplier)];
    flow.heading((supplier.name.empty() ? "The shop" : supplier.name) +
                     (supplier.top_up ? " (top-up)" : "") + ", comes " +
                     larder::day_text(van.arrives),
                 14);
    flow.table(order_table(view, van));
  }
  if (view.order.lines.empty()) flow.paragraph(bold(nothing_bought_words(view)), {11});
  from_stores(flow, view);
  not_covered(flow, view);
  flow.paragraph(
      "Check every label for allergens when it comes; the school's own records and the label "
      "decide.",
      {10, true});
}

std::string pdf_of_tray_list(const kitchen::Lesson& lesson, const larder::Trays& trays) {
  Document document(lesson.title, lesson.date);
  draw_tray_list(document, lesson, trays);
  return document.pdf();
}

std::string pdf_of_order(const OrderView& view) {
  Document document(view.in.week.title, "");
  draw_order(document, view);
  return document.pdf();
}

}  // namespace print::sheets
