#include "random_problem.h"

#include <algorithm>
#include <string>

#include "scheduler/random.h"

namespace scheduler::testing {
namespace {

constexpr int kHands = 0, kTable = 1, kOven = 2, kPlace = 3;

class Generator {
 public:
  Generator(std::uint64_t seed, const Recipe& recipe) : random_(seed), recipe_(recipe) {}

  Problem run() {
    problem_.horizon = recipe_.horizon;
    make_resources();
    for (int i = 0; i < recipe_.activities; ++i) make_activity(i);
    make_lags();
    for (int k = 0; recipe_.spans && k < recipe_.most_spans; ++k) make_span();
    make_groups();
    make_goals();
    return problem_;
  }

 private:
  int below(int count) { return random_.below(count); }
  bool chance(int percent) { return below(100) < percent; }
  int other_than(int i) { return (i + 1 + below(recipe_.activities - 1)) % recipe_.activities; }

  void make_resources() {
    Resource hands{"hands", ResourceKind::kCumulative, 10, {{0, 1}}, {}, std::nullopt, -1};
    Resource table{"table", ResourceKind::kCumulative, 2, {}, {}, std::nullopt, -1};
    Resource oven{"oven", ResourceKind::kSettings, 2, {}, {}, std::nullopt, -1};
    const int up = 1 + below(3), down = 1 + below(3);
    oven.change = {{0, up, up + 1}, {down, 0, 1}, {down + 1, 1, 0}};
    if (chance(50)) oven.initial = below(3);
    Resource place{"place", ResourceKind::kSoiling, 3, {}, {}, std::nullopt, -1};
    problem_.resources = {hands, table, oven, place};
  }

  Mode make_mode() {
    Mode mode;
    if (chance(70)) {
      Use hands;
      hands.resource = kHands;
      hands.amount = recipe_.crowded ? 3 + below(3) : 2 + 4 * below(3);
      if (chance(15)) hands.hazard = 0;
      mode.uses.push_back(hands);
    }
    if (chance(35)) {
      Use table;
      table.resource = kTable;
      table.amount = recipe_.crowded ? 1 : 1 + below(2);
      mode.uses.push_back(table);
    }
    if (recipe_.settings && chance(recipe_.oven_chance)) {
      Use oven;
      oven.resource = kOven;
      oven.settings = {below(3)};
      if (chance(40)) oven.settings.push_back((oven.settings[0] + 1) % 3);
      if (chance(recipe_.door_chance)) oven.door_shut = 2 + below(3);
      if (recipe_.shelves_chance > 0 && chance(recipe_.shelves_chance)) oven.amount = 2;
      mode.uses.push_back(oven);
    }
    if (recipe_.soil && chance(recipe_.soil_chance)) {
      Use place;
      place.resource = kPlace;
      place.amount = 1;
      if (chance(60))
        place.soil = 1 + below(3);
      else
        place.minds = 1 + below(3);
      place.kind_bit = 1 << below(2);
      if (chance(40)) place.overlaps_not = 1 << below(2);
      mode.uses.push_back(place);
    }
    return mode;
  }

  void make_activity(int i) {
    Activity activity;
    activity.name = std::to_string(i);
    activity.duration_min = chance(recipe_.empty_chance) ? 0 : 1 + below(4);
    activity.duration_max = activity.duration_min;
    if (recipe_.elastic && chance(30)) activity.duration_max += 1 + below(3);
    activity.modes = {make_mode()};
    if (recipe_.modes &&
        chance(recipe_.crowded ? std::max(60, recipe_.mode_chance) : recipe_.mode_chance))
      activity.modes.push_back(make_mode());
    if (chance(20)) activity.earliest = below(4);
    if (chance(20)) activity.latest_end = recipe_.horizon - below(4);
    if (recipe_.optional && chance(recipe_.crowded ? 40 : 20)) activity.optional = true;
    if (recipe_.soil && recipe_.optional && chance(15)) {
      activity.optional = true;
      activity.cleans = kPlace;
      activity.cleans_bits = 1 + below(3);
    }
    activity.team = i / 3;
    problem_.activities.push_back(activity);
  }

  Event some_event(int i) { return {i, chance(50) ? Side::kStart : Side::kEnd}; }

  void make_lags() {
    for (int i = 1; i < recipe_.activities; ++i) {
      if (!chance(recipe_.crowded ? std::min(15, recipe_.lag_chance) : recipe_.lag_chance))
        continue;
      const int before = below(i);
      Lag lag{{before, Side::kEnd}, {i, Side::kStart}, below(3), kNoLimit, -1};
      if (chance(recipe_.max_lag_chance)) lag.max = lag.min + below(4);
      problem_.lags.push_back(lag);
    }
    for (int k = 0; k < recipe_.extra_lags; ++k) {
      if (!chance(25)) continue;
      const int i = below(recipe_.activities);
      problem_.lags.push_back(
          {some_event(i), some_event(other_than(i)), -below(4), 4 + below(8), -1});
    }
    if (chance(25)) {
      const int from = below(recipe_.horizon / 2);
      problem_.blocked.push_back({from, from + 1 + below(3), {below(recipe_.activities)}, -1});
    }
  }

  void make_span() {
    if (!chance(recipe_.span_chance)) return;
    Span span;
    const int i = below(recipe_.activities);
    span.from = {i, chance(50) ? Side::kStart : Side::kEnd};
    span.to = {other_than(i), Side::kEnd};
    Use use;
    use.resource = kTable;
    span.uses_by_mode = {{use}};
    if (chance(40)) {
      span.like = i;
      if (problem_.activities[static_cast<std::size_t>(i)].modes.size() > 1)
        span.uses_by_mode.push_back({});
    }
    if (chance(40)) span.excludes.push_back(below(recipe_.activities));
    problem_.spans.push_back(span);
  }

  void make_groups() {
    const int i = below(recipe_.activities);
    if (recipe_.modes && chance(30)) problem_.same_mode.push_back({i, other_than(i)});
    if (!recipe_.optional || !chance(30)) return;
    const int j = other_than(i);
    problem_.activities[static_cast<std::size_t>(i)].optional = true;
    problem_.activities[static_cast<std::size_t>(j)].optional = true;
    problem_.exactly_one.push_back({i, j});
  }

  Term make_term() {
    Term term;
    term.weight = 1 + below(3);
    term.activity = below(recipe_.activities);
    switch (below(8)) {
      case 0:
        term.kind = Term::Kind::kPresent;
        return term;
      case 1:
        term.kind = Term::Kind::kMoved;
        term.at = below(recipe_.horizon);
        term.tolerance = below(3);
        return term;
      case 2:
        term.kind = Term::Kind::kOutOfOrder;
        term.other = other_than(term.activity);
        return term;
      case 3:
        term.kind = Term::Kind::kMode;
        term.at = below(2);
        return term;
      default:
        break;
    }
    const int count = 1 + below(3);
    for (int k = 0; k < count; ++k) term.high.push_back({below(recipe_.activities), Side::kEnd});
    if (chance(60)) {
      for (int k = 0; k < count; ++k) term.low.push_back(some_event(below(recipe_.activities)));
    }
    term.allowance = below(4) - (chance(20) ? 2 : 0);
    return term;
  }

  void make_goals() {
    const int levels = 1 + below(3);
    for (int l = 0; l < levels; ++l) {
      GoalLevel level;
      level.name = std::to_string(l);
      const int terms = 1 + below(4);
      for (int k = 0; k < terms; ++k) level.terms.push_back(make_term());
      if (recipe_.bands && chance(40)) level.band = below(3);
      problem_.goals.push_back(level);
    }
  }

  Random random_;
  Recipe recipe_;
  Problem problem_;
};

}  // namespace

Problem random_problem(std::uint64_t seed, const Recipe& recipe) {
  return Generator(seed, recipe).run();
}

}  // namespace scheduler::testing
