#include "timeplan/network.h"

#include <algorithm>
#include <map>
#include <utility>

#include "timeplan/network_builder.h"
#include "timeplan/network_methods.h"

namespace timeplan {

using kitchen::Moment;

namespace {

// Cooks of one wave with the same list of dishes share a timeline; with own timelines everybody has
// one.
std::vector<int> lines(const kitchen::Lesson& lesson, const std::vector<int>& wave_of_cook) {
  std::map<std::pair<int, std::vector<int>>, int> known;
  std::vector<int> line_of_cook;
  for (std::size_t c = 0; c < lesson.cooks.size(); ++c) {
    const bool own = lesson.timelines == kitchen::Timelines::kOwn;
    const int wave = own || wave_of_cook.empty() ? static_cast<int>(own ? c : 0) : wave_of_cook[c];
    const auto key = std::make_pair(wave, lesson.cooks[c].dishes);
    line_of_cook.push_back(known.emplace(key, static_cast<int>(known.size())).first->second);
  }
  return line_of_cook;
}

// Kit on which a cook who avoids an allergen may meet what another cook's dish leaves there.
std::set<int> contested_kit(const kitchen::Lesson& lesson) {
  std::set<int> contested;
  for (std::size_t k = 0; k < lesson.room.kit.size(); ++k) {
    kitchen::Allergens avoided, brought;
    for (const kitchen::Cook& cook : lesson.cooks) {
      for (const int d : cook.dishes) {
        const kitchen::Dish& dish = lesson.dishes[static_cast<std::size_t>(d)];
        for (std::size_t s = 0; s < dish.method.size(); ++s) {
          for (const kitchen::KitNeed& need : dish.method[s].kit) {
            if (need.item != lesson.room.kit[k].item) continue;
            avoided.insert(cook.avoids.begin(), cook.avoids.end());
            const kitchen::Allergens here = kitchen::allergens(dish, static_cast<int>(s));
            brought.insert(here.begin(), here.end());
          }
        }
      }
    }
    const bool meets = std::any_of(avoided.begin(), avoided.end(),
                                   [&](kitchen::Allergen a) { return brought.contains(a); });
    if (meets) contested.insert(static_cast<int>(k));
  }
  return contested;
}

}  // namespace

NetworkBuilder::NetworkBuilder(const kitchen::Lesson& lesson, const std::vector<int>& wave_of_cook)
    : lesson_(lesson) {
  net_.line_of_cook = lines(lesson, wave_of_cook);
  for (const int line : net_.line_of_cook) net_.lines = std::max(net_.lines, line + 1);
  own_.resize(lesson.cooks.size());
  net_.last_of_dish.resize(lesson.cooks.size());
  net_.wash_up.resize(lesson.cooks.size());
  contested_kit_ = contested_kit(lesson);
  for (std::size_t c = 0; c < lesson.cooks.size(); ++c) {
    net_.buffer.push_back(buffer_of(lesson, static_cast<int>(c), pace(static_cast<int>(c))));
  }
  // With waves the slowest cook's buffer counts for the whole wave (8.1).
  if (lesson.timelines == kitchen::Timelines::kWaves && !wave_of_cook.empty()) {
    std::map<int, Seconds> largest;
    for (std::size_t c = 0; c < lesson.cooks.size(); ++c) {
      Seconds& b = largest[wave_of_cook[c]];
      b = std::max(b, net_.buffer[c]);
    }
    for (std::size_t c = 0; c < lesson.cooks.size(); ++c) net_.buffer[c] = largest[wave_of_cook[c]];
  }
}

Network NetworkBuilder::build() && {
  add_windows();
  for (int c = 0; c < static_cast<int>(lesson_.cooks.size()); ++c) {
    add_start_of_lesson(c);
    for (const int dish : cook_of(c).dishes) add_dish(c, dish);
    add_wash_up(c);
    add_serving(c);
    close_raw_groups(c);
    net_.last_of_dish[static_cast<std::size_t>(c)] = own(c).ready;
    net_.wash_up[static_cast<std::size_t>(c)] = own(c).wash;
  }
  add_window_waits();
  add_full_cleans();
  add_knives();
  add_bay_looks();
  mark_queued();
  return std::move(net_);
}

int NetworkBuilder::add(Node node) {
  const int index = static_cast<int>(net_.nodes.size());
  if (node.task.cook >= 0) own(node.task.cook).all.push_back(index);
  net_.nodes.push_back(std::move(node));
  return index;
}

int NetworkBuilder::task_node(TaskKind kind, int cook, int dish, int step, Seconds length,
                              int attention, int people) {
  Node n;
  n.task.kind = kind;
  n.task.cook = cook;
  n.task.dish = dish;
  n.task.step = step;
  n.least = n.most = std::max(base::kGrid, base::grid_up(length));
  n.attention = attention * people;
  n.busy = (attention >= 8 ? 2 : attention == 5 ? 1 : 0) * people;
  n.people = people;
  if (cook >= 0) n.earliest = base::grid_up(cook_of(cook).arrives);
  return add(std::move(n));
}

void NetworkBuilder::wait(int from, Moment from_moment, int to, Moment to_moment, Seconds least,
                          std::optional<Seconds> most, WaitWhy why, bool safety) {
  Wait w;
  w.from = from;
  w.from_moment = from_moment;
  w.to = to;
  w.to_moment = to_moment;
  w.least = base::grid_up(least);
  if (most) w.most = base::grid_down(*most);
  w.why = why;
  w.safety = safety;
  net_.waits.push_back(w);
}

void NetworkBuilder::after(int from, int to, WaitWhy why) {
  wait(from, Moment::kEnd, to, Moment::kStart, Seconds{0}, std::nullopt, why);
}

double NetworkBuilder::pace(int cook) const {
  double slowest = cook_of(cook).pace;
  const int line = net_.line_of_cook[static_cast<std::size_t>(cook)];
  for (std::size_t c = 0; c < lesson_.cooks.size(); ++c) {
    if (net_.line_of_cook[c] == line) slowest = std::max(slowest, lesson_.cooks[c].pace);
  }
  return slowest;
}

bool NetworkBuilder::carried_first(int dish) const {
  const auto carry = carry_of(lesson_, dish);
  return carry && !carry->second_half;
}

std::vector<Way> NetworkBuilder::hands_ways(int cook, int positions) const {
  std::vector<Way> ways;
  const int bay = bay_of(lesson_, cook);
  const int sinks = lesson_.room.bays[static_cast<std::size_t>(bay)].sinks;
  if (lesson_.room.hand_basins >= positions)
    ways.push_back({Need{.pool = {PoolKind::kBasin},
                         .amount = positions,
                         .settings = {},
                         .door_shut = {},
                         .hazard = {}}});
  if (lesson_.room.hands_at_sinks && sinks >= positions) {
    ways.push_back({Need{.pool = {PoolKind::kSink, bay},
                         .amount = positions,
                         .settings = {},
                         .door_shut = {},
                         .hazard = {}}});
  }
  return ways;
}

std::vector<Way> NetworkBuilder::adult_ways(kitchen::Hazard hazard) const {
  std::vector<Way> ways;
  for (std::size_t a = 0; a < lesson_.adults.size(); ++a) {
    const auto& may = lesson_.adults[a].may_watch;
    if (std::find(may.begin(), may.end(), hazard) == may.end()) continue;
    Need need;
    need.pool = {PoolKind::kAdult, static_cast<int>(a)};
    need.amount = lesson_.rules.watch.at(hazard).hundredths;
    need.hazard = hazard;
    ways.push_back({need});
  }
  return ways;
}

std::vector<Way> NetworkBuilder::leader_ways(int hundredths) const {
  std::vector<Way> ways;
  for (std::size_t a = 0; a < lesson_.adults.size(); ++a) {
    if (!lesson_.adults[a].leads) continue;
    Need need;
    need.pool = {PoolKind::kAdult, static_cast<int>(a)};
    need.amount = hundredths;
    ways.push_back({need});
  }
  return ways;
}

std::vector<Way> NetworkBuilder::heat_ways(
    int cook, const kitchen::Heat& heat, const std::vector<kitchen::OvenSetting>& settings) const {
  std::vector<Way> ways;
  for (const int index :
       lesson_.room.places[static_cast<std::size_t>(cook_of(cook).place)].cookers) {
    const kitchen::Cooker& cooker = lesson_.room.cookers[static_cast<std::size_t>(index)];
    if (!kitchen::may_use(lesson_, cooker, heat.with)) continue;
    Need need;
    if (heat.with == kitchen::HeatKind::kRing) {
      if (cooker.rings < heat.rings) continue;
      need.pool = {PoolKind::kRings, index};
      need.amount = heat.rings;
    } else if (heat.with == kitchen::HeatKind::kGrill &&
               cooker.grill == kitchen::GrillKind::kEyeLevel) {
      need.pool = {PoolKind::kGrill, index};
    } else {
      const bool grill = heat.with == kitchen::HeatKind::kGrill;
      if (cooker.shelves == 0 || (grill && cooker.grill != kitchen::GrillKind::kInOven)) continue;
      if (!grill && heat.setting.kind == kitchen::OvenKind::kFan && !cooker.fan) continue;
      need.pool = {PoolKind::kOven, index};
      need.amount = heat.shelf_twelfths;
      need.settings = settings;
      if (grill) {
        for (kitchen::OvenSetting& s : need.settings) s.kind = kitchen::OvenKind::kGrill;
      }
      need.door_shut = heat.door_shut;
    }
    ways.push_back({need});
  }
  return ways;
}

bool NetworkBuilder::kept_unit(int kit, int cook) const {
  if (!contested_kit_.contains(kit)) return false;
  return lesson_.room.kit[static_cast<std::size_t>(kit)].count == 1 ||
         !cook_of(cook).avoids.empty();
}

Need NetworkBuilder::kit_need(int kit, int count, bool kept) const {
  Need need;
  need.pool = {PoolKind::kKit, kit, kept ? 0 : -1};
  need.amount = count;
  return need;
}

Network network(const kitchen::Lesson& lesson, const std::vector<int>& wave_of_cook) {
  return NetworkBuilder(lesson, wave_of_cook).build();
}

int capacity(const kitchen::Lesson& lesson, Pool pool) {
  const kitchen::Room& room = lesson.room;
  const auto i = static_cast<std::size_t>(pool.index);
  switch (pool.kind) {
    case PoolKind::kSink:
      return room.bays[i].sinks;
    case PoolKind::kBasin:
      return room.hand_basins;
    case PoolKind::kTable:
      return room.table_positions;
    case PoolKind::kKit:
      if (pool.unit == 0) return 1;
      return room.kit[i].count - (contested_kit(lesson).contains(pool.index) ? 1 : 0);
    case PoolKind::kRings:
      return room.cookers[i].rings;
    case PoolKind::kOven:
      return room.cookers[i].shelves * 12;
    case PoolKind::kGrill:
      return room.cookers[i].grill_places;
    case PoolKind::kFridge:
      return room.fridge_tenths;
    case PoolKind::kFreezer:
      return room.freezer_tenths;
    case PoolKind::kAdult:
      return 100;
  }
  return 0;
}

}  // namespace timeplan
