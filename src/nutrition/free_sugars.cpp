#include "nutrition/free_sugars.h"

#include <algorithm>
#include <array>

#include "base/text.h"

namespace nutrition {

using kitchen::Food;

namespace {

constexpr FreeSugars all(std::string_view why) { return {1.0, why}; }
constexpr FreeSugars none(std::string_view why) { return {0.0, why}; }
constexpr FreeSugars unknown(std::string_view why) { return {std::nullopt, why}; }

// Foods that the rule of their kind would judge wrongly.
constexpr std::array<std::string_view, 15> kAllFree = {
    "tomato_puree",        "garlic_puree",        "passata",
    "tomato_juice",        "orange_juice_fresh",  "lemon_juice",
    "orange_juice_carton", "lemon_juice_bottled", "lime_juice",
    "apple_juice",         "pineapple_juice",     "pumpkin_tinned",
    "redcurrant_jelly",    "cranberry_sauce",     "mirin"};
constexpr std::array<std::string_view, 26> kMixed = {"chocolate_hazelnut_spread",
                                                     "mincemeat_sweet",
                                                     "milk_chocolate",
                                                     "white_chocolate",
                                                     "cake_covering",
                                                     "drinking_chocolate",
                                                     "lemon_curd",
                                                     "condensed_milk",
                                                     "ice_cream_vanilla",
                                                     "custard_ready",
                                                     "fruit_yogurt",
                                                     "aerosol_cream",
                                                     "fromage_frais",
                                                     "dried_cranberries",
                                                     "banana_chips",
                                                     "cherry_pie_filling",
                                                     "pineapple_tinned_juice",
                                                     "peaches_tinned_juice",
                                                     "pears_tinned_juice",
                                                     "mandarins_tinned",
                                                     "fruit_cocktail_tinned",
                                                     "baked_beans",
                                                     "refried_beans",
                                                     "malted_milk_powder",
                                                     "custard_powder",
                                                     "processed_cheese_slice"};
constexpr std::array<std::string_view, 7> kPickledOrRoasted = {"gherkins",
                                                               "kimchi",
                                                               "jalapenos_jar",
                                                               "roasted_peppers_jar",
                                                               "sun_dried_tomatoes_oil",
                                                               "sauerkraut",
                                                               "potato_mash_instant"};
constexpr std::array<std::string_view, 7> kPlainInMixedKinds = {
    "cocoa_powder",       "coconut_milk",  "coconut_cream",     "creamed_coconut",
    "desiccated_coconut", "coconut_fresh", "coconut_milk_light"};

FreeSugars by_kind(const Food& food) {
  struct Rule {
    std::string_view category;
    FreeSugars free;
  };
  static constexpr std::array<Rule, 19> kRules = {{
      {"sugars sweet", all("sugar, syrup, honey or jam: all free")},
      {"chocolate confectionery decor", all("sweets and icing: all free")},
      {"fruit", none("whole fruit, fresh or dried: none free")},
      {"veg", none("whole vegetable: none free")},
      {"pulses", none("plain pulse: none free")},
      {"dairy", none("plain milk food: none free")},
      {"eggs", none("egg: none free")},
      {"beef", none("plain meat: none free")},
      {"lamb", none("plain meat: none free")},
      {"poultry game", none("plain meat: none free")},
      {"nuts seeds", none("plain nut or seed: none free")},
      {"herbs spices", none("herb or spice: none free")},
      {"fats oils", none("fat: none free")},
      {"flours, grains, starches", none("plain grain: none free")},
      {"pasta noodles", none("plain pasta: none free")},
      {"dairy free", all("a drink or food in place of milk: all free")},
      {"liquids", all("a drink that is not milk: all free")},
      {"fish", none("plain fish: none free")},
      {"baking agents", none("no sweetener: none free")},
  }};
  for (const Rule& rule : kRules) {
    if (rule.category == food.category) return rule.free;
  }
  return unknown("a food made of several: the table does not say which of its sugars were added");
}

}  // namespace

FreeSugars free_sugars(const Food& food) {
  const auto sugars = food.nutrients[kitchen::Nutrient::kSugars];
  if (sugars && *sugars == 0) return none("no sugars at all");
  if (base::one_of(food.key, kAllFree)) return all("juice, purée or paste: all free");
  if (base::one_of(food.key, kMixed) || base::one_of(food.key, kPickledOrRoasted))
    return unknown("holds sugars of both kinds: the table does not say how much of each");
  if (base::one_of(food.key, kPlainInMixedKinds)) return none("plain cocoa or coconut: none free");
  return by_kind(food);
}

}  // namespace nutrition
