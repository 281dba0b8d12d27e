// What activities take of the room and hold over time.
#include <algorithm>

#include "timeplan/chance/model_maker.h"

namespace timeplan {
namespace {

int seconds(Seconds t) { return static_cast<int>(t.count()); }

}  // namespace

int ModelMaker::resource(Pool pool) {
  const auto [found, fresh] = resources_.emplace(pool,
                                                 static_cast<int>(made_.play.resources.size()));
  if (fresh) made_.play.resources.push_back({capacity(lesson_, pool), {}});
  return found->second;
}

/// Adults come by the clock and do nothing in a break (W3). One who goes before the bell starts
/// nothing that would end later; one who stays to the bell stays until the class is out.
void ModelMaker::add_adults() {
  for (std::size_t a = 0; a < lesson_.adults.size(); ++a) {
    const kitchen::Adult& adult = lesson_.adults[a];
    PlayResource& it = made_.play
                           .resources[idx(resource({PoolKind::kAdult, static_cast<int>(a), -1}))];
    if (adult.from.count() > 0) {
      it.changes.push_back({seconds(adult.from), it.capacity});
      it.capacity = 0;
    }
    for (const PlayBreak& b : made_.play.breaks) {
      it.changes.push_back({b.from, -100});
      it.changes.push_back({b.to, 100});
    }
  }
  for (const bool leads : {true, false})
    for (std::size_t a = 0; a < lesson_.adults.size(); ++a)
      if (lesson_.adults[a].leads == leads)
        made_.play.helpers.push_back(resource({PoolKind::kAdult, static_cast<int>(a), -1}));
}

/// How many of a hazard one adult may watch at once (V2).
int ModelMaker::hazard_limit(int adult, kitchen::Hazard hazard) {
  const auto [found, fresh] = hazard_limits_.emplace(std::pair(adult, hazard),
                                                     static_cast<int>(made_.play.resources.size()));
  if (fresh) made_.play.resources.push_back({lesson_.rules.watch.at(hazard).at_once, {}});
  return found->second;
}

PlayWay ModelMaker::way_of(const Way& way) {
  PlayWay it;
  const auto add = [&](int r, int amount) {
    const auto same = std::find_if(it.uses.begin(), it.uses.end(),
                                   [&](const PlayUse& use) { return use.resource == r; });
    if (same != it.uses.end()) {
      same->amount += amount;
    } else {
      it.uses.push_back({r, amount});
    }
  };
  for (const Need& need : way) {
    if (need.pool.kind == PoolKind::kOven) continue;  // trays are spans with a knob
    add(resource(need.pool), need.amount);
    if (need.pool.kind != PoolKind::kAdult) continue;
    if (need.hazard) add(hazard_limit(need.pool.index, *need.hazard), 1);
    const kitchen::Adult& adult = lesson_.adults[idx(need.pool.index)];
    if (adult.to < lesson_.bell) it.end_by = std::min(it.end_by, seconds(adult.to));
  }
  return it;
}

/// How many of a way's choices are those of the plan.
int ModelMaker::match(const Way& way, const Task& task) const {
  int same = 0;
  for (const Need& need : way) {
    switch (need.pool.kind) {
      case PoolKind::kSink:
        same += task.sink_bay == need.pool.index && !task.basin;
        break;
      case PoolKind::kBasin:
        same += task.basin;
        break;
      case PoolKind::kAdult:
        same += task.adult == need.pool.index;
        break;
      case PoolKind::kRings:
      case PoolKind::kOven:
      case PoolKind::kGrill:
        same += task.cooker == need.pool.index;
        break;
      default:
        break;
    }
  }
  return same;
}

void ModelMaker::add_ways() {
  for (std::size_t n = 0; n < net_.nodes.size(); ++n) {
    if (activity_of_node_[n] == -1 || task_of_node_[n] == -1) continue;
    const Task& task = plan_.tasks[idx(task_of_node_[n])];
    std::vector<Way> ways = net_.nodes[n].ways;
    std::stable_sort(ways.begin(), ways.end(),
                     [&](const Way& x, const Way& y) { return match(x, task) > match(y, task); });
    PlayActivity& it = made_.play.activities[idx(activity_of_node_[n])];
    bool watched = false;
    for (const Way& way : ways) {
      for (const Need& need : way) watched = watched || need.pool.kind == PoolKind::kAdult;
      it.ways.push_back(way_of(way));
      // Looks, windows and counts are the leader's, who does not go before the class does.
      if (task.kind != TaskKind::kStep) it.ways.back().end_by = kNever;
    }
    it.calls = it.hands_on && !watched;
  }
}

int ModelMaker::oven(int cooker) {
  const auto [found, fresh] = ovens_.emplace(cooker, static_cast<int>(made_.play.ovens.size()));
  if (!fresh) return found->second;
  PlayOven it;
  it.twelfths = capacity(lesson_, {PoolKind::kOven, cooker, -1});
  made_.play.ovens.push_back(it);
  settings_.emplace_back();
  for (const kitchen::OvenAtOpening& set : lesson_.ovens)
    if (set.cooker == cooker) made_.play.ovens.back().opening = setting(found->second, set.setting);
  return found->second;
}

/// Settings of an oven are numbered from 1 as they come up; 0 is cold.
int ModelMaker::setting(int oven, const kitchen::OvenSetting& setting) {
  auto& known = settings_[idx(oven)];
  const auto found = std::find(known.begin(), known.end(), setting);
  if (found != known.end()) return static_cast<int>(found - known.begin()) + 1;
  known.push_back(setting);
  return static_cast<int>(known.size());
}

void ModelMaker::fill_change_overs() {
  for (std::size_t o = 0; o < settings_.size(); ++o) {
    PlayOven& it = made_.play.ovens[o];
    const auto& known = settings_[o];
    it.settings = static_cast<int>(known.size()) + 1;
    it.change.assign(idx(it.settings) * idx(it.settings), 0);
    for (std::size_t to = 0; to < known.size(); ++to) {
      it.change[to + 1] = seconds(
          base::grid_up(kitchen::heat_up(lesson_.room.change_over, known[to])));
      for (std::size_t from = 0; from < known.size(); ++from)
        it.change[(from + 1) * idx(it.settings) + to + 1] = seconds(
            base::grid_up(kitchen::change_over(lesson_.room.change_over, known[from], known[to])));
    }
  }
}

/// A task that says on which cooker the vessel stands, and at what setting.
const Task* ModelMaker::vessel_task(const Held& held) const {
  for (const int n : held.nodes)
    if (task_of_node_[idx(n)] != -1 && plan_.tasks[idx(task_of_node_[idx(n)])].cooker != -1)
      return &plan_.tasks[idx(task_of_node_[idx(n)])];
  return nullptr;
}

/// Makes the span a tray when the plan (or, for holding, the first way) has it in an oven.
bool ModelMaker::put_in_oven(PlaySpan& span, const Held& held, const Task* vessel) {
  const Need* in = nullptr;
  for (const Way& way : held.ways)
    for (const Need& need : way)
      if (need.pool.kind == PoolKind::kOven && (!vessel || vessel->cooker == need.pool.index) &&
          !in)
        in = &need;
  if (!in) return false;
  const bool known = vessel && vessel->setting;
  if (!known && in->settings.empty()) return false;
  span.oven = oven(in->pool.index);
  span.twelfths = in->amount;
  span.setting = setting(span.oven, known ? *vessel->setting : in->settings.front());
  return true;
}

void ModelMaker::shut_doors(const Held& held, int span) {
  for (const int n : held.nodes) {
    const Task& task = net_.nodes[idx(n)].task;
    if (activity_of_node_[idx(n)] == -1 || task.kind != TaskKind::kStep || task.step == -1)
      continue;
    const auto& heat = lesson_.dishes[idx(task.dish)].method[idx(task.step)].heat;
    if (!heat || heat->door_shut.count() == 0) continue;
    PlayActivity& it = made_.play.activities[idx(activity_of_node_[idx(n)])];
    it.door_shut = seconds(base::grid_up(heat->door_shut));
    it.door_span = span;
  }
}

void ModelMaker::add_held() {
  for (const Held& held : net_.held) {
    if (activity_of_node_[idx(held.from)] == -1 ||
        (held.to != -1 && activity_of_node_[idx(held.to)] == -1))
      continue;
    if (held.from_moment == kitchen::Moment::kEnd) {
      add_hold(held);
      continue;
    }
    PlaySpan span;
    span.opens = activity_of_node_[idx(held.from)];
    span.closes = held.to == -1 ? -1 : activity_of_node_[idx(held.to)];
    span.closes_at_end = held.to_moment == kitchen::Moment::kEnd;
    const Task* vessel = vessel_task(held);
    std::vector<Way> ways = held.ways;
    if (vessel)
      std::stable_sort(ways.begin(), ways.end(), [&](const Way& x, const Way& y) {
        return match(x, *vessel) > match(y, *vessel);
      });
    const bool in_oven = put_in_oven(span, held, vessel);
    if (!in_oven)
      for (const Way& way : ways) span.ways.push_back(way_of(way));
    for (const int n : held.shuts_out) {
      const int a = activity_of_node_[idx(n)];
      if (a != -1 && made_.play.activities[idx(a)].window == PlayWindow::kNone)
        span.shuts_out.push_back(a);
    }
    if (in_oven) shut_doors(held, static_cast<int>(made_.play.spans.size()));
    made_.play.spans.push_back(span);
  }
}

/// Food kept hot or cold from an end on: an instant of its own takes the place as soon as there is
/// one. Nobody waits for it; if the food is served first, it is not needed any more.
void ModelMaker::add_hold(const Held& held) {
  const int from = activity_of_node_[idx(held.from)];
  const PlayActivity& ready = made_.play.activities[idx(from)];
  const int moment = add_moment(held.cook, ready.planned_start + ready.planned);
  made_.play.waits.push_back({from, true, moment, false, 0, kNever, false});
  PlaySpan span;
  span.opens = moment;
  span.closes = held.to == -1 ? -1 : activity_of_node_[idx(held.to)];
  span.closes_at_end = held.to_moment == kitchen::Moment::kEnd;
  made_.play.activities[idx(moment)].void_after = span.closes;
  const Task* vessel = nullptr;
  for (const Held& other : net_.held)
    if (other.cook == held.cook && other.dish == held.dish &&
        other.from_moment == kitchen::Moment::kStart && !vessel)
      vessel = vessel_task(other);
  Task at = vessel ? *vessel : Task{};
  at.setting.reset();  // its own setting, at the dish's cooker where that will do
  if (!put_in_oven(span, held, vessel ? &at : nullptr) && !put_in_oven(span, held, nullptr))
    for (const Way& way : held.ways) span.ways.push_back(way_of(way));
  made_.play.spans.push_back(span);
}

void ModelMaker::add_orders() {
  std::map<int, std::vector<int>> places, kit;
  for (std::size_t n = 0; n < net_.nodes.size(); ++n) {
    const Node& node = net_.nodes[n];
    if (activity_of_node_[n] == -1 || node.task.cook == -1) continue;
    const bool at_place = node.hygiene || node.task.kind == TaskKind::kCleanDown;
    if (at_place) places[lesson_.cooks[idx(node.task.cook)].place].push_back(static_cast<int>(n));
    if (node.allergen_kit != -1) kit[node.allergen_kit].push_back(static_cast<int>(n));
  }
  const auto add = [&](std::vector<int> nodes) {
    std::stable_sort(nodes.begin(), nodes.end(), [&](int x, int y) {
      const auto start = [&](int n) {
        return made_.play.activities[idx(activity_of_node_[idx(n)])].planned_start;
      };
      return std::pair(start(x), activity_of_node_[idx(x)]) <
             std::pair(start(y), activity_of_node_[idx(y)]);
    });
    PlayOrder order;
    for (const int n : nodes) {
      const Node& node = net_.nodes[idx(n)];
      order.activities.push_back(activity_of_node_[idx(n)]);
      const bool cleans = node.task.kind == TaskKind::kCleanDown ||
                          node.task.kind == TaskKind::kFullClean;
      order.classes.push_back(cleans || !node.hygiene ? -1 : static_cast<int>(*node.hygiene));
    }
    made_.play.orders.push_back(order);
  };
  for (const auto& [place, nodes] : places) {
    const auto hygiene = net_.nodes[idx(nodes.front())].hygiene;
    const bool one_class = std::all_of(nodes.begin(), nodes.end(), [&](int n) {
      return net_.nodes[idx(n)].hygiene == hygiene &&
             net_.nodes[idx(n)].task.kind != TaskKind::kCleanDown;
    });
    if (!one_class) add(nodes);
  }
  for (const auto& [item, nodes] : kit) add(nodes);
}

}  // namespace timeplan
