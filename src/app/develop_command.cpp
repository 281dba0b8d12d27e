// benchbell develop: the smallest change that makes a dish reach a goal.
#include <algorithm>
#include <cstdio>

#include "app/commands.h"
#include "app/files.h"
#include "app/find_dish.h"
#include "app/own_tables.h"
#include "base/folding.h"
#include "base/text.h"
#include "kitchen/ratios/judge.h"
#include "nutrition/develop.h"
#include "print/say_developed.h"
#include "shipped/cooking.h"
#include "shipped/ratios.h"

namespace app {
namespace {

using base::in_quotes;

std::optional<std::size_t> ingredient_called(const kitchen::Dish& dish, std::string_view name) {
  const std::string wanted = base::folded(name);
  for (std::size_t i = 0; i < dish.ingredients.size(); ++i) {
    if (base::folded(dish.ingredients[i].name) == wanted || dish.ingredients[i].food == wanted)
      return i;
  }
  return std::nullopt;
}

base::Problem no_ingredient(const kitchen::Dish& dish, const std::string& name) {
  std::vector<std::string> names;
  for (const kitchen::Ingredient& each : dish.ingredients) names.push_back(each.name);
  const auto near = base::nearest(name, names);
  return {"develop.ingredient", "", "",
          in_quotes(dish.name) + " has no ingredient " + in_quotes(name) + ".",
          near ? "Did you mean " + in_quotes(*near) + "?" : "It has " + base::joined(names) + "."};
}

void read_keeps(const DevelopWords& words, nutrition::DevelopAsked& asked,
                const nutrition::DishNutrients& held, base::Problems& problems) {
  for (const std::string& name : words.keep) {
    const auto i = ingredient_called(asked.dish, name);
    if (i)
      asked.allowed[*i].least = asked.allowed[*i].most = held.lines[*i].grams.value_or(0);
    else
      problems.push_back(no_ingredient(asked.dish, name));
  }
}

void read_swaps(const DevelopWords& words, nutrition::DevelopAsked& asked,
                const nutrition::DishNutrients& held, const kitchen::Foods& foods,
                base::Problems& problems) {
  for (const std::string& text : words.swaps) {
    const auto equals = text.find('=');
    if (equals == std::string::npos) {
      problems.push_back({"develop.swap", "", "",
                          "The swap " + in_quotes(text) + " names no other food.",
                          "Write it as \"butter = rapeseed oil\"."});
      continue;
    }
    const std::string from = base::folded(text.substr(0, equals)),
                      to = base::folded(text.substr(equals + 1));
    const auto i = ingredient_called(asked.dish, from);
    const kitchen::Food* food = foods.find(to) != nullptr ? foods.find(to) : foods.named(to);
    if (food == nullptr) food = foods.find(base::replaced(to, ' ', '_'));
    if (!i) problems.push_back(no_ingredient(asked.dish, from));
    if (food == nullptr) {
      problems.push_back({"develop.swap", "", "", "No food is called " + in_quotes(to) + ".",
                          "Look its name up: benchbell foods " + in_quotes(to)});
    }
    if (!i || food == nullptr) continue;
    const double grams = held.lines[*i].grams.value_or(0), share = words.within / 100;
    asked.allowed[*i].swaps.push_back({food->name, food, grams * (1 - share), grams * (1 + share)});
  }
}

// Every ratio of the dish stays in its band; one that is outside already goes no further out.
std::vector<nutrition::RatioBound> ratio_limits(const kitchen::Dish& dish,
                                                const nutrition::DishNutrients& held,
                                                const kitchen::Foods& foods) {
  std::vector<nutrition::RatioBound> out;
  for (const kitchen::RatioBound& each : kitchen::ratio_bounds(dish, foods, shipped::ratios())) {
    nutrition::RatioBound limit;
    limit.numerator.resize(dish.ingredients.size());
    limit.denominator.resize(dish.ingredients.size());
    double above = 0, below = 0;
    const auto add = [&](const std::vector<kitchen::RatioBound::Term>& terms,
                         std::vector<double>& into, double& sum) {
      for (const kitchen::RatioBound::Term& term : terms) {
        const auto i = static_cast<std::size_t>(term.ingredient);
        into[i] += term.factor.value();
        sum += term.factor.value() * held.lines[i].grams.value_or(0);
      }
    };
    add(each.numerator, limit.numerator, above);
    add(each.denominator, limit.denominator, below);
    if (below <= 0) continue;
    limit.least = std::min(each.least.value(), above / below);
    limit.most = std::max(each.most.value(), above / below);
    limit.name = each.preparation;
    out.push_back(std::move(limit));
  }
  return out;
}

}  // namespace

int develop(const DevelopWords& words) {
  const auto foods = foods_with(words.own_file);
  if (!foods) return tell(foods.problems());
  const auto dish = find_dish(words.dish);
  if (!dish) return tell(dish.problems());
  nutrition::DevelopAsked asked;
  asked.dish = dish.value();
  asked.seconds = words.seconds;
  asked.foods = nutrition::foods_of(asked.dish, foods.value());
  const auto held = nutrition::dish_nutrients(asked.dish, asked.foods, shipped::cooking());
  asked.allowed = nutrition::usual_changes(asked.dish, held, words.within / 100);
  asked.ratios = ratio_limits(asked.dish, held, foods.value());
  base::Problems problems;
  for (const std::string& text : words.goals) {
    const auto goals = nutrition::read_goal(text, held.portion_grams());
    if (goals)
      asked.goals.insert(asked.goals.end(), goals.value().begin(), goals.value().end());
    else
      base::gather(goals, problems);
  }
  read_keeps(words, asked, held, problems);
  read_swaps(words, asked, held, foods.value(), problems);
  if (!problems.empty()) return tell(problems);
  const auto developed = nutrition::develop(asked, shipped::cooking());
  if (!developed) return tell(developed.problems());
  std::fputs(print::say_developed(asked, developed.value()).c_str(), stdout);
  return developed.value().possible ? kFits : kDoesNotFit;
}

}  // namespace app
