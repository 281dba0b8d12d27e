// plan_lesson(): the fewest waves that fit, checkpoints on the clock's grid, proof by the verifier,
// chance, last safe starts; or why it does not fit and what would help.
#include <algorithm>
#include <stdexcept>
#include <string>

#include <fmt/format.h>

#include "timeplan/answer.h"
#include "timeplan/causes.h"
#include "timeplan/checkpoints.h"
#include "timeplan/last_safe.h"
#include "timeplan/remedies.h"
#include "timeplan/tidy.h"
#include "timeplan/trial.h"

namespace timeplan {
namespace {

/// Part of the time for the plan itself; the rest is for checkpoints and last safe starts.
constexpr double kForPlanning = 0.72;
constexpr double kForOwnTimelines = 0.9;
/// Part of the time for the rest of the plan once checkpoints are held to the clock.
constexpr double kForPolish = 0.13;
/// Part of the time for the first look at a split of the class.
constexpr double kForOneLook = 0.03;
/// Part of the time for a first plan with own timelines.
constexpr double kForAnyPlan = 0.25;
/// Part of the time for the fewest waves while they leave somebody short of the buffer; half of it
/// for the next number, and so on.
constexpr double kForFewestWaves = 0.25;

// What has been found so far for the lesson as asked.
struct Search {
  std::optional<Trial> best;
  std::optional<Trial> own;  // a first plan with own timelines, while waves are still looked for
  std::vector<WaveTrial> trials;
  std::vector<std::pair<int, std::int64_t>> first_level_bound;  // (waves, proved bound of the first
                                                                // level)
  double spent = 0;
  double first_seconds = 0;
};

class Planner {
 public:
  Planner(const kitchen::Lesson& lesson, const PlanOptions& options)
      : lesson_(lesson), options_(options) {}

  Answer run() {
    answer_.seed = options_.seed;
    if (lesson_.timelines == kitchen::Timelines::kWaves) {
      try_waves();
      if (!search_.best && !stopped()) try_own_timelines();
    } else {
      try_own();
    }
    if (search_.best) {
      finish_fitting();
    } else {
      finish_not_fitting();
    }
    answer_.seconds = search_.spent;
    answer_.stopped_early = stopped();
    return std::move(answer_);
  }

 private:
  bool stopped() const { return options_.stop && options_.stop(); }
  double left() const { return std::max(0.05, options_.seconds - search_.spent); }
  void say(const std::string& text) const {
    if (options_.progress) options_.progress(text);
  }

  TrialLimits limits(double seconds, bool first_only) const {
    TrialLimits l;
    l.seconds = std::min(seconds, left());
    l.seed = options_.seed;
    l.first_only = first_only;
    l.stop = options_.stop;
    return l;
  }

  // Long, if the first level turns out to be as good as it can be; otherwise another split of the
  // class may be better.
  void work_on(Trial& trial, double unless_good) {
    TrialLimits how = limits(options_.seconds * kForPlanning - search_.spent, false);
    how.hopeless_after = std::min(how.seconds, unless_good);
    how.close_enough = a_hundredth();
    if (how.seconds <= 0) return;
    solve_on(trial, how);
    search_.spent += work_of(trial.outcome);
  }

  // A hundredth of the lesson for every cook (Z3).
  std::int64_t a_hundredth() const {
    return lesson_.bell.count() / 60 * static_cast<std::int64_t>(lesson_.cooks.size()) / 100;
  }

  // Some level may be further than that from the best possible.
  bool wide_open(const Trial& trial) const {
    if (!trial.found()) return true;
    for (std::size_t i = 0; i < trial.outcome.values.size(); ++i) {
      if (trial.outcome.values[i] - trial.outcome.bounds[i] > a_hundredth()) return true;
    }
    return false;
  }

  Trial timed_attempt(const kitchen::Lesson& lesson, const std::vector<int>& split,
                      const BriefOptions& how, double seconds, bool first_only) {
    Trial trial = attempt(lesson, split, how, limits(seconds, first_only));
    search_.spent += work_of(trial.outcome);
    return trial;
  }

  // Better on the first level, then fewer waves, then the rest.
  static bool better(const Trial& a, const Trial& b) {
    const auto& x = a.outcome.values;
    const auto& y = b.outcome.values;
    if (x.front() != y.front()) return x.front() < y.front();
    if (a.waves != b.waves) return a.waves < b.waves;
    return x < y;
  }

  void note_first() {
    if (search_.first_seconds == 0) search_.first_seconds = std::max(search_.spent, 1e-6);
  }

  // A split of the class into so many waves.
  struct Way {
    int waves = 1;
    Trial trial;
  };

  static bool good(const Trial& trial) {
    return trial.found() && trial.outcome.values.front() == 0;
  }

  // First a quick look at every number of waves, so that some plan stands soon; then, from the
  // fewest waves up, as long as it takes to know whether they will do.
  void try_waves() {
    std::vector<Way> ways = look();
    if (!stopped() &&
        std::none_of(ways.begin(), ways.end(), [](const Way& way) { return way.trial.found(); }))
      quick_own();
    if (!stopped()) deepen(ways);
    report(ways);
    if (answer_.waves_seconds == 0) answer_.waves_seconds = search_.spent;
    for (Way& way : ways) {
      if (!way.trial.found()) continue;
      if (!search_.best || better(way.trial, *search_.best)) search_.best = std::move(way.trial);
    }
    if (search_.best) measure_misses();
  }

  // Up to the first number of waves that leaves nobody short of the buffer.
  std::vector<Way> look() {
    std::vector<Way> ways;
    const int most = std::min(lesson_.most_waves, static_cast<int>(lesson_.cooks.size()));
    for (int waves = 1; waves <= most; ++waves) {
      say(waves == 1 ? std::string("trying one wave") : fmt::format("trying {} waves", waves));
      for (const std::vector<int>& split : splits(lesson_, waves)) {
        if (stopped()) return ways;
        Way way{waves, prepare(lesson_, split, BriefOptions{})};
        const double before = search_.spent;
        TrialLimits how = limits(options_.seconds * kForOneLook, false);
        how.close_enough = a_hundredth();
        solve(way.trial, how);
        search_.spent += work_of(way.trial.outcome);
        if (way.trial.found() && search_.first_seconds == 0)
          search_.first_seconds = before + way.trial.outcome.first_seconds;
        ways.push_back(std::move(way));
        if (good(ways.back().trial)) return ways;
      }
      // Private timelines bend most: they tell soonest whether there is any plan at all.
      if (waves == 1 && !ways.front().trial.found()) quick_own();
      if (own_refuted_) return ways;
    }
    return ways;
  }

  // Waves are plans with own timelines as well: if there are none of these, there are none.
  void quick_own() {
    Trial trial = timed_attempt(with_own_timelines(lesson_), {}, BriefOptions{},
                                options_.seconds * kForAnyPlan, true);
    own_refuted_ = trial.refuted();
    answer_.refuted_seconds = own_refuted_ ? search_.spent : 0;
    if (!trial.found()) return;
    note_first();
    search_.own = std::move(trial);
  }

  // One split for each number of waves: the one that looked best.
  void deepen(std::vector<Way>& ways) {
    if (own_refuted_) return;
    std::vector<Way*> chosen;
    for (Way& way : ways) {
      if (way.trial.refuted()) continue;
      if (chosen.empty() || chosen.back()->waves != way.waves)
        chosen.push_back(&way);
      else if (way.trial.found() &&
               (!chosen.back()->trial.found() || better(way.trial, chosen.back()->trial)))
        chosen.back() = &way;
    }
    double share = options_.seconds * kForFewestWaves;
    for (Way* way : chosen) {
      if (stopped()) return;
      // The number of waves stands when nobody is short of the buffer.
      if (good(way->trial)) answer_.waves_seconds = search_.spent;
      if (wide_open(way->trial)) work_on(way->trial, share);
      share /= 2;
      if (way->trial.found()) note_first();
      if (!good(way->trial)) continue;
      if (answer_.waves_seconds == 0) answer_.waves_seconds = search_.spent;
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
      const Trial trial = timed_attempt(lesson_, splits(lesson_, tried.waves).front(), soft, 0.4,
                                        false);
      if (trial.found()) tried.misses_by = overrun_of(trial, lesson_);
    }
  }

  static Seconds overrun_of(const Trial& trial, const kitchen::Lesson& lesson) {
    const Seconds end = base::minutes(last_end(trial, lesson)) + lesson.check_out;
    return std::max(Seconds{0}, end - base::grid_down(lesson.bell));
  }

  void try_own_timelines() {
    say("trying a timeline for every cook");
    planned_ = with_own_timelines(lesson_);
    Trial trial = search_.own ? std::move(*search_.own) : prepare(planned_, {}, BriefOptions{});
    if (!own_refuted_) {
      solve_on(trial, limits(options_.seconds * 0.5, false));
      search_.spent += work_of(trial.outcome);
      own_refuted_ = trial.refuted();
      answer_.refuted_seconds = own_refuted_ ? search_.spent : 0;
    }
    if (!trial.found()) {
      planned_ = lesson_;
      return;
    }
    note_first();
    answer_.own_timelines_needed = true;
    search_.best = std::move(trial);
  }

  void try_own() {
    say("planning every cook's own timeline");
    // No checkpoints to set, and few last safe starts to find.
    Trial trial = timed_attempt(lesson_, {}, BriefOptions{}, options_.seconds * kForOwnTimelines,
                                false);
    own_refuted_ = trial.refuted();
    answer_.refuted_seconds = own_refuted_ ? search_.spent : 0;
    if (!trial.found()) return;
    search_.first_seconds = trial.outcome.first_seconds;
    search_.best = std::move(trial);
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
      say("setting checkpoints on the clock");
      scheduler::Problem gridded;
      checkpoints = set_checkpoints(lesson, trial, gridded, limits(0.1, false), search_.spent);
      held_bounds = polish(trial, gridded, bounds);
      tidy(trial, gridded, limits(0.1, false), search_.spent);
    }
    Plan plan = plan_from(lesson, trial.net, trial.brief, trial.outcome.best, trial.wave_of_cook);
    plan.checkpoints = checkpoints;
    fill_levels(plan, trial, bounds, proved, ungridded);
    add_grid(plan, ungridded, held_bounds);
    prove(lesson, plan);
    answer_.verdict = Verdict::kFits;
    answer_.trials = search_.trials;
    answer_.first_seconds = search_.first_seconds;
    const int end = last_end(trial, lesson);
    answer_.grid_cost = base::minutes(std::max(0, end - before));
    answer_.spare = base::grid_down(lesson.bell) - lesson.check_out - base::minutes(end);
    answer_.plan = std::move(plan);
    answer_.calm = calm(lesson, *answer_.plan);
    if (options_.with_last_safe_starts && !stopped()) {
      say("finding the last safe starts");
      answer_.last_safe_starts = last_safe_starts(lesson, trial, *answer_.plan, limits(0.1, false),
                                                  search_.spent);
    }
    if (options_.with_chance && !stopped()) {
      say("playing the lesson many times");
      ChanceOptions how;
      how.runs = options_.runs;
      how.seed = options_.seed;
      how.opens_late = lesson.opens_late;
      how.stop = options_.stop;
      answer_.chance = chance(lesson, trial.net, *answer_.plan, how);
    }
  }

  // Holding an event to the clock leaves the rest as it happened to fall; what time there is makes
  // it good again. Gives the bounds for plans
  // with these checkpoints.
  std::vector<std::int64_t> polish(Trial& trial, const scheduler::Problem& gridded,
                                   const std::vector<std::int64_t>& bounds) {
    Trial held = trial;
    held.brief.problem = gridded;
    held.outcome.bounds = bounds;
    held.outcome.values = scheduler::evaluate(gridded, trial.outcome.best);
    if (!wide_open(held)) return bounds;
    TrialLimits how = limits(options_.seconds * kForPolish, false);
    how.close_enough = a_hundredth();
    solve_on(held, how);
    search_.spent += work_of(held.outcome);
    if (!held.found()) return bounds;
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
    const std::vector<std::string> names = level_names(lesson, true);
    const bool own = lesson.timelines == kitchen::Timelines::kOwn;
    plan.levels.push_back({"G1 overrun", 0, 0, true, {}});
    bool closed = true;
    for (std::size_t i = 0; i < values.size(); ++i) {
      Level level{names[i], values[i], std::min(values[i], bounds[i]), false, {}};
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
    answer_.verdict = own_refuted_ ? Verdict::kDoesNotFit : Verdict::kNotFound;
    if (stopped()) return;
    say("measuring by how much it misses the bell");
    BriefOptions soft;
    soft.bell_is_hard = false;
    std::optional<Trial> least_late;
    const int most = waves ? std::min(lesson_.most_waves, static_cast<int>(lesson_.cooks.size()))
                           : 1;
    for (int w = 1; w <= most; ++w) {
      const auto ways = waves ? splits(lesson_, w) : std::vector<std::vector<int>>{{}};
      if (ways.empty()) continue;
      soft.beyond_bell = base::minutes(60);
      Trial trial = timed_attempt(lesson_, ways.front(), soft, options_.seconds * 0.2, false);
      // Far too long a lesson is measured as well.
      for (; trial.refuted() && soft.beyond_bell < base::minutes(480);) {
        soft.beyond_bell *= 2;
        trial = timed_attempt(lesson_, ways.front(), soft, options_.seconds * 0.2, false);
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
    say("looking for the reasons");
    const Causes found = causes(lesson_, split, limits(options_.seconds * 0.3, true),
                                search_.spent);
    answer_.causes = found.causes;
    answer_.causes_minimal = found.minimal;
    if (!options_.with_remedies || stopped()) return;
    say("trying what would help");
    answer_.remedies = remedies(lesson_,
                                least_late ? std::optional<Seconds>(answer_.overrun) : std::nullopt,
                                limits(1e9, true), search_.spent);
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
  Search search_;
  Answer answer_;
  bool own_refuted_ = false;
};

}  // namespace

Answer plan_lesson(const kitchen::Lesson& lesson, const PlanOptions& options) {
  return Planner(lesson, options).run();
}

}  // namespace timeplan
