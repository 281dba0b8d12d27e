#include "nutrition/goals.h"

#include <algorithm>
#include <array>

#include "base/folding.h"
#include "base/text.h"
#include "nutrition/label.h"
#include "nutrition/per_food.h"

namespace nutrition {

using base::in_quotes;
using base::say;

namespace {

struct GoalName {
  GoalOf of;
  std::string_view name, unit;
};
constexpr std::array<GoalName, 9> kNames = {{{GoalOf::kKilojoules, "energy", "kJ"},
                                             {GoalOf::kKilocalories, "energy", "kcal"},
                                             {GoalOf::kFat, "fat", "g"},
                                             {GoalOf::kSaturates, "saturates", "g"},
                                             {GoalOf::kSugars, "sugars", "g"},
                                             {GoalOf::kFreeSugars, "free sugars", "g"},
                                             {GoalOf::kFibre, "fibre", "g"},
                                             {GoalOf::kProtein, "protein", "g"},
                                             {GoalOf::kSalt, "salt", "g"}}};

std::optional<Coloured> colour_of(GoalOf of) {
  for (const Coloured what : kColoured) {
    if (name_of(what) == name_of(of)) return what;
  }
  return std::nullopt;
}

base::Problem not_understood(std::string_view words) {
  return {
      "goal.words", "", "", say("The goal ", in_quotes(words), " is not understood."),
      "Say \"salt not high\", \"saturates low\", \"fibre at least 6 g a portion\" or \"energy at "
      "most 400 kcal in "
      "100 g\"; known are energy, fat, saturates, sugars, free sugars, fibre, protein and salt."};
}

std::vector<Goal> goals_of_colour(GoalOf of, Coloured what, bool low, double portion,
                                  const std::string& words) {
  const Thresholds limits = thresholds(what, false);
  std::vector<Goal> out = {{of, true, low ? limits.green : limits.red, GoalPer::kHundred, words}};
  if (portion > large_portion(false))
    out.push_back({of, true, limits.portion, GoalPer::kPortion, words});
  return out;
}

// What one of kNames begins the words, the longest first; its words are taken off.
std::optional<GoalOf> take_name(std::vector<std::string>& words) {
  std::string text;
  for (const std::string& word : words) text += word + " ";
  std::optional<GoalOf> best;
  std::size_t length = 0;
  for (const GoalName& each : kNames) {
    const std::string start = std::string(each.name) + " ";
    if (text.starts_with(start) && start.size() > length) {
      best = each.of;
      length = start.size();
    }
  }
  if (best)
    words.erase(
        words.begin(),
        words.begin() +
            std::count(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(length), ' '));
  return best;
}

using Words = std::vector<std::string>;

// Spaces part words here, so that "2.5" stays one.
Words words_in(std::string_view text) {
  Words out(1);
  for (const char c : base::folded(text)) {
    if (c == ' ')
      out.emplace_back();
    else
      out.back() += c;
  }
  std::erase(out, "");
  return out;
}

bool taken(Words& words, const Words& start) {
  if (words.size() < start.size() || !std::equal(start.begin(), start.end(), words.begin()))
    return false;
  words.erase(words.begin(), words.begin() + static_cast<std::ptrdiff_t>(start.size()));
  return true;
}

}  // namespace

std::string_view name_of(GoalOf of) { return kNames[static_cast<std::size_t>(of)].name; }
std::string_view unit_of(GoalOf of) { return kNames[static_cast<std::size_t>(of)].unit; }

base::Result<std::vector<Goal>> read_goal(std::string_view asked, double portion_grams) {
  Words words = words_in(asked);
  auto of = take_name(words);
  if (!of) return not_understood(asked);
  if (const auto what = colour_of(*of)) {
    for (const auto& [said, low] : {std::pair<Words, bool>{{"not", "high"}, false},
                                    {{"not", "red"}, false},
                                    {{"low"}, true},
                                    {{"green"}, true}}) {
      if (words == said) return goals_of_colour(*of, *what, low, portion_grams, std::string(asked));
    }
  }
  Goal goal{*of, true, 0, GoalPer::kPortion, std::string(asked)};
  if (taken(words, {"at", "least"}))
    goal.at_most = false;
  else if (!taken(words, {"at", "most"}))
    return not_understood(asked);
  const auto amount = words.empty() ? std::nullopt : base::number_in(words.front());
  if (!amount || *amount < 0) return not_understood(asked);
  goal.amount = *amount;
  words.erase(words.begin());
  if (*of == GoalOf::kKilojoules) {
    if (taken(words, {"kcal"}))
      goal.of = GoalOf::kKilocalories;
    else if (!taken(words, {"kj"}))
      return not_understood(asked);  // energy without its unit is half a joke
  } else {
    taken(words, {"g"});
  }
  if (words == Words{"in", "100", "g"})
    goal.per = GoalPer::kHundred;
  else if (!words.empty() && words != Words{"a", "portion"})
    return not_understood(asked);
  return std::vector<Goal>{goal};
}

namespace {

Figure whole_of(GoalOf of, const DishNutrients& dish) {
  switch (of) {
    case GoalOf::kKilojoules:
      return kilojoules(dish);
    case GoalOf::kKilocalories:
      return kilocalories(dish);
    case GoalOf::kFat:
      return dish.whole(Nutrient::kFat);
    case GoalOf::kSaturates:
      return dish.whole(Nutrient::kSaturates);
    case GoalOf::kSugars:
      return dish.whole(Nutrient::kSugars);
    case GoalOf::kFreeSugars:
      return dish.whole(Held::kFreeSugarsMost);
    case GoalOf::kFibre:
      return dish.whole(Nutrient::kFibre);
    case GoalOf::kProtein:
      return dish.whole(Held::kLabelProtein);
    case GoalOf::kSalt:
      return salt(dish);
  }
  return {};
}

}  // namespace

Figure reached(const Goal& goal, const DishNutrients& dish) {
  const Figure whole = whole_of(goal.of, dish);
  if (goal.per == GoalPer::kPortion) return whole * (1.0 / dish.portions);
  if (dish.served_grams <= 0) return {0, std::nullopt, Sureness::kUnsure};
  return whole * (100 / dish.served_grams);
}

bool kept(const Goal& goal, const DishNutrients& dish) {
  const Figure figure = reached(goal, dish);
  if (figure.sure == Sureness::kUnsure) return false;
  const double hair = 1e-6 * std::max(1.0, goal.amount);
  if (!goal.at_most) return figure.amount >= goal.amount - hair;
  return figure.most && *figure.most <= goal.amount + hair;
}

std::optional<double> per_100_g(const kitchen::Food& food, GoalOf of) {
  const auto get = [&](What what) { return per_100_g(food, what); };
  switch (of) {
    case GoalOf::kKilojoules:
    case GoalOf::kKilocalories: {
      const auto protein = get(Held::kLabelProtein), fat = get(Nutrient::kFat),
                 fibre = get(Nutrient::kFibre), carbohydrate = get(Held::kCarbohydrate),
                 alcohol = get(Held::kAlcohol);
      if (!protein || !fat || !fibre || !carbohydrate || !alcohol) return std::nullopt;
      const EnergyGrams grams{*protein, *fat, *carbohydrate, *fibre, *alcohol, 0, 0};
      return of == GoalOf::kKilojoules ? kilojoules(grams) : kilocalories(grams);
    }
    case GoalOf::kFat:
      return get(Nutrient::kFat);
    case GoalOf::kSaturates:
      return get(Nutrient::kSaturates);
    case GoalOf::kSugars:
      return get(Nutrient::kSugars);
    case GoalOf::kFreeSugars:
      return get(Held::kFreeSugarsMost);
    case GoalOf::kFibre:
      return get(Nutrient::kFibre);
    case GoalOf::kProtein:
      return get(Held::kLabelProtein);
    case GoalOf::kSalt: {
      const auto sodium = get(Nutrient::kSodium);
      return sodium ? std::optional(salt_of_sodium(*sodium)) : std::nullopt;
    }
  }
  return std::nullopt;
}

}  // namespace nutrition
