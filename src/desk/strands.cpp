#include "desk/strands.h"

#include <algorithm>

namespace desk {
namespace {

using base::Seconds;
using kitchen::Dish;
using kitchen::Follows;
using kitchen::Moment;

/// Earliest start of a step by the waits on those placed already.
Seconds earliest(const Dish& dish, int step, const std::vector<Strand>& placed,
                 const std::vector<bool>& done) {
  const kitchen::Step& s = dish.method[static_cast<std::size_t>(step)];
  Seconds start{0};
  for (const Follows& wait : s.follows) {
    if (!done[static_cast<std::size_t>(wait.step)]) continue;
    const Strand& other = placed[static_cast<std::size_t>(wait.step)];
    Seconds at = (wait.of == Moment::kEnd ? other.to : other.from) + wait.least;
    if (wait.moment == Moment::kEnd) at -= s.least;
    start = std::max(start, at);
  }
  return start;
}

}  // namespace

Strands strands(const Dish& dish) {
  std::vector<Strand> placed(dish.method.size());
  std::vector<bool> done(dish.method.size(), false);
  Strands out;
  Seconds hands_free{0};
  std::vector<Seconds> lane_free;  // of the lanes beside the hands
  for (const int step : kitchen::reading_order(dish)) {
    const kitchen::Step& s = dish.method[static_cast<std::size_t>(step)];
    const bool busy = kitchen::hands_on(s.attention);
    Strand strand{step, 0, earliest(dish, step, placed, done), Seconds{0}};
    if (busy) strand.from = std::max(strand.from, hands_free);
    strand.to = strand.from + s.least;
    if (busy) {
      hands_free = strand.to;
      out.hands += s.least;
    } else {
      std::size_t lane = 0;
      while (lane < lane_free.size() && lane_free[lane] > strand.from) ++lane;
      if (lane == lane_free.size()) lane_free.emplace_back(0);
      lane_free[lane] = strand.to;
      strand.lane = static_cast<int>(lane) + 1;
    }
    placed[static_cast<std::size_t>(step)] = strand;
    done[static_cast<std::size_t>(step)] = true;
    out.length = std::max(out.length, strand.to);
  }
  out.steps = std::move(placed);
  std::stable_sort(out.steps.begin(), out.steps.end(),
                   [](const Strand& a, const Strand& b) { return a.from < b.from; });
  return out;
}

}  // namespace desk
