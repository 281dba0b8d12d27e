// What is held from one task to another, and what must be cleaned between: vessels, raw hands,
// places, kit.
#include <algorithm>
#include <iterator>

#include "timeplan/network_builder.h"
#include "timeplan/network_methods.h"

namespace timeplan {

using kitchen::Moment;

namespace {

// Steps of the dish that use one vessel, in reading order, and the step that closes it.
struct Vessel {
  std::string name;
  kitchen::HeatKind with = kitchen::HeatKind::kRing;
  std::vector<int> steps;
  std::optional<int> closing;
};

std::vector<Vessel> vessels(const kitchen::Dish& dish, const std::vector<bool>& here) {
  std::vector<Vessel> found;
  for (const int s : kitchen::reading_order(dish)) {
    const kitchen::Step& step = dish.method[static_cast<std::size_t>(s)];
    if (!here[static_cast<std::size_t>(s)] || !step.heat) continue;
    const auto same = std::find_if(found.begin(), found.end(), [&](const Vessel& v) {
      return v.name == step.heat->vessel && v.with == step.heat->with;
    });
    if (same == found.end()) {
      found.push_back({step.heat->vessel, step.heat->with, {s}, std::nullopt});
    } else {
      same->steps.push_back(s);
    }
  }
  for (Vessel& v : found) {
    for (std::size_t s = 0; s < dish.method.size(); ++s) {
      const std::optional<int> closes = dish.method[s].closes;
      if (!here[s] || !closes) continue;
      if (std::find(v.steps.begin(), v.steps.end(), *closes) != v.steps.end())
        v.closing = static_cast<int>(s);
    }
  }
  return found;
}

std::vector<kitchen::OvenSetting> common_settings(const kitchen::Dish& dish, const Vessel& vessel) {
  std::vector<kitchen::OvenSetting> common;
  bool first = true;
  for (const int s : vessel.steps) {
    const auto accepted = accepted_settings(*dish.method[static_cast<std::size_t>(s)].heat);
    if (first) {
      common = accepted;
      first = false;
      continue;
    }
    std::vector<kitchen::OvenSetting> both;
    std::set_intersection(common.begin(), common.end(), accepted.begin(), accepted.end(),
                          std::back_inserter(both));
    common = std::move(both);
  }
  return common;
}

// The most any step of the vessel takes: rings, twelfths of a shelf, minutes with the door shut.
kitchen::Heat widest(const kitchen::Dish& dish, const Vessel& vessel) {
  kitchen::Heat heat = *dish.method[static_cast<std::size_t>(vessel.steps.front())].heat;
  for (const int s : vessel.steps) {
    const kitchen::Heat& other = *dish.method[static_cast<std::size_t>(s)].heat;
    heat.rings = std::max(heat.rings, other.rings);
    heat.shelf_twelfths = std::max(heat.shelf_twelfths, other.shelf_twelfths);
    if (other.setting.kind == kitchen::OvenKind::kFan) heat.setting.kind = kitchen::OvenKind::kFan;
  }
  return heat;
}

}  // namespace

void NetworkBuilder::add_vessels(int cook, int dish, const std::vector<bool>& here) {
  const kitchen::Dish& d = dish_of(dish);
  for (const Vessel& vessel : vessels(d, here)) {
    Held held;
    held.cook = cook;
    held.dish = dish;
    held.what = vessel.name;
    held.from = first_part(cook, dish, vessel.steps.front());
    const int last = vessel.closing.value_or(vessel.steps.back());
    held.to = last_part(cook, dish, last);
    const kitchen::Heat heat = widest(d, vessel);
    held.ways = heat_ways(cook, heat, common_settings(d, vessel));
    // Those who share a tray share an oven: the first within reach that will do (Y7).
    if (heat.shared_tray && held.ways.size() > 1) held.ways.resize(1);
    for (const int s : vessel.steps) {
      for (const int n : own(cook).parts.at({dish, s})) held.nodes.push_back(n);
      // Whatever the method says, the vessel is taken from its first step in reading order to its
      // last.
      if (s != vessel.steps.front()) {
        wait(held.from, Moment::kStart, first_part(cook, dish, s), Moment::kStart, Seconds{0},
             std::nullopt, WaitWhy::kMethod);
      }
      if (last_part(cook, dish, s) != held.to) {
        wait(last_part(cook, dish, s), Moment::kEnd, held.to, Moment::kEnd, Seconds{0},
             std::nullopt, WaitWhy::kMethod);
      }
    }
    const int index = static_cast<int>(net_.held.size());
    for (const int n : held.nodes) node(n).heldby.push_back(index);
    net_.held.push_back(std::move(held));
  }
}

void NetworkBuilder::add_raw_groups(int cook, int dish, const std::vector<bool>& here) {
  for (const std::vector<int>& group : raw_groups(dish_of(dish), here)) {
    const int wash = task_node(TaskKind::kHandWash, cook, dish, group.back(),
                               lesson_.rules.hand_wash, 10, cook_of(cook).people);
    node(wash).ways = hands_ways(cook, 1);
    node(wash).closing = true;
    Held raw;
    raw.cook = cook;
    raw.dish = dish;
    raw.what = "raw hands";
    raw.from = first_part(cook, dish, group.front());
    raw.to = wash;
    for (const int s : group) {
      for (const int n : own(cook).parts.at({dish, s})) raw.nodes.push_back(n);
      if (s == group.back()) continue;
      after(last_part(cook, dish, s), wash, WaitWhy::kHands);
      if (s != group.front()) {
        wait(raw.from, Moment::kStart, first_part(cook, dish, s), Moment::kStart, Seconds{0},
             std::nullopt, WaitWhy::kMethod);
      }
    }
    wait(last_part(cook, dish, group.back()), Moment::kEnd, wash, Moment::kStart, Seconds{0},
         base::minutes(1), WaitWhy::kHands);
    net_.held.push_back(std::move(raw));
  }
}

// Once all nodes of the cook are known: nothing hands-on of theirs may overlap a raw group (H5).
void NetworkBuilder::close_raw_groups(int cook) {
  for (Held& held : net_.held) {
    if (held.cook != cook || held.what != "raw hands") continue;
    for (const int other : own(cook).all) {
      const Node& o = node(other);
      const bool in_group = other == held.to || std::find(held.nodes.begin(), held.nodes.end(),
                                                          other) != held.nodes.end();
      if (!in_group && o.attention >= 5 * o.people && o.most.count() > 0)
        held.shuts_out.push_back(other);
    }
    for (std::size_t w = 0; w < windows_.size(); ++w) {
      const kitchen::Window& window = lesson_.windows[w];
      const bool covered = covers(window, cook);
      if (covered) held.shuts_out.push_back(windows_[w]);
    }
  }
}

void NetworkBuilder::add_clean_downs(int cook, int dish, const std::vector<bool>& here) {
  const kitchen::Dish& d = dish_of(dish);
  // Cleaner work at the place by anybody: without it nothing needs cleaning before the wash-up
  // (H4).
  int lowest = 3;
  for (std::size_t c = 0; c < lesson_.cooks.size(); ++c) {
    if (lesson_.cooks[c].place != cook_of(cook).place) continue;
    for (const int other : lesson_.cooks[c].dishes) {
      const auto other_here = cooked_here(dish_of(other), carry_of(lesson_, other));
      for (std::size_t s = 0; s < other_here.size(); ++s) {
        const auto hygiene = dish_of(other).method[s].hygiene;
        if (other_here[s] && hygiene) lowest = std::min(lowest, static_cast<int>(*hygiene));
      }
    }
  }
  for (const std::vector<int>& group : soiling_groups(d, here)) {
    const kitchen::Hygiene level = *d.method[static_cast<std::size_t>(group.front())].hygiene;
    if (static_cast<int>(level) <= lowest) continue;
    const bool raw = level == kitchen::Hygiene::kRaw;
    const Seconds length = raw ? lesson_.rules.clean_after_raw : lesson_.rules.clean_after_unwashed;
    const int clean = task_node(TaskKind::kCleanDown, cook, dish, group.back(), length, 8, 1);
    Node& n = node(clean);
    n.optional = true;
    n.closing = true;
    n.cleans = level;
    for (const int s : group) after(last_part(cook, dish, s), clean, WaitWhy::kMethod);
  }
}

void NetworkBuilder::add_kit_washes(int cook, int dish, const std::vector<bool>& here) {
  const kitchen::Dish& d = dish_of(dish);
  for (std::size_t k = 0; k < lesson_.room.kit.size(); ++k) {
    const kitchen::Kit& kit = lesson_.room.kit[k];
    if (!kit.washed_between) continue;
    std::vector<int> users;
    int most = 0;
    for (const int s : kitchen::reading_order(d)) {
      if (!here[static_cast<std::size_t>(s)]) continue;
      for (const kitchen::KitNeed& need : d.method[static_cast<std::size_t>(s)].kit) {
        if (need.item != kit.item) continue;
        users.push_back(s);
        most = std::max(most, need.count);
      }
    }
    if (users.empty()) continue;
    const int item = static_cast<int>(k);
    const int wash = task_node(TaskKind::kKitWash, cook, dish, users.back(), lesson_.rules.kit_wash,
                               8, 1);
    node(wash).task.kit = item;
    node(wash).closing = true;
    Need sink;
    sink.pool = {PoolKind::kSink, bay_of(lesson_, cook)};
    node(wash).ways = {{sink}};
    Held held;
    held.cook = cook;
    held.dish = dish;
    held.what = kit.item;
    held.from = first_part(cook, dish, users.front());
    held.to = wash;
    held.ways = {{kit_need(item, most, kept_unit(item, cook))}};
    for (const int s : users) {
      for (const int n : own(cook).parts.at({dish, s})) held.nodes.push_back(n);
      if (s != users.front()) {
        wait(held.from, Moment::kStart, first_part(cook, dish, s), Moment::kStart, Seconds{0},
             std::nullopt, WaitWhy::kKit);
      }
      const bool last = s == users.back();
      wait(last_part(cook, dish, s), Moment::kEnd, wash, Moment::kStart, Seconds{0},
           last ? std::optional<Seconds>(lesson_.rules.kit_wash_within) : std::nullopt,
           WaitWhy::kKit);
    }
    net_.held.push_back(std::move(held));
  }
}

// A full clean may follow each use of a kept unit that leaves something another cook avoids (K2).
void NetworkBuilder::add_full_cleans() {
  for (const int kit : contested_kit_) {
    kitchen::Allergens avoided;
    for (const Node& n : net_.nodes) {
      if (n.allergen_kit == kit) avoided.insert(n.avoids.begin(), n.avoids.end());
    }
    const int users = static_cast<int>(net_.nodes.size());
    for (int i = 0; i < users; ++i) {
      const Node use = node(i);  // a copy: adding nodes moves the others
      if (use.allergen_kit != kit || use.task.kind != TaskKind::kStep) continue;
      const bool leaves = std::any_of(use.contains.begin(), use.contains.end(),
                                      [&](kitchen::Allergen a) { return avoided.contains(a); });
      if (!leaves) continue;
      const Seconds length = lesson_.room.kit[static_cast<std::size_t>(kit)].full_clean;
      const int clean = task_node(TaskKind::kFullClean, use.task.cook, use.task.dish, use.task.step,
                                  length, 8, 1);
      Node& n = node(clean);
      n.task.kit = kit;
      n.task.part = use.task.part;
      n.optional = true;
      n.closing = true;
      n.allergen_kit = kit;
      n.ways = {{kit_need(kit, 1, true)}};
      after(i, clean, WaitWhy::kKit);
      after(clean, own(use.task.cook).wash.back(), WaitWhy::kWash);
    }
  }
}

}  // namespace timeplan
