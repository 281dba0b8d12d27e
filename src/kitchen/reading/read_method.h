// The method of a text as steps. (The reading of steps proper is written beside this; here each
// line is kept as one step.)
#pragma once

#include <vector>

#include "kitchen/foods.h"
#include "kitchen/reading/draft.h"
#include "kitchen/reading/method_line.h"

namespace kitchen {

/// Adds the method to a draft whose ingredients are read.
void read_method(DishDraft&, const std::vector<MethodLine>&, const Foods&);

}  // namespace kitchen
