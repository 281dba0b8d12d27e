// How long each task must last, worked out from the lesson.
//
// "Dicing takes a pupil 6 minutes, this pair is slow and some days are worse: plan 8." Nothing here
// looks at a plan except to know whether hands are washed at the basins or at the sinks.
#pragma once

#include "timeplan/verify/case.h"

namespace timeplan::judge {

/// The least and most a task may last.
struct LengthRange {
  Seconds least{0}, most{0};
};

/// ⌈minutes⌉, forgiving a millionth of a minute: figures come from exponentials, and 8.0000001 is 8
/// to a teacher.
std::int64_t minutes_up(double minutes);
/// Planned mean of a hands-on step for that cook's line, in whole minutes, before it is split.
Seconds planned_mean(const Case&, int cook, int dish, int step);
/// Planned mean, or `least` rounded up for a passive step: what chains and buffers are made of
/// (rule 8.1).
Seconds usual_length(const Case&, int cook, int dish, int step);
/// Parts of a step (rule P1); 1 when it stays whole.
int step_parts(const Case&, int cook, int dish, int step);
/// Parts of a cook's washing up (rule Y6).
int wash_up_parts(const Case&, int cook);
/// Positions for washing hands: at the basins of the room or at the sinks of the cook's bay.
int hand_positions(const Case&, int cook, bool basin);
/// What a task may last. Clean-downs and full cleans are judged with what they remove (hygiene.cpp,
/// kit.cpp), not here.
LengthRange length_of(const Case&, const Task&);

}  // namespace timeplan::judge
