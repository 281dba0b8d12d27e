// From a lesson's network and plan to what the room plays, and how long each activity may really
// take.
#pragma once

#include <cstdint>
#include <vector>

#include "kitchen/lesson.h"
#include "timeplan/chance/play_model.h"
#include "timeplan/network.h"

namespace timeplan {

/// How an activity's real length is drawn (7.1).
struct LengthOf {
  double median = 0;      ///< seconds, the cook's pace included; 0 = always as planned
  double spread = 0;      ///< sigma of the logarithm
  bool hands_on = false;  ///< shares the step's, the cook's and the room's luck
  int cook = -1;          ///< into LessonModel::cook_ids
  int step = -1;          ///< into LessonModel::step_ids
};

struct LessonModel {
  PlayModel play;
  std::vector<LengthOf> length;         ///< [activity]
  std::vector<int> task;                ///< [activity] into Plan::tasks; -1 a moment
  std::vector<int> part;                ///< [activity] which part of its step (rule P1)
  std::vector<std::uint64_t> cook_ids;  ///< [cook] from the name
  std::vector<std::uint64_t> step_ids;  ///< from dish and step names, not from places in a list
};

/// Throws std::invalid_argument when the plan lacks a task the network says must exist.
LessonModel play_model_of(const kitchen::Lesson&, const Network&, const Plan&);

}  // namespace timeplan
