#include "print/say_order.h"

#include <algorithm>

#include "base/csv.h"
#include "base/text.h"

namespace print {

using base::say;
using larder::amount_text;
using larder::day_text;
using larder::Order;
using larder::OrderLine;
using larder::pounds_text;

namespace {

std::string padded(const std::string& text, std::size_t width) {
  const std::size_t letters = base::letters(text);
  return letters >= width ? text : text + std::string(width - letters, ' ');
}

std::string right(const std::string& text, std::size_t width) {
  const std::size_t letters = base::letters(text);
  return letters >= width ? text : std::string(width - letters, ' ') + text;
}

class Saying {
 public:
  Saying(const OrderView& view, const SayOrder& how) : v_(view), how_(how) {}

  std::string run() {
    out_ += say(v_.in.week.title, "\n");
    days();
    vans();
    if (v_.order.lines.empty()) out_ += say("\n", nothing_bought_words(v_), "\n");
    stores();
    shortfalls();
    not_settled();
    money();
    if (how_.details) proof();
    out_ +=
        "\nCheck every label for allergens when it comes; the school's own records and the label "
        "decide.\n";
    return std::move(out_);
  }

 private:
  void days() {
    for (const larder::OrderDay& day : v_.count_down.ahead)
      out_ += larder::order_day_text(day, v_.in.week) + "\n";
    for (const larder::OrderDay& day : v_.count_down.gone)
      out_ += larder::order_day_text(day, v_.in.week) + "\n";
  }

  void vans() {
    for (const larder::VanOrder& van : v_.order.vans) {
      const larder::Supplier& s = v_.order.suppliers[static_cast<std::size_t>(van.supplier)];
      out_ += say("\n", s.name.empty() ? "The shop" : s.name, s.top_up ? " (top-up)" : "",
                  ", comes ", day_text(van.arrives), "\n");
      for (const OrderLine& line : v_.order.lines) {
        if (line.supplier == van.supplier && line.arrives == van.arrives) this->line(line);
      }
      out_ += say("  ", padded("goods", 56), right(pounds_text(van.goods), 9), "\n");
      if (van.delivery > 0)
        out_ += say("  ", padded("delivery", 56), right(pounds_text(van.delivery), 9), "\n");
      if (van.below_minimum > 0)
        out_ += say("  ", padded("below the supplier's minimum: fill up or pay", 56),
                    right(pounds_text(van.below_minimum), 9), "\n");
    }
  }

  void line(const OrderLine& line) {
    const std::string what = say(line.count, " x ", pack_words(pack_of(v_, line)));
    out_ += say("  ", padded(food_name(v_, line.food), 32), " ", padded(what, 23),
                right(pounds_text(line.pence), 9), "\n");
    if (!how_.details) return;
    const larder::Measure& m = measure_of(v_, line.food);
    for (const larder::LessonUse& use : line.uses)
      out_ += say("      ", amount_text(use.amount, m), " for ", lesson_name(v_, use.lesson), "\n");
    if (line.left > larder::Ratio(0))
      out_ += say("      ", amount_text(line.left, m), " left over\n");
    out_ += say("      closed, good until ", day_text(line.good_until),
                line.keeping_assumed ? " (assumed: the price list does not say)" : "", "; opened, ",
                base::counted(line.opened_days, "day", "days"), "\n");
  }

  void stores() {
    if (v_.order.from_stock.empty()) return;
    out_ += "\nOut of the stores, first to expire first\n";
    for (const larder::StockUse& use : v_.order.from_stock) {
      larder::Ratio sum = 0;
      for (const larder::LessonUse& each : use.uses) sum += each.amount;
      const auto lot = static_cast<std::size_t>(use.lot);
      std::string date;
      if (lot >= v_.in.stock.size())
        date = "on its way";
      else if (v_.in.stock[lot].use_by)
        date = "use by " + day_text(*v_.in.stock[lot].use_by);
      out_ += say("  ", padded(food_name(v_, use.food), 32), " ",
                  padded(amount_text(sum, measure_of(v_, use.food)), 14), date, "\n");
      if (!how_.details) continue;
      for (const larder::LessonUse& each : use.uses)
        out_ += say("      ", amount_text(each.amount, measure_of(v_, use.food)), " for ",
                    lesson_name(v_, each.lesson), "\n");
    }
  }

  void shortfalls() {
    if (v_.order.shortfalls.empty()) return;
    out_ += "\nShort (the lessons can go on; find another way for these)\n";
    for (const larder::Shortfall& s : v_.order.shortfalls)
      out_ += say("  ", amount_text(s.amount, measure_of(v_, s.food)), " of ",
                  food_name(v_, s.food), " for ", lesson_name(v_, s.lesson), ": ", s.why, ".\n");
  }

  void not_settled() {
    const auto& all = v_.count_down.unsettled;
    if (all.empty()) return;
    out_ += "\nNot settled\n";
    for (const base::Problem& p : all) out_ += say("  ", p.message, "\n      ", p.remedy, "\n");
  }

  void money() {
    const Order& o = v_.order;
    out_ += say("\nTo pay ", pounds_text(o.total()));
    const larder::Pence saved = o.naive.total() - o.total();
    if (saved > 0)
      out_ += say("; ordered lesson by lesson it would be ", pounds_text(o.naive.total()),
                  ", so this saves ", pounds_text(saved));
    out_ += ".\n";
    if (v_.costs.left_over > 0)
      out_ += say("Of that, ", pounds_text(v_.costs.left_over), " is in packs left over.\n");
    for (const larder::ClassCost& c : v_.costs.classes) {
      out_ += say("  ", padded(c.name, 32), " ", right(pounds_text(c.total), 9));
      if (c.pupils > 0)
        out_ += say(", ", pounds_text(c.per_pupil), " for each of ",
                    base::counted(c.pupils, "pupil", "pupils"));
      out_ += "\n";
    }
    for (const std::string& sentence : v_.costs.over_budget) out_ += "  " + sentence + "\n";
    if (!v_.costs.not_known.empty())
      out_ += say("  Not in these sums, because no price is known: ",
                  base::joined(v_.costs.not_known), ".\n");
    if (how_.families)
      out_ += say("Private: the school's stores and orders ", pounds_text(v_.costs.split.school),
                  ", families about ", pounds_text(v_.costs.split.families), ".\n");
  }

  void proof() {
    const Order& o = v_.order;
    out_ += say("\nHow good this is: prices less the worth of what is left and lasts come to ",
                pounds_text(larder::Ratio::near(o.cost)),
                "; no order for the same needs comes to "
                "less than ",
                pounds_text(larder::Ratio::near(o.bound)), " (within ",
                base::decimal_text(larder::Ratio::near(o.gap() * 100), 2), " %).\n");
  }

  const OrderView& v_;
  SayOrder how_;
  std::string out_;
};

}  // namespace

std::string say_order(const OrderView& view, const SayOrder& how) {
  return Saying(view, how).run();
}

std::vector<std::vector<std::string>> order_rows(const OrderView& v) {
  std::vector<std::vector<std::string>> rows = {{"supplier", "order by", "comes", "food", "pack",
                                                 "count", "price", "for", "left over",
                                                 "good until"}};
  for (const OrderLine& line : v.order.lines) {
    const larder::Measure& m = measure_of(v, line.food);
    std::vector<std::string> uses;
    for (const larder::LessonUse& use : line.uses)
      uses.push_back(say(amount_text(use.amount, m), " ", lesson_name(v, use.lesson)));
    std::string all;
    for (const std::string& use : uses) all += (all.empty() ? "" : "; ") + use;
    const std::string pounds = pounds_text(line.pence);
    rows.push_back({v.order.suppliers[static_cast<std::size_t>(line.supplier)].name,
                    base::date_text(line.order_by), base::date_text(line.arrives),
                    food_name(v, line.food), pack_words(pack_of(v, line)),
                    std::to_string(line.count), pounds.substr(pounds.find_first_of("0123456789")),
                    all, line.left > larder::Ratio(0) ? amount_text(line.left, m) : "",
                    base::date_text(line.good_until)});
  }
  return rows;
}

std::string order_csv(const OrderView& view) {
  std::string out;
  for (const auto& row : order_rows(view)) out += base::csv_line(row);
  return out;
}

}  // namespace print
