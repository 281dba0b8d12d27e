#include "nutrition/front_of_pack.h"

#include "nutrition/label.h"

namespace nutrition {

namespace {

// Rows N187 to N210 of the check values: food for 100 g, drink for 100 ml.
constexpr std::array<Thresholds, 4> kFood = {
    {{3.0, 17.5, 21}, {1.5, 5.0, 6.0}, {5.0, 22.5, 27}, {0.3, 1.5, 1.8}}};
constexpr std::array<Thresholds, 4> kDrink = {
    {{1.5, 8.75, 10.5}, {0.75, 2.5, 3.0}, {2.5, 11.25, 13.5}, {0.3, 0.75, 0.9}}};

Figure whole_of(const DishNutrients& dish, Coloured what) {
  switch (what) {
    case Coloured::kFat:
      return dish.whole(Nutrient::kFat);
    case Coloured::kSaturates:
      return dish.whole(Nutrient::kSaturates);
    case Coloured::kSugars:
      return dish.whole(Nutrient::kSugars);
    case Coloured::kSalt:
      return salt(dish);
  }
  return {};
}

double day_of(Coloured what) {
  constexpr ReferenceIntakes kDay{};
  switch (what) {
    case Coloured::kFat:
      return kDay.fat;
    case Coloured::kSaturates:
      return kDay.saturates;
    case Coloured::kSugars:
      return kDay.sugars;
    case Coloured::kSalt:
      return kDay.salt;
  }
  return 1;
}

}  // namespace

std::string_view level_of(Colour colour) {
  return colour == Colour::kGreen ? "low" : colour == Colour::kAmber ? "medium" : "high";
}

std::string_view word_for(Colour colour) {
  return colour == Colour::kGreen ? "green" : colour == Colour::kAmber ? "amber" : "red";
}

std::string_view name_of(Coloured what) {
  constexpr std::array<std::string_view, 4> kNames = {"fat", "saturates", "sugars", "salt"};
  return kNames[static_cast<std::size_t>(what)];
}

Thresholds thresholds(Coloured what, bool drink) {
  return (drink ? kDrink : kFood)[static_cast<std::size_t>(what)];
}

Colour colour(Coloured what, double grams_in_100, double portion, bool drink) {
  const Thresholds limits = thresholds(what, drink);
  // Sums of many products may miss a limit by a hair of binary fractions; a hair is not a gram.
  constexpr double kHair = 1e-9;
  if (grams_in_100 > limits.red + kHair) return Colour::kRed;
  if (portion > large_portion(drink) + kHair &&
      grams_in_100 * portion / 100 > limits.portion + kHair)
    return Colour::kRed;
  return grams_in_100 > limits.green + kHair ? Colour::kAmber : Colour::kGreen;
}

std::array<ColourLine, 4> colours(const DishNutrients& dish, bool drink) {
  std::array<ColourLine, 4> out;
  for (std::size_t i = 0; i < kColoured.size(); ++i) {
    ColourLine& line = out[i];
    line.what = kColoured[i];
    const Figure whole = whole_of(dish, line.what);
    line.portion = whole * (1.0 / dish.portions);
    line.share_of_day = line.portion.amount / day_of(line.what);
    if (dish.served_grams <= 0) {
      line.per_100_g = {0, std::nullopt, Sureness::kUnsure};
      continue;
    }
    line.per_100_g = whole * (100 / dish.served_grams);
    if (!dish.weight_known) {
      line.per_100_g = {line.per_100_g.amount, std::nullopt, Sureness::kUnsure};
      continue;
    }
    const double portion = dish.portion_grams();
    line.at_least = colour(line.what, line.per_100_g.amount, portion, drink);
    line.by_portion = *line.at_least == Colour::kRed &&
                      line.per_100_g.amount <= thresholds(line.what, drink).red;
    const bool cannot_rise = *line.at_least == Colour::kRed || line.per_100_g.whole();
    const bool does_not_rise = line.per_100_g.most && colour(line.what, *line.per_100_g.most,
                                                             portion, drink) == *line.at_least;
    if (cannot_rise || does_not_rise) line.colour = line.at_least;
  }
  return out;
}

}  // namespace nutrition
