#include "timeplan/network_methods.h"

#include <algorithm>
#include <cmath>

namespace timeplan {
namespace {

constexpr double kFormOfTheDay = 0.15;  // sigma of a cook's pace, memory (rule 7.1)
constexpr double kRoomForm = 0.08;      // sigma shared by the room, memory (rule 7.1)
constexpr Seconds kLongestUnsplit = base::minutes(10);
constexpr Seconds kPartLength = base::minutes(5);

Seconds equal_part(Seconds whole, int count) {
  return base::grid_up(Seconds{(whole.count() + count - 1) / count});
}

int parts_of(Seconds whole) {
  return static_cast<int>((whole.count() + kPartLength.count() - 1) / kPartLength.count());
}

double as_minutes(Seconds t) { return static_cast<double>(t.count()) / 60.0; }

double relative_variance(double sigma) { return std::exp(sigma * sigma) - 1.0; }

// Longest chain of a dish over planned lengths and least waits; which step precedes which on it.
struct Chain {
  double length = 0;
  double passive_variance = 0;
};

Chain longest_chain(const kitchen::Dish& dish, const std::vector<bool>& here, double pace) {
  const auto count = dish.method.size();
  std::vector<double> finish(count, 0), variance(count, 0);
  Chain best;
  for (const int index : kitchen::reading_order(dish)) {
    const auto i = static_cast<std::size_t>(index);
    if (!here[i]) continue;
    const kitchen::Step& step = dish.method[i];
    double start = 0, before = 0;
    for (const kitchen::Follows& f : step.follows) {
      const auto j = static_cast<std::size_t>(f.step);
      if (!here[j] || f.of != kitchen::Moment::kEnd || f.moment != kitchen::Moment::kStart)
        continue;
      const double from = finish[j] + as_minutes(base::grid_up(f.least));
      if (from > start) {
        start = from;
        before = variance[j];
      }
    }
    const double length = as_minutes(planned_length(step, pace).first);
    finish[i] = start + length;
    variance[i] = before;
    if (!kitchen::hands_on(step.attention)) {
      variance[i] += length * length * relative_variance(step.spread);
    }
    if (finish[i] > best.length) best = {finish[i], variance[i]};
  }
  return best;
}

}  // namespace

std::pair<Seconds, Seconds> planned_length(const kitchen::Step& step, double pace) {
  if (!kitchen::hands_on(step.attention)) {
    const Seconds least = std::max(base::kGrid, base::grid_up(step.least));
    return {least, std::max(least, base::grid_down(step.most))};
  }
  const double sigma2 = step.spread * step.spread + kFormOfTheDay * kFormOfTheDay +
                        kRoomForm * kRoomForm;
  const double mean = as_minutes(step.least) * pace * std::exp(sigma2 / 2.0);
  const auto whole = static_cast<std::int64_t>(std::ceil(mean - 1e-6));
  const Seconds length = base::minutes(std::max<std::int64_t>(1, whole));
  return {length, length};
}

std::pair<int, Seconds> parts(const kitchen::Step& step, Seconds planned) {
  if (!step.can_put_down || !kitchen::hands_on(step.attention) || planned <= kLongestUnsplit) {
    return {1, planned};
  }
  const int count = parts_of(planned);
  return {count, equal_part(planned, count)};
}

std::vector<bool> cooked_here(const kitchen::Dish& dish, std::optional<kitchen::CarryOver> carry) {
  std::vector<bool> first(dish.method.size(), true);
  if (!carry) return first;
  std::fill(first.begin(), first.end(), false);
  std::vector<int> open{dish.splits[static_cast<std::size_t>(carry->split)].after_step};
  while (!open.empty()) {
    const auto i = static_cast<std::size_t>(open.back());
    open.pop_back();
    if (first[i]) continue;
    first[i] = true;
    for (const kitchen::Follows& f : dish.method[i].follows) open.push_back(f.step);
  }
  if (carry->second_half) first.flip();
  return first;
}

namespace {

std::vector<std::vector<int>> runs(const kitchen::Dish& dish, const std::vector<bool>& here,
                                   bool raw_only) {
  std::vector<std::vector<int>> groups;
  std::optional<kitchen::Hygiene> open;
  for (const int index : kitchen::reading_order(dish)) {
    const auto i = static_cast<std::size_t>(index);
    if (!here[i]) continue;
    const std::optional<kitchen::Hygiene> hygiene = dish.method[i].hygiene;
    if (!hygiene && !raw_only) continue;  // steps away from the place do not part soiling groups
    const bool soils = hygiene && *hygiene != kitchen::Hygiene::kReadyToEat &&
                       (!raw_only || *hygiene == kitchen::Hygiene::kRaw);
    if (soils && open == hygiene) {
      groups.back().push_back(index);
    } else if (soils) {
      groups.push_back({index});
    }
    open = soils ? hygiene : std::nullopt;
  }
  return groups;
}

}  // namespace

std::vector<std::vector<int>> raw_groups(const kitchen::Dish& dish, const std::vector<bool>& here) {
  return runs(dish, here, true);
}

std::vector<std::vector<int>> soiling_groups(const kitchen::Dish& dish,
                                             const std::vector<bool>& here) {
  return runs(dish, here, false);
}

bool covers(const kitchen::Window& window, int cook) {
  const auto& audience = window.audience;
  return audience.empty() || std::find(audience.begin(), audience.end(), cook) != audience.end();
}

std::optional<kitchen::CarryOver> carry_of(const kitchen::Lesson& lesson, int dish) {
  for (const kitchen::CarryOver& c : lesson.carry) {
    if (c.dish == dish) return c;
  }
  return std::nullopt;
}

Seconds buffer_of(const kitchen::Lesson& lesson, int cook, double pace) {
  double variance = 0, hands = 0;
  int steps = 0;
  Chain longest;
  for (const int dish_index : lesson.cooks[static_cast<std::size_t>(cook)].dishes) {
    const kitchen::Dish& dish = lesson.dishes[static_cast<std::size_t>(dish_index)];
    const std::vector<bool> here = cooked_here(dish, carry_of(lesson, dish_index));
    for (std::size_t i = 0; i < dish.method.size(); ++i) {
      const kitchen::Step& step = dish.method[i];
      if (!here[i] || !kitchen::hands_on(step.attention)) continue;
      const double mean = as_minutes(planned_length(step, pace).first);
      variance += mean * mean * relative_variance(step.spread);
      hands += mean;
      ++steps;
    }
    const Chain chain = longest_chain(dish, here, pace);
    if (chain.length > longest.length) longest = chain;
  }
  variance += (kFormOfTheDay * kFormOfTheDay + kRoomForm * kRoomForm) * hands * hands;
  variance += longest.passive_variance;
  const double wanted = std::ceil(0.84 * std::sqrt(variance) - 0.5 * steps);
  return base::minutes(std::clamp<std::int64_t>(static_cast<std::int64_t>(wanted), 3, 15));
}

std::pair<int, Seconds> wash_up_parts(const kitchen::Lesson& lesson, int cook) {
  const kitchen::Cook& c = lesson.cooks[static_cast<std::size_t>(cook)];
  const kitchen::HouseRules& r = lesson.rules;
  Seconds whole = c.people == 1 ? r.wash_up_one : c.people == 2 ? r.wash_up_two : r.wash_up_three;
  whole += static_cast<int>(c.dishes.size() - 1) * r.wash_up_more;
  const int count = r.wash_in_parts ? std::max(1, parts_of(whole)) : 1;
  return {count, equal_part(whole, count)};
}

std::vector<kitchen::OvenSetting> accepted_settings(const kitchen::Heat& heat) {
  std::vector<kitchen::OvenSetting> settings;
  for (int c = heat.setting.celsius - heat.tolerance; c <= heat.setting.celsius + heat.tolerance;
       c += 10) {
    settings.push_back({c, heat.setting.kind});
  }
  return settings;
}

}  // namespace timeplan
