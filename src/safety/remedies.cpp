// What would settle a conflict.
#include <algorithm>

#include "base/text.h"
#include "safety/conflict_parts.h"

namespace safety {
namespace {

using base::say;
using Kind = Remedy::Kind;

constexpr std::size_t kMostSubstitutes = 3;  // a teacher chooses between three, not ten

// The strongest that a dish brings of everything its cook must not have.
Stated strongest_of_all(const kitchen::Dish& dish, const CookNeeds& cook,
                        const Evidence& evidence) {
  Stated out = Stated::kNotListed;
  for (const Need& need : cook.needs)
    out = stronger(out, strongest(findings(dish, need, evidence)));
  return out;
}

void add_variants(const ConflictsAsked& asked, const CookNeeds& cook, const kitchen::Dish& dish,
                  std::vector<Remedy>& out) {
  for (const kitchen::Dish& other : asked.known) {
    if (other.name != dish.name || other.variant == dish.variant) continue;
    const Stated brings = strongest_of_all(other, cook, asked.evidence);
    if (brings >= Stated::kMayContain) continue;
    const std::string name = other.variant.empty()
                                 ? "Make it as written"
                                 : say("Make the variant ", base::in_quotes(other.variant));
    out.push_back({Kind::kVariant, brings == Stated::kNotListed
                                       ? name
                                       : name + ", once its labels are read and foods known"});
  }
}

void add_substitutes(const ConflictsAsked& asked, const CookNeeds& cook, const kitchen::Dish& dish,
                     int ingredient, std::vector<Remedy>& out) {
  const auto function = likely_function(dish, ingredient, asked.evidence.foods, asked.substitutes);
  const kitchen::Ingredient& what = dish.ingredients[static_cast<std::size_t>(ingredient)];
  const kitchen::Food* food = food_of(what, asked.evidence.foods);
  if (!function || food == nullptr) return;
  std::size_t told = 0;
  for (const Substitute* row : substitutes_for(asked.substitutes, food->key, *function)) {
    Stated brings = Stated::kNotListed;
    for (const Need& need : cook.needs)
      brings = stronger(brings, brought_by(*row, need, asked.evidence));
    if (brings >= Stated::kMayContain) continue;
    if (++told > kMostSubstitutes) break;
    out.push_back({Kind::kSubstitute,
                   say("For ", kitchen::word_for(kFunctionWords, *function), ", instead of ",
                       what.name, ": ", amount_words(*row, what, asked.evidence.foods), "; ",
                       row->method_change, row->does_not.empty() ? "" : say("; ", row->does_not),
                       brings == Stated::kNotListed ? "" : "; its label is to be read too")});
  }
}

}  // namespace

Remedy doubt_settled(const kitchen::Ingredient& ingredient, Stated stated, const Need& need) {
  const bool diet = std::holds_alternative<Diet>(need.what);
  if (stated == Stated::kUnknown && ingredient.label_read) {
    return {Kind::kNameFood, say("Say which food of the table ", base::in_quotes(ingredient.name),
                                 " is, or enter it from its label")};
  }
  if (diet && need.what != decltype(need.what){Diet::kCoeliac})
    return {Kind::kReadLabel, say("Read the label of the ", ingredient.name,
                                  " and enter the food in the school's own table")};
  return {Kind::kReadLabel,
          say("Read the label of the ", ingredient.name, " for ", word(need), " and record it")};
}

std::vector<Remedy> remedies_in_dish(const ConflictsAsked& asked, const CookNeeds& cook,
                                     const Conflict& c) {
  std::vector<Remedy> out;
  const kitchen::Dish& dish = dish_at(asked.lesson, c.dishes.front());
  if (c.ingredient == -1) {
    return {{Kind::kNameFood, "List what " + base::in_quotes(dish.name) + " is made of"}};
  }
  const kitchen::Ingredient& what = dish.ingredients[static_cast<std::size_t>(c.ingredient)];
  if (c.stated < Stated::kMayContain) out.push_back(doubt_settled(what, c.stated, c.need));
  if (what.optional) out.push_back({Kind::kLeaveOut, say("Leave out the ", what.name)});
  if (!of_health(c.need) && c.need.reach == Reach::kEat) {
    out.push_back({Kind::kAsk,
                   "May touch, may not eat: ask whether to make it for others, and "
                   "taste nothing"});
  }
  add_variants(asked, cook, dish, out);
  add_substitutes(asked, cook, dish, c.ingredient, out);
  if (out.empty()) {
    out.push_back({Kind::kOtherDish,
                   "No variant and no substitute is known here: another dish for this cook, the "
                   "same kind and as good"});
  }
  return out;
}

std::vector<Remedy> remedies_by_moving(const ConflictsAsked& asked, const Conflict& c) {
  const kitchen::Room& room = asked.lesson.room;
  std::vector<bool> taken(room.places.size(), false);
  std::vector<bool> brings(room.bays.size(), false);
  for (std::size_t i = 0; i < asked.lesson.cooks.size(); ++i) {
    const int cook = static_cast<int>(i);
    taken[static_cast<std::size_t>(cook_at(asked.lesson, cook).place)] = true;
    if (cook == c.cook) continue;
    for (const int d : cook_at(asked.lesson, cook).dishes) {
      if (may_be_there(strongest(findings(dish_at(asked.lesson, d), c.need, asked.evidence))))
        brings[static_cast<std::size_t>(kitchen::bay_of(asked.lesson, cook))] = true;
    }
  }
  for (std::size_t p = 0; p < room.places.size(); ++p) {
    const auto bay = static_cast<std::size_t>(room.places[p].bay);
    if (taken[p] || brings[bay]) continue;
    return {{Kind::kMove, say("Move to place ", room.places[p].name, " in bay ",
                              room.bays[bay].name, ", where nobody brings it")}};
  }
  for (std::size_t i = 0; i < asked.lesson.cooks.size(); ++i) {
    const int cook = static_cast<int>(i);
    const auto bay = static_cast<std::size_t>(kitchen::bay_of(asked.lesson, cook));
    if (cook == c.cook || brings[bay]) continue;
    return {{Kind::kMove, say("Change places with ", cook_at(asked.lesson, cook).name, " in bay ",
                              room.bays[bay].name, ", where nobody brings it")}};
  }
  return {};
}

}  // namespace safety
