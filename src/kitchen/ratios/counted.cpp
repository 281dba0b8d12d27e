#include "kitchen/ratios/counted.h"

#include "base/text.h"
#include "kitchen/weigh.h"

namespace kitchen {
namespace {

using base::say;

// Without shell: row DC120 (common practice, memory) and USDA SR26 WEIGHT 01123 seq 1 agree on the
// whole egg; white and yolk are 01124 seq 1 and 01125 seq 1.
const Ratio kEggGrams = 50, kWhiteGrams = 33, kYolkGrams = 17;

bool thin(Role role) {
  return role == Role::kMilk || role == Role::kWater || role == Role::kStock ||
         role == Role::kJuice || role == Role::kCream || role == Role::kAcid ||
         role == Role::kYogurt;
}

std::optional<Ratio> egg_grams(Role role) {
  if (role == Role::kEgg) return kEggGrams;
  if (role == Role::kEggWhite) return kWhiteGrams;
  if (role == Role::kEggYolk) return kYolkGrams;
  return std::nullopt;
}

void weigh_without_food(CountedIngredient& out, const Quantity& quantity) {
  switch (dimension(quantity.unit)) {
    case Dimension::kMass:
      out.grams = converted(quantity, Unit::kGram)->middle();
      return;
    case Dimension::kVolume:
      if (!thin(out.role)) break;
      out.grams = converted(quantity, Unit::kMillilitre)->middle();
      out.how = say(quantity_text(quantity), " taken to weigh as much as water");
      out.sure = false;
      return;
    case Dimension::kCount:
      if (const auto each = egg_grams(out.role)) {
        out.grams = quantity.middle() * *each;
        out.how = say(quantity_text(quantity), " at ", base::decimal_text(*each),
                      " g (medium, without shell; common practice)");
        out.sure = false;
        return;
      }
      break;
    case Dimension::kNone:
      out.how = "no amount is given";
      return;
  }
  out.how = "its weight is not known";
}

}  // namespace

std::vector<CountedIngredient> counted(const Dish& dish, const Foods& foods) {
  std::vector<CountedIngredient> out;
  for (const Ingredient& ingredient : dish.ingredients) {
    CountedIngredient one;
    one.ingredient = static_cast<int>(out.size());
    one.food = food_for_ratios(ingredient, foods);
    one.role = role_of(ingredient, one.food);
    const Quantity quantity = quantity_of(ingredient);
    // Stock in the table of foods is a cube; by volume or weight the made-up liquid is meant.
    const bool made_up_stock = one.role == Role::kStock && one.food != nullptr &&
                               role_of(*one.food) != Role::kStock;
    if (one.food != nullptr && !made_up_stock) {
      const auto weighed = weigh(quantity, *one.food);
      if (weighed) {
        one.grams = weighed.value().grams;
        one.how = weighed.value().how;
        one.sure = weighed.value().sure;
      }
    }
    if (!one.grams) weigh_without_food(one, quantity);
    out.push_back(std::move(one));
  }
  return out;
}

std::optional<Ratio> in_a_gram(const CountedIngredient& one, CountedIn in) {
  const auto millilitres = [&]() -> std::optional<Ratio> {
    if (one.food != nullptr && one.food->density) return Ratio(1) / Ratio::near(*one.food->density);
    if (thin(one.role)) return Ratio(1);
    return std::nullopt;
  };
  switch (in) {
    case CountedIn::kGram:
      return Ratio(1);
    case CountedIn::kKilogram:
      return Ratio(1, 1000);
    case CountedIn::kMillilitre:
      return millilitres();
    case CountedIn::kLitre: {
      const auto ml = millilitres();
      return ml ? std::optional(*ml / Ratio(1000)) : std::nullopt;
    }
    case CountedIn::kEgg:
      return Ratio(1) / kEggGrams;
    case CountedIn::kWhite:
      return Ratio(1) / kWhiteGrams;
    case CountedIn::kYolk:
      return Ratio(1) / (one.role == Role::kEgg ? kEggGrams : kYolkGrams);
    case CountedIn::kLeaf:
      return std::nullopt;  // leaves are counted: judge.cpp
  }
  return std::nullopt;
}

}  // namespace kitchen
