#include "nutrition/develop.h"

#include <algorithm>
#include <cmath>

#include "base/text.h"
#include "kitchen/weigh.h"
#include "nutrition/develop_model.h"
#include "nutrition/per_food.h"

namespace nutrition {

using base::in_quotes;
using base::say;
using kitchen::Food;

namespace {

// Steps of a school's scales: common practice, no source.
constexpr double kFineBelow = 20, kFine = 1, kCoarse = 5;

double worst_per_gram(const Food* food, const Goal& goal) {
  const auto known = food == nullptr ? std::nullopt : per_100_g(*food, goal.of);
  if (known) return *known / 100;
  if (!goal.at_most) return 0;
  if (goal.of == GoalOf::kKilojoules) return 37;
  if (goal.of == GoalOf::kKilocalories) return 9;
  if (goal.of == GoalOf::kSalt || food == nullptr) return 1;
  const What what = goal.of == GoalOf::kSaturates    ? What(Nutrient::kSaturates)
                    : goal.of == GoalOf::kSugars     ? What(Nutrient::kSugars)
                    : goal.of == GoalOf::kFreeSugars ? What(Held::kFreeSugarsMost)
                                                     : What(Nutrient::kFat);
  return most_per_100_g(*food, what).value_or(100) / 100;
}

// Grams in one of the things an amount is measured in on the bench: a gram, a millilitre, a piece.
double grams_a_measure(const kitchen::Ingredient& ingredient, const Food* food) {
  const auto unit = kitchen::unit_named(ingredient.unit);
  const bool volume = unit && kitchen::dimension(*unit) == kitchen::Dimension::kVolume;
  return volume && food != nullptr && food->density ? *food->density : 1;
}

bool counted(const kitchen::Ingredient& ingredient) {
  return ingredient.amount > 0 && !kitchen::unit_named(ingredient.unit);
}

// The dish with one ingredient otherwise: scaled in its own unit, or another food in grams.
void change(kitchen::Ingredient& ingredient, const Food*& food, double from, double to,
            const Swap* swap) {
  if (swap == nullptr) {
    ingredient.amount *= to / from;
    return;
  }
  const auto unit = kitchen::unit_named(ingredient.unit);
  const bool volume = unit && kitchen::dimension(*unit) == kitchen::Dimension::kVolume &&
                      swap->food->density;
  ingredient.name = swap->name;
  ingredient.food = swap->food->key;
  ingredient.preparation.clear();
  ingredient.contains = swap->food->contains;
  ingredient.unit = volume ? "ml" : "g";
  ingredient.amount = volume ? to / *swap->food->density : to;
  food = swap->food;
}

class Developing {
 public:
  Developing(const DevelopAsked& asked, const CookingTables& tables)
      : asked_(asked), tables_(tables) {
    options_ = asked.options;
    options_.weighed.reset();
    options_.leave_out_to_taste = true;
    out_.before = dish_nutrients(asked.dish, asked.foods, tables, options_);
  }

  base::Result<Developed> run() {
    base::Problems problems = faults();
    if (!problems.empty()) return problems;
    build();
    const ModelAnswer answer = least_change(model_, asked_.seconds);
    out_.proved = answer.status == optimise::Status::kImpossible;
    if (!answer.choices.empty()) {
      apply(answer.choices);
      out_.possible = std::all_of(asked_.goals.begin(), asked_.goals.end(),
                                  [&](const Goal& goal) { return kept(goal, out_.after); });
      // A change of what is cooked with what can change how it cooks; then the proposal is not one.
      if (!out_.possible) out_.changes.clear();
      out_.proved = out_.possible && answer.status == optimise::Status::kOptimal;
    }
    // What stands in the way is only asked for when something is known to.
    if (!out_.possible && out_.proved) find_stops();
    return std::move(out_);
  }

 private:
  const DevelopAsked& asked_;
  const CookingTables& tables_;
  Options options_;
  Model model_;
  Developed out_;

  base::Problems faults() const {
    base::Problems out;
    const std::size_t n = asked_.dish.ingredients.size();
    if (asked_.goals.empty())
      out.push_back({"develop.no_goal", "", "", "No goal is given for the changed dish.",
                     "Say what it should reach: \"salt not high\"."});
    bool shaped = asked_.foods.size() == n && asked_.allowed.size() == n;
    for (const RatioBound& ratio : asked_.ratios)
      shaped = shaped && ratio.numerator.size() == n && ratio.denominator.size() == n;
    if (!shaped)
      out.push_back({"develop.shape", "", "",
                     say("The dish has ", n, " ingredients; bounds and ratios do not fit them."),
                     "Give one entry an ingredient."});
    for (const Line& line : out_.before.lines) {
      if (line.grams) continue;
      out.push_back(
          {"develop.not_weighed", "", "",
           say(in_quotes(line.name), " has an amount that cannot be weighed. ", line.problem),
           "Give its amount in grams."});
    }
    return out;
  }

  Mode mode_of(std::size_t i, const Food* food, double weight) const {
    Mode mode;
    mode.weight = weight;
    for (const Goal& goal : asked_.goals) mode.per_gram.push_back(worst_per_gram(food, goal));
    if (out_.before.lines[i].to_taste) mode.per_gram.assign(asked_.goals.size(), 0);
    return mode;
  }

  // An amount on the scales: whole grams (or ml) below twenty, fives above.
  static void add_scales(ModelPart& part, const Mode& like, double least, double most, double step,
                         double measure) {
    const auto add = [&](double from, double to, double by) {
      if (std::ceil(from / by - 1e-9) > std::floor(to / by + 1e-9)) return;
      Mode mode = like;
      mode.least = from, mode.most = to, mode.step = by;
      part.modes.push_back(std::move(mode));
    };
    if (step > 0) return add(least, most, step);
    const double border = kFineBelow * measure;
    if (least < border) add(least, std::min(most, border), kFine * measure);
    if (most > border) add(std::max(least, border), most, kCoarse * measure);
  }

  void build() {
    model_.ratios = asked_.ratios;
    model_.goals = asked_.goals;
    model_.portions = out_.before.portions;
    for (std::size_t i = 0; i < asked_.dish.ingredients.size(); ++i) {
      const Line& line = out_.before.lines[i];
      ModelPart part;
      part.grams = line.grams.value_or(0);
      part.now = mode_of(i, line.food, line.cooked.weight);
      const Allowed& allowed = asked_.allowed[i];
      const double measure = grams_a_measure(asked_.dish.ingredients[i], line.food);
      if (part.grams > 0 && allowed.least < allowed.most)
        add_scales(part, part.now, allowed.least, allowed.most, allowed.step, measure);
      for (std::size_t s = 0; s < allowed.swaps.size() && part.grams > 0; ++s) {
        const Swap& swap = allowed.swaps[s];
        Mode like = mode_of(i, swap.food, weight_of(i, swap));
        like.swap = s;
        add_scales(part, like, swap.least, swap.most, 0,
                   grams_a_measure(asked_.dish.ingredients[i], swap.food));
      }
      model_.parts.push_back(std::move(part));
    }
  }

  // What cooking leaves of the other food's weight in this dish.
  double weight_of(std::size_t i, const Swap& swap) const {
    kitchen::Dish dish = asked_.dish;
    auto foods = asked_.foods;
    const double grams = *out_.before.lines[i].grams;
    change(dish.ingredients[i], foods[i], grams, grams, &swap);
    return dish_nutrients(dish, foods, tables_, options_).lines[i].cooked.weight;
  }

  void apply(const std::vector<Choice>& choices) {
    out_.dish = asked_.dish;
    out_.foods = asked_.foods;
    for (std::size_t i = 0; i < choices.size(); ++i) {
      if (!choices[i].mode) continue;
      const auto& swap_index = model_.parts[i].modes[*choices[i].mode].swap;
      const Swap* swap = swap_index ? &asked_.allowed[i].swaps[*swap_index] : nullptr;
      const double from = model_.parts[i].grams;
      change(out_.dish.ingredients[i], out_.foods[i], from, choices[i].grams, swap);
      out_.changes.push_back(
          {i, from, choices[i].grams, swap != nullptr ? swap->name : std::string()});
    }
    // An amount of nothing would read as "to taste", which is left out of the sum all the same.
    out_.after = dish_nutrients(out_.dish, out_.foods, tables_, options_);
  }

  void try_without(Stop::Kind kind, std::size_t index, double bound, Model model) {
    const auto needed = nearest_without(model, {kind, index}, asked_.seconds / 4);
    if (needed) out_.stops.push_back({kind, index, bound, *needed});
  }

  void find_stops() {
    for (std::size_t i = 0; i < asked_.allowed.size(); ++i) {
      const Allowed& allowed = asked_.allowed[i];
      const double grams = model_.parts[i].grams;
      if (grams <= 0) continue;
      const double measure = grams_a_measure(asked_.dish.ingredients[i], asked_.foods[i]);
      const auto with = [&](double least, double most) {
        Model model = model_;
        std::erase_if(model.parts[i].modes, [](const Mode& mode) { return !mode.swap; });
        add_scales(model.parts[i], model.parts[i].now, least, most, allowed.step, measure);
        return model;
      };
      if (allowed.least > 0)
        try_without(Stop::Kind::kLeast, i, allowed.least, with(0, allowed.most));
      try_without(Stop::Kind::kMost, i, allowed.most,
                  with(allowed.least, std::max(allowed.most, 5 * grams)));
    }
    for (std::size_t r = 0; r < asked_.ratios.size(); ++r)
      try_without(Stop::Kind::kRatio, r, asked_.ratios[r].most, model_);
    for (std::size_t g = 0; g < asked_.goals.size(); ++g)
      try_without(Stop::Kind::kGoal, g, asked_.goals[g].amount, model_);
  }
};

}  // namespace

std::vector<Allowed> usual_changes(const kitchen::Dish& dish, const DishNutrients& nutrients,
                                   double share) {
  std::vector<Allowed> out;
  for (std::size_t i = 0; i < dish.ingredients.size(); ++i) {
    const Line& line = nutrients.lines[i];
    const double grams = line.grams.value_or(0);
    Allowed allowed{grams, grams, 0, {}};
    if (line.food != nullptr && grams > 0 && line.food->key != "water") {
      const std::string& kind = line.food->category;
      const bool to_nothing = kind == "herbs spices" || kind == "condiments stock" ||
                              kind == "sugars sweet";
      allowed.least = to_nothing ? 0 : grams * (1 - share);
      allowed.most = grams * (1 + share);
      if (counted(dish.ingredients[i])) {
        const double piece = grams / dish.ingredients[i].amount;
        allowed.step = kind == "eggs" ? piece : piece / 2;
      }
    }
    out.push_back(std::move(allowed));
  }
  return out;
}

base::Result<Developed> develop(const DevelopAsked& asked, const CookingTables& tables) {
  return Developing(asked, tables).run();
}

}  // namespace nutrition
