#include "print/sheets/room_sheets.h"

#include <algorithm>

namespace print::sheets {

bool is_cooked(const kitchen::Dish& dish) {
  return std::any_of(dish.method.begin(), dish.method.end(),
                     [](const kitchen::Step& step) { return step.heat.has_value(); });
}

}  // namespace print::sheets
