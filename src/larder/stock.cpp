#include "larder/stock.h"

#include <algorithm>
#include <map>
#include <utility>

#include "base/text.h"

namespace larder {

using base::in_quotes;
using base::say;
using kitchen::Food;
using kitchen::Quantity;

namespace {

constexpr int kForever = 1'000'000;

int ends(const StockLot& lot) { return lot.use_by ? lot.use_by->days : kForever; }

bool sooner(const StockLot& a, const StockLot& b) {
  if (ends(a) != ends(b)) return ends(a) < ends(b);
  return a.opened && !b.opened;
}

// Of a lot whose amount is `whole` in some measure, the rest after `taken` of it.
void take(StockLot& lot, const Ratio& taken, const Ratio& whole) {
  lot.amount = kitchen::times(lot.amount, (whole - taken) / whole);
  lot.opened = true;
}

class Deduction {
 public:
  Deduction(std::vector<StockLot> lots, const Week& week, const kitchen::Foods& foods)
      : week_(week), foods_(foods) {
    std::stable_sort(lots.begin(), lots.end(), sooner);
    out_.lots = std::move(lots);
  }

  void food(const FoodNeed& need, Date first, Date last) {
    std::map<int, std::pair<Ratio, Ratio>> lessons;  // short by, planned
    for (const Need& part : need.parts) {
      if (part.date < first || last < part.date) continue;
      auto& [missing, planned] = lessons[part.lesson];
      missing += use(need, part);
      planned += part.amount;
    }
    for (const auto& [index, amounts] : lessons) {
      const auto& [missing, planned] = amounts;
      if (missing <= Ratio(0)) continue;
      const WeekLesson& lesson = week_.lessons[static_cast<std::size_t>(index)];
      out_.warnings.push_back(
          {need.name,
           say(lesson.title, ", ", day_text(lesson.date), ": ", in_quotes(need.name), " is ",
               amount_text(missing, need.measure), " short of the ",
               amount_text(planned, need.measure), " planned."),
           index});
    }
  }

  StockAfter finish(Date last) {
    for (const StockLot& lot : out_.lots) {
      if (lot.use_by && *lot.use_by < last && lot.amount.middle() > Ratio(0)) {
        const Food* food = foods_.find(lot.food);
        out_.warnings.push_back(
            {food == nullptr ? lot.food : food->name,
             say(kitchen::quantity_text(lot.amount), " of ",
                 in_quotes(food == nullptr ? lot.food : food->name), " has a use-by date of ",
                 day_text(*lot.use_by), ", which has passed: do not use it."),
             -1});
      }
    }
    std::erase_if(out_.lots, [](const StockLot& lot) { return lot.amount.middle() <= Ratio(0); });
    return std::move(out_);
  }

 private:
  Ratio use(const FoodNeed& need, const Need& part) {
    Ratio wanted = part.amount;
    const Food* food = foods_.find(need.food);
    for (StockLot& lot : out_.lots) {
      if (wanted <= Ratio(0)) break;
      if (lot.food != need.food || (lot.use_by && *lot.use_by < part.date)) continue;
      const auto there = bought_in_measure(lot.amount, *food, need.measure);
      if (!there || there.value() <= Ratio(0)) continue;
      const Ratio taken = std::min(wanted, there.value());
      take(lot, taken, there.value());
      wanted = wanted - taken;
    }
    return wanted;
  }

  const Week& week_;
  const kitchen::Foods& foods_;
  StockAfter out_;
};

bool meant(const StockLot& lot, const Correction& c) {
  return lot.food == c.food && (!c.use_by || lot.use_by == c.use_by);
}

}  // namespace

StockAfter deduct(std::vector<StockLot> lots, const Needs& needs, const Week& week,
                  const kitchen::Foods& foods, Date first, Date last) {
  Deduction deduction(std::move(lots), week, foods);
  for (const FoodNeed& need : needs.foods) deduction.food(need, first, last);
  return deduction.finish(last);
}

base::Result<std::vector<StockLot>> corrected(std::vector<StockLot> lots,
                                              const std::vector<Correction>& all,
                                              const kitchen::Foods& foods) {
  base::Problems problems;
  std::stable_sort(lots.begin(), lots.end(), sooner);
  for (const Correction& c : all) {
    const Food* food = foods.find(c.food);
    std::vector<StockLot*> these;
    for (StockLot& lot : lots) {
      if (meant(lot, c)) these.push_back(&lot);
    }
    if (food == nullptr || these.empty()) {
      if (c.there.middle() > Ratio(0)) lots.push_back({c.food, c.there, c.use_by, false, ""});
      continue;
    }
    std::vector<Quantity> quantities = {c.there};
    for (const StockLot* lot : these) quantities.push_back(lot->amount);
    const Measure measure = measure_for(quantities, *food);
    Ratio thought = 0;
    std::vector<Ratio> each;
    bool good = true;
    for (const Quantity& q : quantities) {
      const auto amount = bought_in_measure(q, *food, measure);
      good = good && static_cast<bool>(amount);
      each.push_back(amount ? amount.value() : Ratio(0));
    }
    if (!good) {
      problems.push_back({"stock.not_counted", "", "",
                          say(kitchen::quantity_text(c.there), " of ", in_quotes(food->name),
                              " cannot be compared with what is listed."),
                          "Count it in the unit the list uses."});
      continue;
    }
    for (std::size_t i = 1; i < each.size(); ++i) thought += each[i];
    Ratio less = thought - each[0];
    if (less < Ratio(0)) {  // more than thought: what keeps longest grew
      StockLot& last = *these.back();
      last.amount = each.back() > Ratio(0)
                        ? kitchen::times(last.amount, (each.back() - less) / each.back())
                        : c.there;
    }
    for (std::size_t i = 0; i < these.size() && less > Ratio(0); ++i) {
      const Ratio taken = std::min(less, each[i + 1]);
      if (taken > Ratio(0)) take(*these[i], taken, each[i + 1]);
      less = less - taken;
    }
  }
  if (!problems.empty()) return problems;
  std::erase_if(lots, [](const StockLot& lot) { return lot.amount.middle() <= Ratio(0); });
  return lots;
}

std::vector<StockLot> to_look_at(const std::vector<StockLot>& lots, Date today, int days,
                                 std::size_t most) {
  std::vector<StockLot> out;
  for (const StockLot& lot : lots) {
    if (lot.opened || (lot.use_by && lot.use_by->days <= today.days + days)) out.push_back(lot);
  }
  std::stable_sort(out.begin(), out.end(), sooner);
  if (out.size() > most) out.resize(most);
  return out;
}

}  // namespace larder
