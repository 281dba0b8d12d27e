// Random programmes of one food, invented to test form: days with needs, packs that keep a while,
// lots in the stores.
#pragma once

#include <cstdint>

#include "larder/food_programme.h"

namespace tests {

struct FoodSize {
  int days = 3;
  int packs = 2;
  double most_need = 1000;  ///< a day, grams
  double smallest_pack = 200;
};

/// The same seed gives the same programme. Some have worth left over, some stock, some days without
/// need; every day can be covered.
larder::FoodProgramme random_food(std::uint64_t seed, const FoodSize&);

}  // namespace tests
