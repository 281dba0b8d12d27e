#include "safety/diets.h"

#include <array>
#include <optional>
#include <stdexcept>

#include "base/text.h"

namespace safety {
namespace {

using kitchen::Dish;
using kitchen::Food;
using kitchen::Ingredient;
using kitchen::Known;

ThingRule thing(Thing what, std::string says) { return {what, std::move(says)}; }

std::vector<ThingRule> apart_from(const std::string& food) {
  return {thing(Thing::kBoard, "own board, not one used for " + food),
          thing(Thing::kKnife, "own knife, not shared with " + food),
          thing(Thing::kPan, "own pan and tray, nothing else in them with " + food),
          thing(Thing::kOil, "own frying oil, never the oil " + food + " was fried in"),
          thing(Thing::kUtensils, "own spoon and tongs, not moved from pan to pan"),
          thing(Thing::kShelf, "own fridge shelf, above and apart from " + food)};
}

std::vector<ThingRule> apart_from_gluten() {
  return {thing(Thing::kBoard, "own board (purple)"),
          thing(Thing::kPan, "own pan and fresh water: never water pasta was boiled in"),
          thing(Thing::kOil, "own frying oil, never oil that fried crumbs or batter"),
          thing(Thing::kUtensils, "own spoons; wood keeps flour"),
          thing(Thing::kSieve, "own sieve and colander"),
          thing(Thing::kToaster, "own toaster, or the bread on foil under a clean grill"),
          thing(Thing::kCloth, "fresh cloth and apron, kept for the free-from bench"),
          thing(Thing::kShelf, "own shelf, above flour")};
}

std::vector<ThingRule> kosher_things() {
  std::vector<ThingRule> out = apart_from("pork and shellfish");
  out.push_back(thing(Thing::kPan, "one set of pans for meat, another for milk"));
  out.push_back(thing(Thing::kCloth, "one cloth and bowl for meat, another for milk"));
  return out;
}

std::array<DietRule, std::size(kDietWords)> rules() {
  using enum Matter;
  return {{
      {Diet::kVegetarian, {kSlaughter}, {}, "", false, apart_from("meat or fish")},
      {Diet::kVegan, {kAnimal}, {}, "", false, apart_from("food from animals")},
      {Diet::kHalal,
       {kPork, kAlcohol},
       {kMeat, kGelatine, kRennet},
       "is it halal?",
       false,
       apart_from("pork or meat that is not halal")},
      {Diet::kKosherStyle,
       {kPork, kShellfish},
       {kMeat, kGelatine, kRennet},
       "is it kosher?",
       true,
       kosher_things()},
      {Diet::kNoPork, {kPork}, {kGelatine}, "is it of pork?", false, apart_from("pork")},
      {Diet::kNoBeef, {kBeef}, {kGelatine, kRennet}, "is it of cattle?", false, apart_from("beef")},
      // Boiling leaves some alcohol in, and to have cooked with it may itself be against the rule.
      {Diet::kNoAlcohol, {kAlcohol}, {}, "", false, {}},
      {Diet::kNoGelatine, {kGelatine}, {}, "", false, {}},
      {Diet::kNoRennet, {kRennet}, {}, "", false, {}},
      {Diet::kCoeliac, {}, {}, "", false, apart_from_gluten()},
  }};
}

std::string from_food(const Food& food) {
  return food.schools_own ? "the school's foods" : "the table of foods";
}

std::string because(const Food& food, Matter matter, Known known, const Hidden& hidden) {
  const std::string why = why_hidden(food, matter, hidden);
  const std::string_view brings = kitchen::word_for(kMatterWords, matter);
  if (!why.empty()) return base::say(brings, ": ", why);
  if (known == Known::kCheckLabel) return from_food(food) + " leaves it to the label";
  return base::say(brings, ", says ", from_food(food));
}

Statement by_diet(const Ingredient& ingredient, Diet diet, const Evidence& evidence) {
  const Hidden& hidden = evidence.hidden;
  const Food* food = food_of(ingredient, evidence.foods);
  if (food == nullptr) return {Stated::kUnknown, "the table of foods does not have it"};
  const DietRule& rule = rule_of(diet);
  Statement out{Stated::kNotListed, from_food(*food)};
  const auto note = [&](Stated stated, std::string from) {
    if (stated > out.stated) out = {stated, std::move(from)};
  };
  for (const Matter matter : rule.never) {
    const Known known = brings(*food, matter, hidden);
    if (known == Known::kNo) continue;
    note(known == Known::kYes ? Stated::kContains : Stated::kCheckLabel,
         because(*food, matter, known, hidden));
  }
  for (const Matter matter : rule.asks) {
    const Known known = brings(*food, matter, hidden);
    if (known == Known::kNo) continue;
    note(Stated::kCheckLabel,
         base::say(because(*food, matter, known, hidden), "; ", rule.asks_for));
  }
  return out;
}

std::vector<int> all_ingredients(const Dish& dish) {
  std::vector<int> out;
  for (std::size_t i = 0; i < dish.ingredients.size(); ++i) out.push_back(static_cast<int>(i));
  return out;
}

// Meat and milk together: the milk is named, with the meat it meets.
void find_meat_with_milk(const Dish& dish, const std::vector<int>& used, const Evidence& evidence,
                         Findings& out) {
  const auto known = [&](int i, Matter matter) {
    const Food* food = food_of(dish.ingredients[static_cast<std::size_t>(i)], evidence.foods);
    return food == nullptr ? Known::kNo : brings(*food, matter, evidence.hidden);
  };
  for (const int milk : used) {
    for (const int meat : used) {
      const Known a = known(milk, Matter::kMilk), b = known(meat, Matter::kMeat);
      if (a == Known::kNo || b == Known::kNo || milk == meat) continue;
      const bool sure = a == Known::kYes && b == Known::kYes;
      out.push_back({milk,
                     {sure ? Stated::kContains : Stated::kCheckLabel,
                      base::say("milk in one dish with ",
                                dish.ingredients[static_cast<std::size_t>(meat)].name)}});
      break;
    }
  }
}

Findings findings_in(const Dish& dish, const std::vector<int>& used, const Need& need,
                     const Evidence& evidence) {
  Findings out;
  if (dish.ingredients.empty()) return {{-1, {Stated::kUnknown, "the dish lists no ingredient"}}};
  for (const int i : used) {
    Statement said = statement(dish.ingredients[static_cast<std::size_t>(i)], need, evidence);
    if (may_be_there(said.stated)) out.push_back({i, std::move(said)});
  }
  const Diet* diet = std::get_if<Diet>(&need.what);
  if (diet != nullptr && rule_of(*diet).meat_with_milk)
    find_meat_with_milk(dish, used, evidence, out);
  sort_by_strength(out);
  return out;
}

}  // namespace

const DietRule& rule_of(Diet diet) {
  static const auto kRules = rules();
  for (const DietRule& rule : kRules) {
    if (rule.diet == diet) return rule;
  }
  throw std::logic_error("a diet without a rule");
}

std::vector<ThingRule> own_things(const Need& need) {
  if (const Diet* diet = std::get_if<Diet>(&need.what)) return rule_of(*diet).things;
  const std::string what(word(need));
  std::vector<ThingRule> out = {
      thing(Thing::kBoard, "own board (purple)"),
      thing(Thing::kKnife, "own knife and spoons, washed before and kept apart"),
      thing(Thing::kPan, "own pan and tray"),
      thing(Thing::kOil, "own frying oil, never oil that fried food with " + what),
      thing(Thing::kCloth, "fresh cloth and clean apron"),
      thing(Thing::kShelf, "own shelf, covered, above food with " + what)};
  if (need.what == decltype(need.what){Allergen::kGluten}) return apart_from_gluten();
  return out;
}

Statement statement(const Ingredient& ingredient, const Need& need, const Evidence& evidence) {
  const Diet* diet = std::get_if<Diet>(&need.what);
  if (diet != nullptr && *diet != Diet::kCoeliac) return by_diet(ingredient, *diet, evidence);
  const Allergen allergen = diet != nullptr ? Allergen::kGluten : std::get<Allergen>(need.what);
  return statements(ingredient, evidence.foods, evidence.labels)[at(allergen)];
}

Findings findings(const Dish& dish, const Need& need, const Evidence& evidence) {
  return findings_in(dish, all_ingredients(dish), need, evidence);
}

Findings findings_of_step(const Dish& dish, int step, const Need& need, const Evidence& evidence) {
  const std::vector<int>& uses = dish.method[static_cast<std::size_t>(step)].uses;
  return findings_in(dish, uses.empty() ? all_ingredients(dish) : uses, need, evidence);
}

}  // namespace safety
