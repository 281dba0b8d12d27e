#include "random_food.h"

#include <algorithm>
#include <cmath>
#include <random>

namespace tests {

larder::FoodProgramme random_food(std::uint64_t seed, const FoodSize& size) {
  std::mt19937_64 luck(seed);
  const auto whole = [&](int least, int most) {
    return least + static_cast<int>(luck() % static_cast<std::uint64_t>(most - least + 1));
  };
  larder::FoodProgramme p;
  const int last = size.days - 1;
  for (int d = 0; d < size.days; ++d)
    p.need.push_back(whole(0, 4) == 0 ? 0 : std::round(size.most_need * whole(20, 100) / 100));
  const bool keeps = whole(0, 2) > 0;
  double cheapest = 1e9;
  for (int k = 0; k < size.packs; ++k) {
    const double grams = size.smallest_pack * whole(4, 16) / 4;
    const double price = std::round(grams * whole(20, 60) / 100) + whole(1, 30);
    cheapest = std::min(cheapest, price / grams);
    const int span = keeps ? size.days : whole(0, 2);
    for (int d = 0; d < size.days; ++d) {
      const int to = std::min(last, d + span);
      p.batches.push_back({{grams, d, to, keeps && to == last}, price, k});
    }
  }
  if (whole(0, 1) == 0) {
    const int from = whole(0, last);
    p.stock.push_back({size.most_need * whole(5, 60) / 100, 0, from, false});
  }
  if (keeps && whole(0, 1) == 0) {
    p.worth = cheapest / 2;
    p.worth_most = size.most_need * 2;
  }
  larder::drop_useless(p.batches);
  return p;
}

}  // namespace tests
