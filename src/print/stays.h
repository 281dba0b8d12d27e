// How long each cook's pots and trays stay on a ring, in an oven or under a grill (rule O2). Not
// for use outside print/.
#pragma once

#include <optional>
#include <vector>

#include "print/facts.h"

namespace print {

/// One cook's vessel on one cooker, from its first step to the end of its closing step (rule O2).
struct Stay {
  int cook = 0, dish = 0, step = 0, cooker = -1;
  Seconds from{0}, to{0};
  std::optional<kitchen::OvenSetting> setting;
  const kitchen::Heat* heat = nullptr;
};
/// By start, then cook. Shared trays are one stay for each cook here.
std::vector<Stay> stays(const kitchen::Lesson&, const Plan&);

}  // namespace print
