// The chance of finishing by the bell: the plan is played by the dispatch rule two thousand times,
// each time with other minutes, and it is counted what came of it (problem section 7,
// docs/methods/chance.md).
//
// Example: in 1,640 of 2,000 runs everybody was washed up and out: "about 8 in 10", 80 to 84 in
// 100. It is a statement about the plan, the durations table and the rule, not about a class.
#pragma once

#include <array>
#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "kitchen/lesson.h"
#include "timeplan/chance/statistics.h"
#include "timeplan/network.h"
#include "timeplan/plan.h"

namespace timeplan {

struct ChanceOptions {
  int runs = 2000;
  std::uint64_t seed = 1;
  std::optional<Seconds> opens_late;  ///< the class starts so late; none: as the lesson says
  bool late_starts = true;            ///< also play the same luck 5 and 10 min later
  std::function<bool()> stop;         ///< asked every few runs; true = what has been played so far
};

/// Thresholds: 85 and 50 in 100 (a choice, docs/methods/chance.md).
enum class ChanceWord : std::int8_t { kComfortable, kTight, kUnlikely };
/// "comfortable", "tight", "unlikely".
std::string word(ChanceWord);
ChanceWord chance_word(double room);

struct CookChance {
  double share = 0;  ///< of runs in which this cook was out in time
  Interval interval;
  friend bool operator==(const CookChance&, const CookChance&) = default;
};

/// A step that made rooms late: the runs in which it was on the chain of waiting that led to the
/// last finish and took longer than planned (7.4). Not a proof of blame.
struct DecidingStep {
  int task = 0;  ///< into Plan::tasks: the first task of this step, whoever does it
  int runs = 0;
  double share = 0;
  friend bool operator==(const DecidingStep&, const DecidingStep&) = default;
};

struct LateStart {
  Seconds later{0};  ///< than the usual opening
  double room = 0;
  Interval interval;
  int runs = 0;
  friend bool operator==(const LateStart&, const LateStart&) = default;
};

struct Chance {
  int runs = 0;  ///< played
  std::uint64_t seed = 1;
  bool complete = true;  ///< false: asked to stop before all runs
  double room = 0;       ///< share of runs in which the whole room succeeded
  Interval interval;     ///< 95 %, Wilson
  ChanceWord word = ChanceWord::kUnlikely;
  std::string about;            ///< "about 8 in 10"
  double expected_not_out = 0;  ///< cooks not out at the bell, on average
  std::vector<CookChance> cooks;
  Seconds p50{0}, p90{0};    ///< of the last finish, after the lesson opens
  double quality_fault = 0;  ///< share of runs with food that waited or cooked too long
  double safety_fault = 0;   ///< share of runs with a safety limit overrun or a ban passed
  double given_up = 0;       ///< share of runs in which a dish was given up
  std::vector<DecidingStep> deciding;  ///< most runs first, at most five
  /// The same for what made the faults: steps that began or ended later than the food, or safety,
  /// allows.
  std::vector<DecidingStep> too_late, unsafe;
  std::array<Seconds, 20> marks{};  ///< twenty finishes, each standing for 5 runs in 100, earliest
                                    ///< first
  std::vector<LateStart> late_starts;
  friend bool operator==(const Chance&, const Chance&) = default;
};

/// Plays the plan. Cost: about 2,000 runs of a class in half a second. The same lesson, plan,
/// options and seed give the same result. Throws std::invalid_argument for a plan that is not one
/// of this network or fewer than one run, and std::logic_error if a run stalls.
Chance chance(const kitchen::Lesson&, const Network&, const Plan&, const ChanceOptions& = {});

}  // namespace timeplan
