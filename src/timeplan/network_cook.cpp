// What one cook does: hands, collecting, the steps of each dish, gates, carry-over, packing,
// washing up, serving.
#include <algorithm>

#include "timeplan/network_builder.h"
#include "timeplan/network_methods.h"

namespace timeplan {
using kitchen::Moment;

void NetworkBuilder::add_start_of_lesson(int cook) {
  const int people = cook_of(cook).people;
  // Fewer positions than people: they take turns, and it takes so much longer (H7).
  const kitchen::Room& room = lesson_.room;
  const int sinks = room.hands_at_sinks
                        ? room.bays[static_cast<std::size_t>(bay_of(lesson_, cook))].sinks
                        : 0;
  const int positions = std::max(1, std::min(people, std::max(room.hand_basins, sinks)));
  const int rounds = (people + positions - 1) / positions;
  CookNodes& mine = own(cook);
  mine.apron = task_node(TaskKind::kApronAndHands, cook, -1, -1,
                         rounds * lesson_.rules.apron_and_hands, 10, people);
  node(mine.apron).ways = hands_ways(cook, positions);
  if (lesson_.trays_at_places) return;
  const int food = task_node(TaskKind::kCollectIngredients, cook, -1, -1,
                             lesson_.rules.collect_ingredients, 8, 1);
  Need table;
  table.pool = {PoolKind::kTable};
  node(food).ways = {{table}};
  const int tools = task_node(TaskKind::kCollectEquipment, cook, -1, -1,
                              lesson_.rules.collect_equipment, 8, 1);
  mine.collecting = {food, tools};
  for (const int c : mine.collecting) after(mine.apron, c, WaitWhy::kHands);
}

void NetworkBuilder::add_dish(int cook, int dish) {
  const std::vector<bool> here = cooked_here(dish_of(dish), carry_of(lesson_, dish));
  add_steps(cook, dish, here);
  add_method_waits(cook, dish, here);
  add_carry_over(cook, dish, here);
  const int last = kitchen::last_step(dish_of(dish));
  own(cook).ready.push_back(carried_first(dish) ? -1 : last_part(cook, dish, last));
  for (std::size_t s = 0; s < here.size(); ++s) {
    if (here[s] && dish_of(dish).method[s].gate) add_gate(cook, dish, static_cast<int>(s), here);
  }
  add_vessels(cook, dish, here);
  add_raw_groups(cook, dish, here);
  add_kit_washes(cook, dish, here);
  add_clean_downs(cook, dish, here);
  if (lesson_.purpose == kitchen::Purpose::kTakeHome && !lesson_.rack_for && !carried_first(dish))
    add_pack(cook, dish, here);
}

void NetworkBuilder::add_steps(int cook, int dish, const std::vector<bool>& here) {
  const kitchen::Dish& d = dish_of(dish);
  CookNodes& mine = own(cook);
  for (std::size_t s = 0; s < d.method.size(); ++s) {
    if (!here[s]) continue;
    const kitchen::Step& step = d.method[s];
    const auto [least, most] = planned_length(step, pace(cook));
    const auto [count, part_length] = parts(step, least);
    for (int part = 0; part < count; ++part) {
      const int people = std::min(step.people, cook_of(cook).people);
      const int index = task_node(TaskKind::kStep, cook, dish, static_cast<int>(s), part_length,
                                  tenths(step.attention), people);
      Node& n = node(index);
      n.task.part = part;
      n.most = count > 1 ? part_length : most;
      n.median = step.least / count;
      n.spread = step.spread;
      n.closing = step.closes.has_value();
      n.heated = step.heat.has_value();
      n.hygiene = step.hygiene;
      Way way;
      if (step.sink > 0) {
        Need sink;
        sink.pool = {PoolKind::kSink, bay_of(lesson_, cook)};
        sink.amount = step.sink;
        way.push_back(sink);
      }
      if (step.at_table) {
        Need table;
        table.pool = {PoolKind::kTable};
        way.push_back(table);
      }
      if (step.fridge_tenths > 0) {
        Need cold;
        cold.pool = {PoolKind::kFridge};
        cold.amount = step.fridge_tenths;
        way.push_back(cold);
      }
      if (step.freezer_tenths > 0) {
        Need cold;
        cold.pool = {PoolKind::kFreezer};
        cold.amount = step.freezer_tenths;
        way.push_back(cold);
      }
      for (const kitchen::KitNeed& need : step.kit) {
        const kitchen::Kit* kit = kitchen::find_kit(lesson_.room, need.item);
        const int k = static_cast<int>(kit - lesson_.room.kit.data());
        const bool kept = kept_unit(k, cook);
        if (kept) {
          n.allergen_kit = k;
          n.contains = kitchen::allergens(d, static_cast<int>(s));
          n.avoids = cook_of(cook).avoids;
        }
        if (!kit->washed_between) way.push_back(kit_need(k, need.count, kept));
      }
      if (step.hazard) {
        for (Way adult : adult_ways(*step.hazard)) {
          adult.insert(adult.end(), way.begin(), way.end());
          n.ways.push_back(std::move(adult));
        }
      } else if (!way.empty()) {
        n.ways = {way};
      }
      if (step.hazard) {
        for (const kitchen::Ban& ban : lesson_.bans) {
          if (ban.hazard == *step.hazard) {
            const Seconds t = base::grid_down(ban.after);
            n.latest_end = n.latest_end ? std::min(*n.latest_end, t) : t;
          }
        }
      }
      if (part == 0) n.pin = kitchen::pin_of(lesson_, cook, {dish, static_cast<int>(s)});
      std::vector<int>& all_parts = mine.parts[{dish, static_cast<int>(s)}];
      if (part > 0) after(all_parts.back(), index, WaitWhy::kParts);
      all_parts.push_back(index);
    }
    mine.steps.push_back(first_part(cook, dish, static_cast<int>(s)));
  }
}

void NetworkBuilder::add_method_waits(int cook, int dish, const std::vector<bool>& here) {
  const kitchen::Dish& d = dish_of(dish);
  const CookNodes& mine = own(cook);
  for (std::size_t s = 0; s < d.method.size(); ++s) {
    if (!here[s]) continue;
    const int to = static_cast<int>(s);
    bool root = true;
    for (const kitchen::Follows& f : d.method[s].follows) {
      if (!here[static_cast<std::size_t>(f.step)]) continue;
      const int from = f.of == Moment::kEnd ? last_part(cook, dish, f.step)
                                            : first_part(cook, dish, f.step);
      const int node_to = f.moment == Moment::kEnd ? last_part(cook, dish, to)
                                                   : first_part(cook, dish, to);
      const bool closing = d.method[s].closes == f.step;
      wait(from, f.of, node_to, f.moment, f.least, f.most,
           closing ? WaitWhy::kClosing : WaitWhy::kMethod, f.safety);
      if (f.moment == Moment::kStart) root = false;
    }
    if (!root) continue;
    if (mine.collecting.empty()) after(mine.apron, first_part(cook, dish, to), WaitWhy::kHands);
    for (const int c : mine.collecting) after(c, first_part(cook, dish, to), WaitWhy::kCollect);
  }
}

void NetworkBuilder::add_gate(int cook, int dish, int step, const std::vector<bool>& here) {
  const kitchen::Dish& d = dish_of(dish);
  const kitchen::Gate& gate = *d.method[static_cast<std::size_t>(step)].gate;
  const int look = task_node(TaskKind::kLook, cook, dish, step, gate.length, 0, 1);
  node(look).ways = leader_ways(50);
  wait(last_part(cook, dish, step), Moment::kEnd, look, Moment::kStart, Seconds{0}, gate.within,
       WaitWhy::kGate);
  for (std::size_t s = 0; s < d.method.size(); ++s) {
    if (!here[s]) continue;
    const auto& follows = d.method[s].follows;
    const bool waits = std::any_of(follows.begin(), follows.end(), [&](const kitchen::Follows& f) {
      return f.step == step && f.of == Moment::kEnd && f.moment == Moment::kStart;
    });
    if (waits) after(look, first_part(cook, dish, static_cast<int>(s)), WaitWhy::kGate);
  }
}

void NetworkBuilder::add_carry_over(int cook, int dish, const std::vector<bool>& here) {
  const auto carry = carry_of(lesson_, dish);
  if (!carry) return;
  const kitchen::Split& split = dish_of(dish).splits[static_cast<std::size_t>(carry->split)];
  if (carry->second_half) {
    const int out = task_node(TaskKind::kTakeOutOfStore, cook, dish, -1, base::minutes(1), 8, 1);
    after(own(cook).apron, out, WaitWhy::kStore);
    for (std::size_t s = 0; s < here.size(); ++s) {
      if (here[s]) after(out, first_part(cook, dish, static_cast<int>(s)), WaitWhy::kStore);
    }
    return;
  }
  const int store = task_node(TaskKind::kStore, cook, dish, split.after_step, lesson_.rules.store,
                              8, 1);
  const bool cooked = split.cooling.count() > 0;
  const int last = last_part(cook, dish, split.after_step);
  wait(last, Moment::kEnd, store, Moment::kStart, split.cooling, std::nullopt, WaitWhy::kStore,
       cooked);
  if (cooked)
    wait(last, Moment::kEnd, store, Moment::kEnd, Seconds{0}, kitchen::kIntoTheFridge,
         WaitWhy::kStore, true);
  hold_in_the_cold(cook, dish, store,
                   split.kept == kitchen::KeptIn::kFreezer ? PoolKind::kFreezer : PoolKind::kFridge,
                   split.fridge_tenths);
}

void NetworkBuilder::hold_in_the_cold(int cook, int dish, int after, PoolKind where, int tenths) {
  Held cold;
  cold.cook = cook;
  cold.dish = dish;
  cold.what = "cold space";
  cold.from = after;
  cold.from_moment = Moment::kEnd;
  cold.to = -1;
  Need space;
  space.pool = {where};
  space.amount = tenths;
  cold.ways = {{space}};
  net_.held.push_back(std::move(cold));
}

void NetworkBuilder::add_pack(int cook, int dish, const std::vector<bool>& here) {
  const int pack = task_node(TaskKind::kPack, cook, dish, -1, lesson_.rules.pack, 8, 1);
  wait(own(cook).ready.back(), Moment::kEnd, pack, Moment::kStart, dish_of(dish).cooling,
       std::nullopt, WaitWhy::kPack);
  own(cook).packing.push_back(pack);
  if (!kitchen::chilled_before_home(lesson_, dish)) return;
  // The box goes into the fridge and home from there.
  bool cooked = false;
  for (std::size_t s = 0; s < here.size(); ++s)
    cooked = cooked || (here[s] && dish_of(dish).method[s].heat);
  if (cooked)
    wait(own(cook).ready.back(), Moment::kEnd, pack, Moment::kEnd, Seconds{0},
         kitchen::kIntoTheFridge, WaitWhy::kPack, true);
  hold_in_the_cold(cook, dish, pack, PoolKind::kFridge, kitchen::kBoxTenths);
}

void NetworkBuilder::add_wash_up(int cook) {
  CookNodes& mine = own(cook);
  const std::vector<int> before = mine.all;
  const auto [count, length] = wash_up_parts(lesson_, cook);
  const int people = cook_of(cook).people;
  Need sink;
  sink.pool = {PoolKind::kSink, bay_of(lesson_, cook)};
  for (int part = 0; part < count; ++part) {
    const bool last = part + 1 == count;
    const int index = task_node(TaskKind::kWashUp, cook, -1, -1, length, last ? 10 : 8, people);
    node(index).task.part = part;
    node(index).ways = {{sink}};
    if (part > 0) after(mine.wash.back(), index, WaitWhy::kParts);
    mine.wash.push_back(index);
    if (last) {
      for (const int other : before) {
        const Node& o = node(other);
        const bool hands_on = o.attention >= 5 * o.people || o.task.kind == TaskKind::kLook;
        if (hands_on && o.task.kind != TaskKind::kPack) after(other, index, WaitWhy::kWash);
      }
      for (const int ready : mine.ready) {
        if (ready >= 0) after(ready, index, WaitWhy::kWash);
      }
      continue;
    }
    const auto& dishes = cook_of(cook).dishes;
    const int dish = dishes[std::min(static_cast<std::size_t>(part), dishes.size() - 1)];
    const auto used = mine.parts.find({dish, dish_of(dish).wash_after});
    if (used != mine.parts.end()) after(used->second.back(), index, WaitWhy::kWash);
    for (const int c : mine.collecting) after(c, index, WaitWhy::kWash);
    if (mine.collecting.empty()) after(mine.apron, index, WaitWhy::kWash);
  }
}

void NetworkBuilder::add_serving(int cook) {
  if (lesson_.purpose == kitchen::Purpose::kTakeHome) return;
  CookNodes& mine = own(cook);
  const auto& dishes = cook_of(cook).dishes;
  for (std::size_t q = 0; q < lesson_.sittings.size(); ++q) {
    const kitchen::Sitting& sitting = lesson_.sittings[q];
    std::vector<std::size_t> mine_here;
    for (std::size_t k = 0; k < dishes.size(); ++k) {
      const bool named = sitting.dishes.empty() ||
                         std::find(sitting.dishes.begin(), sitting.dishes.end(), dishes[k]) !=
                             sitting.dishes.end();
      if (named && mine.ready[k] >= 0) mine_here.push_back(k);
    }
    if (mine_here.empty()) continue;
    Node moment;
    moment.task.cook = cook;
    moment.task.part = static_cast<int>(q);
    moment.least = moment.most = Seconds{0};
    moment.earliest = base::grid_up(sitting.earliest);
    moment.latest_end = base::grid_down(sitting.latest);
    const int v = add(std::move(moment));
    mine.serves.push_back(v);
    net_.serves.push_back({cook, static_cast<int>(q), v});
    for (const std::size_t k : mine_here) {
      const kitchen::Dish& dish = dish_of(dishes[k]);
      const bool safety = dish.hold.kind == kitchen::HoldKind::kKeeps;
      wait(mine.ready[k], Moment::kEnd, v, Moment::kStart, Seconds{0}, dish.hold.most,
           WaitWhy::kHold, safety);
      if (dish.hold.in == kitchen::HoldIn::kNone) continue;
      Held held;
      held.cook = cook;
      held.dish = dishes[k];
      held.what = "holding";
      held.from = mine.ready[k];
      held.from_moment = Moment::kEnd;
      held.to = v;
      held.to_moment = Moment::kStart;
      if (dish.hold.in == kitchen::HoldIn::kFridge) {
        Need cold;
        cold.pool = {PoolKind::kFridge};
        cold.amount = 2;
        held.ways = {{cold}};
      } else {
        kitchen::Heat heat;
        heat.with = dish.hold.in == kitchen::HoldIn::kRing ? kitchen::HeatKind::kRing
                                                           : kitchen::HeatKind::kOven;
        held.ways = heat_ways(cook, heat, {{80, kitchen::OvenKind::kConventional}});
      }
      net_.held.push_back(std::move(held));
    }
    for (std::size_t w = 0; w < lesson_.windows.size(); ++w) {
      const kitchen::Window& window = lesson_.windows[w];
      const bool covered = covers(window, cook);
      if (!window.tasting || !covered) continue;
      const bool exact = lesson_.purpose == kitchen::Purpose::kTaste;
      wait(v, Moment::kStart, windows_[w], Moment::kStart, Seconds{0},
           exact ? std::optional<Seconds>(Seconds{0}) : std::nullopt, WaitWhy::kServe);
    }
    if (!lesson_.taste_after_washing_up) after(v, mine.wash.back(), WaitWhy::kServe);
  }
}

}  // namespace timeplan
