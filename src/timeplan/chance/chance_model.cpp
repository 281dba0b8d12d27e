#include "timeplan/chance/chance_model.h"

#include <algorithm>
#include <stdexcept>
#include <string>

#include "timeplan/chance/luck.h"
#include "timeplan/chance/model_maker.h"

namespace timeplan {
namespace {

int seconds(Seconds t) { return static_cast<int>(t.count()); }

auto identity(const Task& t) {
  return std::tuple(t.kind, t.cook, t.dish, t.step, t.part, t.window, t.bay, t.kit);
}

bool is_break(const kitchen::Lesson& lesson, const Task& task) {
  return task.kind == TaskKind::kWindow &&
         lesson.windows[static_cast<std::size_t>(task.window)].kind == kitchen::WindowKind::kBreak;
}

bool is_cleaning(TaskKind kind) {
  return kind == TaskKind::kHandWash || kind == TaskKind::kCleanDown ||
         kind == TaskKind::kKitWash || kind == TaskKind::kFullClean || kind == TaskKind::kWashUp;
}

}  // namespace

LessonModel ModelMaker::make() && {
  match_tasks();
  made_.play.mind_windows = true;
  add_cooks();
  add_breaks();
  add_activities();
  add_serves();
  add_waits();
  add_adults();
  add_ways();
  add_held();
  add_orders();
  add_together();
  fill_change_overs();
  return std::move(made_);
}

void ModelMaker::match_tasks() {
  std::map<decltype(identity(Task{})), int> tasks;
  for (std::size_t t = 0; t < plan_.tasks.size(); ++t)
    tasks.emplace(identity(plan_.tasks[t]), static_cast<int>(t));
  std::vector<char> moment(net_.nodes.size(), 0);
  for (const ServeMoment& serve : net_.serves) moment[idx(serve.node)] = 1;
  task_of_node_.assign(net_.nodes.size(), -1);
  activity_of_node_.assign(net_.nodes.size(), -1);
  for (std::size_t n = 0; n < net_.nodes.size(); ++n) {
    if (moment[n]) continue;
    const auto found = tasks.find(identity(net_.nodes[n].task));
    if (found != tasks.end()) {
      task_of_node_[n] = found->second;
    } else if (!net_.nodes[n].optional) {
      throw std::invalid_argument("chance: the plan lacks task " + std::to_string(n) +
                                  " of its network");
    }
  }
}

void ModelMaker::add_cooks() {
  for (const kitchen::Cook& cook : lesson_.cooks) {
    PlayCook it;
    it.people = cook.people;
    for (const kitchen::Away& away : cook.away) {
      it.people_changes.push_back({seconds(away.from), -1});
      it.people_changes.push_back({seconds(away.to), 1});
    }
    made_.play.cooks.push_back(it);
    made_.cook_ids.push_back(id_of(cook.name));
  }
}

std::vector<int> ModelMaker::audience(const kitchen::Window& window) const {
  if (!window.audience.empty()) return window.audience;
  std::vector<int> all;
  for (std::size_t c = 0; c < lesson_.cooks.size(); ++c) all.push_back(static_cast<int>(c));
  return all;
}

void ModelMaker::add_breaks() {
  for (const Task& task : plan_.tasks) {
    if (!is_break(lesson_, task)) continue;
    const kitchen::Window& window = lesson_.windows[idx(task.window)];
    made_.play.breaks.push_back(
        {seconds(task.start), seconds(task.end), audience(window), window.ovens_stay_on});
  }
}

/// Rule W3: unattended, unheated, unsupervised; an oven may bake on where somebody stays (Y10).
bool ModelMaker::in_break(const Node& node, const Task& task) const {
  if (node.attention > 0) return false;
  for (const Way& way : node.ways)
    for (const Need& need : way)
      if (need.pool.kind == PoolKind::kAdult) return false;
  if (!node.heated) return true;
  const bool stay_on = std::all_of(made_.play.breaks.begin(), made_.play.breaks.end(),
                                   [](const PlayBreak& b) { return b.ovens_stay_on; });
  return stay_on && task.setting.has_value();
}

void ModelMaker::add_activities() {
  for (std::size_t n = 0; n < net_.nodes.size(); ++n) {
    if (task_of_node_[n] == -1 || is_break(lesson_, net_.nodes[n].task)) continue;
    activity_of_node_[n] = static_cast<int>(made_.play.activities.size());
    made_.play.activities.push_back(activity_of(static_cast<int>(n)));
    made_.length.push_back(length_of(static_cast<int>(n)));
    made_.task.push_back(task_of_node_[n]);
    made_.part.push_back(net_.nodes[n].task.part);
  }
}

PlayActivity ModelMaker::activity_of(int n) const {
  const Node& node = net_.nodes[idx(n)];
  const Task& task = plan_.tasks[idx(task_of_node_[idx(n)])];
  PlayActivity it;
  it.cook = task.cook;
  it.dish = task.dish;
  it.attention = node.attention;
  it.busy = node.busy;
  it.hands_on = task.cook != -1 && node.attention >= 5 * node.people;
  it.planned_start = seconds(task.start);
  it.planned = seconds(task.end - task.start);
  it.earliest = std::max(seconds(node.earliest), checkpoint(task));
  if (node.pin >= 0) it.earliest = std::max(it.earliest, seconds(lesson_.pins[idx(node.pin)].at));
  it.closing = node.closing;
  it.cleaning = is_cleaning(task.kind);
  it.heated = node.heated;
  it.in_break = in_break(node, task);
  // The network bounds the end of a step by its bans alone; other bounds are the bell's.
  if (task.kind == TaskKind::kStep && node.latest_end) it.end_by = seconds(*node.latest_end);
  if (node.most > node.least) it.longest = seconds(node.most);
  if (task.kind == TaskKind::kWindow) set_window(it, lesson_.windows[idx(task.window)]);
  set_bell(it, node);
  return it;
}

void ModelMaker::set_window(PlayActivity& it, const kitchen::Window& window) const {
  it.window = window.kind == kitchen::WindowKind::kStop ? PlayWindow::kStop : PlayWindow::kHandsOff;
  it.audience = audience(window);
  it.in_break = true;
}

void ModelMaker::set_bell(PlayActivity& it, const Node& node) const {
  if (it.cook == -1) return;
  const int leaves = seconds(lesson_.cooks[idx(it.cook)].leaves);
  if (node.task.kind == TaskKind::kWashUp) {
    it.finish = true;
    it.due = leaves - seconds(lesson_.check_out);
  }
  if (node.task.kind == TaskKind::kPack) it.due = leaves;
}

/// Rule Y3: what a checkpoint names starts then or later, for its whole wave.
int ModelMaker::checkpoint(const Task& task) const {
  int at = 0;
  if (task.cook == -1 || plan_.wave_of_cook.empty()) return at;
  for (const Checkpoint& c : plan_.checkpoints) {
    const bool names = c.dish == -1 ? task.kind == TaskKind::kWashUp
                                    : task.kind == TaskKind::kStep && task.dish == c.dish &&
                                          task.step == c.step && task.part == 0;
    if (names && plan_.wave_of_cook[idx(task.cook)] == c.wave && task.start >= c.at)
      at = std::max(at, seconds(c.at));
  }
  return at;
}

/// One number for a step of a dish, whoever does it; parts of one step share it (P1 splits the
/// plan, not the luck).
int ModelMaker::step_index(const Task& task) {
  const auto [found, fresh] = steps_.emplace(std::tuple(task.kind, task.dish, task.step),
                                             static_cast<int>(made_.step_ids.size()));
  if (!fresh) return found->second;
  std::uint64_t id = static_cast<std::uint64_t>(task.kind);
  if (task.dish != -1) {
    const kitchen::Dish& dish = lesson_.dishes[idx(task.dish)];
    id = id_of(id, id_of(dish.name));
    id = id_of(id, id_of(dish.variant));
    if (task.step != -1) id = id_of(id, id_of(dish.method[idx(task.step)].id));
  }
  made_.step_ids.push_back(id);
  return found->second;
}

LengthOf ModelMaker::length_of(int n) {
  const Node& node = net_.nodes[idx(n)];
  LengthOf length;
  length.cook = node.task.cook;
  length.step = step_index(node.task);
  if (node.median.count() == 0 || node.task.cook == -1) return length;
  length.hands_on = node.attention >= 5 * node.people;
  length.spread = node.spread;
  length.median = static_cast<double>(node.median.count());
  if (length.hands_on) length.median *= lesson_.cooks[idx(node.task.cook)].pace;
  return length;
}

int ModelMaker::add_moment(int cook, int planned) {
  PlayActivity it;
  it.cook = cook;
  it.planned_start = planned;
  it.in_break = true;
  made_.play.activities.push_back(it);
  made_.length.push_back({});
  made_.task.push_back(-1);
  made_.part.push_back(0);
  return static_cast<int>(made_.play.activities.size()) - 1;
}

void ModelMaker::add_serves() {
  for (const ServeMoment& serve : net_.serves) {
    const auto served = std::find_if(
        plan_.served.begin(), plan_.served.end(),
        [&](const Served& s) { return s.cook == serve.cook && s.sitting == serve.sitting; });
    if (served == plan_.served.end())
      throw std::invalid_argument("chance: the plan lacks a serve moment");
    const Node& node = net_.nodes[idx(serve.node)];
    const int moment = add_moment(serve.cook, seconds(served->at));
    PlayActivity& it = made_.play.activities[idx(moment)];
    it.earliest = seconds(node.earliest);
    if (node.latest_end) it.latest_start = seconds(*node.latest_end);
    activity_of_node_[idx(serve.node)] = moment;
  }
}

void ModelMaker::add_waits() {
  for (const Wait& wait : net_.waits) {
    const Task& from = net_.nodes[idx(wait.from)].task;
    const int to = activity_of_node_[idx(wait.to)];
    if (task_of_node_[idx(wait.from)] != -1 && is_break(lesson_, from)) {  // breaks keep to the
                                                                           // clock
      const int end = seconds(plan_.tasks[idx(task_of_node_[idx(wait.from)])].end + wait.least);
      if (to != -1)
        made_.play.activities[idx(to)].earliest = std::max(made_.play.activities[idx(to)].earliest,
                                                           end);
      continue;
    }
    if (activity_of_node_[idx(wait.from)] != -1 && to != -1) add_wait(wait);
  }
}

void ModelMaker::add_wait(const Wait& wait) {
  PlayWait it;
  it.from = activity_of_node_[idx(wait.from)];
  it.from_end = wait.from_moment == kitchen::Moment::kEnd;
  it.to = activity_of_node_[idx(wait.to)];
  it.to_end = wait.to_moment == kitchen::Moment::kEnd;
  it.least = seconds(wait.least);
  it.safety = wait.safety;
  if (wait.most) it.most = seconds(*wait.most);
  const bool tasted = wait.why == WaitWhy::kServe && wait.most &&
                      made_.play.activities[idx(it.to)].window != PlayWindow::kNone;
  if (tasted) {
    // Served is when the tasting starts: food waits from being ready until then, not from an
    // instant of its own.
    it.most = kNever;
    for (const Wait& hold : net_.waits) {
      if (hold.to != wait.from || hold.why != WaitWhy::kHold || !hold.most ||
          activity_of_node_[idx(hold.from)] == -1)
        continue;
      made_.play.waits.push_back({activity_of_node_[idx(hold.from)], true, it.to, false, -1,
                                  seconds(*hold.most), hold.safety});
    }
  }
  made_.play.waits.push_back(it);
}

/// Rule Y7: who shares a tray puts it in and takes it out together. The plan says who: equal starts
/// at one cooker.
void ModelMaker::add_together() {
  std::map<std::tuple<int, int, int, int, int, Seconds>, std::vector<int>> sharing;
  for (std::size_t a = 0; a < made_.task.size(); ++a) {
    if (made_.task[a] == -1) continue;
    const Task& task = plan_.tasks[idx(made_.task[a])];
    if (task.kind != TaskKind::kStep || task.step == -1) continue;
    const auto& method = lesson_.dishes[idx(task.dish)].method;
    const kitchen::Step& step = method[idx(task.step)];
    const kitchen::Step& baked = step.closes ? method[idx(*step.closes)] : step;
    if (!baked.heat || !baked.heat->shared_tray) continue;
    const int cooker = lesson_.room.places[idx(lesson_.cooks[idx(task.cook)].place)]
                           .cookers.front();
    sharing[{net_.line_of_cook[idx(task.cook)], task.dish, task.step, task.part, cooker,
             task.start}]
        .push_back(static_cast<int>(a));
  }
  int number = 0;
  for (const auto& [key, members] : sharing) {
    if (members.size() < 2) continue;
    for (const int a : members) {
      made_.play.activities[idx(a)].together = number;
      made_.length[idx(a)] = made_.length[idx(members.front())];  // one tray, one length
    }
    ++number;
  }
}

LessonModel play_model_of(const kitchen::Lesson& lesson, const Network& net, const Plan& plan) {
  return ModelMaker(lesson, net, plan).make();
}

}  // namespace timeplan
