#include "timeplan/remedies.h"

#include <algorithm>

#include <fmt/format.h>

#include "timeplan/changes.h"
#include "timeplan/keep.h"

namespace timeplan {
namespace {

constexpr std::size_t kMostInPairs = 6;

// A plan found after a change: how many waves, how much to spare.
struct Fit {
  int waves = 0;  // 0 = a timeline for every cook
  Seconds spare{0};
};

std::string number_of_waves(int waves) {
  switch (waves) {
    case 0:
      return "a timeline for each cook";
    case 1:
      return "one wave";
    case 2:
      return "two waves";
    case 3:
      return "three waves";
    default:
      return fmt::format("{} waves", waves);
  }
}

std::string sentence(const Fit& fit) {
  return fmt::format("fits in {}, about {} min to spare", number_of_waves(fit.waves),
                     fit.spare.count() / 60);
}

class RemedySearch {
 public:
  RemedySearch(const kitchen::Lesson& lesson, std::optional<Seconds> overrun,
               const std::optional<Standing>& stood, PlanTime& time)
      : lesson_(lesson),
        overrun_(overrun),
        stood_(stood),
        time_(time),
        each_(time.limits(std::clamp(time.left() / 40, 0.05, 0.5), true)),
        until_(time.spent + time.left()) {}

  std::vector<Remedy> run() {
    for (const Change& change : changes(lesson_)) {
      if (stopped()) break;
      try_alone(change);
    }
    // Two together, when nothing is enough alone.
    if (works_.empty()) try_pairs();
    std::stable_sort(helps_.begin(), helps_.end(),
                     [](const Remedy& a, const Remedy& b) { return a.gain > b.gain; });
    works_.insert(works_.end(), helps_.begin(), helps_.end());
    return std::move(works_);
  }

 private:
  const kitchen::Lesson& lesson_;
  const std::optional<Seconds> overrun_;
  const std::optional<Standing>& stood_;
  PlanTime& time_;
  const TrialLimits each_;
  const double until_;  ///< seconds of work, as PlanTime counts them
  std::vector<Remedy> works_, helps_;
  std::vector<std::pair<Change, Seconds>> partial_;  ///< not enough alone, and what it wins

  bool stopped() const { return time_.spent >= until_ || time_.stopped(); }

  Trial attempt_at(const kitchen::Lesson& lesson, const std::vector<int>& split,
                   const BriefOptions& how, const TrialLimits& limits) {
    Trial trial = attempt(lesson, split, how, limits);
    time_.spent += work_of(trial.outcome);
    return trial;
  }

  static Fit fit_of(const kitchen::Lesson& lesson, const Trial& trial) {
    const bool own = lesson.timelines == kitchen::Timelines::kOwn;
    return {own ? 0 : trial.waves, base::grid_down(lesson.bell) - lesson.check_out -
                                       base::minutes(last_end(trial, lesson))};
  }

  std::optional<Fit> fits(const kitchen::Lesson& lesson) {
    if (const auto fit = as_it_stood(lesson)) return fit;
    if (lesson.timelines == kitchen::Timelines::kOwn) {
      const Trial trial = attempt_at(lesson, {}, BriefOptions{}, each_);
      return trial.found() ? std::optional<Fit>(fit_of(lesson, trial)) : std::nullopt;
    }
    const int most = std::min(lesson.most_waves, static_cast<int>(lesson.cooks.size()));
    for (int waves = 1; waves <= most; ++waves) {
      for (const std::vector<int>& split : splits(lesson, waves)) {
        const Trial trial = attempt_at(lesson, split, BriefOptions{}, each_);
        if (trial.found()) return fit_of(lesson, trial);
        if (time_.stopped()) return std::nullopt;
      }
    }
    return std::nullopt;
  }

  std::optional<Fit> as_it_stood(const kitchen::Lesson& lesson) {
    if (!stood_) return std::nullopt;
    if (has_own_timelines(*stood_)) {
      const kitchen::Lesson own = with_own_timelines(lesson);
      const auto trial = still_stands(own, *stood_, time_);
      return trial ? std::optional<Fit>(fit_of(own, *trial)) : std::nullopt;
    }
    if (lesson.timelines == kitchen::Timelines::kOwn) return std::nullopt;
    const auto trial = still_stands(lesson, *stood_, time_);
    return trial ? std::optional<Fit>(fit_of(lesson, *trial)) : std::nullopt;
  }

  std::optional<Seconds> overrun_after(const kitchen::Lesson& lesson) {
    BriefOptions soft;
    soft.bell_is_hard = false;
    TrialLimits limits = each_;
    limits.first_only = false;
    std::optional<Seconds> least;
    const bool own = lesson.timelines == kitchen::Timelines::kOwn;
    const int most = own ? 1
                         : std::min({lesson.most_waves, 2, static_cast<int>(lesson.cooks.size())});
    for (int waves = 1; waves <= most; ++waves) {
      const auto ways = own ? std::vector<std::vector<int>>{{}} : splits(lesson, waves);
      if (ways.empty()) continue;
      const Trial trial = attempt_at(lesson, ways.front(), soft, limits);
      if (!trial.found()) continue;
      const Seconds over = base::minutes(last_end(trial, lesson)) + lesson.check_out -
                           base::grid_down(lesson.bell);
      if (!least || over < *least) least = std::max(Seconds{0}, over);
    }
    return least;
  }

  void works(const std::string& code, const std::string& says, const Fit& fit) {
    works_.push_back({code, says, sentence(fit), true, overrun_.value_or(Seconds{0})});
  }

  void try_alone(const Change& change) {
    const std::optional<kitchen::Lesson> changed = change.apply(lesson_);
    if (!changed) return;
    if (const auto fit = fits(*changed)) return works(change.code, change.says, *fit);
    const auto over = overrun_after(*changed);
    if (overrun_ ? !over || *over >= *overrun_ : !over) {
      // When nothing can be done as it is, what is useless alone may still be half of what helps.
      if (!overrun_) partial_.emplace_back(change, Seconds{0});
      return;
    }
    const Seconds gain = overrun_ ? *overrun_ - *over : Seconds{0};
    const std::string buys = overrun_
                                 ? fmt::format("wins {} min, not enough alone", gain.count() / 60)
                                 : fmt::format("can be done, {} min over the bell",
                                               over->count() / 60);
    helps_.push_back({change.code, change.says, buys, false, gain});
    partial_.emplace_back(change, overrun_ ? gain : base::minutes(1));
  }

  // The greatest gains first.
  void try_pairs() {
    std::stable_sort(partial_.begin(), partial_.end(),
                     [](const auto& a, const auto& b) { return a.second > b.second; });
    if (partial_.size() > kMostInPairs) partial_.resize(kMostInPairs);
    for (std::size_t i = 0; i < partial_.size(); ++i) {
      for (std::size_t j = i + 1; j < partial_.size() && !stopped(); ++j) {
        const Change& a = partial_[i].first;
        const Change& b = partial_[j].first;
        const auto first = a.apply(lesson_);
        const auto both = first ? b.apply(*first) : std::nullopt;
        if (!both) continue;
        if (const auto fit = fits(*both))
          works(a.code + " + " + b.code, a.says + " And: " + b.says, *fit);
      }
    }
  }
};

}  // namespace

std::vector<Remedy> remedies(const kitchen::Lesson& lesson, std::optional<Seconds> overrun,
                             const std::optional<Standing>& stood, PlanTime& time) {
  return RemedySearch(lesson, overrun, stood, time).run();
}

}  // namespace timeplan
