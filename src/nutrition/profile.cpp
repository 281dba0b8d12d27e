#include "nutrition/profile.h"

#include <algorithm>
#include <array>

#include "nutrition/label.h"

namespace nutrition {

namespace {

// One point for each limit that is passed. Rows N221 to N278 of the check values.
constexpr std::array<double, 10> kEnergyKj = {335,  670,  1005, 1340, 1675,
                                              2010, 2345, 2680, 3015, 3350};
constexpr std::array<double, 10> kSaturates = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10};
constexpr std::array<double, 10> kSugars = {4.5, 9, 13.5, 18, 22.5, 27, 31, 36, 40, 45};
constexpr std::array<double, 10> kSodiumMg = {90, 180, 270, 360, 450, 540, 630, 720, 810, 900};
constexpr std::array<double, 5> kAoacFibre = {0.9, 1.9, 2.8, 3.7, 4.7};
constexpr std::array<double, 5> kNspFibre = {0.7, 1.4, 2.1, 2.8, 3.5};
constexpr std::array<double, 5> kProtein = {1.6, 3.2, 4.8, 6.4, 8.0};

template <std::size_t N>
int points(const std::array<double, N>& limits, double value) {
  return static_cast<int>(std::count_if(limits.begin(), limits.end(),
                                        [&](double limit) { return value > limit + 1e-9; }));
}

bool is_nut(const kitchen::Food& food) {
  static constexpr std::array<std::string_view, 8> kSeeds = {
      "sesame_seeds", "tahini",  "sunflower_seeds", "pumpkin_seeds",
      "poppy_seeds",  "linseed", "chia_seeds",      "peanut_butter"};
  return food.category == "nuts seeds" &&
         std::find(kSeeds.begin(), kSeeds.end(), food.key) == kSeeds.end();
}

// How often its weight counts: 0 not at all, 2 dried.
int counts(const kitchen::Food& food) {
  if (food.key == "tomato_puree" || food.five_a_day == kitchen::FiveADay::kDried) return 2;
  if (food.five_a_day != kitchen::FiveADay::kNo || is_nut(food)) return 1;
  return 0;
}

ProfileInput input_of(const DishNutrients& dish, double percent, bool most) {
  const double factor = 100 / dish.served_grams;
  const auto of = [&](const Figure& whole) {
    return (most ? whole.most.value_or(0) : whole.amount) * factor;
  };
  ProfileInput in;
  in.energy_kj = of(kilojoules(dish));
  in.saturates = of(dish.whole(Nutrient::kSaturates));
  in.sugars = of(dish.whole(Nutrient::kSugars));
  in.sodium_mg = of(dish.whole(Nutrient::kSodium));
  in.fruit_veg_nuts_percent = percent;
  in.fibre = of(dish.whole(Nutrient::kFibre));
  in.protein = of(dish.whole(Held::kLabelProtein));
  return in;
}

}  // namespace

int Profile::score() const {
  return a_points() - fruit_veg_nuts - fibre - (protein_counts ? protein : 0);
}

Profile profile(const ProfileInput& in) {
  Profile out;
  out.drink = in.drink;
  out.energy = points(kEnergyKj, in.energy_kj);
  out.saturates = points(kSaturates, in.saturates);
  out.sugars = points(kSugars, in.sugars);
  out.sodium = points(kSodiumMg, in.sodium_mg);
  const double share = in.fruit_veg_nuts_percent;
  out.fruit_veg_nuts = share > 80 ? 5 : share > 60 ? 2 : share > 40 ? 1 : 0;
  out.fibre = points(in.nsp_fibre ? kNspFibre : kAoacFibre, in.fibre);
  out.protein = points(kProtein, in.protein);
  out.protein_counts = out.a_points() < 11 || out.fruit_veg_nuts == 5;
  return out;
}

double fruit_veg_nuts_percent(const DishNutrients& dish) {
  double counted = 0, rest = 0;
  for (const Line& line : dish.lines) {
    const double grams = line.grams.value_or(0);
    const int times = line.food == nullptr ? 0 : counts(*line.food);
    if (times == 0)
      rest += grams;
    else
      counted += times * grams;
  }
  return counted + rest > 0 ? 100 * counted / (counted + rest) : 0;
}

DishProfile profile_of(const DishNutrients& dish, bool drink) {
  DishProfile out;
  out.fruit_veg_nuts_percent = fruit_veg_nuts_percent(dish);
  if (dish.served_grams <= 0 || !dish.weight_known) return out;
  ProfileInput in = input_of(dish, out.fruit_veg_nuts_percent, false);
  in.drink = drink;
  out.profile = profile(in);
  // The score with all that is missing at its worst, the good points left as they are, and the
  // other way round.
  const ProfileInput most = input_of(dish, out.fruit_veg_nuts_percent, true);
  ProfileInput worst = in, best = in;
  worst.energy_kj = most.energy_kj, worst.saturates = most.saturates;
  worst.sugars = most.sugars, worst.sodium_mg = most.sodium_mg;
  best.fibre = most.fibre, best.protein = most.protein;
  const bool bounded = kilojoules(dish).most && dish.whole(Nutrient::kSaturates).most &&
                       dish.whole(Nutrient::kSugars).most && dish.whole(Nutrient::kSodium).most &&
                       dish.whole(Nutrient::kFibre).most && dish.whole(Held::kLabelProtein).most;
  const int score = out.profile->score();
  out.sure = bounded && profile(worst).score() == score && profile(best).score() == score;
  return out;
}

}  // namespace nutrition
