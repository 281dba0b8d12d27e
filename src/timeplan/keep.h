// A plan that stands, kept through a change of its lesson: the printed times and waves stay
// wherever the changed lesson lets them, because the wall, the cards and twenty-four heads already
// hold them.
//
// A cook who works slower from now on: the tasks before theirs stay, those after move, the other
// wave does not.
#pragma once

#include <optional>
#include <vector>

#include "timeplan/plan_time.h"
#include "timeplan/trial.h"

namespace timeplan {

struct Kept {
  Trial trial;                 ///< of the changed lesson; its bounds are trivial, nothing is proved
  scheduler::Problem holding;  ///< the trial's problem with everything held that stayed where it
                               ///< was
};

/// Tries in turn: every start as it was; those let go for which cooks queue; one wave let go;
/// everything let go from some minute on, as late as will do. The one that moves fewest starts is
/// then made to move fewer still. Nothing when no plan with the standing waves is found so, or only
/// one that leaves more people short of the buffer than before. `lesson` is the changed one, with
/// own timelines if the standing plan has them. Time spent: some tenths of a second.
std::optional<Kept> keep(const kitchen::Lesson& lesson, const Standing&, PlanTime&);

/// The standing plan in the changed lesson with little let go: nothing, those who queue, or one
/// wave. Nothing when it does not stand so; a search might still find it another plan. Quicker than
/// any search when a change is taken back.
std::optional<Trial> still_stands(const kitchen::Lesson& lesson, const Standing&, PlanTime&);

/// Puts back the times of washing up that still hold: who queues for a sink may begin some minutes
/// later than before, and a checkpoint says "then or later". `checkpoints` are those of `trial`, in
/// order, before and after.
void keep_wash_ups(const kitchen::Lesson&, const Standing&, const Trial& trial,
                   std::vector<Checkpoint>& checkpoints);

/// Whether the standing plan has a timeline for every cook.
bool has_own_timelines(const Standing&);

}  // namespace timeplan
