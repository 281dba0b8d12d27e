// A scheduling problem: activities, time lags, resources, goals. Project-scheduling vocabulary
// only; nothing here knows of cooking. Inert data: built by the caller, read by the engine, never
// changed by it.
//
// Example: "boil 10 units, drain 1 unit at most 0 after it, one pair of hands of capacity 10; end
// early" is two activities, one lag {boil.end, drain.start, 0, 0}, one resource and one goal level
// with one term.
#pragma once

#include <cstdint>
#include <limits>
#include <optional>
#include <string>
#include <vector>

namespace scheduler {

/// Whole time units (minutes in a class). All times lie in [0, horizon].
using Time = int;
inline constexpr Time kNoLimit = std::numeric_limits<Time>::max();

enum class Side : std::int8_t { kStart, kEnd };

/// Start or end of an activity.
struct Event {
  int activity = 0;
  Side side = Side::kStart;
  friend auto operator<=>(const Event&, const Event&) = default;
};

/// One use of a resource by an activity in one mode.
struct Use {
  int resource = 0;
  int amount = 1;
  std::vector<int> settings;  ///< settings resources: acceptable settings, one is chosen; ids local
                              ///< to the resource
  Time door_shut = 0;         ///< settings resources: nothing else enters or leaves strictly inside
                              ///< (start, start + door_shut)
  int soil = 0;   ///< soiling resources: what it leaves behind, as a bit set (0 = nothing)
  int minds = 0;  ///< soiling resources: bits that must have been cleaned away before it, as a bit
                  ///< set
  int overlaps_not = 0;  ///< soiling resources: never overlaps a use whose `kind_bit` is in this
                         ///< set
  int kind_bit = 0;      ///< see overlaps_not
  int hazard = -1;       ///< cumulative resources: counted against Resource::limits of that hazard
};

struct Mode {
  std::vector<Use> uses;
};

/// An activity occupies [start, end), end = start + duration. Length 0: a moment, uses nothing.
struct Activity {
  std::string name;
  Time duration_min = 1;
  Time duration_max = 1;            ///< > min: elastic
  std::vector<Mode> modes{Mode{}};  ///< exactly one is chosen; never empty
  Time earliest = 0;                ///< start >= earliest
  Time latest_end = kNoLimit;       ///< end <= latest_end
  bool optional = false;      ///< may be absent; absent activities obey no rule and use nothing
  std::optional<int> cleans;  ///< soiling resource this activity cleans ...
  int cleans_bits = 0;        ///< ... of these bits
  int team = 0;  ///< activities of one team belong together (construction, neighbourhoods, bounds)
  int group = -1;  ///< constraint group of its window [earliest, latest_end] (reasons), -1 = none
};

/// min <= time(to) - time(from) <= max; void when one side is absent. max = kNoLimit: none.
struct Lag {
  Event from, to;
  Time min = 0;
  Time max = kNoLimit;
  int group = -1;
};

/// Held from one event to another, waiting included. Void when one side is absent; needs to >=
/// from. `like`: the span's use follows that activity's mode: in mode m it uses uses_by_mode[m].
struct Span {
  Event from, to;
  std::optional<int> like;
  std::vector<std::vector<Use>> uses_by_mode;  ///< size 1 when `like` is empty
  std::vector<int> excludes;                   ///< these activities may not overlap it
  int group = -1;
};

enum class ResourceKind : std::int8_t {
  kCumulative,  ///< sum of amounts <= capacity
  kSettings,  ///< as cumulative, and all uses that overlap have equal setting; change-over between
              ///< unequal ones
  kSoiling,   ///< as cumulative, and soil must be cleaned away before a use that minds it
};

struct Limit {
  int hazard = 0;
  int at_once = 1;
};

struct Resource {
  std::string name;
  ResourceKind kind = ResourceKind::kCumulative;
  int capacity = 1;
  std::vector<Limit> limits;
  /// kSettings: change[i][j] units between the end of a use at i and the start of a use at j; 0 on the diagonal;
  /// triangle inequality holds. `initial`: setting at time 0, or none.
  std::vector<std::vector<Time>> change;
  std::optional<int> initial;
  int group = -1;
};

/// A fixed time in which some activities may not run.
struct Blocked {
  Time from = 0, to = 0;
  std::vector<int> activities;
  int group = -1;
};

/// weight * measure, one summand of a goal level. Absent events are left out; a term without events
/// is 0.
struct Term {
  enum class Kind : std::int8_t {
    kExcess,   ///< max(0, max over `high` - min over `low` - allowance); an empty `low` counts as 0
    kPresent,  ///< 1 when `activity` is present
    kMoved,    ///< 1 when |start(activity) - at| > tolerance
    kOutOfOrder,  ///< 1 when start(activity) > start(other)
    kMode,        ///< 1 when mode(activity) != at
  };
  Kind kind = Kind::kExcess;
  int weight = 1;
  std::vector<Event> high, low;
  Time allowance = 0;
  int activity = 0;
  int other = 0;
  Time at = 0;
  Time tolerance = 0;
  int team = -1;  ///< team whose plan decides it, -1 = several
};

/// Minimised in order (lexicographically, up to `band`: later levels may give back that much).
struct GoalLevel {
  std::string name;
  std::vector<Term> terms;
  int band = 0;
};

struct Problem {
  Time horizon = 0;
  std::vector<Activity> activities;
  std::vector<Lag> lags;
  std::vector<Span> spans;
  std::vector<Resource> resources;
  std::vector<Blocked> blocked;
  std::vector<std::vector<int>> same_mode;    ///< activities that choose equal mode indices
  std::vector<std::vector<int>> exactly_one;  ///< exactly one of these is present
  std::vector<GoalLevel> goals;
};

/// What is decided for one activity.
struct Placement {
  bool present = true;
  Time start = 0;
  Time duration = 0;
  int mode = 0;
  std::vector<int> settings;  ///< one for each use of the mode; -1 for uses that have none
  friend bool operator==(const Placement&, const Placement&) = default;
};

using Schedule = std::vector<Placement>;  ///< one for each activity, same order

}  // namespace scheduler
