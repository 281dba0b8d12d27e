// What a gathered step is: its minutes, attention, heat, equipment, hazards, hygiene and skills.
#pragma once

#include "kitchen/reading/draft.h"
#include "kitchen/reading/ingredient_words.h"
#include "kitchen/reading/step_pieces.h"
#include "kitchen/reading/task_times.h"

namespace kitchen {

/// What the steps so far leave for the next: the oven as it was set, the pan on the ring.
struct SoFar {
  std::optional<Guess<HeatDraft>> oven;  ///< set in advance
  std::string tin;                       ///< the tin, tray or dish that was last spoken of
  std::optional<HeatDraft> ring;         ///< where the last pan stood
  bool on_ring = false;                  ///< that pan still stands there
  Work heat = Work::kFry;                ///< the last work on heat, for "cook for 5 minutes more"
  std::set<int> used;                    ///< ingredients
};

/// The step, but for what it must wait for. `so_far` moves on.
StepDraft step_of(const StepPieces&, const std::vector<Sentence>&, const DishDraft&,
                  const IngredientWords&, const TaskTimes&, SoFar& so_far);

}  // namespace kitchen
