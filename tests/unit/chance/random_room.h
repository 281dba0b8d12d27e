// Random play models with a plan that holds: each activity is placed at the earliest minute at
// which everything it needs is free, sometimes later on purpose. Simple ones for comparison with
// minute_room, full ones for stalls.
#pragma once

#include <cstdint>
#include <vector>

#include "timeplan/chance/play_model.h"

namespace random_room {

struct Random {
  std::uint64_t state;
  /// A whole number from `least` to `most`.
  int number(int least, int most) {
    state += 0x9e3779b97f4a7c15ULL;
    std::uint64_t z = state;
    z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9ULL;
    z = (z ^ (z >> 27)) * 0x94d049bb133111ebULL;
    return least + static_cast<int>((z ^ (z >> 31)) % static_cast<std::uint64_t>(most - least + 1));
  }
  bool one_in(int n) { return number(1, n) == 1; }
};

/// In minutes: cooks of one, steps, closing steps, two pools, an oven with two settings, perhaps a
/// window.
timeplan::PlayModel simple(Random& random);
/// In seconds: also pans held over several steps in scarce rings, kit, raw hands, places,
/// alternatives, trays that go in together, elastic simmering, breaks, bans, helpers.
timeplan::PlayModel full(Random& random);
/// Real lengths from half to twice what was planned.
std::vector<int> lengths(const timeplan::PlayModel& model, Random& random);

}  // namespace random_room
