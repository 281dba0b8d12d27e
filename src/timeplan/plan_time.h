// The time of one call of plan_lesson(), shared by everything that works for it: how much there is,
// how much is spent, and when a plan is good enough to stop.
#pragma once

#include <algorithm>
#include <cstdint>
#include <limits>
#include <memory>
#include <string>
#include <vector>

#include "scheduler/session.h"
#include "timeplan/answer.h"
#include "timeplan/trial.h"

namespace timeplan {

/// One way to run the lesson (a split into waves, or own timelines), worked on in instalments.
struct Candidate {
  int waves = 1;
  Trial trial;
  std::unique_ptr<scheduler::Session> session;  ///< begun with the first instalment

  /// When (seconds of work) the first level was proved to come to so much at least; the greatest
  /// number there is when it was proved that there is no plan. Rising.
  struct Proved {
    double at = 0;
    std::int64_t bound = 0;
  };
  std::vector<Proved> proved{};
  double found_at = 0;  ///< seconds of work; 0 = not found
};

class PlanTime {
 public:
  PlanTime(const kitchen::Lesson& lesson, const PlanOptions& options)
      : lesson_(lesson), options_(options) {}

  bool stopped() const { return options_.stop && options_.stop(); }
  /// Seconds of work; never nothing, so that whatever is asked for is at least begun.
  double left() const { return std::max(0.05, options_.seconds - spent); }
  /// That part of the whole time, in seconds of work.
  double part(double of_all) const { return options_.seconds * of_all; }
  void say(const std::string& text) {
    says_ = text;
    if (options_.progress) options_.progress({text, "", 0, 0});
  }

  TrialLimits limits(double seconds, bool first_only) const {
    TrialLimits l;
    l.seconds = std::min(seconds, left());
    l.seed = options_.seed;
    l.first_only = first_only;
    l.stop = options_.stop;
    return l;
  }

  Trial attempt(const kitchen::Lesson& lesson, const std::vector<int>& split,
                const BriefOptions& how, double seconds) {
    Trial trial = timeplan::attempt(lesson, split, how, limits(seconds, false));
    spent += work_of(trial.outcome);
    return trial;
  }

  /// The candidate goes on where it stopped.
  void work_on(Candidate& candidate, double seconds) {
    TrialLimits how = limits(seconds, false);
    how.close_enough = a_hundredth();
    Trial& trial = candidate.trial;
    const scheduler::Options options = engine_options(how, trial.brief.problem.activities.size());
    if (!candidate.session)
      candidate.session = std::make_unique<scheduler::Session>(trial.brief.problem, options);
    const double before = spent, done = work_of(trial.outcome);
    const bool first = !trial.found();
    trial.outcome = candidate.session->work(options.work_limit, options.seconds);
    spent += work_of(trial.outcome) - done;
    if (first && trial.found() && first_seconds == 0)
      first_seconds = std::max(before - done + trial.outcome.first_seconds, 1e-6);
    note(candidate);
    if (trial.found() && options_.progress) tell_gap(trial);
  }

  /// A hundredth of the lesson for every cook (Z3).
  std::int64_t a_hundredth() const {
    return lesson_.bell.count() / 60 * static_cast<std::int64_t>(lesson_.cooks.size()) / 100;
  }

  /// The first level may be better, or some other is further than that from the best possible.
  bool wide_open(const Trial& trial) const {
    if (!trial.found() || trial.outcome.values.front() > trial.outcome.bounds.front()) return true;
    for (std::size_t i = 0; i < trial.outcome.values.size(); ++i) {
      if (trial.outcome.values[i] - trial.outcome.bounds[i] > a_hundredth()) return true;
    }
    return false;
  }

  double spent = 0;          ///< seconds of work
  double first_seconds = 0;  ///< until the first plan; 0 = none yet

 private:
  const kitchen::Lesson& lesson_;
  const PlanOptions& options_;
  std::string says_;

  void note(Candidate& candidate) const {
    const Trial& trial = candidate.trial;
    if (trial.found() && candidate.found_at == 0) candidate.found_at = spent;
    std::int64_t bound = 0;
    if (trial.refuted())
      bound = std::numeric_limits<std::int64_t>::max();
    else if (trial.found())
      bound = trial.outcome.bounds.front();
    if (bound > (candidate.proved.empty() ? 0 : candidate.proved.back().bound))
      candidate.proved.push_back({spent, bound});
  }

  void tell_gap(const Trial& trial) const {
    const auto& values = trial.outcome.values;
    const auto& bounds = trial.outcome.bounds;
    std::size_t open = 0;
    while (open + 1 < values.size() && values[open] == bounds[open]) ++open;
    options_.progress({says_, level_names(lesson_, true)[open], values[open], bounds[open]});
  }
};

}  // namespace timeplan
