// Invented lessons with plans of the shape a planner makes, for what print/ says and draws. They
// are laid out by a simple rule, not planned: the verifier is not asked, and room limits are not
// kept everywhere.
#pragma once

#include "timeplan/answer.h"

namespace sample {

struct Told {
  kitchen::Lesson lesson;
  timeplan::Answer answer;
};

/// Twelve pairs, soup and scones to take home in 115 minutes, two waves, one adult and a
/// technician; fits.
Told two_waves();
/// The same class in 96 minutes: nine minutes over, with causes, remedies and the least late plan.
Told over_the_bell();
/// `cooks` candidates with three dishes each in 180 minutes, timelines of their own, one break;
/// fits.
Told assessed(int cooks);
/// A plan without a task in a room without a cook, and an answer with every list empty.
Told nothing();

}  // namespace sample
