// One run's luck for a lesson: how long everything really takes and who raises a hand when
// (7.1, 7.7).
#pragma once

#include <cstdint>
#include <vector>

#include "timeplan/chance/chance_model.h"
#include "timeplan/chance/room_play.h"

namespace timeplan {

/// Defaults of 7.1 and 7.7 (memory; EC029 for the median of a look).
inline constexpr double kCookForm = 0.15;
inline constexpr double kRoomForm = 0.08;
inline constexpr double kLeastFactor = 0.4, kMostFactor = 4.0;
inline constexpr double kSecondsBetweenCalls = 1200;
inline constexpr double kHelpMedian = 90, kHelpSpread = 0.6;

class Draw {
 public:
  Draw(const LessonModel& model, std::uint64_t seed);
  /// Luck of run number `run`. Valid until the next call.
  Luck of_run(std::uint64_t run, int opens_late);

 private:
  void draw_length(std::size_t activity, std::uint64_t run, double room);
  void draw_calls(std::size_t activity, std::uint64_t run);

  const LessonModel& model_;
  std::uint64_t seed_;
  std::vector<double> cook_, step_;
  std::vector<char> needs_step_;
  std::vector<int> length_;
  std::vector<HandsUp> calls_;
};

/// Real length over median, in the clamp of 7.1. `z_*` are standard normal; passive steps have only
/// their own.
double length_factor(const LengthOf& length, double z_own, double z_step, double z_cook,
                     double z_room);

}  // namespace timeplan
