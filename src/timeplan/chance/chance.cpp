#include "timeplan/chance/chance.h"

#include <algorithm>
#include <map>
#include <stdexcept>

#include "timeplan/chance/draw.h"

namespace timeplan {
namespace {

/// Counts steps, whoever does them: in how many runs each was named, by its first task.
class StepCount {
 public:
  StepCount(const LessonModel& model, const Plan& plan)
      : runs_(plan.tasks.size(), 0), seen_(plan.tasks.size(), -1) {
    std::map<std::tuple<TaskKind, int, int>, int> first;
    const auto key = [&](int task) {
      const Task& t = plan.tasks[static_cast<std::size_t>(task)];
      return std::tuple(t.kind, t.dish, t.step);
    };
    for (const int task : model.task) {
      if (task == -1) continue;
      const auto [found, fresh] = first.emplace(key(task), task);
      found->second = std::min(found->second, task);
    }
    for (const int task : model.task) stands_for_.push_back(task == -1 ? -1 : first.at(key(task)));
  }

  /// Once a run, however many do the step.
  void name(std::size_t activity, int run) {
    const int task = stands_for_[activity];
    if (task == -1 || seen_[static_cast<std::size_t>(task)] == run) return;
    seen_[static_cast<std::size_t>(task)] = run;
    ++runs_[static_cast<std::size_t>(task)];
  }

  std::vector<DecidingStep> most(int of) const {
    std::vector<DecidingStep> found;
    for (std::size_t t = 0; t < runs_.size(); ++t)
      if (runs_[t] > 0)
        found.push_back({static_cast<int>(t), runs_[t], static_cast<double>(runs_[t]) / of});
    std::stable_sort(found.begin(), found.end(),
                     [](const DecidingStep& x, const DecidingStep& y) { return x.runs > y.runs; });
    if (found.size() > 5) found.resize(5);
    return found;
  }

 private:
  std::vector<int> stands_for_;  ///< [activity] the step's first task
  std::vector<int> runs_, seen_;
};

/// Finds the steps on the chain of waiting before the last finish that took longer than planned, by
/// a minute or more (7.4): every passive step is over its minutes by a second in half of all runs.
class CauseCount {
 public:
  CauseCount(const LessonModel& model, const Plan& plan) : model_(model), steps_(model, plan) {}

  void add(const Run& run, int number) {
    int a = last_finisher(run);
    // Causes happened before; the length of the chain is bounded all the same.
    for (std::size_t steps = 0; a != -1 && steps <= run.start.size(); ++steps) {
      const auto i = static_cast<std::size_t>(a);
      if (run.end[i] - run.start[i] >= model_.play.activities[i].planned + base::kGrid.count())
        steps_.name(i, number);
      a = run.cause[i];
    }
  }

  std::vector<DecidingStep> most(int of) const { return steps_.most(of); }

 private:
  int last_finisher(const Run& run) const {
    int last = -1;
    for (std::size_t i = 0; i < run.end.size(); ++i) {
      if (!model_.play.activities[i].finish || run.end[i] < 0) continue;
      if (last == -1 || run.end[i] > run.end[static_cast<std::size_t>(last)])
        last = static_cast<int>(i);
    }
    return last;
  }

  const LessonModel& model_;
  StepCount steps_;
};

/// Which steps made the faults.
struct FaultCount {
  FaultCount(const LessonModel& model, const Plan& plan)
      : too_late(model, plan), unsafe(model, plan) {}

  void add(const Run& run, int number) {
    for (std::size_t a = 0; a < run.too_late.size(); ++a) {
      if (run.too_late[a] != 0) too_late.name(a, number);
      if (run.unsafe[a] != 0) unsafe.name(a, number);
    }
  }

  StepCount too_late, unsafe;
};

struct Tally {
  int runs = 0, room = 0, quality = 0, safety = 0, given_up = 0;
  std::vector<int> cooks;
  std::vector<int> finishes;

  void add(const Run& run) {
    ++runs;
    cooks.resize(run.in_time.size(), 0);
    bool all = true;
    for (std::size_t c = 0; c < cooks.size(); ++c) {
      cooks[c] += run.in_time[c];
      all = all && run.in_time[c];
    }
    room += all;
    quality += run.quality_faults > 0;
    safety += run.safety_faults > 0;
    given_up += run.given_up > 0;
    finishes.push_back(
        run.finish.empty() ? 0 : *std::max_element(run.finish.begin(), run.finish.end()));
  }
};

/// Plays runs 0, 1, ... until done or told to stop; at least one.
template <class Each>
bool play_runs(RoomPlayer& player, Draw& draw, const ChanceOptions& options, int opens_late,
               Each each) {
  constexpr int kAskEvery = 20;
  for (int run = 0; run < options.runs; ++run) {
    if (run > 0 && run % kAskEvery == 0 && options.stop && options.stop()) return false;
    each(player.play(draw.of_run(static_cast<std::uint64_t>(run), opens_late)), run);
  }
  return true;
}

void fill(Chance& result, Tally& tally) {
  const double n = tally.runs;
  result.runs = tally.runs;
  result.room = tally.room / n;
  result.interval = wilson(tally.room, tally.runs);
  result.word = chance_word(result.room);
  result.about = about_in_ten(result.room);
  for (const int good : tally.cooks) {
    result.cooks.push_back({good / n, wilson(good, tally.runs)});
    result.expected_not_out += 1 - good / n;
  }
  result.quality_fault = tally.quality / n;
  result.safety_fault = tally.safety / n;
  result.given_up = tally.given_up / n;
  std::sort(tally.finishes.begin(), tally.finishes.end());
  result.p50 = Seconds{quantile(tally.finishes, 0.5)};
  result.p90 = Seconds{quantile(tally.finishes, 0.9)};
  for (std::size_t m = 0; m < result.marks.size(); ++m)
    result.marks[m] = Seconds{quantile(
        tally.finishes, (static_cast<double>(m) + 0.5) / static_cast<double>(result.marks.size()))};
}

}  // namespace

std::string word(ChanceWord w) {
  switch (w) {
    case ChanceWord::kComfortable:
      return "comfortable";
    case ChanceWord::kTight:
      return "tight";
    case ChanceWord::kUnlikely:
      return "unlikely";
  }
  throw std::logic_error("chance: no such word");
}

ChanceWord chance_word(double room) {
  return room >= 0.85  ? ChanceWord::kComfortable
         : room >= 0.5 ? ChanceWord::kTight
                       : ChanceWord::kUnlikely;
}

Chance chance(const kitchen::Lesson& lesson, const Network& net, const Plan& plan,
              const ChanceOptions& options) {
  if (options.runs < 1) throw std::invalid_argument("chance: at least one run, please");
  const LessonModel model = play_model_of(lesson, net, plan);
  RoomPlayer player(model.play);
  Draw draw(model, options.seed);
  const int opens_late = static_cast<int>(options.opens_late.value_or(lesson.opens_late).count());
  Chance result;
  result.seed = options.seed;
  Tally tally;
  CauseCount causes(model, plan);
  FaultCount faults(model, plan);
  result.complete = play_runs(player, draw, options, opens_late, [&](const Run& run, int number) {
    tally.add(run);
    causes.add(run, number);
    faults.add(run, number);
  });
  fill(result, tally);
  result.deciding = causes.most(tally.runs);
  result.too_late = faults.too_late.most(tally.runs);
  result.unsafe = faults.unsafe.most(tally.runs);
  for (const int minutes : {5, 10}) {
    if (!options.late_starts || !result.complete) break;
    Tally late;  // the same luck, so the difference is the late start's alone
    result.complete = play_runs(player, draw, options, opens_late + 60 * minutes,
                                [&](const Run& run, int) { late.add(run); });
    result.late_starts.push_back({base::minutes(minutes),
                                  static_cast<double>(late.room) / late.runs,
                                  wilson(late.room, late.runs), late.runs});
  }
  return result;
}

}  // namespace timeplan
