// Whether an oven's change-over minutes make sense together: going by way of a third setting is
// never quicker.
#pragma once

#include <optional>

#include "kitchen/room.h"

namespace kitchen {

/// Lowest and highest mark of an oven knob.
inline constexpr int kCoolestOven = 50;
inline constexpr int kHottestOven = 260;

/// Two settings for which the straight way takes longer than the way over a third; `from` empty = a
/// cold oven.
struct Detour {
  std::optional<OvenSetting> from;
  OvenSetting over;
  OvenSetting to;
  Seconds straight{0};
  Seconds around{0};
};

/// A violation of the triangle inequality after rounding to the grid (rule O4), or nothing. Checks
/// every setting.
std::optional<Detour> quicker_detour(const ChangeOver&);

}  // namespace kitchen
