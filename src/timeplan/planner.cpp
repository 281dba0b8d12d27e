// plan_lesson(): the fewest waves that fit, checkpoints on the clock's grid, proof by the verifier,
// chance, last safe starts; or why it does not fit and what would help.
#include <algorithm>
#include <stdexcept>
#include <string>

#include <fmt/format.h>

#include "timeplan/answer.h"
#include "timeplan/causes.h"
#include "timeplan/checkpoints.h"
#include "timeplan/keep.h"
#include "timeplan/last_safe.h"
#include "timeplan/plan_time.h"
#include "timeplan/remedies.h"
#include "timeplan/tidy.h"
#include "timeplan/trial.h"
#include "timeplan/wave_search.h"

namespace timeplan {
namespace {

/// Part of the time for a plan with own timelines: no checkpoints to set, few last safe starts.
constexpr double kForOwnTimelines = 0.9;
/// Part of the time for the rest of the plan once checkpoints are held to the clock.
constexpr double kForPolish = 0.13;
/// Part of the time for holding events to the clock, and seconds of work for one of them.
constexpr double kForCheckpoints = 0.15, kLeastForOne = 0.03, kMostForOne = 0.1;
class Planner {
 public:
  Planner(const kitchen::Lesson& lesson, const PlanOptions& options)
      : lesson_(lesson), options_(options), time_(lesson, options) {}

  Answer run() {
    answer_.seed = options_.seed;
    if (options_.standing) try_standing();
    if (!answer_.kept_standing) plan_afresh();
    if (search_.best) {
      finish_fitting();
    } else {
      finish_not_fitting();
    }
    answer_.seconds = time_.spent;
    answer_.stopped_early = time_.stopped();
    return std::move(answer_);
  }

 private:
  void try_standing() {
    time_.say("keeping the plan that stands");
    const bool own = has_own_timelines(*options_.standing);
    if (lesson_.timelines == kitchen::Timelines::kOwn && !own) return;
    const bool needed = own && lesson_.timelines == kitchen::Timelines::kWaves;
    if (needed) planned_ = with_own_timelines(lesson_);
    auto kept = keep(needed ? planned_ : lesson_, *options_.standing, time_);
    if (!kept) return;
    answer_.kept_standing = true;
    answer_.own_timelines_needed = needed;
    search_.best = std::move(kept->trial);
    holding_ = std::move(kept->holding);
    WaveTrial tried;
    tried.waves = search_.best->waves;
    tried.fits = true;
    if (!has_own_timelines(*options_.standing)) search_.trials.push_back(tried);
  }

  void plan_afresh() {
    if (lesson_.timelines == kitchen::Timelines::kOwn) return try_own();
    search_ = search_waves(lesson_, time_);
    answer_.waves_seconds = search_.waves_seconds;
    answer_.refuted_seconds = search_.refuted_seconds;
    if (!search_.best && !time_.stopped()) try_own_timelines();
  }

  void try_own_timelines() {
    time_.say("trying a timeline for every cook");
    planned_ = with_own_timelines(lesson_);
    Candidate own = search_.own ? std::move(*search_.own)
                                : Candidate{1, prepare(planned_, {}, BriefOptions{}), nullptr};
    if (!search_.own_refuted) {
      work_on_own(own);
      answer_.refuted_seconds = search_.own_refuted ? time_.spent : 0;
    }
    if (!own.trial.found()) {
      planned_ = lesson_;
      return;
    }
    answer_.own_timelines_needed = true;
    search_.best = std::move(own.trial);
  }

  // No checkpoints to set, and few last safe starts to find.
  void work_on_own(Candidate& own) {
    time_.work_on(own, std::max(time_.part(kForOwnTimelines) - time_.spent, 0.05));
    search_.own_refuted = own.trial.refuted();
  }

  void try_own() {
    time_.say("planning every cook's own timeline");
    Candidate own{1, prepare(lesson_, {}, BriefOptions{}), nullptr};
    work_on_own(own);
    answer_.refuted_seconds = search_.own_refuted ? time_.spent : 0;
    if (own.trial.found()) search_.best = std::move(own.trial);
  }

  const kitchen::Lesson& effective() const {
    return answer_.own_timelines_needed ? planned_ : lesson_;
  }

  void finish_fitting() {
    Trial& trial = *search_.best;
    const kitchen::Lesson& lesson = effective();
    const int before = last_end(trial, lesson);
    const std::vector<std::int64_t> bounds = trial.outcome.bounds;
    const std::vector<bool> proved = trial.outcome.proved;
    const std::vector<std::int64_t> ungridded = trial.outcome.values;
    std::vector<std::int64_t> held_bounds;
    std::vector<Checkpoint> checkpoints;
    if (lesson.timelines == kitchen::Timelines::kWaves) {
      time_.say("setting checkpoints on the clock");
      scheduler::Problem gridded;
      if (answer_.kept_standing) {
        checkpoints = checkpoints_kept(trial);
        held_bounds.assign(bounds.size(), 0);
      } else {
        checkpoints = set_checkpoints(lesson, trial, gridded, time_.limits(each_hold(trial), false),
                                      time_.spent);
        held_bounds = polish(trial, gridded, bounds, ungridded);
        tidy(trial, gridded, time_.limits(0.1, false), time_.spent);
      }
    }
    Plan plan = plan_from(lesson, trial.net, trial.brief, trial.outcome.best, trial.wave_of_cook);
    plan.checkpoints = checkpoints;
    fill_levels(plan, trial, bounds, proved, ungridded);
    add_grid(plan, ungridded,
             still_holding(held_bounds, trial.outcome.values,
                           scheduler::evaluate(trial.brief.problem, trial.outcome.best)));
    prove(lesson, plan);
    if (!answer_.kept_standing && !time_.stopped()) measure_misses(lesson, time_, search_);
    answer_.verdict = Verdict::kFits;
    answer_.trials = search_.trials;
    answer_.first_seconds = time_.first_seconds;
    const int end = last_end(trial, lesson);
    answer_.grid_cost = base::minutes(std::max(0, end - before));
    answer_.spare = base::grid_down(lesson.bell) - lesson.check_out - base::minutes(end);
    answer_.plan = std::move(plan);
    answer_.calm = calm(lesson, *answer_.plan);
    if (options_.with_last_safe_starts && !time_.stopped()) {
      time_.say("finding the last safe starts");
      answer_.last_safe_starts = last_safe_starts(lesson, trial, *answer_.plan,
                                                  time_.limits(0.1, false), time_.spent);
    }
    if (options_.with_chance && !time_.stopped()) {
      time_.say("playing the lesson many times");
      ChanceOptions how;
      how.runs = options_.runs;
      how.seed = options_.seed;
      how.opens_late = lesson.opens_late;
      how.stop = options_.stop;
      answer_.chance = chance(lesson, trial.net, *answer_.plan, how);
    }
  }

  // What stayed where it was is held; only what had to move is moved on to the clock.
  std::vector<Checkpoint> checkpoints_kept(Trial& trial) {
    Trial held = trial;
    held.brief.problem = holding_;
    scheduler::Problem gridded;
    auto checkpoints = set_checkpoints(lesson_, held, gridded, time_.limits(0.03, true),
                                       time_.spent);
    tidy(held, gridded, time_.limits(0.03, false), time_.spent);
    trial.outcome.best = held.outcome.best;
    trial.outcome.values = scheduler::evaluate(trial.brief.problem, trial.outcome.best);
    keep_wash_ups(lesson_, *options_.standing, trial, checkpoints);
    return checkpoints;
  }

  // A plan of several waves has more events to hold, each with less time.
  double each_hold(const Trial& trial) const {
    const auto count = static_cast<double>(anchors(effective(), trial).size());
    return std::clamp(time_.part(kForCheckpoints) / std::max(1.0, count), kLeastForOne,
                      kMostForOne);
  }

  // Holding an event to the clock leaves the rest as it happened to fall; what time there is makes
  // it good again. Gives the bounds for plans with these checkpoints.
  std::vector<std::int64_t> polish(Trial& trial, const scheduler::Problem& gridded,
                                   const std::vector<std::int64_t>& bounds,
                                   const std::vector<std::int64_t>& ungridded) {
    Trial held = trial;
    held.brief.problem = gridded;
    held.outcome.values = scheduler::evaluate(gridded, trial.outcome.best);
    held.outcome.bounds = still_holding(bounds, ungridded, held.outcome.values);
    if (!time_.wide_open(held)) return held.outcome.bounds;
    TrialLimits how = time_.limits(options_.seconds * kForPolish, false);
    how.close_enough = time_.a_hundredth();
    solve_on(held, how);
    time_.spent += work_of(held.outcome);
    if (!held.found()) return still_holding(bounds, ungridded, trial.outcome.values);
    trial.outcome.best = held.outcome.best;
    trial.outcome.values = held.outcome.values;
    return held.outcome.bounds;
  }

  // The levels of the plan in the lesson's order, with the number of waves in its place.
  void fill_levels(Plan& plan, const Trial& trial, const std::vector<std::int64_t>& bounds,
                   const std::vector<bool>& proved,
                   const std::vector<std::int64_t>& ungridded) const {
    const kitchen::Lesson& lesson = effective();
    const std::vector<std::int64_t> values = scheduler::evaluate(trial.brief.problem,
                                                                 trial.outcome.best);
    const std::vector<std::int64_t> holding = still_holding(bounds, ungridded, values);
    const std::vector<std::string> names = level_names(lesson, true);
    const bool own = lesson.timelines == kitchen::Timelines::kOwn;
    plan.levels.push_back({"G1 overrun", 0, 0, true, {}});
    bool closed = true;
    for (std::size_t i = 0; i < values.size(); ++i) {
      Level level{names[i], values[i], holding[i], false, {}};
      if (i == 0) {
        for (const auto& [waves, bound] : search_.first_level_bound)
          level.bound = std::min(level.bound, bound);
      }
      // A plan for more than one wave is proved for its split; only a bound that is met by all
      // counts (see planner.md).
      const bool for_all = own || plan.waves == 1 || level.value == level.bound;
      closed = closed && proved[i] && for_all && values[i] == ungridded[i] &&
               level.value == level.bound;
      level.proved = closed;
      plan.levels.push_back(level);
      if (i != 0) continue;
      Level waves{"Gw waves", own ? 0 : plan.waves, own ? 0 : least_waves(values[0]), false, {}};
      closed = closed && waves.value == waves.bound;
      waves.proved = closed;
      plan.levels.push_back(waves);
    }
  }

  static void add_grid(Plan& plan, const std::vector<std::int64_t>& free_values,
                       const std::vector<std::int64_t>& held_bounds) {
    std::size_t i = 0;
    for (Level& level : plan.levels) {
      if (level.name.starts_with("G1") || level.name.starts_with("Gw")) continue;
      if (i < held_bounds.size())
        level.grid = OnTheGrid{free_values[i], std::min(level.value, held_bounds[i])};
      ++i;
    }
  }

  // Fewer waves than this are proved not to do as well on the first level.
  std::int64_t least_waves(std::int64_t first_value) const {
    std::int64_t least = 1;
    for (const WaveTrial& tried : search_.trials) {
      bool worse = tried.proved;
      for (const auto& [waves, bound] : search_.first_level_bound) {
        if (waves == tried.waves && bound > first_value && tried.waves == 1) worse = true;
      }
      if (!worse || tried.waves >= search_.best->waves) break;
      least = tried.waves + 1;
    }
    return least;
  }

  static void prove(const kitchen::Lesson& lesson, const Plan& plan) {
    const std::vector<Violation> violations = verify(lesson, plan);
    if (violations.empty()) return;
    std::string text = "the verifier refuses the plan:";
    for (const Violation& v : violations) text += fmt::format(" [{}] {}", v.rule, v.message);
    throw std::logic_error(text);
  }

  void finish_not_fitting() {
    answer_.trials = search_.trials;
    const bool waves = lesson_.timelines == kitchen::Timelines::kWaves;
    answer_.verdict = search_.own_refuted ? Verdict::kDoesNotFit : Verdict::kNotFound;
    if (time_.stopped()) return;
    time_.say("measuring by how much it misses the bell");
    BriefOptions soft;
    soft.bell_is_hard = false;
    std::optional<Trial> least_late;
    const int most = waves ? std::min(lesson_.most_waves, static_cast<int>(lesson_.cooks.size()))
                           : 1;
    for (int w = 1; w <= most; ++w) {
      const auto ways = waves ? splits(lesson_, w) : std::vector<std::vector<int>>{{}};
      if (ways.empty()) continue;
      soft.beyond_bell = base::minutes(60);
      Trial trial = time_.attempt(lesson_, ways.front(), soft, options_.seconds * 0.2);
      // Far too long a lesson is measured as well.
      for (; trial.refuted() && soft.beyond_bell < base::minutes(480);) {
        soft.beyond_bell *= 2;
        trial = time_.attempt(lesson_, ways.front(), soft, options_.seconds * 0.2);
      }
      if (!trial.found()) continue;
      const Seconds over = overrun_of(trial, lesson_);
      for (WaveTrial& tried : answer_.trials) {
        if (tried.waves == w) tried.misses_by = over;
      }
      if (!least_late || over < overrun_of(*least_late, lesson_)) least_late = std::move(trial);
    }
    if (least_late) {
      answer_.overrun = overrun_of(*least_late, lesson_);
      Plan plan = plan_from(lesson_, least_late->net, least_late->brief, least_late->outcome.best,
                            least_late->wave_of_cook);
      fill_late_levels(plan, *least_late);
      only_late(plan);
      answer_.plan = std::move(plan);
    }
    const std::vector<int> split = least_late ? least_late->wave_of_cook
                                   : waves    ? splits(lesson_, 1).front()
                                              : std::vector<int>{};
    time_.say("looking for the reasons");
    const Causes found = causes(lesson_, split, time_.limits(options_.seconds * 0.3, true),
                                time_.spent);
    answer_.causes = found.causes;
    answer_.causes_minimal = found.minimal;
    if (!options_.with_remedies || time_.stopped()) return;
    time_.say("trying what would help");
    answer_.remedies = remedies(lesson_,
                                least_late ? std::optional<Seconds>(answer_.overrun) : std::nullopt,
                                options_.standing, time_);
  }

  void fill_late_levels(Plan& plan, const Trial& trial) const {
    const std::vector<std::int64_t> values = scheduler::evaluate(trial.brief.problem,
                                                                 trial.outcome.best);
    const std::vector<std::string> names = level_names(lesson_, false);
    const bool own = lesson_.timelines == kitchen::Timelines::kOwn;
    for (std::size_t i = 0; i < values.size(); ++i) {
      plan.levels.push_back(
          {names[i], values[i], std::min(values[i], trial.outcome.bounds[i]), false, {}});
      if (i == 1) plan.levels.push_back({"Gw waves", own ? 0 : plan.waves, own ? 0 : 1, false, {}});
    }
  }

  // A plan that runs over the bell may break nothing else: with a bell so much later it must stand.
  void only_late(const Plan& plan) const {
    kitchen::Lesson later = lesson_;
    const Seconds more = base::minutes(600);
    later.bell += more;
    for (kitchen::Cook& c : later.cooks) c.leaves += more;
    for (kitchen::Adult& a : later.adults) {
      if (a.to >= lesson_.bell) a.to += more;
    }
    for (kitchen::Sitting& s : later.sittings) s.latest += more;
    std::string text;
    for (const Violation& v : verify(later, plan)) {
      // Goal values are counted against the bell as it is.
      if (!v.rule.starts_with("G")) text += fmt::format(" [{}] {}", v.rule, v.message);
    }
    if (!text.empty()) throw std::logic_error("the verifier refuses the late plan:" + text);
  }

  const kitchen::Lesson& lesson_;
  const PlanOptions& options_;
  kitchen::Lesson planned_;
  scheduler::Problem holding_;  ///< of a standing plan that was kept
  PlanTime time_;
  WaveFindings search_;
  Answer answer_;
};

}  // namespace

Answer plan_lesson(const kitchen::Lesson& lesson, const PlanOptions& options) {
  return Planner(lesson, options).run();
}

}  // namespace timeplan
