#include "larder/needs.h"

#include <algorithm>
#include <map>

#include "base/text.h"
#include "kitchen/weigh.h"

namespace larder {

using base::in_quotes;
using base::say;
using kitchen::Food;
using kitchen::Ingredient;
using kitchen::Quantity;

namespace {

// An ingredient line before its food's measure is known.
struct Asked {
  Need need;
  Quantity one_set;
};

class Sum {
 public:
  Sum(const Week& week, const kitchen::Foods& foods) : week_(week), foods_(foods) {}

  Needs all() {
    for (std::size_t i = 0; i < week_.lessons.size(); ++i) lesson(static_cast<int>(i));
    for (const auto& [food, asked] : asked_) add(*food, asked);
    std::sort(out_.foods.begin(), out_.foods.end(),
              [](const FoodNeed& a, const FoodNeed& b) { return a.name < b.name; });
    return std::move(out_);
  }

 private:
  void unsettled(std::string code, std::string message, std::string remedy) {
    const base::Problem p{std::move(code), "", "", std::move(message), std::move(remedy)};
    if (std::find(out_.unsettled.begin(), out_.unsettled.end(), p) == out_.unsettled.end())
      out_.unsettled.push_back(p);
  }

  void lesson(int index) {
    const WeekLesson& lesson = week_.lessons[static_cast<std::size_t>(index)];
    const std::string when = say(lesson.title, ", ", day_text(lesson.date));
    if (lesson.dishes.empty())
      unsettled("needs.no_dish", say(when, ": no dish is settled."),
                "Choose the dish before the order goes, or leave the lesson out.");
    if (lesson.unanswered > 0)
      unsettled("needs.unanswered",
                say(when, ": ", base::counted(lesson.unanswered, "family has", "families have"),
                    " not answered."),
                "Ask again, or order for them too.");
    for (std::size_t d = 0; d < lesson.dishes.size(); ++d) dish(index, static_cast<int>(d));
  }

  void dish(int lesson, int index) {
    const WeekLesson& at = week_.lessons[static_cast<std::size_t>(lesson)];
    const DishUse& use = at.dishes[static_cast<std::size_t>(index)];
    for (std::size_t i = 0; i < use.dish.ingredients.size(); ++i) {
      const Ingredient& ingredient = use.dish.ingredients[i];
      const Quantity q = kitchen::quantity_of(ingredient);
      if (!q.stated()) continue;
      const int line = static_cast<int>(i);
      const bool home = std::find(use.from_home.begin(), use.from_home.end(), line) !=
                        use.from_home.end();
      const Ratio sets = home ? use.school_sets : use.sets;
      if (sets <= Ratio(0)) continue;
      const Food* food = kitchen::food_of(ingredient, foods_);
      if (food == nullptr) {
        unknown(ingredient, use);
      } else if (!from_the_tap(*food)) {
        asked_[food].push_back({{lesson, index, line, at.date, sets, 0}, q});
      }
    }
  }

  void unknown(const Ingredient& ingredient, const DishUse& use) {
    const auto near = foods_.search(ingredient.name, 3);
    std::vector<std::string> names;
    for (const auto& each : near) names.push_back(in_quotes(each.food->name));
    unsettled("needs.unknown_food",
              say(in_quotes(ingredient.name), " of ", in_quotes(use.dish.name),
                  " is not in the table of foods, so it is not in this order."),
              names.empty() ? "Add it to the school's own foods, or name its food in the dish."
                            : say("Name its food in the dish: ", base::joined(names, "or"), "."));
  }

  void add(const Food& food, const std::vector<Asked>& asked) {
    std::vector<Quantity> all;
    for (const Asked& each : asked) all.push_back(each.one_set);
    FoodNeed out{food.key, food.name, measure_for(all, food), {}};
    for (const Asked& each : asked) {
      const auto amount = in_measure(each.one_set, food, out.measure);
      if (!amount) {
        const DishUse& use = week_.lessons[static_cast<std::size_t>(each.need.lesson)]
                                 .dishes[static_cast<std::size_t>(each.need.dish)];
        unsettled("needs.not_summed",
                  say(kitchen::quantity_text(each.one_set), " of ", in_quotes(food.name), " in ",
                      in_quotes(use.dish.name),
                      " is not in this order: ", amount.problems().front().message),
                  amount.problems().front().remedy);
        continue;
      }
      Need need = each.need;
      need.amount = amount.value() * need.sets;
      out.parts.push_back(need);
    }
    std::stable_sort(out.parts.begin(), out.parts.end(),
                     [](const Need& a, const Need& b) { return a.date < b.date; });
    if (!out.parts.empty()) out_.foods.push_back(std::move(out));
  }

  struct ByKey {
    bool operator()(const Food* a, const Food* b) const { return a->key < b->key; }
  };

  const Week& week_;
  const kitchen::Foods& foods_;
  std::map<const Food*, std::vector<Asked>, ByKey> asked_;
  Needs out_;
};

}  // namespace

Ratio FoodNeed::total() const {
  Ratio sum = 0;
  for (const Need& each : parts) sum += each.amount;
  return sum;
}

bool from_the_tap(const Food& food) { return food.key == "water"; }

Needs needs_of(const Week& week, const kitchen::Foods& foods) { return Sum(week, foods).all(); }

}  // namespace larder
