#include "timeplan/wave_search.h"

#include <algorithm>
#include <limits>
#include <string>

#include <fmt/format.h>

namespace timeplan {
namespace {

/// Part of the time for the plan itself; the rest is for checkpoints and last safe starts.
constexpr double kForPlanning = 0.70;
/// Part of the time for the first look at a split of the class.
constexpr double kForOneLook = 0.03;
/// Seconds of work: who gives more time still wants the first plan soon.
constexpr double kLongestLook = 0.15;
/// Part of the time for a first plan with own timelines.
constexpr double kForAnyPlan = 0.25;
/// Part of the time until some plan with waves stands.
constexpr double kForAnyWaves = 0.6;
/// Part of the time for the fewest waves while they leave somebody short of the buffer; half of it
/// for the next number, and so on.
constexpr double kForFewestWaves = 0.25;
/// Part of the time to find out by how much one number of waves misses the bell.
constexpr double kForOneMiss = 0.1;

class WaveSearch {
 public:
  WaveSearch(const kitchen::Lesson& lesson, PlanTime& time) : lesson_(lesson), time_(time) {}

  WaveFindings run() {
    std::vector<Candidate> candidates = look();
    if (!time_.stopped()) deepen(candidates);
    report(candidates);
    Candidate* best = nullptr;
    for (Candidate& candidate : candidates) {
      if (!candidate.trial.found()) continue;
      if (best == nullptr || better(candidate.trial, best->trial)) best = &candidate;
    }
    search_.waves_seconds = known_since(candidates, best);
    if (best != nullptr) search_.best = std::move(best->trial);
    return std::move(search_);
  }

 private:
  double a_look() const { return std::min(time_.part(kForOneLook), kLongestLook); }

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

  // Since when it is proved that fewer waves than the best plan's do worse than that, and that
  // plan's number stands. Without a best one: that none will do.
  static std::optional<double> known_since(const std::vector<Candidate>& candidates,
                                           const Candidate* best) {
    double since = 0;
    for (const Candidate& candidate : candidates) {
      if (best != nullptr && candidate.waves > best->waves) continue;
      if (best != nullptr && candidate.waves == best->waves) {
        if (&candidate == best) since = std::max(since, candidate.found_at);
        continue;
      }
      // A bound of one split says nothing of others (WaveFindings::first_level_bound).
      const std::int64_t worse = best != nullptr && candidate.waves == 1
                                     ? best->trial.outcome.values.front() + 1
                                     : std::numeric_limits<std::int64_t>::max();
      const auto known = std::find_if(candidate.proved.begin(), candidate.proved.end(),
                                      [&](const auto& p) { return p.bound >= worse; });
      if (known == candidate.proved.end()) return std::nullopt;
      since = std::max(since, known->at);
    }
    return since;
  }

  // Up to the first number of waves that leaves nobody short of the buffer.
  std::vector<Candidate> look() {
    std::vector<Candidate> candidates;
    const int most = std::min(lesson_.most_waves, static_cast<int>(lesson_.cooks.size()));
    for (int waves = 1; waves <= most; ++waves) {
      time_.say(waves == 1 ? std::string("trying one wave")
                           : fmt::format("trying {} waves", waves));
      for (const std::vector<int>& split : splits(lesson_, waves)) {
        if (time_.stopped()) return candidates;
        candidates.push_back({waves, prepare(lesson_, split, BriefOptions{}), nullptr});
        time_.work_on(candidates.back(), a_look());
        if (good(candidates.back().trial)) return candidates;
      }
      // Private timelines bend most: they tell soonest whether there is any plan at all.
      if (waves == 1 && !candidates.front().trial.found()) quick_own();
      if (search_.own_refuted) return candidates;
    }
    return candidates;
  }

  // Waves are plans with own timelines as well: if there are none of these, there are none.
  void quick_own() {
    Candidate own{1, prepare(with_own_timelines(lesson_), {}, BriefOptions{}), nullptr};
    const double end = time_.spent + time_.part(kForAnyPlan);
    while (!own.trial.found() && !own.trial.refuted() && !time_.stopped() && time_.spent < end)
      time_.work_on(own, a_look());
    search_.own_refuted = own.trial.refuted();
    search_.refuted_seconds = search_.own_refuted ? time_.spent : 0;
    search_.own = std::move(own);
  }

  // With all the time there is for planning.
  void finish(Candidate& candidate) {
    const double seconds = time_.part(kForPlanning) - time_.spent;
    if (seconds > 0 && time_.wide_open(candidate.trial)) time_.work_on(candidate, seconds);
  }

  // Whether the first level can still become what is wanted of it.
  static bool hopeful(const Trial& trial) {
    return !trial.refuted() && (!trial.found() || trial.outcome.bounds.front() == 0);
  }

  // For each number of waves all splits that may still do, in turn and each time longer, until one
  // does or the share of the time is over.
  Candidate* settle(const std::vector<Candidate*>& candidates, double share) {
    const double end = time_.spent + share;
    for (double slice = 2 * a_look();; slice *= 2) {
      bool open = false;
      for (Candidate* candidate : candidates) {
        if (good(candidate->trial)) return candidate;
        if (!hopeful(candidate->trial)) continue;
        open = true;
        if (time_.stopped() || time_.spent >= end) return nullptr;
        time_.work_on(*candidate, slice);
      }
      if (!open) return nullptr;
    }
  }

  // No plan with waves stands after the look: the first split of each number of waves in turn, each
  // time twice as long, so that some plan stands before anybody asks whether fewer will do.
  void find_any(const std::vector<std::vector<Candidate*>>& by_waves) {
    const double end = time_.part(kForAnyWaves);
    for (double slice = 2 * a_look(); time_.spent < end; slice *= 2) {
      bool open = false;
      for (const std::vector<Candidate*>& same : by_waves) {
        Candidate* const first = first_open(same);
        if (first == nullptr) continue;
        open = true;
        time_.work_on(*first, slice);
        if (first->trial.found() || time_.stopped() || time_.spent >= end) return;
      }
      if (!open) return;
    }
  }

  static Candidate* first_open(const std::vector<Candidate*>& same) {
    const auto open = std::find_if(same.begin(), same.end(),
                                   [](const Candidate* c) { return !c->trial.refuted(); });
    return open == same.end() ? nullptr : *open;
  }

  void deepen(std::vector<Candidate>& candidates) {
    if (search_.own_refuted) return;
    std::vector<std::vector<Candidate*>> by_waves;
    bool any = false;
    for (Candidate& candidate : candidates) {
      if (by_waves.empty() || by_waves.back().front()->waves != candidate.waves)
        by_waves.emplace_back();
      by_waves.back().push_back(&candidate);
      any = any || candidate.trial.found();
    }
    if (!any) find_any(by_waves);
    // The plan itself wants half of what is left.
    double share = std::min(time_.part(kForFewestWaves),
                            (time_.part(kForPlanning) - time_.spent) / 2);
    for (const std::vector<Candidate*>& same : by_waves) {
      Candidate* candidate = settle(same, share);
      if (time_.stopped()) return;
      share /= 2;
      if (candidate == nullptr) continue;
      // Nobody is short of the buffer; more waves are not wanted.
      finish(*candidate);
      return;
    }
    // Nobody is spared being short: the best there is, with the time that is left.
    Candidate* best = nullptr;
    for (Candidate& candidate : candidates) {
      if (candidate.trial.found() && (best == nullptr || better(candidate.trial, best->trial)))
        best = &candidate;
    }
    if (best != nullptr) finish(*best);
  }

  // What the trials say of each number of waves.
  void report(const std::vector<Candidate>& candidates) {
    for (const Candidate& candidate : candidates) {
      const bool fresh = search_.trials.empty() || search_.trials.back().waves != candidate.waves;
      if (fresh) {
        WaveTrial tried;
        tried.waves = candidate.waves;
        tried.proved = true;
        search_.trials.push_back(tried);
      }
      WaveTrial& tried = search_.trials.back();
      tried.fits = tried.fits || candidate.trial.found();
      tried.proved = tried.proved && candidate.trial.refuted();
      if (!candidate.trial.found()) continue;
      const std::int64_t bound = candidate.trial.outcome.bounds.front();
      auto& bounds = search_.first_level_bound;
      if (bounds.empty() || bounds.back().first != candidate.waves)
        bounds.emplace_back(candidate.waves, bound);
      else
        bounds.back().second = std::min(bounds.back().second, bound);
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

void measure_misses(const kitchen::Lesson& lesson, PlanTime& time, WaveFindings& findings) {
  for (WaveTrial& tried : findings.trials) {
    if (tried.fits || tried.waves >= findings.best->waves) continue;
    BriefOptions soft;
    soft.bell_is_hard = false;
    const Trial trial = time.attempt(lesson, splits(lesson, tried.waves).front(), soft,
                                     time.part(kForOneMiss));
    if (trial.found()) tried.misses_by = overrun_of(trial, lesson);
  }
}

}  // namespace timeplan
