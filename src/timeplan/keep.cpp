#include "timeplan/keep.h"

#include <algorithm>
#include <map>
#include <set>
#include <string>
#include <vector>

#include "base/index.h"
#include "base/text.h"
#include "scheduler/solve.h"

namespace timeplan {
namespace {

using base::at;
using base::say;

/// Seconds of work for one way of holding the plan: most are known at once, one way or the other.
constexpr double kForOneTry = 0.06;
/// Seconds of work for any plan with the standing waves.
constexpr double kForAnyPlan = 0.2;
/// Seconds of work for moving fewer starts.
constexpr double kForFewer = 0.12;

/// What a task is, in words that mean the same in both lessons.
std::string name_of(const kitchen::Lesson& lesson, const Task& task) {
  std::string name = say(static_cast<int>(task.kind), "/", task.part, "/");
  if (task.cook >= 0) name += lesson.cooks[at(task.cook)].name;
  if (task.dish >= 0) {
    const kitchen::Dish& dish = lesson.dishes[at(task.dish)];
    name += say("/", dish.name, ":", dish.variant);
    if (task.step >= 0) name += "/" + dish.method[at(task.step)].id;
  }
  if (task.window >= 0) name += "/" + lesson.windows[at(task.window)].name;
  if (task.bay >= 0) name += "/" + lesson.room.bays[at(task.bay)].name;
  if (task.kit >= 0) name += "/" + lesson.room.kit[at(task.kit)].item;
  return name;
}

/// What is added to a moment of the standing lesson for the same clock time in this one: a lesson
/// that opens later has the same times printed.
Seconds by_the_clock(const kitchen::Lesson& lesson, const Standing& standing) {
  return base::minutes(standing.lesson->opens_minute - lesson.opens_minute);
}

/// The waves of the standing plan; who is new joins the first one.
std::vector<int> waves_kept(const kitchen::Lesson& lesson, const Standing& standing) {
  std::map<std::string, int> before;
  for (std::size_t c = 0; c < standing.lesson->cooks.size(); ++c)
    before[standing.lesson->cooks[c].name] = standing.plan->wave_of_cook[c];
  std::vector<int> waves;
  std::map<int, int> number;  // a wave may have lost all its cooks
  for (const kitchen::Cook& cook : lesson.cooks) {
    const auto found = before.find(cook.name);
    waves.push_back(found == before.end() ? 0 : found->second);
  }
  const std::set<int> used(waves.begin(), waves.end());
  for (const int wave : used) number.emplace(wave, static_cast<int>(number.size()));
  for (int& wave : waves) wave = number[wave];
  return waves;
}

class Keeper {
 public:
  Keeper(const kitchen::Lesson& lesson, const Standing& standing, PlanTime& time)
      : standing_(standing),
        time_(time),
        trial_(prepare(lesson,
                       lesson.timelines == kitchen::Timelines::kOwn ? std::vector<int>{}
                                                                    : waves_kept(lesson, standing),
                       BriefOptions{})) {
    find_starts(lesson);
  }

  std::optional<Kept> run() {
    if (trial_.brief.problem.activities.empty()) return std::nullopt;
    if (!as_it_is()) {
      but_for_one_wave();
      as_late_as_will_do();
    }
    if (best_.empty()) return std::nullopt;
    if (least_ > 0) move_fewer();
    trial_.outcome.best = best_;
    trial_.outcome.values = scheduler::evaluate(problem(), best_);
    trial_.outcome.bounds.assign(trial_.outcome.values.size(), 0);
    // A level that is nothing cannot be less.
    trial_.outcome.proved.assign(trial_.outcome.values.size(), false);
    for (std::size_t i = 0; i < trial_.outcome.values.size() && trial_.outcome.values[i] == 0; ++i)
      trial_.outcome.proved[i] = true;
    if (trial_.outcome.values.front() > first_level_before()) return std::nullopt;
    std::vector<char> stayed(start_.size(), 0);
    for (std::size_t a = 0; a < start_.size(); ++a)
      stayed[a] = start_[a] && !moved(a, best_) ? 1 : 0;
    scheduler::Problem holding = held(stayed);
    return Kept{std::move(trial_), std::move(holding)};
  }

  std::optional<Trial> nearly_as_it_is() {
    if (trial_.brief.problem.activities.empty()) return std::nullopt;
    if (!as_it_is()) but_for_one_wave();
    if (best_.empty()) return std::nullopt;
    trial_.outcome.best = best_;
    return std::move(trial_);
  }

 private:
  const Standing& standing_;
  PlanTime& time_;
  Trial trial_;
  std::vector<std::optional<scheduler::Time>> start_;  ///< of each activity in the standing plan
  std::vector<int> wave_;                              ///< of each activity; -1: of none alone
  std::vector<char> queued_;                           ///< each cook does it when their turn comes
  std::vector<char> printed_;  ///< a step of a method: its time stands on the wall
  scheduler::Schedule best_;
  int least_ = 0;  ///< printed starts that `best_` moves

  const scheduler::Problem& problem() const { return trial_.brief.problem; }

  void find_starts(const kitchen::Lesson& lesson) {
    const Seconds later = by_the_clock(lesson, standing_);
    std::map<std::string, Seconds> before;
    for (const Task& task : standing_.plan->tasks)
      before.emplace(name_of(*standing_.lesson, task), task.start + later);
    start_.resize(problem().activities.size());
    wave_.assign(problem().activities.size(), -1);
    queued_.assign(problem().activities.size(), 0);
    printed_.assign(problem().activities.size(), 0);
    std::vector<char> open(start_.size(), 0);  // its nodes began at different times, or are new
    for (std::size_t n = 0; n < trial_.net.nodes.size(); ++n) {
      const Task& task = trial_.net.nodes[n].task;
      const int activity = trial_.brief.activity_of_node[n];
      if (activity < 0) continue;
      const std::size_t a = at(activity);
      if (trial_.net.nodes[n].queued) queued_[a] = 1;
      if (task.kind == TaskKind::kStep && task.step >= 0) printed_[a] = 1;
      if (task.cook >= 0 && !trial_.wave_of_cook.empty())
        wave_[a] = trial_.wave_of_cook[at(task.cook)];
      const auto found = before.find(name_of(lesson, task));
      if (found == before.end()) continue;
      const auto minute = static_cast<scheduler::Time>(found->second.count() / 60);
      if (start_[a] && *start_[a] != minute) open[a] = 1;
      start_[a] = minute;
    }
    for (std::size_t a = 0; a < start_.size(); ++a) {
      const scheduler::Activity& activity = problem().activities[a];
      const bool fits = start_[a] && *start_[a] >= activity.earliest &&
                        *start_[a] + activity.duration_min <= activity.latest_end &&
                        activity.duration_min == activity.duration_max;
      if (open[a] || !fits) start_[a].reset();
    }
  }

  bool moved(std::size_t a, const scheduler::Schedule& schedule) const {
    return schedule[a].present && start_[a] && schedule[a].start != *start_[a];
  }
  int moves(const scheduler::Schedule& schedule) const {
    int count = 0;
    for (std::size_t a = 0; a < schedule.size(); ++a)
      count += printed_[a] && moved(a, schedule) ? 1 : 0;
    return count;
  }

  std::vector<char> all_held() const {
    std::vector<char> hold(start_.size());
    for (std::size_t a = 0; a < hold.size(); ++a) hold[a] = start_[a] ? 1 : 0;
    return hold;
  }
  std::vector<char> all_held_but_queues() const {
    std::vector<char> hold = all_held();
    for (std::size_t a = 0; a < hold.size(); ++a) hold[a] = hold[a] && !queued_[a] ? 1 : 0;
    return hold;
  }
  std::vector<char> all_held_but(int wave) const {
    std::vector<char> hold = all_held();
    for (std::size_t a = 0; a < hold.size(); ++a) hold[a] = hold[a] && wave_[a] != wave ? 1 : 0;
    return hold;
  }
  std::vector<char> held_before(scheduler::Time minute) const {
    std::vector<char> hold = all_held();
    for (std::size_t a = 0; a < hold.size(); ++a) hold[a] = hold[a] && *start_[a] < minute ? 1 : 0;
    return hold;
  }

  scheduler::Problem held(const std::vector<char>& hold) const {
    scheduler::Problem out = problem();
    for (std::size_t a = 0; a < hold.size(); ++a) {
      if (!hold[a]) continue;
      out.activities[a].earliest = *start_[a];
      out.activities[a].latest_end = *start_[a] + out.activities[a].duration_max;
    }
    return out;
  }

  /// Whether there is a plan that holds these; the best so far is remembered.
  bool attempt(const std::vector<char>& hold, double seconds = kForOneTry) {
    if (time_.stopped()) return false;
    const scheduler::Problem holding = held(hold);
    const scheduler::Outcome outcome = scheduler::solve(
        holding, engine_options(time_.limits(seconds, true), holding.activities.size()));
    time_.spent += work_of(outcome);
    if (outcome.best.empty()) return false;
    if (time_.first_seconds == 0) time_.first_seconds = time_.spent;
    take(outcome.best);
    return true;
  }

  bool as_it_is() { return attempt(all_held()) || attempt(all_held_but_queues()); }

  void but_for_one_wave() {
    for (int wave = 0; wave < trial_.waves && trial_.waves > 1; ++wave) attempt(all_held_but(wave));
  }

  void take(const scheduler::Schedule& schedule) {
    const int count = moves(schedule);
    if (!best_.empty() && count >= least_) return;
    best_ = schedule;
    least_ = count;
  }

  void as_late_as_will_do() {
    scheduler::Time from = 0, to = problem().horizon;  // held before `from` will do, before `to`
                                                       // will not
    if (!attempt(held_before(from), kForAnyPlan)) return;
    while (to - from > 2) {
      const scheduler::Time middle = (from + to) / 2;
      (attempt(held_before(middle)) ? from : to) = middle;
    }
  }

  // The first goal stays first: nobody is left short of the buffer for the sake of a printed line.
  void move_fewer() {
    scheduler::Problem wanted = problem();
    scheduler::GoalLevel fewest;
    fewest.name = "starts moved";
    for (std::size_t a = 0; a < start_.size(); ++a) {
      if (!start_[a] || !printed_[a]) continue;
      scheduler::Term term;
      term.kind = scheduler::Term::Kind::kMoved;
      term.activity = static_cast<int>(a);
      term.at = *start_[a];
      fewest.terms.push_back(term);
    }
    wanted.goals.insert(wanted.goals.begin() + 1, std::move(fewest));
    scheduler::Options options = engine_options(time_.limits(kForFewer, false),
                                                wanted.activities.size());
    options.start_from = best_;
    const scheduler::Outcome outcome = scheduler::solve(wanted, options);
    time_.spent += work_of(outcome);
    if (!outcome.best.empty()) {
      best_ = outcome.best;
      least_ = moves(best_);
    }
  }

  std::int64_t first_level_before() const {
    for (const Level& level : standing_.plan->levels) {
      if (!level.name.starts_with("G1") && !level.name.starts_with("Gw")) return level.value;
    }
    return 0;
  }
};

}  // namespace

void keep_wash_ups(const kitchen::Lesson& lesson, const Standing& standing, const Trial& trial,
                   std::vector<Checkpoint>& checkpoints) {
  if (trial.waves != standing.plan->waves) return;
  for (Checkpoint before : standing.plan->checkpoints) {
    if (before.step >= 0) continue;
    before.at += by_the_clock(lesson, standing);
    const bool there = std::any_of(
        checkpoints.begin(), checkpoints.end(),
        [&](const Checkpoint& c) { return c.step < 0 && c.wave == before.wave; });
    if (there) continue;
    Seconds first = lesson.bell;
    for (std::size_t c = 0; c < trial.wave_of_cook.size(); ++c) {
      if (trial.wave_of_cook[c] != before.wave) continue;
      const int activity = trial.brief.activity_of_node[at(trial.net.wash_up[c].back())];
      first = std::min(first, base::minutes(trial.outcome.best[at(activity)].start));
    }
    if (first >= before.at && first < before.at + base::minutes(5)) checkpoints.push_back(before);
  }
  std::stable_sort(checkpoints.begin(), checkpoints.end(),
                   [](const Checkpoint& a, const Checkpoint& b) {
                     return std::make_pair(a.wave, a.at) < std::make_pair(b.wave, b.at);
                   });
}

bool has_own_timelines(const Standing& standing) {
  return standing.lesson->timelines == kitchen::Timelines::kOwn;
}

std::optional<Kept> keep(const kitchen::Lesson& lesson, const Standing& standing, PlanTime& time) {
  return Keeper(lesson, standing, time).run();
}

std::optional<Trial> still_stands(const kitchen::Lesson& lesson, const Standing& standing,
                                  PlanTime& time) {
  return Keeper(lesson, standing, time).nearly_as_it_is();
}

}  // namespace timeplan
