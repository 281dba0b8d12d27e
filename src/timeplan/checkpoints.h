// Checkpoints on the five-minute grid of the clock (rule Y3), and how calm a plan is for the adult
// and the cooks (G5).
#pragma once

#include "timeplan/plan.h"
#include "timeplan/trial.h"

namespace timeplan {

/// Chooses three to five events a wave (start of the food, each pan and tin, washing up), moves
/// them to the next five minutes of the clock one after another, and solves again each time; an
/// event that cannot be moved there stays off the grid and is not a checkpoint. `trial` holds the
/// moved schedule afterwards, `gridded` the problem with the checkpoints held. `spent` grows by the
/// work done.
std::vector<Checkpoint> set_checkpoints(const kitchen::Lesson&, Trial& trial,
                                        scheduler::Problem& gridded, const TrialLimits& each,
                                        double& spent);

/// Start of the step or wash-up each checkpoint could be about, by wave: nodes whose activity is
/// shared by the wave.
struct Anchor {
  int wave = 0;
  int node = 0;  ///< a node of the wave's first cook; washing up: their last part
  bool washing_up = false;
  std::string says;  ///< "large pan on", "tin in the oven", "washing up"
};
std::vector<Anchor> anchors(const kitchen::Lesson&, const Trial&);

/// G5: adult load above 70 hundredths, summed over minutes, tenth part; plus minutes beyond 10 of
/// each idle stretch of a cook, except where all are idle together for 6 min or more. Walking is
/// not counted: rooms have no distances.
int calm(const kitchen::Lesson&, const Plan&);

}  // namespace timeplan
