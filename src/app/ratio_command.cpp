// benchbell ratios: the working ratios of a dish, and what a change would do to it.
#include <algorithm>
#include <cstdio>

#include "app/commands.h"
#include "app/files.h"
#include "app/find_dish.h"
#include "app/own_tables.h"
#include "print/say_ratios.h"
#include "shipped/ratios.h"

namespace app {

int ratios(const RatiosAsked& asked) {
  const auto dish = find_dish(asked.dish);
  if (!dish) return tell(dish.problems());
  const auto foods = foods_with(asked.own_foods_file);
  if (!foods) return tell(foods.problems());
  if (asked.changes.empty()) {
    const auto judged = kitchen::judge(dish.value(), foods.value(), shipped::ratios());
    std::fputs(print::say_ratios(dish.value(), judged, asked.details).c_str(), stdout);
    return kFits;
  }
  kitchen::Outcome worst = kitchen::Outcome::kWorks;
  for (const std::string& words : asked.changes) {
    const auto change = kitchen::read_change(words);
    if (!change) return tell(change.problems());
    const auto verdict = kitchen::judge_change(dish.value(), change.value(), foods.value(),
                                               shipped::ratios());
    if (!verdict) return tell(verdict.problems());
    std::fputs(print::say_change(verdict.value(), words).c_str(), stdout);
    if (asked.details) {
      const auto judged = kitchen::judge(verdict.value().changed, foods.value(), shipped::ratios());
      std::fputs(print::say_ratios(verdict.value().changed, judged, true).c_str(), stdout);
    }
    worst = std::max(worst, verdict.value().outcome);
  }
  return worst == kitchen::Outcome::kFails ? kDoesNotFit : kFits;
}

}  // namespace app
