#include "timeplan/wave_search.h"

#include <algorithm>
#include <string>

#include <fmt/format.h>

namespace timeplan {
namespace {

/// Part of the time for the plan itself; the rest is for checkpoints and last safe starts.
constexpr double kForPlanning = 0.72;
/// Part of the time for the first look at a split of the class.
constexpr double kForOneLook = 0.03;
/// Part of the time for a first plan with own timelines.
constexpr double kForAnyPlan = 0.25;
/// Part of the time for the fewest waves while they leave somebody short of the buffer; half of it
/// for the next number, and so on.
constexpr double kForFewestWaves = 0.25;

// A split of the class into so many waves.
struct Way {
  int waves = 1;
  Trial trial;
};

class WaveSearch {
 public:
  WaveSearch(const kitchen::Lesson& lesson, PlanTime& time) : lesson_(lesson), time_(time) {}

  WaveFindings run() {
    std::vector<Way> ways = look();
    if (!time_.stopped()) deepen(ways);
    report(ways);
    if (search_.waves_seconds == 0) search_.waves_seconds = time_.spent;
    for (Way& way : ways) {
      if (!way.trial.found()) continue;
      if (!search_.best || better(way.trial, *search_.best)) search_.best = std::move(way.trial);
    }
    if (search_.best) measure_misses();
    return std::move(search_);
  }

 private:
  static bool good(const Trial& trial) {
    return trial.found() && trial.outcome.values.front() == 0;
  }

  // Better on the first level, then fewer waves, then the rest.
  static bool better(const Trial& a, const Trial& b) {
    const auto& x = a.outcome.values;
    const auto& y = b.outcome.values;
    if (x.front() != y.front()) return x.front() < y.front();
    if (a.waves != b.waves) return a.waves < b.waves;
    return x < y;
  }

  // Long, if the first level turns out to be as good as it can be; otherwise another split of the
  // class may be better.
  void work_on(Trial& trial, double unless_good) {
    TrialLimits how = time_.limits(time_.part(kForPlanning) - time_.spent, false);
    how.hopeless_after = std::min(how.seconds, unless_good);
    how.close_enough = time_.a_hundredth();
    if (how.seconds <= 0) return;
    solve_on(trial, how);
    time_.spent += work_of(trial.outcome);
  }

  // Up to the first number of waves that leaves nobody short of the buffer.
  std::vector<Way> look() {
    std::vector<Way> ways;
    const int most = std::min(lesson_.most_waves, static_cast<int>(lesson_.cooks.size()));
    for (int waves = 1; waves <= most; ++waves) {
      time_.say(waves == 1 ? std::string("trying one wave")
                           : fmt::format("trying {} waves", waves));
      for (const std::vector<int>& split : splits(lesson_, waves)) {
        if (time_.stopped()) return ways;
        Way way{waves, prepare(lesson_, split, BriefOptions{})};
        const double before = time_.spent;
        TrialLimits how = time_.limits(time_.part(kForOneLook), false);
        how.close_enough = time_.a_hundredth();
        solve(way.trial, how);
        time_.spent += work_of(way.trial.outcome);
        if (way.trial.found() && time_.first_seconds == 0)
          time_.first_seconds = before + way.trial.outcome.first_seconds;
        ways.push_back(std::move(way));
        if (good(ways.back().trial)) return ways;
      }
      // Private timelines bend most: they tell soonest whether there is any plan at all.
      if (waves == 1 && !ways.front().trial.found()) quick_own();
      if (search_.own_refuted) return ways;
    }
    return ways;
  }

  // Waves are plans with own timelines as well: if there are none of these, there are none.
  void quick_own() {
    Trial trial = time_.attempt(with_own_timelines(lesson_), {}, BriefOptions{},
                                time_.part(kForAnyPlan), true);
    search_.own_refuted = trial.refuted();
    search_.refuted_seconds = search_.own_refuted ? time_.spent : 0;
    if (!trial.found()) return;
    time_.note_first();
    search_.own = std::move(trial);
  }

  // One split for each number of waves: the one that looked best.
  void deepen(std::vector<Way>& ways) {
    if (search_.own_refuted) return;
    std::vector<Way*> chosen;
    for (Way& way : ways) {
      if (way.trial.refuted()) continue;
      if (chosen.empty() || chosen.back()->waves != way.waves)
        chosen.push_back(&way);
      else if (way.trial.found() &&
               (!chosen.back()->trial.found() || better(way.trial, chosen.back()->trial)))
        chosen.back() = &way;
    }
    double share = time_.part(kForFewestWaves);
    for (Way* way : chosen) {
      if (time_.stopped()) return;
      // The number of waves stands when nobody is short of the buffer.
      if (good(way->trial)) search_.waves_seconds = time_.spent;
      if (time_.wide_open(way->trial)) work_on(way->trial, share);
      share /= 2;
      if (way->trial.found()) time_.note_first();
      if (!good(way->trial)) continue;
      if (search_.waves_seconds == 0) search_.waves_seconds = time_.spent;
      return;  // more waves than these are not wanted
    }
  }

  // What the trials say of each number of waves.
  void report(const std::vector<Way>& ways) {
    for (const Way& way : ways) {
      const bool fresh = search_.trials.empty() || search_.trials.back().waves != way.waves;
      if (fresh) {
        WaveTrial tried;
        tried.waves = way.waves;
        tried.proved = true;
        search_.trials.push_back(tried);
      }
      WaveTrial& tried = search_.trials.back();
      tried.fits = tried.fits || way.trial.found();
      tried.proved = tried.proved && way.trial.refuted();
      if (!way.trial.found()) continue;
      const std::int64_t bound = way.trial.outcome.bounds.front();
      auto& bounds = search_.first_level_bound;
      if (bounds.empty() || bounds.back().first != way.waves)
        bounds.emplace_back(way.waves, bound);
      else
        bounds.back().second = std::min(bounds.back().second, bound);
    }
  }

  // By how much fewer waves miss the bell: "one wave misses the bell by 9 min".
  void measure_misses() {
    for (WaveTrial& tried : search_.trials) {
      if (tried.fits || tried.waves >= search_.best->waves) continue;
      BriefOptions soft;
      soft.bell_is_hard = false;
      const Trial trial = time_.attempt(lesson_, splits(lesson_, tried.waves).front(), soft, 0.4,
                                        false);
      if (trial.found()) tried.misses_by = overrun_of(trial, lesson_);
    }
  }

  const kitchen::Lesson& lesson_;
  PlanTime& time_;
  WaveFindings search_;
};

}  // namespace

WaveFindings search_waves(const kitchen::Lesson& lesson, PlanTime& time) {
  return WaveSearch(lesson, time).run();
}

}  // namespace timeplan
