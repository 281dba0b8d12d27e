// The room plays a plan by the dispatch rule (problem section 5, D1 to D11): who starts what when,
// once it is known how long everything really takes. One run of the simulation, and the live
// forecast, are both a call of play().
//
// Example: the pasta takes a minute longer, so the cook waits at the sink and shapes the dough a
// minute later. Nothing here is random: luck comes in, a run goes out.
#pragma once

#include <memory>
#include <span>
#include <vector>

#include "timeplan/chance/play_model.h"

namespace timeplan {

/// A raised hand: after so many seconds of work; the help takes half of an adult for `help` seconds
/// (7.7).
struct HandsUp {
  int after = -1;  ///< -1: no call
  int help = 0;
};

/// Calls an activity can make in one run. A third in one step is left out: at one call in 20
/// minutes it is rare.
inline constexpr int kCallsEach = 2;

/// What a run does not decide itself.
/// Shape: `length` has one entry an activity, in seconds; `calls` none, or kCallsEach an activity in time order.
struct Luck {
  std::span<const int> length;
  std::span<const HandsUp> calls;
  int opens_late = 0;  ///< nothing of the class starts before
};

/// What happened. Activities that were skipped because their dish was given up have start and end
/// -1.
struct Run {
  std::vector<int> start, end;
  std::vector<int> cause;     ///< activity whose end or moment the start really waited for; -1 the
                              ///< clock
  std::vector<int> finish;    ///< [cook] end of its last finishing activity
  std::vector<char> in_time;  ///< [cook] all its due activities in time, nothing given up, no
                              ///< safety fault
  int quality_faults = 0;
  int quality_seconds = 0;
  int safety_faults = 0;
  int given_up = 0;                    ///< dishes
  std::vector<char> too_late, unsafe;  ///< [activity] it made a quality fault, a safety fault
};

class RoomMachine;

/// Plays one model many times without allocating. Not for two threads at once.
class RoomPlayer {
 public:
  explicit RoomPlayer(const PlayModel&);  ///< the model must outlive the player
  ~RoomPlayer();
  RoomPlayer(const RoomPlayer&) = delete;
  RoomPlayer& operator=(const RoomPlayer&) = delete;

  /// Plays once. The result is valid until the next call.
  /// Throws std::logic_error if the room stalls (rule D11), std::invalid_argument for luck of the
  /// wrong shape.
  const Run& play(const Luck&);

 private:
  std::unique_ptr<RoomMachine> machine_;
};

/// Plays a model once.
Run play(const PlayModel&, const Luck&);

}  // namespace timeplan
