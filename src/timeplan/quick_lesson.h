// The quick way in: a lesson from four answers (dish, pupils, cookers, minutes), with a stock room
// and no class list.
#pragma once

#include <string>
#include <vector>

#include "base/problem.h"
#include "kitchen/lesson.h"

namespace timeplan {

struct QuickWish {
  std::vector<kitchen::Dish> dishes;  ///< every cook makes all of them
  int pupils = 24;                    ///< 1 to 40
  int together = 2;                   ///< 1 singles, 2 pairs, 3 threes
  int cookers = 6;                    ///< 1 to 20
  int sinks = 6;                      ///< sink positions in the room, 1 to 20
  int from_minute = 9 * 60;           ///< minutes after midnight
  int to_minute = 10 * 60;
  kitchen::Purpose purpose = kitchen::Purpose::kEatHere;
  kitchen::HouseRules rules;
};

/// Four rings and two shelves a cooker, one cooker a bay, sinks dealt out over the bays, places at
/// the cookers in turn; kit as much as the cooks want at once up to one a pair (common practice, no
/// source).
/// Problems: quick.* with what to answer instead.
base::Result<kitchen::Lesson> quick_lesson(const QuickWish&);

}  // namespace timeplan
