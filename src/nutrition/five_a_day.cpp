#include "nutrition/five_a_day.h"

#include <algorithm>

namespace nutrition {

using kitchen::FiveADay;

namespace {

double cooked_pulses(const Line& line, const CookingTables& tables) {
  const kitchen::Food& food = *line.food;
  if (!food.key.ends_with("_dry")) return *line.grams;
  const Yield* row = tables.yield(food.key, Cooking::kBoiled, YieldKind::kUptake);
  return *line.grams * (row != nullptr ? row->share : 2.4);
}

}  // namespace

FiveADayCount five_a_day(const DishNutrients& dish, const CookingTables& tables) {
  FiveADayCount out;
  double fresh = 0, dried = 0, juice = 0, pulses = 0;
  for (std::size_t i = 0; i < dish.lines.size(); ++i) {
    const Line& line = dish.lines[i];
    if (line.to_taste) continue;
    if (line.food == nullptr || (line.food->five_a_day != FiveADay::kNo && !line.grams)) {
      out.unknown.push_back(i);
      continue;
    }
    const double share = 1.0 / dish.portions;
    double amount = line.grams.value_or(0) * share;
    switch (line.food->five_a_day) {
      case FiveADay::kNo:
        continue;
      case FiveADay::kFresh:
        fresh += amount;
        break;
      case FiveADay::kDried:
        dried += amount;
        break;
      case FiveADay::kJuice:
        amount /= line.food->density.value_or(1);
        juice += amount;
        break;
      case FiveADay::kPulses:
        amount = cooked_pulses(line, tables) * share;
        pulses += amount;
        break;
    }
    out.shares.push_back({i, amount, line.food->five_a_day});
  }
  out.fresh = fresh / kFreshPortion;
  out.dried = std::min(1.0, dried / kDriedPortion);
  out.juice = std::min(1.0, juice / kJuicePortion);
  out.pulses = std::min(1.0, pulses / kPulsesPortion);
  return out;
}

}  // namespace nutrition
