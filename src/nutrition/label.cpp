#include "nutrition/label.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

namespace nutrition {

namespace {

// Regulation (EU) No 1169/2011, Annex XIV.
struct Factors {
  double protein, fat, carbohydrate, fibre, alcohol, polyols, organic_acids;
};
constexpr Factors kKilojoules{17, 37, 17, 8, 29, 10, 13};
constexpr Factors kKilocalories{4, 9, 4, 2, 7, 2.4, 3};

double energy(const EnergyGrams& g, const Factors& f) {
  return g.protein * f.protein + g.fat * f.fat + g.carbohydrate * f.carbohydrate +
         g.fibre * f.fibre + g.alcohol * f.alcohol + g.polyols * f.polyols +
         g.organic_acids * f.organic_acids;
}

Figure energy(const DishNutrients& dish, const Factors& factors, Protein protein) {
  const What of_protein = protein == Protein::kLabel ? What(Held::kLabelProtein)
                                                     : What(Nutrient::kProtein);
  const std::pair<What, double> parts[] = {{of_protein, factors.protein},
                                           {Nutrient::kFat, factors.fat},
                                           {Held::kCarbohydrate, factors.carbohydrate},
                                           {Nutrient::kFibre, factors.fibre},
                                           {Held::kAlcohol, factors.alcohol}};
  Figure sum = Figure::exactly(0);
  for (std::size_t i = 0; i < dish.lines.size(); ++i) {
    Figure of_line = Figure::exactly(0);
    for (const auto& [what, factor] : parts) {
      const Contribution& part = dish.total(what).parts[i];
      Figure one{part.least, part.most, part.amount ? Sureness::kWhole : Sureness::kAtLeast};
      of_line = of_line + one * factor;
    }
    // Nothing holds more energy than its weight in fat.
    if (of_line.most && !of_line.whole() && dish.lines[i].grams)
      of_line.most = std::max(of_line.amount,
                              std::min(*of_line.most, *dish.lines[i].grams * factors.fat));
    sum = sum + of_line;
  }
  return sum;
}

Figure per_100(const DishNutrients& dish, const Figure& whole) {
  if (dish.served_grams <= 0) return {0, std::nullopt, Sureness::kUnsure};
  Figure figure = whole * (100 / dish.served_grams);
  if (!dish.weight_known) figure = {figure.amount, std::nullopt, Sureness::kUnsure};
  return figure;
}

LabelLine line(const DishNutrients& dish, std::string name, std::string unit, Rounding rounding,
               const Figure& whole) {
  return {std::move(name),      std::move(unit), rounding, whole, whole * (1.0 / dish.portions),
          per_100(dish, whole), std::nullopt};
}

std::string significant(double value, int figures) {
  if (value <= 0) return "0";
  const int digits = static_cast<int>(std::floor(std::log10(value))) + 1;
  const double step = std::pow(10.0, digits - figures);
  return fmt::format("{:.{}f}", std::round(value / step) * step, std::max(0, figures - digits));
}

}  // namespace

double kilojoules(const EnergyGrams& grams) { return energy(grams, kKilojoules); }
double kilocalories(const EnergyGrams& grams) { return energy(grams, kKilocalories); }

Figure kilojoules(const DishNutrients& dish, Protein protein) {
  return energy(dish, kKilojoules, protein);
}
Figure kilocalories(const DishNutrients& dish, Protein protein) {
  return energy(dish, kKilocalories, protein);
}

Figure salt(const DishNutrients& dish) { return dish.whole(Nutrient::kSodium) * salt_of_sodium(1); }

std::string label_number(double value, Rounding rounding) {
  // A hair of binary fractions must not turn a half down: 0.125 of salt is 0.13.
  value += std::abs(value) * 1e-12;
  switch (rounding) {
    case Rounding::kEnergy:
      return fmt::format("{:.0f}", std::floor(value + 0.5));
    case Rounding::kGrams:
    case Rounding::kSaturates: {
      const double nothing = rounding == Rounding::kGrams ? 0.5 : 0.1;
      if (value <= 0) return "0";
      if (value <= nothing + 1e-9) return rounding == Rounding::kGrams ? "<0.5" : "<0.1";
      if (value >= 10) return fmt::format("{:.0f}", std::floor(value + 0.5));
      return fmt::format("{:.1f}", std::floor(value * 10 + 0.5) / 10);
    }
    case Rounding::kSalt:
      if (value <= 0) return "0";
      if (value <= 0.0125 + 1e-9) return "<0.01";
      if (value >= 1) return fmt::format("{:.1f}", std::floor(value * 10 + 0.5) / 10);
      return fmt::format("{:.2f}", std::floor(value * 100 + 0.5) / 100);
    case Rounding::kTwoFigures:
      return significant(value, 2);
    case Rounding::kThreeFigures:
      return significant(value, 3);
  }
  return {};
}

std::string label_number(const Figure& figure, Rounding rounding) {
  const std::string least = label_number(figure.amount, rounding);
  if (figure.whole()) return least;
  if (figure.sure == Sureness::kUnsure) return "about " + least;
  if (!figure.most) {
    const bool says_something = least != "0" && !least.starts_with('<');
    return says_something ? "at least " + least : "not known";
  }
  const std::string most = label_number(*figure.most, rounding);
  return most == least ? least : least + " to " + most;
}

Label label_of(const DishNutrients& dish, bool drink, Protein protein) {
  Label label;
  label.drink = drink;
  const auto add = [&](const char* name, const char* unit, Rounding rounding, const Figure& whole,
                       std::optional<double> reference) {
    label.lines.push_back(line(dish, name, unit, rounding, whole));
    label.lines.back().reference = reference;
  };
  const ReferenceIntakes& day = kReferenceIntakes;
  add("energy", "kJ", Rounding::kEnergy, kilojoules(dish, protein), day.energy_kj);
  add("energy", "kcal", Rounding::kEnergy, kilocalories(dish, protein), day.energy_kcal);
  add("fat", "g", Rounding::kGrams, dish.whole(Nutrient::kFat), day.fat);
  add("of which saturates", "g", Rounding::kSaturates, dish.whole(Nutrient::kSaturates),
      day.saturates);
  add("carbohydrate", "g", Rounding::kGrams, dish.whole(Held::kCarbohydrate), day.carbohydrate);
  add("of which sugars", "g", Rounding::kGrams, dish.whole(Nutrient::kSugars), day.sugars);
  add("fibre", "g", Rounding::kGrams, dish.whole(Nutrient::kFibre), std::nullopt);
  const What what = protein == Protein::kLabel ? What(Held::kLabelProtein)
                                               : What(Nutrient::kProtein);
  add("protein", "g", Rounding::kGrams, dish.whole(what), day.protein);
  add("salt", "g", Rounding::kSalt, salt(dish), day.salt);
  for (const ReferenceValue& value : kReferenceValues) {
    if (!value.nutrient) continue;
    LabelLine vitamin = line(dish, std::string(value.name), std::string(value.unit),
                             value.figures == 3 ? Rounding::kThreeFigures : Rounding::kTwoFigures,
                             dish.whole(*value.nutrient));
    vitamin.reference = value.value;
    const double share = vitamin.per_100_g.amount / value.value;
    if (share >= (drink ? kSignificantDrink : kSignificantFood))
      label.vitamins.push_back(std::move(vitamin));
  }
  return label;
}

}  // namespace nutrition
