#include "timeplan/last_safe.h"

#include <algorithm>
#include <set>

namespace timeplan {
namespace {

constexpr std::size_t kMost = 8;  // more are not read aloud
constexpr int kDecides = 20;      // minutes: what may start this much later does not decide

// A step worth asking about, by its node.
struct Asked {
  int node = 0;
  int activity = 0;
  int planned = 0;
  std::string says;
  std::string instead;
};

// Whether raw food is in what the step cooks: the step itself is raw work, or goes on with raw
// work.
bool holds_raw(const kitchen::Dish& dish, int index) {
  std::vector<char> seen(dish.method.size(), 0);
  std::vector<int> open{index};
  while (!open.empty()) {
    const auto at = static_cast<std::size_t>(open.back());
    open.pop_back();
    if (seen[at] != 0) continue;
    seen[at] = 1;
    const kitchen::Step& step = dish.method[at];
    if (step.hygiene == kitchen::Hygiene::kRaw) return true;
    for (const kitchen::Follows& f : step.follows) open.push_back(f.step);
  }
  return false;
}

std::string fallback(const kitchen::Lesson& lesson, const Task& task) {
  const kitchen::Dish& dish = lesson.dishes[static_cast<std::size_t>(task.dish)];
  const kitchen::Step& step = dish.method[static_cast<std::size_t>(task.step)];
  const auto helper = std::find_if(lesson.adults.begin(), lesson.adults.end(),
                                   [](const kitchen::Adult& a) { return !a.leads; });
  const bool oil = std::any_of(dish.method.begin(), dish.method.end(), [&](const kitchen::Step& s) {
    return s.hazard == kitchen::Hazard::kHotOil && s.heat && step.heat &&
           s.heat->vessel == step.heat->vessel;
  });
  if (oil) return "do not start the oil; chill what is made and cook it next lesson";
  // Raw meat and fish are cooked through and probed, or not begun: never finished cold, never sent
  // home raw (common practice, no source; the employer's rules come first).
  if (holds_raw(dish, task.step))
    return "do not start it: covered into the fridge, 5 °C or below, and cooked and probed next "
           "lesson";
  if (!dish.splits.empty())
    return "put it away " + dish.splits.front().name + " and finish next lesson";
  if (step.heat && step.heat->with == kitchen::HeatKind::kGrill)
    return "leave the top pale, or brown it under a grill that is already on";
  if (step.heat && step.heat->with != kitchen::HeatKind::kRing) {
    return helper != lesson.adults.end()
               ? helper->name + " takes the tray and bakes it after the bell"
               : "chill it and bake it next lesson, or send it home to bake";
  }
  return "share a pan that is already on, or chill what is made and cook it next lesson";
}

std::vector<Asked> questions(const kitchen::Lesson& lesson, const Trial& trial) {
  std::vector<Asked> asked;
  const auto start = [&](int activity) {
    return trial.outcome.best[static_cast<std::size_t>(activity)].start;
  };
  std::set<int> seen;
  for (int n = 0; n < static_cast<int>(trial.net.nodes.size()); ++n) {
    const Node& node = trial.net.nodes[static_cast<std::size_t>(n)];
    const Task& t = node.task;
    const int activity = trial.brief.activity_of_node[static_cast<std::size_t>(n)];
    if (activity < 0 || t.kind != TaskKind::kStep || t.step < 0 || t.part > 0) continue;
    const kitchen::Step& step = lesson.dishes[static_cast<std::size_t>(t.dish)]
                                    .method[static_cast<std::size_t>(t.step)];
    const bool first_of_vessel = step.heat &&
                                 std::any_of(node.heldby.begin(), node.heldby.end(), [&](int h) {
                                   return trial.net.held[static_cast<std::size_t>(h)].from == n;
                                 });
    if (!first_of_vessel || !seen.insert(activity).second) continue;
    asked.push_back({n, activity, start(activity), step.brief, fallback(lesson, t)});
  }
  for (std::size_t c = 0; c < trial.net.wash_up.size(); ++c) {
    const int n = trial.net.wash_up[c].back();
    const int activity = trial.brief.activity_of_node[static_cast<std::size_t>(n)];
    asked.push_back({n, activity, start(activity), "last washing up",
                     "wash knives, boards and hot pans; stack the rest for after the bell"});
  }
  // The latest of a wave decides for the wave: keep, for each thing said, the last to start in each
  // wave.
  std::vector<Asked> kept;
  for (const Asked& a : asked) {
    const int cook = trial.net.nodes[static_cast<std::size_t>(a.node)].task.cook;
    const int wave = lesson.timelines == kitchen::Timelines::kOwn
                         ? 0
                         : trial.wave_of_cook[static_cast<std::size_t>(cook)];
    const auto same = std::find_if(kept.begin(), kept.end(), [&](const Asked& k) {
      const int other = trial.net.nodes[static_cast<std::size_t>(k.node)].task.cook;
      const int other_wave = lesson.timelines == kitchen::Timelines::kOwn
                                 ? 0
                                 : trial.wave_of_cook[static_cast<std::size_t>(other)];
      return k.says == a.says && other_wave == wave;
    });
    if (same == kept.end()) {
      kept.push_back(a);
    } else if (a.planned > same->planned) {
      *same = a;
    }
  }
  std::stable_sort(kept.begin(), kept.end(),
                   [](const Asked& a, const Asked& b) { return a.planned > b.planned; });
  if (kept.size() > kMost) kept.resize(kMost);
  return kept;
}

// A pin says when somebody wants a step to start, not how late it may.
scheduler::Problem without_pins(const Brief& brief) {
  scheduler::Problem problem = brief.problem;
  for (const PinnedActivity& pin : brief.pinned)
    problem.activities[static_cast<std::size_t>(pin.activity)].latest_end = pin.latest_end;
  for (const int lag : brief.pin_lags) problem.lags[static_cast<std::size_t>(lag)].min = 0;
  return problem;
}

}  // namespace

std::vector<LastSafeStart> last_safe_starts(const kitchen::Lesson& lesson, const Trial& trial,
                                            const Plan& plan, const TrialLimits& each,
                                            double& spent) {
  std::vector<LastSafeStart> found;
  for (const Asked& a : questions(lesson, trial)) {
    if (each.stop && each.stop()) break;
    scheduler::Problem problem = without_pins(trial.brief);
    // As late as it can be: the least distance to the end of everything.
    scheduler::Activity end;
    end.name = "end";
    end.duration_min = end.duration_max = 0;
    end.earliest = end.latest_end = problem.horizon;
    end.team = -1;
    const int end_index = static_cast<int>(problem.activities.size());
    problem.activities.push_back(end);
    scheduler::Term term;
    term.high = {{end_index, scheduler::Side::kStart}};
    term.low = {{a.activity, scheduler::Side::kStart}};
    problem.goals = {{"as late as it can be", {term}, 0}};
    scheduler::Activity& asked = problem.activities[static_cast<std::size_t>(a.activity)];
    asked.earliest = a.planned;
    scheduler::Options options = engine_options(each, problem.activities.size());
    options.fixed.resize(problem.activities.size());
    for (std::size_t i = 0; i < trial.outcome.best.size(); ++i) {
      const scheduler::Placement& p = trial.outcome.best[i];
      const bool before = !p.present || p.start + p.duration <= a.planned;
      if (before && static_cast<int>(i) != a.activity) options.fixed[i] = p;
    }
    const scheduler::Outcome outcome = scheduler::solve(problem, options);
    spent += work_of(outcome);
    if (outcome.status != scheduler::Status::kOptimal) continue;
    const int latest = outcome.best[static_cast<std::size_t>(a.activity)].start;
    if (latest - a.planned > kDecides) continue;
    const Task& what = trial.net.nodes[static_cast<std::size_t>(a.node)].task;
    const auto task = std::find_if(plan.tasks.begin(), plan.tasks.end(), [&](const Task& t) {
      return t.kind == what.kind && t.cook == what.cook && t.dish == what.dish &&
             t.step == what.step && t.part == what.part;
    });
    if (task == plan.tasks.end()) continue;
    LastSafeStart safe;
    safe.task = static_cast<int>(task - plan.tasks.begin());
    safe.wave = plan.wave_of_cook[static_cast<std::size_t>(what.cook)];
    safe.at = base::minutes(latest);
    safe.says = a.says;
    safe.instead = a.instead;
    found.push_back(safe);
  }
  std::stable_sort(found.begin(), found.end(),
                   [](const LastSafeStart& x, const LastSafeStart& y) { return x.at < y.at; });
  return found;
}

}  // namespace timeplan
