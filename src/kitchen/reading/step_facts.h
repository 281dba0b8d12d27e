// What a gathered step is: its minutes, attention, heat, equipment, hazards, hygiene and skills.
#pragma once

#include "kitchen/reading/step_view.h"

namespace kitchen {

/// The step, but for what it must wait for. `so_far` moves on.
StepDraft step_of(const StepPieces&, const std::vector<Sentence>&, const DishDraft&,
                  const IngredientWords&, const TaskTimes&, SoFar& so_far);

}  // namespace kitchen
