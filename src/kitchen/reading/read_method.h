// The method of a dish as steps: what is done, how long it takes a pupil, who must look, what it
// needs, and what must be done before.
//
// "Fry the onion gently for 5-7 minutes until soft. Meanwhile boil the pasta." is two steps: stand
// by, ring, 5 to 7 min, "until soft"; and a second one that waits for neither.
#pragma once

#include <vector>

#include "kitchen/foods.h"
#include "kitchen/reading/actions.h"
#include "kitchen/reading/draft.h"
#include "kitchen/reading/ingredient_words.h"
#include "kitchen/reading/method_line.h"
#include "kitchen/reading/task_times.h"

namespace kitchen {

/// Fills `draft.method` from the lines, given `draft.ingredients`. Every sentence of the lines is
/// in exactly one step, or in `draft.unread` when it holds no action at all.
void read_method(DishDraft& draft, const std::vector<MethodLine>& lines, const Foods& foods,
                 const TaskTimes& times);

/// The same without the order and what follows from it; returns what kind of work each step is.
std::vector<Work> read_steps(DishDraft& draft, const std::vector<MethodLine>& lines,
                             const IngredientWords& words, const TaskTimes& times);

}  // namespace kitchen
