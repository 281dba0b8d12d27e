// The dispatch rule a second time, slow and obvious: minute by minute, everything looked up afresh,
// no memory of why anything waited. It knows attention, plain uses, trays that open and close with
// one activity, closing steps, longest waits and windows for everyone; the fast player must agree
// with it start by start.
#pragma once

#include <vector>

#include "timeplan/chance/play_model.h"

namespace minute_room {

struct Result {
  std::vector<int> start, end;
  int fault_minutes = 0;
  bool stalled = false;
};

/// Plays a model whose unit is the minute (grid 1) for at most `longest` minutes.
Result play(const timeplan::PlayModel& model, const std::vector<int>& length, int longest);

}  // namespace minute_room
