// The supper: three cooks, four dishes, most of what can happen in a room. Every figure below is
// worked out by hand.
#include "sample.h"

namespace timeplan::sample {

using base::minutes;
using kitchen::Attention;
using kitchen::Hygiene;

namespace {

kitchen::Room room() {
  kitchen::Room r;
  r.name = "Food Room 1";
  r.bays = {{"A", 2}, {"B", 1}};
  kitchen::Cooker a1;
  a1.name = "A1";
  kitchen::Cooker a2 = a1;
  a2.name = "A2";
  a2.shelves = 1;
  a2.fan = false;
  kitchen::Cooker b1 = a1;
  b1.name = "B1";
  b1.bay = 1;
  r.cookers = {a1, a2, b1};
  r.places = {{"A1", 0, {0, 1}}, {"B1", 1, {2}}};
  r.hand_basins = 2;
  r.table_positions = 2;
  kitchen::Kit knife;
  knife.item = "knife";
  knife.count = 4;
  kitchen::Kit processor;
  processor.item = "food processor";
  processor.count = 2;
  processor.washed_between = true;
  kitchen::Kit grater;
  grater.item = "grater";
  r.kit = {knife, processor, grater};
  return r;
}

kitchen::Dish mince() {
  kitchen::Dish d;
  d.name = "Mince and beans";
  d.tag = "MB";
  auto dice = step("Dice onion", Attention::kHands, 5);  // 6 min
  dice.hygiene = Hygiene::kUnwashed;
  dice.kit = {{"knife", 1}};
  auto cut = step("Cut meat", Attention::kHands, 3);  // 4 min
  after(cut, 0).hygiene = Hygiene::kRaw;
  cut.kit = {{"knife", 1}};
  auto brown = step("Brown", Attention::kStandBy, 4);  // 5 min
  after(brown, 1).heat = ring("pan");
  auto simmer = step("Simmer", Attention::kGlance, 20);
  after(simmer, 2).heat = ring("pan");
  simmer.most = minutes(25);
  simmer.elastic_loss = 1;
  auto off = step("Take off", Attention::kHands, 1);  // 2 min
  after(off, 3, 1).closes = 3;
  auto plate = step("Plate", Attention::kHands, 2);  // 3 min
  after(plate, 4).hygiene = Hygiene::kReadyToEat;
  d.method = {dice, cut, brown, simmer, off, plate};
  d.hold = {kitchen::HoldKind::kHot, minutes(20), kitchen::HoldIn::kRing};
  d.wash_after = 2;
  return d;
}

kitchen::Dish salad() {
  kitchen::Dish d;
  d.name = "Salad bowl";
  d.tag = "SB";
  auto rinse = step("Rinse leaves", Attention::kHands, 2);  // 3 min
  rinse.hygiene = Hygiene::kUnwashed;
  rinse.sink = 1;
  auto shred = step("Shred", Attention::kHands, 4);  // 5 min
  after(shred, 0).hygiene = Hygiene::kReadyToEat;
  shred.kit = {{"knife", 1}, {"food processor", 1}};
  auto chill = step("Chill", Attention::kLeave, 10);
  after(chill, 1).fridge_tenths = 4;
  auto dress = step("Dress", Attention::kHands, 1);  // 2 min
  after(dress, 2).hygiene = Hygiene::kReadyToEat;
  d.method = {rinse, shred, chill, dress};
  d.hold = {kitchen::HoldKind::kKeeps, minutes(240), kitchen::HoldIn::kFridge};
  d.wash_after = 1;
  return d;
}

kitchen::Dish tart() {
  kitchen::Dish d;
  d.name = "Cheese tart";
  d.tag = "CT";
  d.ingredients = {{"cheese", 100, "g", {kitchen::Allergen::kMilk}, true, "", "", false}};
  auto grate = step("Grate cheese", Attention::kHands, 3);  // 4 min
  grate.kit = {{"grater", 1}};
  auto mix = step("Mix", Attention::kHands, 12);  // 13 min: three parts of 4 1/3, so 5
  after(mix, 0).can_put_down = true;
  mix.people = 2;
  auto bake = step("Bake", Attention::kLeave, 15);
  after(bake, 1).heat = oven("tin", 180, kitchen::OvenKind::kFan, 6);
  bake.heat->tolerance = 10;
  bake.heat->door_shut = minutes(5);
  auto out = step("Take out", Attention::kHands, 1);  // 2 min
  after(out, 2, 1).closes = 2;
  auto slice = step("Slice", Attention::kHands, 2);  // 3 min
  after(slice, 3).hygiene = Hygiene::kReadyToEat;
  slice.kit = {{"knife", 1}};
  d.method = {grate, mix, bake, out, slice};
  d.hold = {kitchen::HoldKind::kCrisp, minutes(10), kitchen::HoldIn::kNone};
  d.wash_after = 1;
  return d;
}

kitchen::Dish fritters() {
  kitchen::Dish d;
  d.name = "Fritters";
  d.tag = "FR";
  auto batter = step("Batter", Attention::kHands, 4);  // 5 min
  batter.hygiene = Hygiene::kReadyToEat;
  batter.gate = kitchen::Gate{"smooth and thick", minutes(1), minutes(5)};
  auto fry = step("Fry", Attention::kNothingElse, 6);  // 7 min
  after(fry, 0).heat = ring("deep pan");
  fry.hazard = kitchen::Hazard::kHotOil;
  auto lift = step("Lift", Attention::kHands, 1);  // 2 min
  after(lift, 1, 0).closes = 1;
  d.method = {batter, fry, lift};
  d.hold = {kitchen::HoldKind::kCrisp, minutes(10), kitchen::HoldIn::kNone};
  d.wash_after = 0;
  return d;
}

// One person. Cutting meat dirties the place the salad wants too, so the clean-down cannot wait.
void mince_tasks(Sample& s) {
  s.apron(0, 5, 7);
  s.add(TaskKind::kCollectIngredients, 0, 7, 10);
  s.add(TaskKind::kCollectEquipment, 0, 10, 13);
  s.step(0, 0, 0, 13, 19).kit_units = {0};
  s.step(0, 0, 1, 19, 23).kit_units = {0};
  Task& hands = s.add(TaskKind::kHandWash, 0, 23, 24);
  hands.dish = 0;
  hands.step = 1;
  hands.basin = true;
  s.add(TaskKind::kCleanDown, 0, 24, 28);
  s.step(0, 0, 2, 28, 33).cooker = 0;
  s.step(0, 0, 3, 33, 53).cooker = 0;
  s.step(0, 0, 4, 53, 55);
  s.step(0, 0, 5, 55, 58);
  s.wash_up(0, 0, 33, 38);  // 14 min: three parts of 4 2/3, so 5
  s.wash_up(0, 1, 38, 43);
  s.wash_up(0, 2, 60, 65);
  s.serve(0, 60);
}

// Three people at the same place. Hands at the two sinks of the bay: two rounds of 2 min.
void salad_tasks(Sample& s) {
  s.add(TaskKind::kApronAndHands, 1, 5, 9).sink_bay = 0;
  s.add(TaskKind::kCollectIngredients, 1, 10, 13);
  s.add(TaskKind::kCollectEquipment, 1, 9, 12);
  s.step(1, 1, 0, 13, 16).sink_bay = 0;
  s.add(TaskKind::kCleanDown, 1, 28, 30);
  s.step(1, 1, 1, 30, 35).kit_units = {1, 0};
  Task& kit = s.add(TaskKind::kKitWash, 1, 35, 37);
  kit.dish = 1;
  kit.step = 1;
  kit.kit = 1;
  kit.kit_units = {0};
  kit.sink_bay = 0;
  s.step(1, 1, 2, 35, 45);
  s.step(1, 1, 3, 45, 47);
}

void tart_tasks(Sample& s) {
  s.step(1, 2, 0, 16, 20).kit_units = {0};
  s.step(1, 2, 1, 20, 25, 0);
  s.step(1, 2, 1, 25, 30, 1);
  s.step(1, 2, 1, 30, 35, 2);
  Task& bake = s.step(1, 2, 2, 35, 50);
  bake.cooker = 0;
  bake.setting = {180, kitchen::OvenKind::kFan};
  s.step(1, 2, 3, 50, 52);
  s.step(1, 2, 4, 52, 55).kit_units = {1};
  s.wash_up(1, 0, 37, 41);  // 8 + 3 min: three parts of 3 2/3, so 4
  s.wash_up(1, 1, 41, 45);
  s.wash_up(1, 2, 57, 61);
  s.serve(1, 57);
}

void fritter_tasks(Sample& s) {
  s.apron(2, 5, 7);
  s.add(TaskKind::kCollectIngredients, 2, 7, 10);
  s.add(TaskKind::kCollectEquipment, 2, 10, 13);
  s.step(2, 3, 0, 13, 18);
  Task& look = s.add(TaskKind::kLook, 2, 18, 19);
  look.dish = 3;
  look.step = 0;
  look.adult = 0;
  Task& fry = s.step(2, 3, 1, 41, 48);
  fry.cooker = 2;
  fry.adult = 0;
  s.step(2, 3, 2, 48, 50);
  s.wash_up(2, 0, 19, 24);
  s.wash_up(2, 1, 24, 29);
  s.wash_up(2, 2, 55, 60);
  s.serve(2, 55);
}

void adult_tasks(Sample& s) {
  Task& before = s.add(TaskKind::kWindow, -1, 0, 5);
  before.window = 0;
  before.adult = 0;
  s.add(TaskKind::kKnivesOut, -1, 7, 9).adult = 0;
  s.add(TaskKind::kKnivesIn, -1, 55, 57).adult = 0;
  Task& bay_b = s.add(TaskKind::kBayLook, -1, 60, 61);
  bay_b.bay = 1;
  bay_b.adult = 0;
  Task& bay_a = s.add(TaskKind::kBayLook, -1, 65, 66);
  bay_a.bay = 0;
  bay_a.adult = 0;
}

kitchen::Window register_call() {
  kitchen::Window w;
  w.name = "Register";
  w.length = minutes(5);
  w.led_by = 0;
  w.before = {{0, 0}, {3, 0}};
  return w;
}

}  // namespace

Sample supper() {
  Sample s = blank(90);
  s.lesson.room = room();
  s.lesson.check_out = minutes(5);
  s.lesson.dishes = {mince(), salad(), tart(), fritters()};
  s.lesson.cooks = {cook("Asa", 1, 0, {0}, 90), cook("Bryn, Cai and Dot", 3, 0, {1, 2}, 90),
                    cook("Efa", 1, 1, {3}, 90)};
  s.lesson.cooks[1].away = {{minutes(55), minutes(57)}};
  s.lesson.windows = {register_call()};
  kitchen::Adult technician;
  technician.name = "Mr Lindqvist";
  technician.may_watch = {kitchen::Hazard::kLargePan};
  technician.to = minutes(70);
  s.lesson.adults.push_back(technician);
  mince_tasks(s);
  salad_tasks(s);
  tart_tasks(s);
  fritter_tasks(s);
  adult_tasks(s);
  s.plan.wave_of_cook = {0, 1, 2};
  s.plan.waves = 3;
  // Asa: 20 min of hands-on work, sd 0.17 * 20 = 3.4, 0.84 * 3.4 - 5 * 0.5 = 0.4, so the least
  // there is: 3. Bryn, Cai and Dot: 3 + 5 + 2 + 4 + 13 + 2 + 3 = 32, sd 5.44, 4.57 - 3.5 = 1.1, 3.
  // Efa: 14, 3.
  s.plan.buffer = {minutes(3), minutes(3), minutes(3)};
  // Waits: mince 58 to 60 (hot, 2), tart 55 to 57 (crisp, 6), fritters 50 to 55 (crisp, 15). Ends
  // 65 + 61 + 60.
  s.levels({0, 0, 0, 0, 23, 186});
  return s;
}

}  // namespace timeplan::sample
