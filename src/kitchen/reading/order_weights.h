// How much each sign of the order of steps weighs (order_signs.h): learnt from texts, see
// docs/methods/reading-methods.md.
#pragma once

#include <vector>

namespace kitchen {

/// One weight for each sign; above 0 speaks for waiting.
const std::vector<double>& order_weights();

}  // namespace kitchen
