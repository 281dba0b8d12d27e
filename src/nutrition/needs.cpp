#include "nutrition/needs.h"

#include "nutrition/label.h"

namespace nutrition {

std::string_view name_of(Band band) {
  constexpr std::array<std::string_view, 4> kNames = {"girls 11 to 14", "boys 11 to 14",
                                                      "girls 15 to 18", "boys 15 to 18"};
  return kNames[static_cast<std::size_t>(band)];
}

const std::vector<Need>& needs() {
  constexpr auto kTotal = NeedOf::kTotal;
  // Girls 11 to 14, boys 11 to 14, girls 15 to 18, boys 15 to 18; all from memory (head of
  // needs.h).
  static const std::vector<Need> kNeeds = {
      {"energy",
       "kcal",
       Aim::kAbout,
       NeedOf::kKilocalories,
       Nutrient::kEnergyKcal,
       {2000, 2500, 2000, 2500}},
      {"energy",
       "kJ",
       Aim::kAbout,
       NeedOf::kKilojoules,
       Nutrient::kEnergyKcal,
       {8400, 10500, 8400, 10500}},
      {"protein", "g", Aim::kAtLeast, kTotal, Nutrient::kProtein, {41.2, 42.1, 45, 55.2}},
      {"fat", "g", Aim::kAtMost, kTotal, Nutrient::kFat, {78, 97, 78, 97}},
      {"saturates", "g", Aim::kAtMost, kTotal, Nutrient::kSaturates, {24, 31, 24, 31}},
      {"carbohydrate", "g", Aim::kAtLeast, kTotal, Held::kCarbohydrate, {267, 333, 267, 333}},
      {"free sugars", "g", Aim::kAtMost, kTotal, Held::kFreeSugars, {27, 33, 27, 33}},
      {"salt", "g", Aim::kAtMost, NeedOf::kSalt, Nutrient::kSodium, {6, 6, 6, 6}},
      {"fibre", "g", Aim::kAtLeast, kTotal, Nutrient::kFibre, {25, 25, 30, 30}},
      {"vitamin A", "µg", Aim::kAtLeast, kTotal, Nutrient::kVitaminA, {600, 600, 600, 700}},
      {"thiamin", "mg", Aim::kAtLeast, kTotal, Nutrient::kThiamin, {0.8, 1.0, 0.8, 1.0}},
      {"riboflavin", "mg", Aim::kAtLeast, kTotal, Nutrient::kRiboflavin, {1.1, 1.2, 1.1, 1.3}},
      {"niacin", "mg", Aim::kAtLeast, kTotal, Nutrient::kNiacin, {13.2, 16.5, 13.2, 16.5}},
      {"vitamin B6", "mg", Aim::kAtLeast, kTotal, Nutrient::kVitaminB6, {1.0, 1.2, 1.2, 1.5}},
      {"vitamin B12", "µg", Aim::kAtLeast, kTotal, Nutrient::kVitaminB12, {1.2, 1.2, 1.5, 1.5}},
      {"folate", "µg", Aim::kAtLeast, kTotal, Nutrient::kFolate, {200, 200, 200, 200}},
      {"vitamin C", "mg", Aim::kAtLeast, kTotal, Nutrient::kVitaminC, {35, 35, 40, 40}},
      {"vitamin D", "µg", Aim::kAtLeast, kTotal, Nutrient::kVitaminD, {10, 10, 10, 10}},
      {"iron", "mg", Aim::kAtLeast, kTotal, Nutrient::kIron, {14.8, 11.3, 14.8, 11.3}},
      {"calcium", "mg", Aim::kAtLeast, kTotal, Nutrient::kCalcium, {800, 1000, 800, 1000}},
      {"magnesium", "mg", Aim::kAtLeast, kTotal, Nutrient::kMagnesium, {280, 280, 300, 300}},
      {"potassium", "mg", Aim::kAtLeast, kTotal, Nutrient::kPotassium, {3100, 3100, 3500, 3500}},
      {"zinc", "mg", Aim::kAtLeast, kTotal, Nutrient::kZinc, {9, 9, 7, 9.5}},
      {"copper", "mg", Aim::kAtLeast, kTotal, Nutrient::kCopper, {0.8, 0.8, 1.0, 1.0}},
      {"iodine", "µg", Aim::kAtLeast, NeedOf::kNotHeld, Nutrient::kSelenium, {130, 130, 140, 140}},
      {"selenium", "µg", Aim::kAtLeast, kTotal, Nutrient::kSelenium, {45, 45, 60, 70}},
      {"phosphorus", "mg", Aim::kAtLeast, kTotal, Nutrient::kPhosphorus, {625, 775, 625, 775}},
  };
  return kNeeds;
}

std::vector<NeedShare> shares_of_day(const DishNutrients& dish, Band band) {
  std::vector<NeedShare> out;
  for (const Need& need : needs()) {
    Figure whole;
    switch (need.of) {
      case NeedOf::kKilocalories:
        whole = kilocalories(dish);
        break;
      case NeedOf::kKilojoules:
        whole = kilojoules(dish);
        break;
      case NeedOf::kSalt:
        whole = salt(dish);
        break;
      case NeedOf::kTotal:
        whole = dish.whole(need.what);
        break;
      case NeedOf::kNotHeld:
        continue;
    }
    const Figure portion = whole * (1.0 / dish.portions);
    out.push_back({&need, portion, portion.amount / need.a_day[static_cast<std::size_t>(band)]});
  }
  return out;
}

}  // namespace nutrition
