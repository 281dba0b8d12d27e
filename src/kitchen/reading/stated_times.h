// Times and oven settings as a text states them.
//
// "for 5-7 minutes", "1 1/2 hours", "half an hour", "2 min each side", "overnight"; "180C/160C
// fan/gas 4", "gas mark 6", "350°F", "a hot oven".
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "kitchen/dish.h"
#include "kitchen/reading/line_tokens.h"

namespace kitchen {

struct StatedTime {
  Seconds least{0}, most{0};
  std::size_t begin = 0, end = 0;  ///< tokens, end not included
};

/// The time a step takes if its tokens say so: several in a row add up; "every 5 minutes" and
/// "after 10 minutes" are not the step's own time, "the last 5 minutes" only if no other is given.
std::optional<StatedTime> stated_time(const std::vector<LineToken>&);

struct StatedOven {
  int celsius = 0;  ///< whole tens, 50 to 260
  OvenKind kind = OvenKind::kConventional;
  double confidence = 1;
};

/// The oven setting the tokens say. A conventional figure wins over the fan figure beside it; a
/// figure in Fahrenheit or a gas mark is turned by the usual British table (rows of d_conversions
/// in the reference tables: gas marks and °C; memory, tables differ by 10 °C at marks 1/2 and 3).
std::optional<StatedOven> stated_oven(const std::vector<LineToken>&);

}  // namespace kitchen
