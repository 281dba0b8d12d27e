#include "timeplan/trial.h"

#include <algorithm>
#include <map>

#include "scheduler/holding.h"

namespace timeplan {

Trial prepare(const kitchen::Lesson& lesson, const std::vector<int>& wave_of_cook,
              const BriefOptions& options) {
  Trial trial;
  trial.wave_of_cook = wave_of_cook;
  trial.waves = wave_of_cook.empty()
                    ? 1
                    : *std::max_element(wave_of_cook.begin(), wave_of_cook.end()) + 1;
  trial.net = network(lesson, wave_of_cook);
  trial.brief = brief(lesson, trial.net, options);
  return trial;
}

namespace {

// Measured on the two-core machine the figures in bench/ are from: 35 to 50 million ticks a second.
constexpr double kTicksPerSecond = 36e6;
constexpr std::size_t kClassInWaves = 250;
/// Seconds of work in which a plan that is close enough may still become the best there is.
constexpr double kForTheLast = 0.12;
constexpr double kPatience = 1.3;  // how much slower a machine may be before the clock stops it

}  // namespace

scheduler::Options engine_options(const TrialLimits& limits, std::size_t activities) {
  scheduler::Options options;
  // A class in waves is stopped by work alone on any machine worth the name, so that its plan
  // repeats.
  options.seconds = limits.seconds * kPatience + (activities <= kClassInWaves ? 4.0 : 0.05);
  options.work_limit = static_cast<std::int64_t>(limits.seconds * kTicksPerSecond);
  options.close_enough = limits.close_enough;
  options.close_after = static_cast<std::int64_t>(kForTheLast * kTicksPerSecond);
  options.seed = limits.seed;
  options.decide_pairs = false;
  options.first_only = limits.first_only;
  options.stop = limits.stop;
  return options;
}

double work_of(const scheduler::Outcome& outcome) {
  return static_cast<double>(outcome.ticks) / kTicksPerSecond;
}

void solve(Trial& trial, const TrialLimits& limits) {
  scheduler::Options options = engine_options(limits, trial.brief.problem.activities.size());
  if (trial.found()) options.start_from = trial.outcome.best;
  trial.outcome = scheduler::solve(trial.brief.problem, options);
}

std::vector<std::int64_t> still_holding(std::vector<std::int64_t> bounds,
                                        const std::vector<std::int64_t>& then,
                                        const std::vector<std::int64_t>& now) {
  const std::size_t holding = scheduler::levels_holding(then, now);
  for (std::size_t i = 0; i < bounds.size(); ++i)
    bounds[i] = i < holding ? std::min(bounds[i], now[i]) : 0;
  return bounds;
}

void solve_on(Trial& trial, const TrialLimits& limits) {
  const scheduler::Outcome before = trial.outcome;
  solve(trial, limits);
  if (!trial.found() || before.values.empty()) return;
  const std::vector<std::int64_t> held = still_holding(before.bounds, before.values,
                                                       trial.outcome.values);
  for (std::size_t i = 0; i < held.size(); ++i)
    trial.outcome.bounds[i] = std::max(trial.outcome.bounds[i], held[i]);
}

Trial attempt(const kitchen::Lesson& lesson, const std::vector<int>& wave_of_cook,
              const BriefOptions& options, const TrialLimits& limits) {
  Trial trial = prepare(lesson, wave_of_cook, options);
  solve(trial, limits);
  return trial;
}

namespace {

// Waves are numbered by the first cook in them, so that equal splits look equal.
std::vector<int> renumbered(std::vector<int> split) {
  std::map<int, int> known;
  for (int& wave : split) wave = known.emplace(wave, static_cast<int>(known.size())).first->second;
  return split;
}

}  // namespace

std::vector<std::vector<int>> splits(const kitchen::Lesson& lesson, int waves) {
  const std::size_t count = lesson.cooks.size();
  if (waves == 1) return {std::vector<int>(count, 0)};
  std::vector<int> by_bay(count), by_mates(count), by_halves(count), in_turn(count);
  std::map<int, int> bay_number, mates_seen;
  for (std::size_t c = 0; c < count; ++c) {
    const kitchen::Place& place = lesson.room
                                      .places[static_cast<std::size_t>(lesson.cooks[c].place)];
    const int bay = bay_number.emplace(place.bay, static_cast<int>(bay_number.size()))
                        .first->second;
    by_bay[c] = bay % waves;
    by_mates[c] = mates_seen[place.cookers.front()]++ % waves;
    by_halves[c] = static_cast<int>(c) * waves / static_cast<int>(count);
    in_turn[c] = static_cast<int>(c) % waves;
  }
  std::vector<std::vector<int>> result;
  for (const std::vector<int>& split : {by_mates, by_bay, by_halves, in_turn}) {
    const std::vector<int> numbered = renumbered(split);
    const int used = count == 0 ? 0 : *std::max_element(numbered.begin(), numbered.end()) + 1;
    const bool known = std::find(result.begin(), result.end(), numbered) != result.end();
    if (used == waves && !known) result.push_back(numbered);
  }
  return result;
}

kitchen::Lesson with_own_timelines(const kitchen::Lesson& lesson) {
  kitchen::Lesson own = lesson;
  own.timelines = kitchen::Timelines::kOwn;
  return own;
}

int last_end(const Trial& trial, const kitchen::Lesson& lesson) {
  int last = 0;
  for (std::size_t n = 0; n < trial.net.nodes.size(); ++n) {
    const TaskKind kind = trial.net.nodes[n].task.kind;
    const int activity = trial.brief.activity_of_node[n];
    if ((kind != TaskKind::kWashUp && kind != TaskKind::kPack) || activity < 0) continue;
    const scheduler::Placement& p = trial.outcome.best[static_cast<std::size_t>(activity)];
    const kitchen::Cook& cook = lesson
                                    .cooks[static_cast<std::size_t>(trial.net.nodes[n].task.cook)];
    // Who leaves early counts against their own bell.
    const auto early = static_cast<int>((lesson.bell - cook.leaves).count() / 60);
    last = std::max(last, p.start + p.duration + std::max(0, early));
  }
  return last;
}

Seconds overrun_of(const Trial& trial, const kitchen::Lesson& lesson) {
  const Seconds end = base::minutes(last_end(trial, lesson)) + lesson.check_out;
  return std::max(Seconds{0}, end - base::grid_down(lesson.bell));
}

}  // namespace timeplan
