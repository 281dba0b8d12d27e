// benchbell scale: a dish for more, for another tin, by what there is, or in sets for a class.
#include <cstdio>
#include <optional>

#include "app/commands.h"
#include "app/files.h"
#include "app/find_dish.h"
#include "app/own_tables.h"
#include "base/text.h"
#include "kitchen/ratios/judge.h"
#include "larder/scale_tin.h"
#include "print/say_scale.h"
#include "shipped/ratios.h"

namespace app {
namespace {

struct Factor {
  kitchen::Ratio amounts = 1, depth = 1;
  std::string title = "as written";
};

base::Result<Factor> by_tin(const ScaleAsked& asked) {
  if (asked.tin.empty() || asked.to_tin.empty()) {
    return base::Problem{"scale.two_tins", "", "", "Two tins are needed: the dish's and yours.",
                         "Say both: --tin \"round 20\" --to-tin \"round 23\"."};
  }
  const auto from = larder::read_tin(asked.tin), to = larder::read_tin(asked.to_tin);
  if (!from || !to) {
    base::Problems all;
    base::gather(from, all);
    base::gather(to, all);
    return all;
  }
  Factor out;
  out.amounts = larder::tin_factor(from.value(), to.value());
  out.title = base::say("from ", larder::tin_text(from.value()), " to ",
                        larder::tin_text(to.value()));
  if (from.value().depth && to.value().depth) out.depth = *to.value().depth / *from.value().depth;
  return out;
}

base::Result<Factor> by_what_there_is(const ScaleAsked& asked, const kitchen::Dish& dish,
                                      const kitchen::Foods& foods) {
  std::vector<larder::Have> all;
  base::Problems problems;
  for (const std::string& words : asked.have) {
    const auto have = larder::read_have(words);
    if (have)
      all.push_back(have.value());
    else
      base::gather(have, problems);
  }
  if (!problems.empty()) return problems;
  const auto scarcest = larder::factor_for_have(dish, all, foods);
  if (!scarcest) return scarcest.problems();
  const auto at = static_cast<std::size_t>(scarcest.value().ingredient);
  Factor out;
  out.amounts = scarcest.value().factor;
  out.title = base::say("as much as the ", dish.ingredients[at].name, " allows");
  return out;
}

base::Result<Factor> by_portions(const ScaleAsked& asked, const kitchen::Dish& dish) {
  const auto factor = larder::factor_for_portions(dish, *asked.portions);
  if (!factor) return factor.problems();
  Factor out;
  out.amounts = factor.value();
  out.title = base::say("for ", base::counted(*asked.portions, "portion", "portions"),
                        " instead of ", dish.portions);
  return out;
}

// Of the ratios that lie within their bands unrounded, those that rounding moves out.
std::vector<std::string> moved_out(const kitchen::Dish& exact, const kitchen::Dish& rounded,
                                   const kitchen::Foods& foods) {
  std::vector<std::string> out;
  const auto weighed_exact = kitchen::counted(exact, foods);
  const auto weighed_rounded = kitchen::counted(rounded, foods);
  const auto inside = [](kitchen::Standing s) {
    return s == kitchen::Standing::kWithin || s == kitchen::Standing::kNearEdge;
  };
  for (const auto& found : kitchen::recognise(exact, weighed_exact)) {
    const auto before = kitchen::judge(exact, weighed_exact, found, shipped::ratios());
    const auto after = kitchen::judge(rounded, weighed_rounded, found, shipped::ratios());
    for (std::size_t i = 0; i < before.ratios.size() && i < after.ratios.size(); ++i) {
      const auto &was = before.ratios[i], &is = after.ratios[i];
      if (!inside(was.standing) || inside(is.standing) || !is.value) continue;
      out.push_back(base::say("rounding moves a ratio of the ", found.name, " out of its band: ",
                              is.row.quantity, " ", base::decimal_text(*is.value), " instead of ",
                              base::decimal_text(*was.value), ": ", is.goes_wrong, "."));
    }
  }
  return out;
}

int one_batch(const ScaleAsked& asked, const kitchen::Dish& dish, const kitchen::Foods& foods,
              const Factor& factor) {
  const auto eggs = asked.beaten_eggs ? larder::Eggs::kBeatenWeight : larder::Eggs::kWhole;
  const larder::Scaled scaled = larder::scale(dish, factor.amounts, foods, eggs);
  std::fputs(print::say_scaled(dish, scaled, factor.title).c_str(), stdout);
  const auto moved = moved_out(as_exact(dish, scaled), as_shown(dish, scaled), foods);
  std::fputs(print::say_warnings(moved).c_str(), stdout);
  const auto times = larder::times_that_do_not_scale(dish, factor.amounts, factor.depth, foods);
  std::fputs(print::say_times(dish, times).c_str(), stdout);
  return kFits;
}

}  // namespace

int scale(const ScaleAsked& asked) {
  const auto dish = find_dish(asked.dish);
  if (!dish) return tell(dish.problems());
  const auto foods = foods_with(asked.own_foods_file);
  if (!foods) return tell(foods.problems());
  const bool tins = !asked.tin.empty() || !asked.to_tin.empty();
  if (asked.portions.has_value() + tins + !asked.have.empty() > 1) {
    return tell({{"scale.several_ways", "", "", "More than one size was asked for.",
                  "Give one of --portions, --tin with --to-tin, or --have."}});
  }
  base::Result<Factor> factor = Factor{};
  if (asked.portions) factor = by_portions(asked, dish.value());
  if (tins) factor = by_tin(asked);
  if (!asked.have.empty()) factor = by_what_there_is(asked, dish.value(), foods.value());
  if (!factor) return tell(factor.problems());
  if (asked.cooks && *asked.cooks < 1) {
    return tell({{"scale.cooks", "", "", base::say(*asked.cooks, " sets cannot be made."),
                  "Give --cooks a number from 1 on."}});
  }
  if (!asked.cooks && asked.spares == 0 && !asked.demonstration)
    return one_batch(asked, dish.value(), foods.value(), factor.value());
  const auto order = larder::order_of_sets(
      dish.value(), {asked.cooks.value_or(0), asked.demonstration, asked.spares},
      factor.value().amounts, foods.value(), !asked.practised);
  if (!order) return tell(order.problems());
  std::fputs(print::say_sets(dish.value(), order.value()).c_str(), stdout);
  return kFits;
}

}  // namespace app
