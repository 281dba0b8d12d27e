// What an ingredient is likely to do in a dish, from the words of its steps. Deliberately simple:
// it only chooses between the kinds of work for which the table has a substitute.
#include <algorithm>
#include <initializer_list>

#include "base/folding.h"
#include "safety/substitutes.h"

namespace safety {
namespace {

using kitchen::Dish;

// Words of a step that tell what the ingredient does there. The first that is met in this order
// counts: glazing and foaming are said outright, binding is what is left.
struct Clue {
  Function function;
  std::initializer_list<std::string_view> words;
};
const Clue kClues[] = {
    {Function::kGlazing, {"glaze", "brush the", "brush with", "eggwash", "egg wash"}},
    {Function::kFoaming,
     {"whisk until", "whisk to", "whisk the egg", "peaks", "pale and thick", "meringue", "whip",
      "thick and pale", "foam", "ribbon", "trail"}},
    {Function::kEmulsifying, {"mayonnaise", "emulsi", "drop by drop"}},
    {Function::kSetting,
     {"custard", "quiche", "set", "frittata", "omelette", "flan", "jelly", "bloom",
      "soak the gel"}},
    {Function::kCoating, {"coat", "crumb", "dip", "flour, egg", "dust the fish", "press into"}},
    {Function::kCreaming, {"cream the", "cream together", "beat the butter", "light and fluffy"}},
    {Function::kRubbingIn, {"rub", "crumbs form"}},
    {Function::kThickening, {"roux", "sauce", "thicken", "stir in the flour"}},
    {Function::kFrying, {"fry", "soften", "sweat"}},
    {Function::kBinding, {"bind", "mix", "shape", "burger", "cake"}},
    {Function::kEnriching, {"dough", "pastry", "stir in", "mash"}},
    {Function::kTexture, {"scatter", "sprinkle", "chop", "toast", "top"}},
};

// The words of the steps that name the ingredient; of all steps when none does.
std::string words_around(const Dish& dish, int ingredient) {
  std::string named, all;
  for (const kitchen::Step& step : dish.method) {
    all += step.says + ". ";
    if (std::find(step.uses.begin(), step.uses.end(), ingredient) != step.uses.end())
      named += step.says + ". ";
  }
  return base::folded(named.empty() ? all : named);
}

// Begins at the beginning of a word: "rub" is not in "shrub", "set" not in "reset".
bool says(const std::string& text, std::string_view words) {
  for (auto at = text.find(words); at != std::string::npos; at = text.find(words, at + 1)) {
    if (at == 0 || text[at - 1] == ' ' || text[at - 1] == '(') return true;
  }
  return false;
}

}  // namespace

std::optional<Function> likely_function(const Dish& dish, int ingredient,
                                        const kitchen::Foods& foods, const Substitutes& all) {
  const kitchen::Food* food = food_of(dish.ingredients[static_cast<std::size_t>(ingredient)],
                                      foods);
  if (food == nullptr) return std::nullopt;
  std::vector<Function> listed;
  for (const Substitute& row : all) {
    if (std::find(row.foods.begin(), row.foods.end(), food->key) != row.foods.end())
      listed.push_back(row.function);
  }
  if (listed.empty()) return std::nullopt;
  const std::string text = words_around(dish, ingredient);
  for (const Clue& clue : kClues) {
    if (std::find(listed.begin(), listed.end(), clue.function) == listed.end()) continue;
    if (std::any_of(clue.words.begin(), clue.words.end(),
                    [&](std::string_view words) { return says(text, words); }))
      return clue.function;
  }
  // With one kind of work in the table there is nothing to guess between.
  const bool one = std::all_of(listed.begin(), listed.end(),
                               [&](Function f) { return f == listed.front(); });
  if (one) return listed.front();
  return std::nullopt;
}

}  // namespace safety
