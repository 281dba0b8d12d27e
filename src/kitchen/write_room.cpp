// Rooms and house rules.
#include "kitchen/document.h"
#include "kitchen/house_minutes.h"

namespace kitchen {
namespace {

Node cooker_node(const Cooker& cooker) {
  Node node = Node::object();
  node.set("name", Node::of(cooker.name));
  node.set("rings", Node::of(cooker.rings));
  node.set("shelves", Node::of(cooker.shelves));
  node.set("grill", Node::of(word_for(kGrillWords, cooker.grill)));
  if (cooker.grill_places != 1) node.set("grill_places", Node::of(cooker.grill_places));
  node.set("fan", Node::of(cooker.fan));
  if (cooker.gas != Gas::kNone) node.set("gas", Node::of(word_for(kGasWords, cooker.gas)));
  return node;
}

Node bay_node(const Room& room, int bay) {
  Node node = Node::object();
  node.set("name", Node::of(room.bays[static_cast<std::size_t>(bay)].name));
  node.set("sinks", Node::of(room.bays[static_cast<std::size_t>(bay)].sinks));
  Node& cookers = node.set("cookers", Node::list());
  for (const Cooker& cooker : room.cookers) {
    if (cooker.bay == bay) cookers.add(cooker_node(cooker));
  }
  Node& places = node.set("places", Node::list());
  for (const Place& place : room.places) {
    if (place.bay != bay) continue;
    Node& entry = places.add(Node::object());
    entry.set("name", Node::of(place.name));
    Node& reach = entry.set("cookers", Node::list());
    for (const int c : place.cookers)
      reach.add(Node::of(room.cookers[static_cast<std::size_t>(c)].name));
  }
  return node;
}

}  // namespace

Node node_of(const Room& room) {
  Node node = Node::object();
  node.set("kind", Node::of("room"));
  node.set("version", Node::of(1));
  node.set("name", Node::of(room.name));
  Node& bays = node.set("bays", Node::list());
  for (std::size_t b = 0; b < room.bays.size(); ++b) bays.add(bay_node(room, static_cast<int>(b)));
  node.set("hand_basins", Node::of(room.hand_basins));
  node.set("hands_at_sinks", Node::of(room.hands_at_sinks));
  node.set("table_positions", Node::of(room.table_positions));
  node.set("fridge_tenths", Node::of(room.fridge_tenths));
  node.set("freezer_tenths", Node::of(room.freezer_tenths));
  Node& kit = node.set("kit", Node::list());
  for (const Kit& each : room.kit) {
    Node& entry = kit.add(Node::object());
    entry.set("item", Node::of(each.item));
    entry.set("count", Node::of(each.count));
    if (each.washed_between) entry.set("washed_between", Node::of(true));
    entry.set("full_clean_minutes", minutes_node(each.full_clean));
  }
  Node& rates = node.set("change_over", Node::object());
  rates.set("cold_to_180_minutes", minutes_node(room.change_over.cold_to_180));
  rates.set("cold_more_per_10_minutes", minutes_node(room.change_over.cold_more_per_10));
  rates.set("heat_per_10_minutes", minutes_node(room.change_over.heat_per_10));
  rates.set("cool_degrees_per_minute", Node::of(room.change_over.cool_degrees_per_minute));
  if (!room.seen_together.empty()) {
    Node& seen = node.set("seen_together", Node::list());
    for (const std::vector<int>& set : room.seen_together) {
      Node& names = seen.add(Node::list());
      for (const int bay : set) names.add(Node::of(room.bays[static_cast<std::size_t>(bay)].name));
    }
  }
  return node;
}

Node node_of(const HouseRules& rules) {
  Node node = Node::object();
  node.set("kind", Node::of("house_rules"));
  node.set("version", Node::of(1));
  if (!rules.school.empty()) node.set("school", Node::of(rules.school));
  for (const HouseSwitch& each : kHouseSwitches) node.set(each.key, Node::of(rules.*each.value));
  node.set("frying_from_year", Node::of(rules.frying_from_year));
  node.set("knives_from_year", Node::of(rules.knives_from_year));
  node.set("gas_from_year", Node::of(rules.gas_from_year));
  node.set("second_adult_above", Node::of(rules.second_adult_above));
  Node& watch = node.set("watch", Node::object());
  for (const auto& [hazard, limits] : rules.watch) {
    Node& entry = watch.set(word(hazard), Node::object());
    entry.set("hundredths", Node::of(limits.hundredths));
    entry.set("at_once", Node::of(limits.at_once));
  }
  for (const HouseMinutes& each : kHouseMinutes)
    node.set(each.key, minutes_node(rules.*each.value));
  Node& wash_up = node.set("wash_up_minutes", Node::object());
  for (const HouseMinutes& each : kWashUpMinutes)
    wash_up.set(each.key, minutes_node(rules.*each.value));
  return node;
}

std::string write_room(const Room& room) { return json_text(node_of(room)); }

std::string write_house_rules(const HouseRules& rules) { return json_text(node_of(rules)); }

}  // namespace kitchen
