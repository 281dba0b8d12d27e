#include "timeplan/checkpoints.h"

#include <algorithm>
#include <map>
#include <set>

namespace timeplan {
namespace {

constexpr int kClockGrid = 5;  // minutes
constexpr std::size_t kMostPerWave = 5;
constexpr int kLeastPerWave = 3;  // dearer ones are taken to reach it
constexpr int kCheap = 1;  // minutes at the end that a checkpoint may cost without a second thought

std::string heat_words(const kitchen::Step& step) {
  switch (step.heat->with) {
    case kitchen::HeatKind::kRing:
      return step.heat->vessel + " on";
    case kitchen::HeatKind::kOven:
      return step.heat->vessel + " in the oven";
    case kitchen::HeatKind::kGrill:
      return step.heat->vessel + " under the grill";
  }
  return step.brief;
}

// Next five minutes of the clock at or after `units` minutes from opening.
int up_to_clock(const kitchen::Lesson& lesson, int units) {
  const int clock = lesson.opens_minute + units;
  const int rest = clock % kClockGrid;
  return rest == 0 ? units : units + kClockGrid - rest;
}

}  // namespace

std::vector<Anchor> anchors(const kitchen::Lesson& lesson, const Trial& trial) {
  std::vector<Anchor> found;
  for (int wave = 0; wave < trial.waves; ++wave) {
    const auto first = std::find(trial.wave_of_cook.begin(), trial.wave_of_cook.end(), wave);
    if (first == trial.wave_of_cook.end()) continue;
    const int cook = static_cast<int>(first - trial.wave_of_cook.begin());
    std::vector<std::pair<int, Anchor>> of_wave;  // (planned start, anchor)
    const auto start_of = [&](int node) {
      return trial.outcome
          .best[static_cast<std::size_t>(
              trial.brief.activity_of_node[static_cast<std::size_t>(node)])]
          .start;
    };
    std::set<std::pair<int, std::string>> vessels;
    int first_step = -1;
    for (int n = 0; n < static_cast<int>(trial.net.nodes.size()); ++n) {
      const Node& node = trial.net.nodes[static_cast<std::size_t>(n)];
      const Task& t = node.task;
      if (t.cook != cook || t.kind != TaskKind::kStep || t.step < 0 || node.queued || t.part > 0)
        continue;
      const kitchen::Step& step = lesson.dishes[static_cast<std::size_t>(t.dish)]
                                      .method[static_cast<std::size_t>(t.step)];
      if (first_step < 0 || start_of(n) < start_of(first_step)) first_step = n;
      if (!step.heat || !vessels.emplace(t.dish, step.heat->vessel).second) continue;
      of_wave.push_back({start_of(n), {wave, n, false, heat_words(step)}});
    }
    if (first_step >= 0) {
      const Task& t = trial.net.nodes[static_cast<std::size_t>(first_step)].task;
      const kitchen::Step& step = lesson.dishes[static_cast<std::size_t>(t.dish)]
                                      .method[static_cast<std::size_t>(t.step)];
      const bool known = std::any_of(of_wave.begin(), of_wave.end(),
                                     [&](const auto& a) { return a.second.node == first_step; });
      if (!known) of_wave.push_back({start_of(first_step), {wave, first_step, false, step.brief}});
    }
    std::stable_sort(of_wave.begin(), of_wave.end(),
                     [](const auto& a, const auto& b) { return a.first < b.first; });
    if (of_wave.size() > kMostPerWave - 1) of_wave.resize(kMostPerWave - 1);
    for (const auto& [start, anchor] : of_wave) found.push_back(anchor);
    found.push_back(
        {wave, trial.net.wash_up[static_cast<std::size_t>(cook)].back(), true, "washing up"});
  }
  return found;
}

std::vector<Checkpoint> set_checkpoints(const kitchen::Lesson& lesson, Trial& trial,
                                        scheduler::Problem& problem, const TrialLimits& each,
                                        double& spent) {
  std::vector<Checkpoint> result;
  std::vector<Anchor> wanted = anchors(lesson, trial);
  const auto activities_of = [&](const Anchor& anchor) {
    std::vector<int> activities;
    if (!anchor.washing_up) {
      // The whole wave: cooks with another second dish have a line of their own.
      const Task& what = trial.net.nodes[static_cast<std::size_t>(anchor.node)].task;
      for (std::size_t n = 0; n < trial.net.nodes.size(); ++n) {
        const Task& t = trial.net.nodes[n].task;
        if (t.kind != what.kind || t.dish != what.dish || t.step != what.step ||
            t.part != what.part)
          continue;
        if (trial.wave_of_cook[static_cast<std::size_t>(t.cook)] != anchor.wave) continue;
        const int a = trial.brief.activity_of_node[n];
        if (std::find(activities.begin(), activities.end(), a) == activities.end())
          activities.push_back(a);
      }
      return activities;
    }
    for (std::size_t c = 0; c < trial.wave_of_cook.size(); ++c) {
      if (trial.wave_of_cook[c] != anchor.wave) continue;
      activities.push_back(
          trial.brief.activity_of_node[static_cast<std::size_t>(trial.net.wash_up[c].back())]);
    }
    return activities;
  };
  Trial gridded = trial;  // the trial's own problem stays free of the grid
  const auto first_start = [&](const Anchor& anchor) {
    int first = trial.brief.problem.horizon;
    for (const int a : activities_of(anchor))
      first = std::min(first, trial.outcome.best[static_cast<std::size_t>(a)].start);
    return first;
  };
  std::stable_sort(wanted.begin(), wanted.end(), [&](const Anchor& a, const Anchor& b) {
    return first_start(a) < first_start(b);
  });
  // Holds the anchor to the next five minutes; false when that cannot be done or ends more than
  // `dearest` min later.
  const auto hold = [&](const Anchor& anchor, int dearest) {
    const int now = first_start(anchor);
    const int target = up_to_clock(lesson, now);
    const Task& task = trial.net.nodes[static_cast<std::size_t>(anchor.node)].task;
    const Checkpoint checkpoint{anchor.wave, base::minutes(target),
                                anchor.washing_up ? -1 : task.dish,
                                anchor.washing_up ? -1 : task.step, anchor.says};
    const auto before = gridded.brief.problem.activities;
    for (const int a : activities_of(anchor)) {
      scheduler::Activity& activity = gridded.brief.problem.activities[static_cast<std::size_t>(a)];
      activity.earliest = std::max(activity.earliest, target);
      // Steps are read off the clock: once on the grid, a step stays where it is.
      if (!anchor.washing_up)
        activity.latest_end = std::min(activity.latest_end, target + activity.duration_max);
    }
    if (target != now) {
      const int end = last_end(trial, lesson);
      solve(gridded, each);
      spent += work_of(gridded.outcome);
      if (!gridded.found() || last_end(gridded, lesson) > end + dearest) {
        gridded.brief.problem.activities = before;
        gridded.outcome = trial.outcome;
        return false;
      }
      trial.outcome.best = gridded.outcome.best;
      trial.outcome.values = gridded.outcome.values;
    }
    result.push_back(checkpoint);
    return true;
  };
  std::vector<Anchor> dear;
  for (const Anchor& anchor : wanted) {
    if (!hold(anchor, kCheap)) dear.push_back(anchor);
  }
  // A wave with too few of them takes dearer ones.
  for (const Anchor& anchor : dear) {
    const auto have = std::count_if(result.begin(), result.end(),
                                    [&](const Checkpoint& c) { return c.wave == anchor.wave; });
    if (have < kLeastPerWave) (void)hold(anchor, kClockGrid);
  }
  problem = gridded.brief.problem;
  std::stable_sort(result.begin(), result.end(), [](const Checkpoint& a, const Checkpoint& b) {
    return std::make_pair(a.wave, a.at) < std::make_pair(b.wave, b.at);
  });
  return result;
}

int calm(const kitchen::Lesson& lesson, const Plan& plan) {
  const auto minutes_in = static_cast<std::size_t>(lesson.bell.count() / 60 + 1);
  std::vector<int> load(minutes_in, 0);
  const auto cooks = lesson.cooks.size();
  std::vector<std::vector<bool>> busy(cooks, std::vector<bool>(minutes_in, false));
  std::vector<std::size_t> washed(cooks, 0);
  const auto at = [&](Seconds t) {
    return std::min(minutes_in, static_cast<std::size_t>(t.count() / 60));
  };
  for (const Task& t : plan.tasks) {
    int hundredths = 0;
    if (t.kind == TaskKind::kWindow || t.kind == TaskKind::kKnivesOut ||
        t.kind == TaskKind::kKnivesIn)
      hundredths = 100;
    if (t.kind == TaskKind::kLook || t.kind == TaskKind::kBayLook) hundredths = 50;
    bool hands = t.cook >= 0;
    if (t.kind == TaskKind::kStep) {
      const kitchen::Step& step = lesson.dishes[static_cast<std::size_t>(t.dish)]
                                      .method[static_cast<std::size_t>(t.step)];
      if (step.hazard) hundredths = lesson.rules.watch.at(*step.hazard).hundredths;
      hands = kitchen::hands_on(step.attention);
    }
    for (std::size_t m = at(t.start); m < at(t.end); ++m) {
      load[m] += hundredths;
      for (std::size_t c = 0; c < cooks; ++c) {
        const bool window = t.kind == TaskKind::kWindow;
        if ((hands && t.cook == static_cast<int>(c)) || window) busy[c][m] = true;
      }
    }
    if (t.kind == TaskKind::kWashUp) {
      std::size_t& end = washed[static_cast<std::size_t>(t.cook)];
      end = std::max(end, at(t.end));
    }
  }
  int adult = 0;
  for (const int l : load) adult += std::max(0, l - 70);
  int idle = 0;
  std::vector<bool> all_idle(minutes_in, true);
  for (std::size_t m = 0; m < minutes_in; ++m) {
    for (std::size_t c = 0; c < cooks; ++c) all_idle[m] = all_idle[m] && !busy[c][m];
  }
  for (std::size_t m = 0; m < minutes_in;) {
    std::size_t end = m;
    while (end < minutes_in && all_idle[end] == all_idle[m]) ++end;
    if (all_idle[m] && end - m < 6)
      std::fill(all_idle.begin() + static_cast<std::ptrdiff_t>(m),
                all_idle.begin() + static_cast<std::ptrdiff_t>(end), false);
    m = end;
  }
  for (std::size_t c = 0; c < cooks; ++c) {
    int stretch = 0;
    for (std::size_t m = 0; m <= washed[c] && m < minutes_in; ++m) {
      const bool waiting = m < washed[c] && !busy[c][m] && !all_idle[m];
      if (waiting) {
        ++stretch;
        continue;
      }
      idle += std::max(0, stretch - 10);
      stretch = 0;
    }
  }
  return adult / 10 + idle;
}

}  // namespace timeplan
