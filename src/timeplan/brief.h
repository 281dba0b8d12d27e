// The network as a scheduling problem, and a schedule back as a plan. This is the only place where
// cooking becomes activities and resources.
//
// Cooks of one line share an activity for every task that does not queue; its uses add up what all
// of them take. What is held (a pan on its ring) becomes an elastic activity from one event to
// another.
#pragma once

#include <compare>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "scheduler/problem.h"
#include "timeplan/network.h"

namespace timeplan {

/// What may be to blame when a lesson does not fit: a family of constraints that can be left out to
/// see whether it would fit without.
struct Reason {
  enum class Kind : std::int8_t {
    kSinks,
    kBasins,
    kTable,
    kKit,
    kRings,
    kOvens,
    kGrills,
    kColdSpace,
    kAdults,
    kWindows,
    kHygiene,
    kAllergens,
    kServing,
    kBans,
    kPins,
    kPresence,
    kHands
  };
  Kind kind = Kind::kSinks;
  int index = -1;  ///< kKit: into Room::kit; kWindows: into Lesson::windows; kPins: into
                   ///< Lesson::pins
  friend auto operator<=>(const Reason&, const Reason&) = default;
};

struct BriefOptions {
  bool bell_is_hard = true;  ///< false: the bell is a goal (G1), everything may run over it
  std::set<Reason> without;  ///< constraint families to leave out
  Seconds beyond_bell{base::minutes(90)};  ///< how far over, when the bell is soft
};

/// An activity whose start somebody has fixed (rule W8).
struct PinnedActivity {
  int activity = 0;
  int at = 0;          ///< minute it starts
  int latest_end = 0;  ///< as it would be without the pin
};

/// An activity of the problem and the network nodes it stands for.
struct Brief {
  scheduler::Problem problem;
  std::vector<int> activity_of_node;  ///< -1 = none
  std::vector<int> activity_of_held;  ///< elastic activity, or -1 when nothing shared is at stake
  std::vector<std::vector<int>> way_of_mode;  ///< [activity][mode] -> way of its nodes (or held
                                              ///< thing)
  std::vector<Reason> reasons;                ///< families that appear in this problem
  std::map<std::pair<int, int>, kitchen::OvenSetting> setting_of;  ///< (resource, setting id) ->
                                                                   ///< knob
  std::vector<PinnedActivity> pinned;
  std::vector<int> pin_lags;  ///< lags that hold pinned starts
  bool spread_first = false;  ///< Z5
};

Brief brief(const kitchen::Lesson&, const Network&, const BriefOptions&);

/// The plan that a schedule of the brief's problem stands for, without checkpoints; levels' bounds
/// are left equal to the trivial bound 0.
Plan plan_from(const kitchen::Lesson&, const Network&, const Brief&, const scheduler::Schedule&,
               const std::vector<int>& wave_of_cook);

/// Names of the goal levels in this lesson's order ("G2 buffer shortfall", ...), as in
/// brief().problem.goals.
std::vector<std::string> level_names(const kitchen::Lesson&, bool bell_is_hard);

}  // namespace timeplan
