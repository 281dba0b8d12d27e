#include "nutrition/cooked_as.h"

#include <algorithm>

#include <fmt/format.h>

#include "base/text.h"

namespace nutrition {

using base::say;
using kitchen::Dish;

namespace {

bool holds(const std::vector<int>& contents, std::size_t ingredient) {
  return std::binary_search(contents.begin(), contents.end(), static_cast<int>(ingredient));
}

bool is_flour(const kitchen::Food& food) {
  return food.key.find("flour") != std::string::npos || food.key == "polenta";
}

// "mix:bread" and so on for what is in the oven, or nothing when it is no dough.
std::string mix_of(const std::vector<int>& contents, const std::vector<Weighted>& ingredients) {
  double all = 0, flour = 0, sugar = 0;
  bool yeast = false, egg = false;
  for (const int i : contents) {
    const Weighted& each = ingredients[static_cast<std::size_t>(i)];
    if (each.food == nullptr || !each.grams) continue;
    all += *each.grams;
    if (is_flour(*each.food)) flour += *each.grams;
    if (each.food->category == "sugars sweet") sugar += *each.grams;
    yeast = yeast || each.food->key.starts_with("yeast");
    egg = egg || each.food->category == "eggs";
  }
  // A fifth tells a sponge (a quarter) from choux and from a crumble on its fruit. Common practice,
  // no source.
  if (all <= 0 || flour < 0.2 * all) return {};
  if (yeast) return "mix:bread";
  if (egg && sugar >= 0.3 * flour) return "mix:cake";
  return "mix:biscuit";
}

std::string row_words(const Yield& row) {
  return fmt::format("{}: {} of its weight (usually {} to {}; {}, {})", row.what,
                     base::number_text(row.share), base::number_text(row.least),
                     base::number_text(row.most), row.id, row.confidence);
}

class Chooser {
 public:
  Chooser(const Dish& dish, const std::vector<Weighted>& ingredients, const CookingTables& tables)
      : ingredients_(ingredients),
        tables_(tables),
        heatings_(heatings(dish, ingredients)),
        contents_(contents_of_steps(dish)) {
    for (Heating& heating : heatings_) {
      mixes_.push_back(heating.cooking == Cooking::kBaked ? mix_of(heating.contents, ingredients)
                                                          : std::string());
    }
  }

  CookedAs choose(std::size_t i) const {
    CookedAs as;
    std::string mix;
    for (std::size_t h = 0; h < heatings_.size(); ++h) {
      if (!holds(heatings_[h].contents, i)) continue;
      as.heats.push_back(heatings_[h].cooking);
      as.steps.push_back(heatings_[h].step);
      if (!mixes_[h].empty()) mix = mixes_[h];
    }
    if (ingredients_[i].food == nullptr) {
      as.why = "not known what it is, so its weight is left as it went in";
      return as;
    }
    if (poured_away(i, as) || swells(i, as)) return as;
    if (!mix.empty() && as.heats.size() == 1) {
      if (const Yield* row = tables_.yield(mix, Cooking::kBaked, YieldKind::kLoss)) {
        apply(*row, as);
        return as;
      }
    }
    by_its_own_row(i, as);
    return as;
  }

 private:
  const std::vector<Weighted>& ingredients_;
  const CookingTables& tables_;
  std::vector<Heating> heatings_;
  std::vector<std::vector<int>> contents_;  // of each step
  std::vector<std::string> mixes_;          // of each heating; empty = no dough

  static void apply(const Yield& row, CookedAs& as) {
    as.weight = row.share;
    as.yield_id = row.id;
    as.why = row_words(row);
  }

  bool poured_away(std::size_t i, CookedAs& as) const {
    const bool boiled = std::find(as.heats.begin(), as.heats.end(), Cooking::kBoiled) !=
                        as.heats.end();
    if (ingredients_[i].food->key != "water" || !boiled) return false;
    as.weight = 0;
    as.why = "cooking water that is poured away";
    return true;
  }

  bool swells(std::size_t i, CookedAs& as) const {
    const Cooking first = as.heats.empty() ? Cooking::kRaw : as.heats.front();
    const Yield* row = tables_.yield(ingredients_[i].food->key, first, YieldKind::kUptake);
    if (row == nullptr) return false;
    const bool drinks = first != Cooking::kBoiled && drinks_what_is_eaten(i);
    if (drinks) {
      as.why = "takes up liquid that is among the ingredients and counted there";
    } else {
      apply(*row, as);
      as.why = say("takes up water that is not among the ingredients; ", as.why);
    }
    return true;
  }

  // Some step holds both it and a liquid.
  bool drinks_what_is_eaten(std::size_t i) const {
    return std::any_of(contents_.begin(), contents_.end(), [&](const std::vector<int>& contents) {
      return holds(contents, i) && std::any_of(contents.begin(), contents.end(), [&](int other) {
               return ingredients_[static_cast<std::size_t>(other)].liquid;
             });
    });
  }

  void by_its_own_row(std::size_t i, CookedAs& as) const {
    if (as.heats.empty()) {
      as.why = "eaten without being heated";
      return;
    }
    const bool one_way = std::all_of(as.heats.begin(), as.heats.end(),
                                     [&](Cooking c) { return c == as.heats[0]; });
    const bool in_liquid = std::find(as.heats.begin(), as.heats.end(), Cooking::kSimmered) !=
                           as.heats.end();
    if ((one_way || as.heats[0] == Cooking::kBoiled) && !in_liquid) {
      if (const Yield* row = tables_.yield(ingredients_[i].food->key, as.heats[0],
                                           YieldKind::kLoss)) {
        apply(*row, as);
        return;
      }
    }
    as.why = in_liquid ? "cooked in liquid that is eaten: what it loses stays in the dish"
                       : say(word_for(as.heats.back()),
                             "; no figure for what it loses, so none is taken off");
  }
};

}  // namespace

double CookedAs::kept(const CookingTables& tables, kitchen::Nutrient nutrient) const {
  double least = 1;
  for (const Cooking heat : heats) least = std::min(least, tables.kept(heat, nutrient));
  return least;
}

std::vector<CookedAs> cooked_as(const Dish& dish, const std::vector<Weighted>& ingredients,
                                const CookingTables& tables) {
  const Chooser chooser(dish, ingredients, tables);
  std::vector<CookedAs> out;
  for (std::size_t i = 0; i < ingredients.size(); ++i) out.push_back(chooser.choose(i));
  return out;
}

}  // namespace nutrition
