// The same programme written out for the mixed-integer solver; symbols in docs/methods/ordering.md.
#include <algorithm>
#include <cmath>

#include "larder/food_programme.h"
#include "optimise/milp.h"

namespace larder {

FoodPlan solve_by_milp(const FoodProgramme& p, const FoodSearch& how) {
  optimise::Programme m;
  const std::size_t days = p.need.size();
  std::vector<optimise::Row> covers(days);
  for (std::size_t d = 0; d < days; ++d) covers[d].least = p.need[d] * (1 - kAmountSlack);
  optimise::Row kept;  // what lasts and is left: z <= sum(size x - uses)
  kept.least = 0;
  double total = 0;
  for (const double need : p.need) total += need;

  std::vector<optimise::Row> holds;
  const auto lot = [&](const Lot& l, std::size_t count, bool counted) {
    optimise::Row hold;  // uses - size x <= 0, or uses <= size
    hold.most = counted ? 0 : l.size;
    if (counted) hold.terms.push_back({count, -l.size});
    for (std::size_t d = 0; d < days; ++d) {
      const int day = static_cast<int>(d);
      if (p.need[d] <= 0 || l.first > day || l.last < day) continue;
      const std::size_t use = m.add(optimise::Variable{0, p.need[d], 0, false});
      hold.terms.push_back({use, 1});
      covers[d].terms.push_back({use, 1});
      if (l.lasts) kept.terms.push_back({use, -1});
    }
    if (l.lasts && counted) kept.terms.push_back({count, l.size});
    if (l.lasts && !counted) kept.least -= l.size;
    holds.push_back(std::move(hold));
  };
  std::vector<std::size_t> counts;
  for (const Batch& b : p.batches) {
    const double most = std::ceil(total / b.lot.size) + 1;
    counts.push_back(m.add(optimise::Variable{0, most, b.price, true}));
    lot(b.lot, counts.back(), true);
  }
  for (const Lot& l : p.stock) lot(l, 0, false);
  for (optimise::Row& row : holds) m.add(std::move(row));
  for (optimise::Row& row : covers) m.add(std::move(row));
  if (p.worth > 0 && p.worth_most > 0) {
    const std::size_t left = m.add(optimise::Variable{0, p.worth_most, -p.worth, false});
    kept.terms.push_back({left, -1});
    m.add(std::move(kept));
  }

  optimise::Effort effort;
  effort.seconds = how.seconds;
  effort.gap = how.gap;
  const optimise::Solution solved = optimise::minimise(m, effort);
  FoodPlan out;
  out.feasible = solved.found();
  out.bound = solved.bound;
  if (!out.feasible) return out;
  double price = 0;
  for (std::size_t b = 0; b < counts.size(); ++b) {
    out.counts.push_back(static_cast<int>(std::llround(solved.values[counts[b]])));
    price += p.batches[b].price * out.counts.back();
  }
  // Counted again from the packs alone, so that no tolerance of the solver is paid for.
  const Served served = serve(p, out.counts);
  out.feasible = served.short_in_all <= 0;
  out.cost = price - p.worth * std::min(p.worth_most, served.left_that_lasts);
  out.bound = std::min(out.bound, out.cost);
  return out;
}

}  // namespace larder
