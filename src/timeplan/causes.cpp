#include "timeplan/causes.h"

#include <algorithm>
#include <map>

#include <fmt/format.h>

#include "kitchen/check_lesson.h"

namespace timeplan {
namespace {

// Earliest starts by waits alone: longest paths from the opening.
std::vector<int> earliest_starts(const scheduler::Problem& problem) {
  std::vector<int> start(problem.activities.size(), 0);
  for (std::size_t a = 0; a < start.size(); ++a) start[a] = problem.activities[a].earliest;
  for (std::size_t round = 0; round <= start.size(); ++round) {
    bool moved = false;
    for (const scheduler::Lag& lag : problem.lags) {
      const auto from = static_cast<std::size_t>(lag.from.activity),
                 to = static_cast<std::size_t>(lag.to.activity);
      if (problem.activities[from].optional || problem.activities[to].optional) continue;
      const int at = start[from] +
                     (lag.from.side == scheduler::Side::kEnd ? problem.activities[from].duration_min
                                                             : 0) +
                     lag.min;
      const int reach = at - (lag.to.side == scheduler::Side::kEnd
                                  ? problem.activities[to].duration_max
                                  : 0);
      if (reach > start[to]) {
        start[to] = reach;
        moved = true;
      }
    }
    if (!moved) break;
  }
  return start;
}

// All that wants one pool: how much, how many tasks, and the time there is for it.
struct Load {
  int tasks = 0;
  std::int64_t work = 0;  // amount x minutes
  int capacity = 1;
  int first = 0;  // earliest start of any
  int needs() const { return static_cast<int>((work + capacity - 1) / capacity); }
};

Load load_of(const kitchen::Lesson& lesson, const Trial& trial, PoolKind kind, int index) {
  const std::vector<int> earliest = earliest_starts(trial.brief.problem);
  Load load;
  load.first = trial.brief.problem.horizon;
  load.capacity = 0;
  std::map<Pool, bool> counted;
  const auto count = [&](const Way& way, std::int64_t minutes, int activity) {
    for (const Need& need : way) {
      if (need.pool.kind != kind || (index >= 0 && need.pool.index != index)) continue;
      if (!counted[need.pool]) load.capacity += capacity(lesson, need.pool);
      counted[need.pool] = true;
      ++load.tasks;
      load.work += need.amount * minutes;
      if (activity >= 0)
        load.first = std::min(load.first, earliest[static_cast<std::size_t>(activity)]);
    }
  };
  for (std::size_t n = 0; n < trial.net.nodes.size(); ++n) {
    const Node& node = trial.net.nodes[n];
    if (!node.ways.empty() && !node.optional)
      count(node.ways.front(), node.least.count() / 60, trial.brief.activity_of_node[n]);
  }
  for (const Held& held : trial.net.held) {
    if (held.ways.empty() || held.nodes.empty()) continue;
    std::int64_t minutes = 0;
    for (const int n : held.nodes)
      minutes += trial.net.nodes[static_cast<std::size_t>(n)].least.count() / 60;
    count(held.ways.front(), minutes,
          trial.brief.activity_of_node[static_cast<std::size_t>(held.from)]);
  }
  load.capacity = std::max(1, load.capacity);
  return load;
}

std::string from_to(const kitchen::Lesson& lesson, int first) {
  return fmt::format("between {} and the bell at {} there are {} minutes",
                     kitchen::clock(lesson, base::minutes(first)),
                     kitchen::clock(lesson, lesson.bell),
                     std::max<std::int64_t>(0, lesson.bell.count() / 60 - first));
}

Cause in_words(const kitchen::Lesson& lesson, const Trial& trial, const Reason& reason) {
  using Kind = Reason::Kind;
  const auto pool = [&](PoolKind kind, const std::string& code, const std::string& what,
                        const std::string& unit, int scale) {
    const Load load = load_of(lesson, trial, kind, reason.kind == Kind::kKit ? reason.index : -1);
    return Cause{
        code, fmt::format("{}: {} turns need {} minutes at {} {}, and {}.", what, load.tasks,
                          load.needs(), load.capacity / scale, unit, from_to(lesson, load.first))};
  };
  switch (reason.kind) {
    case Kind::kSinks:
      return pool(PoolKind::kSink, "sinks", "Sinks", "sink positions", 1);
    case Kind::kBasins:
      return pool(PoolKind::kBasin, "hand basins", "Hand basins", "positions", 1);
    case Kind::kTable:
      return pool(PoolKind::kTable, "ingredients table", "The ingredients table", "positions", 1);
    case Kind::kRings:
      return pool(PoolKind::kRings, "rings", "Hob rings", "rings", 1);
    case Kind::kOvens:
      return pool(PoolKind::kOven, "ovens", "Ovens, with the time they take to heat and change",
                  "shelves", 12);
    case Kind::kGrills:
      return pool(PoolKind::kGrill, "grills", "Grills", "grill places", 1);
    case Kind::kColdSpace:
      return pool(PoolKind::kFridge, "cold space", "Fridge space", "tenths of a shelf", 1);
    case Kind::kKit: {
      const std::string& item = lesson.room.kit[static_cast<std::size_t>(reason.index)].item;
      return pool(PoolKind::kKit, "kit", "Kit (" + item + ")", "of them", 1);
    }
    case Kind::kAdults: {
      const Load load = load_of(lesson, trial, PoolKind::kAdult, -1);
      const auto adults = lesson.adults.size();
      return {"adults", fmt::format("An adult must be there {} times (hot oil, looks, windows): "
                                    "about {} minutes for {}, and {}.",
                                    load.tasks, load.needs(),
                                    adults == 1 ? "one adult" : fmt::format("{} adults", adults),
                                    from_to(lesson, load.first))};
    }
    case Kind::kWindows: {
      const kitchen::Window& w = lesson.windows[static_cast<std::size_t>(reason.index)];
      return {"window", fmt::format("{} takes {} minutes from {} on.", w.name,
                                    w.length.count() / 60, kitchen::clock(lesson, w.earliest))};
    }
    case Kind::kHygiene:
      return {"hygiene",
              "Boards, benches and hands must be cleaned between raw food and food that is ready "
              "to eat."};
    case Kind::kAllergens:
      return {"allergens",
              "Kit used with an allergen needs a full clean before a cook who avoids it."};
    case Kind::kServing:
      return {"serving",
              "The dishes must be ready within their waiting time of being served in the serving "
              "time given."};
    case Kind::kBans:
      return {"ban", "A hazard must be over by the time the lesson sets."};
    case Kind::kPins:
      return {"pin",
              kitchen::pin_words(lesson, lesson.pins[static_cast<std::size_t>(reason.index)])};
    case Kind::kPresence:
      return {"away", "Some cooks are one person short for part of the lesson."};
    case Kind::kHands:
      return {"hands", "There are not enough hands."};
  }
  return {"unknown", ""};
}

// The longest path of one cook by waits alone: what even one cook in an empty room needs.
Cause method_itself(const kitchen::Lesson& lesson, const Trial& trial) {
  const std::vector<int> earliest = earliest_starts(trial.brief.problem);
  int worst = -1, end = 0;
  for (std::size_t c = 0; c < trial.net.wash_up.size(); ++c) {
    const auto a = static_cast<std::size_t>(
        trial.brief.activity_of_node[static_cast<std::size_t>(trial.net.wash_up[c].back())]);
    const int e = earliest[a] + trial.brief.problem.activities[a].duration_min;
    if (e > end) {
      end = e;
      worst = static_cast<int>(c);
    }
  }
  std::string dishes;
  for (const int d : lesson.cooks[static_cast<std::size_t>(worst)].dishes) {
    if (!dishes.empty()) dishes += " and ";
    dishes += lesson.dishes[static_cast<std::size_t>(d)].name;
  }
  const auto there = (lesson.bell - lesson.check_out).count() / 60;
  if (end > there) {
    return {"method", fmt::format("{}: from washing hands to the last pan put away takes at least "
                                  "{} minutes even in an empty room; there are {}.",
                                  dishes, end, there)};
  }
  return {"hands", fmt::format("{}: the steps follow each other for at least {} of the {} minutes, "
                               "and one pair of hands cannot do the rest beside them.",
                               dishes, end, there)};
}

// How full what a reason is about would be: work over the time there is; nought for what is no
// pool.
double tightness(const kitchen::Lesson& lesson, const Trial& trial, const Reason& reason) {
  using Kind = Reason::Kind;
  const auto full = [&](PoolKind pool, int index) {
    const Load load = load_of(lesson, trial, pool, index);
    const int there = std::max(1, trial.brief.problem.horizon - load.first);
    return load.tasks == 0 ? 0.0 : static_cast<double>(load.needs()) / there;
  };
  switch (reason.kind) {
    case Kind::kSinks:
      return full(PoolKind::kSink, -1);
    case Kind::kBasins:
      return full(PoolKind::kBasin, -1);
    case Kind::kTable:
      return full(PoolKind::kTable, -1);
    case Kind::kKit:
      return full(PoolKind::kKit, reason.index);
    case Kind::kRings:
      return full(PoolKind::kRings, -1);
    case Kind::kOvens:
      return full(PoolKind::kOven, -1);
    case Kind::kGrills:
      return full(PoolKind::kGrill, -1);
    case Kind::kColdSpace:
      return full(PoolKind::kFridge, -1);
    case Kind::kAdults:
      return full(PoolKind::kAdult, -1);
    default:
      return 0;
  }
}

std::vector<Reason> least_tight_first(const kitchen::Lesson& lesson, const Trial& trial) {
  std::vector<std::pair<double, Reason>> order;
  for (const Reason& reason : trial.brief.reasons)
    order.emplace_back(tightness(lesson, trial, reason), reason);
  std::stable_sort(order.begin(), order.end(),
                   [](const auto& a, const auto& b) { return a.first < b.first; });
  std::vector<Reason> reasons;
  for (const auto& [full, reason] : order) reasons.push_back(reason);
  return reasons;
}

// Without a proof nobody is to blame: what is nearest to its limit is said instead, the fullest
// first.
std::vector<Cause> tightest(const kitchen::Lesson& lesson, const Trial& trial) {
  constexpr std::size_t kMost = 3;
  const std::vector<std::pair<PoolKind, Reason::Kind>> pools{
      {PoolKind::kSink, Reason::Kind::kSinks},  {PoolKind::kBasin, Reason::Kind::kBasins},
      {PoolKind::kTable, Reason::Kind::kTable}, {PoolKind::kRings, Reason::Kind::kRings},
      {PoolKind::kOven, Reason::Kind::kOvens},  {PoolKind::kAdult, Reason::Kind::kAdults}};
  std::vector<std::pair<double, Reason>> full;
  for (const auto& [pool, kind] : pools) {
    const Load load = load_of(lesson, trial, pool, -1);
    const int there = trial.brief.problem.horizon - load.first;
    if (load.tasks > 0)
      full.emplace_back(static_cast<double>(load.needs()) / std::max(1, there), Reason{kind});
  }
  std::stable_sort(full.begin(), full.end(),
                   [](const auto& a, const auto& b) { return a.first > b.first; });
  std::vector<Cause> said;
  for (const auto& [ratio, reason] : full) {
    if (said.size() < kMost) said.push_back(in_words(lesson, trial, reason));
  }
  return said;
}

}  // namespace

Causes causes(const kitchen::Lesson& lesson, const std::vector<int>& wave_of_cook,
              const TrialLimits& each, double& spent) {
  Causes found;
  const Trial whole = prepare(lesson, wave_of_cook, BriefOptions{});
  double budget = each.seconds;
  const auto still_refuted = [&](const std::set<Reason>& without) -> std::optional<bool> {
    TrialLimits limits = each;
    limits.seconds = std::min(budget, std::max(0.05, each.seconds / 6));
    limits.first_only = true;
    BriefOptions options;
    options.without = without;
    const Trial trial = attempt(lesson, wave_of_cook, options, limits);
    spent += work_of(trial.outcome);
    budget -= work_of(trial.outcome);
    if (trial.refuted()) return true;
    if (trial.found()) return false;
    return std::nullopt;
  };
  if (still_refuted({}) != std::optional<bool>(true)) return {tightest(lesson, whole), false};
  std::set<Reason> without;
  // Start with everything away: then the method alone is to blame.
  const std::set<Reason> all(whole.brief.reasons.begin(), whole.brief.reasons.end());
  if (still_refuted(all) == std::optional<bool>(true)) {
    found.causes.push_back(method_itself(lesson, whole));
    return found;
  }
  // The least likely to be to blame are let go first, so that what stays is what is nearest to its
  // limit.
  for (const Reason& reason : least_tight_first(lesson, whole)) {
    std::set<Reason> trying = without;
    trying.insert(reason);
    const std::optional<bool> refuted = budget > 0 ? still_refuted(trying) : std::nullopt;
    if (!refuted) found.minimal = false;
    if (refuted == std::optional<bool>(true)) {
      without = std::move(trying);
    } else {
      found.causes.push_back(in_words(lesson, whole, reason));
    }
  }
  return found;
}

}  // namespace timeplan
