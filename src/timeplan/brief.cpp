#include "timeplan/brief.h"

#include <algorithm>
#include <utility>

#include "timeplan/brief_maker.h"

namespace timeplan {

using kitchen::Moment;
using scheduler::Side;

Reason reason_of(const Pool& pool) {
  using Kind = Reason::Kind;
  switch (pool.kind) {
    case PoolKind::kSink:
      return {Kind::kSinks};
    case PoolKind::kBasin:
      return {Kind::kBasins};
    case PoolKind::kTable:
      return {Kind::kTable};
    case PoolKind::kKit:
      return {Kind::kKit, pool.index};
    case PoolKind::kRings:
      return {Kind::kRings};
    case PoolKind::kOven:
      return {Kind::kOvens};
    case PoolKind::kGrill:
      return {Kind::kGrills};
    case PoolKind::kFridge:
    case PoolKind::kFreezer:
      return {Kind::kColdSpace};
    case PoolKind::kAdult:
      return {Kind::kAdults};
  }
  return {Kind::kSinks};
}

BriefMaker::BriefMaker(const kitchen::Lesson& lesson, const Network& net,
                       const BriefOptions& options)
    : lesson_(lesson), net_(net), options_(options) {
  brief_.spread_first = lesson.spread_before_buffer;
  brief_.problem.horizon = as_units(base::grid_down(lesson.bell));
  if (!options.bell_is_hard) brief_.problem.horizon += as_units(options.beyond_bell);
}

Brief BriefMaker::make() && {
  group_nodes();
  add_ways();
  add_held();
  add_lags();
  add_hands();
  add_places();
  add_breaks();
  add_adult_limits();
  finish_settings();
  add_goals();
  add_call_order();
  brief_.reasons.assign(seen_.begin(), seen_.end());
  return std::move(brief_);
}

bool BriefMaker::left_out(Reason reason) {
  seen_.insert(reason);
  return options_.without.contains(reason);
}

bool BriefMaker::alone_at_place(int cook) const {
  return std::count_if(lesson_.cooks.begin(), lesson_.cooks.end(),
                       [&](const kitchen::Cook& c) { return c.place == cook_of(cook).place; }) == 1;
}

// What makes two nodes one activity: equal keys. A queued node has its own index in its key.
std::tuple<int, int, int, int, int, int, int> BriefMaker::merge_key(int index) const {
  const Node& n = node(index);
  const Task& t = n.task;
  if (t.cook < 0) return {-1, index, 0, 0, 0, 0, 0};
  const int line = line_of(t.cook);
  const bool clean_in_step = t.kind == TaskKind::kCleanDown && alone_at_place(t.cook) &&
                             !lines_with_queued_hygiene_.contains(line);
  if (n.queued && !clean_in_step)
    return {line, static_cast<int>(t.kind), t.dish, t.step, t.part, t.kit, index};
  return {line, static_cast<int>(t.kind), t.dish, t.step, t.part, t.kit, -1};
}

void BriefMaker::group_nodes() {
  for (const Node& n : net_.nodes) {
    if (n.hygiene && n.queued) lines_with_queued_hygiene_.insert(line_of(n.task.cook));
  }
  brief_.activity_of_node.assign(net_.nodes.size(), -1);
  std::map<std::tuple<int, int, int, int, int, int, int>, std::vector<int>> groups;
  // Two cooks of one cooker are looked at together (Y5).
  std::map<std::tuple<int, int, int, int>, std::vector<int>> looks;
  std::vector<std::vector<int>> in_order;
  for (int i = 0; i < static_cast<int>(net_.nodes.size()); ++i) {
    const Task& t = node(i).task;
    if (t.kind == TaskKind::kWindow && left_out({Reason::Kind::kWindows, t.window})) continue;
    if (t.kind == TaskKind::kLook) {
      const int cooker = lesson_.room.places[static_cast<std::size_t>(cook_of(t.cook).place)]
                             .cookers.front();
      std::vector<int>& pair = looks[{line_of(t.cook), t.dish, t.step, cooker}];
      pair.push_back(i);
      if (pair.size() == 2) {
        in_order.push_back(pair);
        pair.clear();
      }
      continue;
    }
    groups[merge_key(i)].push_back(i);
  }
  for (auto& [key, nodes] : groups) in_order.push_back(nodes);
  for (auto& [key, nodes] : looks) {
    if (!nodes.empty()) in_order.push_back(nodes);
  }
  std::sort(in_order.begin(), in_order.end());
  for (const std::vector<int>& nodes : in_order) add_activity(nodes);
}

void BriefMaker::add_activity(const std::vector<int>& nodes) {
  const int index = static_cast<int>(brief_.problem.activities.size());
  scheduler::Activity a;
  const Node& first = node(nodes.front());
  a.name = std::to_string(nodes.front());
  a.duration_min = as_units(first.least);
  a.duration_max = as_units(first.most);
  a.optional = first.optional;
  a.team = first.task.cook < 0 ? -1 : line_of(first.task.cook);
  int latest = brief_.problem.horizon;
  for (const int i : nodes) {
    const Node& n = node(i);
    brief_.activity_of_node[static_cast<std::size_t>(i)] = index;
    a.earliest = std::max(a.earliest, as_units(n.earliest));
    const bool step = n.task.kind == TaskKind::kStep && n.task.step >= 0;
    const bool serving = n.task.kind == TaskKind::kStep && n.task.step < 0;
    const bool window = n.task.kind == TaskKind::kWindow;
    if (n.latest_end) {
      const bool ban = step && left_out({Reason::Kind::kBans});
      const bool sitting = serving && left_out({Reason::Kind::kServing});
      const bool by_bell = !step && !serving && !window;  // knives and bay looks: as hard as the
                                                          // bell
      if (!ban && !sitting && (!by_bell || options_.bell_is_hard)) {
        latest = std::min(latest, std::max(as_units(*n.latest_end),
                                           serving && !options_.bell_is_hard ? latest : 0));
      }
    }
    if (n.task.cook >= 0 && options_.bell_is_hard) {
      const kitchen::Cook& cook = cook_of(n.task.cook);
      const bool last_wash = net_.wash_up[static_cast<std::size_t>(n.task.cook)].back() == i;
      latest = std::min(
          latest,
          as_units(base::grid_down(cook.leaves - (last_wash ? lesson_.check_out : Seconds{0}))));
    }
    if (window) {
      const kitchen::Window& w = lesson_.windows[static_cast<std::size_t>(n.task.window)];
      if (w.kind == kitchen::WindowKind::kBreak) latest = a.earliest + a.duration_min;
    }
  }
  a.latest_end = latest;
  for (const int i : nodes) {
    const int pin = node(i).pin;
    if (pin < 0 || left_out({Reason::Kind::kPins, pin})) continue;
    const int at = as_units(lesson_.pins[static_cast<std::size_t>(pin)].at);
    brief_.pinned.push_back({index, at, latest});
    a.earliest = std::max(a.earliest, at);
    a.latest_end = std::min(a.latest_end, at + a.duration_max);
  }
  brief_.problem.activities.push_back(std::move(a));
  brief_.way_of_mode.push_back({0});
  nodes_of_.push_back(nodes);
}

// Modes: way i of every node together. Nodes of one activity have equally many ways, because only
// queued tasks choose.
void BriefMaker::add_ways() {
  for (const Node& n : net_.nodes) {
    std::map<Pool, int> most;
    for (const Way& way : n.ways) {
      for (const Need& need : way) most[need.pool] = std::max(most[need.pool], need.amount);
    }
    for (const auto& [pool, amount] : most) demand_[pool] += amount;
  }
  for (const Held& h : net_.held) {
    std::map<Pool, int> most;
    for (const Way& way : h.ways) {
      for (const Need& need : way) most[need.pool] = std::max(most[need.pool], need.amount);
    }
    for (const auto& [pool, amount] : most) demand_[pool] += amount;
  }
  for (int a = 0; a < static_cast<int>(nodes_of_.size()); ++a) {
    std::size_t ways = node(nodes_of_[static_cast<std::size_t>(a)].front()).ways.size();
    for (const int n : nodes_of_[static_cast<std::size_t>(a)])
      ways = std::min(ways, node(n).ways.size());
    std::vector<scheduler::Mode> modes;
    std::vector<int> way_of_mode;
    // A look at two cooks of one cooker takes the adult once.
    const bool once = node(nodes_of_[static_cast<std::size_t>(a)].front()).task.kind ==
                      TaskKind::kLook;
    for (std::size_t w = 0; w < ways; ++w) {
      std::map<int, scheduler::Use> together;
      for (const int n : nodes_of_[static_cast<std::size_t>(a)]) {
        for (const scheduler::Use& use :
             uses_of(node(n).ways[w], node(n).contains, node(n).avoids)) {
          const auto [at, fresh] = together.emplace(use.resource, use);
          if (!fresh) at->second.amount += use.amount;
        }
        if (once) break;
      }
      scheduler::Mode mode;
      for (const auto& [resource, use] : together) mode.uses.push_back(use);
      if (mode.uses.empty() && w > 0)
        continue;  // as good as the first way, which then costs nothing either
      modes.push_back(std::move(mode));
      way_of_mode.push_back(static_cast<int>(w));
      if (modes.back().uses.empty()) break;  // a way that costs nothing shared is never beaten
    }
    if (modes.empty()) {
      modes.emplace_back();
      way_of_mode.push_back(0);
    }
    activity(a).modes = std::move(modes);
    brief_.way_of_mode[static_cast<std::size_t>(a)] = std::move(way_of_mode);
  }
}

bool BriefMaker::slack(const Pool& pool) const {
  if (pool.kind == PoolKind::kOven || pool.kind == PoolKind::kAdult) return false;
  if (pool.kind == PoolKind::kKit && pool.unit == 0) return false;
  // In a break nothing stands on the heat (W3), so what stands there must be known.
  const bool heat = pool.kind == PoolKind::kRings || pool.kind == PoolKind::kGrill;
  const bool breaks = std::any_of(
      lesson_.windows.begin(), lesson_.windows.end(),
      [](const kitchen::Window& w) { return w.kind == kitchen::WindowKind::kBreak; });
  if (heat && breaks) return false;
  const auto found = demand_.find(pool);
  return found == demand_.end() || found->second <= capacity(lesson_, pool);
}

std::vector<scheduler::Use> BriefMaker::uses_of(const Way& way, const kitchen::Allergens& contains,
                                                const kitchen::Allergens& avoids) {
  std::vector<scheduler::Use> uses;
  for (const Need& need : way) {
    if (slack(need.pool) || left_out(reason_of(need.pool))) continue;
    scheduler::Use use;
    use.resource = resource_of(need.pool);
    use.amount = need.amount;
    for (const kitchen::OvenSetting& s : need.settings)
      use.settings.push_back(setting_id(need.pool.index, s));
    use.door_shut = as_units(base::grid_up(need.door_shut));
    if (need.hazard) use.hazard = static_cast<int>(*need.hazard);
    if (need.pool.kind == PoolKind::kKit && need.pool.unit == 0 &&
        !left_out({Reason::Kind::kAllergens})) {
      for (const kitchen::Allergen a : contains) use.soil |= 1 << static_cast<int>(a);
      for (const kitchen::Allergen a : avoids) use.minds |= 1 << static_cast<int>(a);
    }
    uses.push_back(std::move(use));
  }
  return uses;
}

int BriefMaker::add_resource(std::string name, scheduler::ResourceKind kind, int capacity) {
  scheduler::Resource r;
  r.name = std::move(name);
  r.kind = kind;
  r.capacity = capacity;
  brief_.problem.resources.push_back(std::move(r));
  return static_cast<int>(brief_.problem.resources.size()) - 1;
}

int BriefMaker::resource_of(const Pool& pool) {
  const auto found = resource_.find(pool);
  if (found != resource_.end()) return found->second;
  using scheduler::ResourceKind;
  ResourceKind kind = ResourceKind::kCumulative;
  if (pool.kind == PoolKind::kOven) kind = ResourceKind::kSettings;
  if (pool.kind == PoolKind::kKit && pool.unit == 0) kind = ResourceKind::kSoiling;
  const std::string name = (pool.kind == PoolKind::kOven ? "oven " : "pool ") +
                           std::to_string(pool.index);
  const int index = add_resource(name, kind, capacity(lesson_, pool));
  resource_.emplace(pool, index);
  return index;
}

int BriefMaker::setting_id(int cooker, const kitchen::OvenSetting& setting) {
  auto& known = settings_[cooker];
  return known.emplace(setting, static_cast<int>(known.size()) + 1).first->second;
}

void BriefMaker::add_use(int index, const scheduler::Use& use) {
  for (scheduler::Mode& mode : activity(index).modes) mode.uses.push_back(use);
}

scheduler::Event BriefMaker::event(int n, Moment moment) const {
  return {activity_of(n), moment == Moment::kStart ? Side::kStart : Side::kEnd};
}

// The end of everything, for what is held until then.
int BriefMaker::bell_moment() {
  if (bell_ >= 0) return bell_;
  scheduler::Activity a;
  a.name = "bell";
  a.duration_min = a.duration_max = 0;
  a.earliest = a.latest_end = brief_.problem.horizon;
  a.team = -1;
  bell_ = static_cast<int>(brief_.problem.activities.size());
  brief_.problem.activities.push_back(std::move(a));
  brief_.way_of_mode.push_back({0});
  nodes_of_.emplace_back();
  return bell_;
}

void BriefMaker::add_held() {
  brief_.activity_of_held.assign(net_.held.size(), -1);
  std::map<std::tuple<scheduler::Event, scheduler::Event, int, std::string>, int> merged;
  for (std::size_t h = 0; h < net_.held.size(); ++h) {
    const Held& held = net_.held[h];
    if (held.ways.empty()) continue;  // raw hands: see add_lags
    kitchen::Allergens contains, avoids;
    for (const int n : held.nodes) {
      contains.insert(node(n).contains.begin(), node(n).contains.end());
      avoids.insert(node(n).avoids.begin(), node(n).avoids.end());
    }
    std::vector<scheduler::Mode> modes;
    std::vector<int> ways;
    for (std::size_t w = 0; w < held.ways.size(); ++w) {
      scheduler::Mode mode;
      mode.uses = uses_of(held.ways[w], contains, avoids);
      const bool free = mode.uses.empty();
      modes.push_back(std::move(mode));
      ways.push_back(static_cast<int>(w));
      if (free) break;
    }
    // A way that takes nothing scarce is as good as any: keep only it.
    if (modes.back().uses.empty()) {
      if (modes.size() > 1) {
        modes = {modes.back()};
        ways = {ways.back()};
      }
      if (ways.front() == 0) continue;
    }
    const scheduler::Event from = event(held.from, held.from_moment);
    const scheduler::Event to = held.to < 0 ? scheduler::Event{-1, Side::kEnd}
                                            : event(held.to, held.to_moment);
    const bool in_step = modes.size() == 1;
    const auto key = std::make_tuple(from, to, held.dish, held.what);
    if (in_step) {
      const auto found = merged.find(key);
      if (found != merged.end()) {
        for (scheduler::Use use : modes.front().uses) {
          for (scheduler::Mode& mode : activity(found->second).modes) {
            const auto same = std::find_if(
                mode.uses.begin(), mode.uses.end(),
                [&](const scheduler::Use& u) { return u.resource == use.resource; });
            if (same == mode.uses.end()) {
              mode.uses.push_back(use);
            } else {
              same->amount += use.amount;
            }
          }
        }
        brief_.activity_of_held[h] = found->second;
        continue;
      }
      const bool whole = from.activity == to.activity && from.side == Side::kStart &&
                         to.side == Side::kEnd;
      if (whole) {
        for (const scheduler::Use& use : modes.front().uses) add_use(from.activity, use);
        brief_.activity_of_held[h] = from.activity;
        merged.emplace(key, from.activity);
        continue;
      }
    }
    scheduler::Activity a;
    a.name = held.what;
    a.duration_min = 0;
    a.duration_max = brief_.problem.horizon;
    a.latest_end = brief_.problem.horizon;
    a.team = line_of(held.cook);
    a.modes = std::move(modes);
    const int index = static_cast<int>(brief_.problem.activities.size());
    brief_.problem.activities.push_back(std::move(a));
    brief_.way_of_mode.push_back(ways);
    nodes_of_.emplace_back();
    brief_.problem.lags.push_back({from, {index, Side::kStart}, 0, 0, -1});
    const scheduler::Event until = held.to >= 0 ? to
                                                : scheduler::Event{bell_moment(), Side::kStart};
    brief_.problem.lags.push_back({until, {index, Side::kEnd}, 0, 0, -1});
    brief_.activity_of_held[h] = index;
    if (in_step) merged.emplace(key, index);
  }
}

// What may run longer than least would be free to start late within its window: its start is held
// to the end of everything.
void BriefMaker::add_pin_lags() {
  std::set<int> done;
  for (const PinnedActivity& pin : brief_.pinned) {
    const bool elastic = activity(pin.activity).duration_min < activity(pin.activity).duration_max;
    if (!elastic || !done.insert(pin.activity).second) continue;
    brief_.pin_lags.push_back(static_cast<int>(brief_.problem.lags.size()));
    brief_.problem.lags.push_back({{pin.activity, Side::kStart},
                                   {bell_moment(), Side::kStart},
                                   brief_.problem.horizon - pin.at,
                                   scheduler::kNoLimit,
                                   -1});
  }
}

void BriefMaker::add_lags() {
  std::map<std::pair<scheduler::Event, scheduler::Event>, std::pair<int, int>> tightest;
  for (const Wait& w : net_.waits) {
    if (activity_of(w.from) < 0 || activity_of(w.to) < 0) continue;  // a window left out
    const bool hold = w.why == WaitWhy::kHold && left_out({Reason::Kind::kServing});
    const int most = w.most && !hold ? as_units(*w.most) : scheduler::kNoLimit;
    const auto key = std::make_pair(event(w.from, w.from_moment), event(w.to, w.to_moment));
    const auto [at, fresh] = tightest.emplace(key, std::make_pair(as_units(w.least), most));
    if (!fresh) {
      at->second.first = std::max(at->second.first, as_units(w.least));
      at->second.second = std::min(at->second.second, most);
    }
  }
  for (const auto& [events, limits] : tightest) {
    brief_.problem.lags.push_back({events.first, events.second, limits.first, limits.second, -1});
  }
  add_pin_lags();
  std::set<std::tuple<scheduler::Event, scheduler::Event, std::vector<int>>> spans;
  for (const Held& held : net_.held) {
    if (held.shuts_out.empty() || left_out({Reason::Kind::kHygiene})) continue;
    scheduler::Span span;
    span.from = event(held.from, held.from_moment);
    span.to = event(held.to, held.to_moment);
    for (const int n : held.shuts_out) {
      if (activity_of(n) >= 0) span.excludes.push_back(activity_of(n));
    }
    std::sort(span.excludes.begin(), span.excludes.end());
    span.excludes.erase(std::unique(span.excludes.begin(), span.excludes.end()),
                        span.excludes.end());
    if (spans.emplace(span.from, span.to, span.excludes).second)
      brief_.problem.spans.push_back(std::move(span));
  }
}

Brief brief(const kitchen::Lesson& lesson, const Network& net, const BriefOptions& options) {
  return BriefMaker(lesson, net, options).make();
}

}  // namespace timeplan
