#include "kitchen/room.h"

#include <algorithm>

#include "kitchen/change_over.h"

namespace kitchen {
namespace {

constexpr int kStep = 10;  // degrees between two marks of the knob

Seconds whole_minutes_up(long long numerator, long long denominator) {
  return base::minutes((numerator + denominator - 1) / denominator);
}

}  // namespace

Seconds change_over(const ChangeOver& rates, OvenSetting from, OvenSetting to) {
  const int rise = to.celsius - from.celsius;
  Seconds time{0};
  if (rise > 0)
    time = base::grid_up(rates.heat_per_10 * rise / kStep);
  else if (rise < 0)
    time = whole_minutes_up(-rise, rates.cool_degrees_per_minute);
  // The largest of two measures that each satisfy the triangle inequality satisfies it too.
  return from.kind == to.kind ? time : std::max(time, base::kGrid);
}

Seconds heat_up(const ChangeOver& rates, OvenSetting to) {
  return std::max(base::kGrid, base::grid_up(rates.cold_to_180 +
                                             rates.cold_more_per_10 * (to.celsius - 180) / kStep));
}

std::optional<Detour> quicker_detour(const ChangeOver& rates) {
  std::vector<OvenSetting> settings;
  for (int celsius = kCoolestOven; celsius <= kHottestOven; celsius += kStep) {
    settings.push_back({celsius, OvenKind::kConventional});
    settings.push_back({celsius, OvenKind::kFan});
  }
  for (const OvenSetting over : settings) {
    for (const OvenSetting to : settings) {
      const Seconds last = change_over(rates, over, to);
      const Seconds around = heat_up(rates, over) + last;
      if (around < heat_up(rates, to))
        return Detour{std::nullopt, over, to, heat_up(rates, to), around};
      for (const OvenSetting from : settings) {
        const Seconds straight = change_over(rates, from, to);
        const Seconds detour = change_over(rates, from, over) + last;
        if (detour < straight) return Detour{from, over, to, straight, detour};
      }
    }
  }
  return std::nullopt;
}

bool burns_gas(const Cooker& cooker, HeatKind heat) {
  return cooker.gas == Gas::kAll || (cooker.gas == Gas::kRings && heat == HeatKind::kRing);
}

const Kit* find_kit(const Room& room, const std::string& item) {
  const auto at = std::find_if(room.kit.begin(), room.kit.end(),
                               [&](const Kit& kit) { return kit.item == item; });
  return at == room.kit.end() ? nullptr : &*at;
}

}  // namespace kitchen
