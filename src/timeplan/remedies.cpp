#include "timeplan/remedies.h"

#include <algorithm>

#include <fmt/format.h>

#include "timeplan/changes.h"

namespace timeplan {
namespace {

constexpr std::size_t kMostInPairs = 6;

// A plan found after a change: how many waves, how much to spare.
struct Fit {
  int waves = 0;  // 0 = a timeline for every cook
  Seconds spare{0};
};

std::optional<Fit> fits(const kitchen::Lesson& lesson, const TrialLimits& each, double& spent) {
  const auto fit_of = [&](const Trial& trial, int waves) {
    return Fit{waves, base::grid_down(lesson.bell) - lesson.check_out -
                          base::minutes(last_end(trial, lesson))};
  };
  if (lesson.timelines == kitchen::Timelines::kOwn) {
    const Trial trial = attempt(lesson, {}, BriefOptions{}, each);
    spent += work_of(trial.outcome);
    return trial.found() ? std::optional<Fit>(fit_of(trial, 0)) : std::nullopt;
  }
  for (int waves = 1; waves <= std::min(lesson.most_waves, static_cast<int>(lesson.cooks.size()));
       ++waves) {
    for (const std::vector<int>& split : splits(lesson, waves)) {
      const Trial trial = attempt(lesson, split, BriefOptions{}, each);
      spent += work_of(trial.outcome);
      if (trial.found()) return fit_of(trial, waves);
      if (each.stop && each.stop()) return std::nullopt;
    }
  }
  return std::nullopt;
}

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

std::optional<Seconds> overrun_after(const kitchen::Lesson& lesson, const TrialLimits& each,
                                     double& spent) {
  BriefOptions soft;
  soft.bell_is_hard = false;
  TrialLimits limits = each;
  limits.first_only = false;
  std::optional<Seconds> least;
  const bool own = lesson.timelines == kitchen::Timelines::kOwn;
  const int most = own ? 1
                       : std::min({lesson.most_waves, 2, static_cast<int>(lesson.cooks.size())});
  for (int waves = 1; waves <= most; ++waves) {
    const auto ways = own ? std::vector<std::vector<int>>{{}} : splits(lesson, waves);
    if (ways.empty()) continue;
    const Trial trial = attempt(lesson, ways.front(), soft, limits);
    spent += work_of(trial.outcome);
    if (!trial.found()) continue;
    const Seconds over = base::minutes(last_end(trial, lesson)) + lesson.check_out -
                         base::grid_down(lesson.bell);
    if (!least || over < *least) least = std::max(Seconds{0}, over);
  }
  return least;
}

}  // namespace

std::vector<Remedy> remedies(const kitchen::Lesson& lesson, std::optional<Seconds> overrun,
                             const TrialLimits& whole, double& spent) {
  std::vector<Remedy> works, helps;
  std::vector<std::pair<Change, Seconds>> partial;  // not enough alone, and what it wins
  double budget = whole.seconds;
  TrialLimits each = whole;
  const auto stopped = [&] { return budget <= 0 || (whole.stop && whole.stop()); };
  const auto try_one = [&](const kitchen::Lesson& changed) {
    each.seconds = std::clamp(whole.seconds / 40, 0.05, 0.5);
    each.first_only = true;
    const double before = spent;
    const auto fit = fits(changed, each, spent);
    budget -= spent - before;
    return fit;
  };
  const auto sentence = [](const Fit& fit) {
    const auto spare = fit.spare.count() / 60;
    return fmt::format("fits in {}, about {} min to spare", number_of_waves(fit.waves), spare);
  };
  for (const Change& change : changes(lesson)) {
    if (stopped()) break;
    const std::optional<kitchen::Lesson> changed = change.apply(lesson);
    if (!changed) continue;
    if (const auto fit = try_one(*changed)) {
      works.push_back(
          {change.code, change.says, sentence(*fit), true, overrun.value_or(Seconds{0})});
      continue;
    }
    const double before = spent;
    const auto over = overrun_after(*changed, each, spent);
    budget -= spent - before;
    if (overrun ? !over || *over >= *overrun : !over) {
      // When nothing can be done as it is, what is useless alone may still be half of what helps.
      if (!overrun) partial.emplace_back(change, Seconds{0});
      continue;
    }
    const Seconds gain = overrun ? *overrun - *over : Seconds{0};
    const std::string buys = overrun
                                 ? fmt::format("wins {} min, not enough alone", gain.count() / 60)
                                 : fmt::format("can be done, {} min over the bell",
                                               over->count() / 60);
    helps.push_back({change.code, change.says, buys, false, gain});
    partial.emplace_back(change, overrun ? gain : base::minutes(1));
  }
  // Two together, when nothing is enough alone: the greatest gains first.
  if (works.empty()) {
    std::stable_sort(partial.begin(), partial.end(),
                     [](const auto& a, const auto& b) { return a.second > b.second; });
    if (partial.size() > kMostInPairs) partial.resize(kMostInPairs);
    for (std::size_t i = 0; i < partial.size(); ++i) {
      for (std::size_t j = i + 1; j < partial.size() && !stopped(); ++j) {
        const Change& a = partial[i].first;
        const Change& b = partial[j].first;
        const auto first = a.apply(lesson);
        const auto both = first ? b.apply(*first) : std::nullopt;
        if (!both) continue;
        if (const auto fit = try_one(*both)) {
          works.push_back({a.code + " + " + b.code, a.says + " And: " + b.says, sentence(*fit),
                           true, overrun.value_or(Seconds{0})});
        }
      }
    }
  }
  std::stable_sort(helps.begin(), helps.end(),
                   [](const Remedy& a, const Remedy& b) { return a.gain > b.gain; });
  works.insert(works.end(), helps.begin(), helps.end());
  return works;
}

}  // namespace timeplan
