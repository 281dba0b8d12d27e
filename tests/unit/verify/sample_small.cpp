// Two smaller lessons: two pans on one ring with a mixer between allergens, and dishes carried from
// lesson to lesson.
#include "sample.h"

namespace timeplan::sample {

using base::minutes;
using kitchen::Attention;

namespace {

kitchen::Room two_bays(int rings) {
  kitchen::Room r;
  r.name = "Food Room 3";
  r.bays = {{"A", 1}, {"B", 1}};
  kitchen::Cooker a1;
  a1.name = "A1";
  a1.rings = rings;
  kitchen::Cooker b1 = a1;
  b1.name = "B1";
  b1.bay = 1;
  r.cookers = {a1, b1};
  r.places = {{"A1", 0, {0}}, {"B1", 1, {1}}};
  r.hand_basins = 4;
  r.seen_together = {{0}, {1}};
  kitchen::Kit mixer;
  mixer.item = "mixer";
  mixer.count = 2;
  r.kit = {mixer};
  return r;
}

kitchen::Step boil(const char* brief, const char* vessel, int length) {
  auto s = step(brief, Attention::kGlance, length);
  s.heat = ring(vessel);
  return s;
}

kitchen::Step drain(int of) {
  auto s = step("Drain", Attention::kHands, 1);  // 2 min
  after(s, of, 0).closes = of;
  s.hazard = kitchen::Hazard::kLargePan;
  s.sink = 1;
  return s;
}

kitchen::Dish hot_dish(const char* name, std::vector<kitchen::Step> method, int wash_after) {
  kitchen::Dish d;
  d.name = name;
  d.tag = "HD";
  d.method = std::move(method);
  d.hold = {kitchen::HoldKind::kHot, minutes(20), kitchen::HoldIn::kNone};
  d.wash_after = wash_after;
  return d;
}

kitchen::Dish sauce() {
  auto whisk = step("Whisk", Attention::kHands, 3);  // 4 min
  whisk.kit = {{"mixer", 1}};
  auto stir = step("Stir", Attention::kStandBy, 4);  // 5 min
  after(stir, 0).heat = ring("small pan");
  auto pour = step("Pour off", Attention::kHands, 1);  // 2 min
  after(pour, 1, 1).closes = 1;
  auto d = hot_dish("Milk sauce", {whisk, stir, pour}, 2);
  d.ingredients = {{"milk", 300, "ml", {kitchen::Allergen::kMilk}, true, "", "", false}};
  return d;
}

kitchen::Dish whip() {
  auto beat = step("Whip", Attention::kHands, 4);  // 5 min
  after(beat, 1).kit = {{"mixer", 1}};
  return hot_dish("Plain whip", {boil("Boil syrup", "pot", 5), drain(0), beat}, 1);
}

void drained(Sample& s, int cook, int dish, int from, int to) {
  Task& t = s.step(cook, dish, 1, from, to);
  t.sink_bay = cook;
  t.adult = 0;
}

kitchen::Dish bread() {
  auto knead = step("Knead", Attention::kHands, 10);  // 10 * exp((0.36 + 0.0289) / 2) = 12.1, 13
                                                      // min
  knead.spread = 0.6;
  auto shape = step("Shape", Attention::kHands, 3);
  after(shape, 0);
  kitchen::Dish d = hot_dish("Bread", {knead, shape}, 0);
  kitchen::Split split;
  split.name = "after kneading";
  split.after_step = 0;
  split.cooling = minutes(5);
  split.fridge_tenths = 3;
  d.splits = {split};
  return d;
}

kitchen::Dish soup() {
  auto sweat = step("Sweat", Attention::kStandBy, 4);
  auto simmer = boil("Simmer", "pot", 10);
  after(simmer, 0);
  simmer.most = minutes(12);
  simmer.elastic_loss = 2;
  simmer.spread = 0.5;
  auto off = step("Take off", Attention::kHands, 1);  // 2 min
  after(off, 1, 1).closes = 1;
  auto mash = step("Mash", Attention::kHands, 2);  // 3 min
  after(mash, 2);
  kitchen::Dish d = hot_dish("Soup", {sweat, simmer, off, mash}, 3);
  d.cooling = minutes(5);
  kitchen::Split split;
  split.name = "after sweating";
  split.after_step = 0;
  d.splits = {split};
  return d;
}

void no_counting(Sample& s) {
  s.lesson.trays_at_places = true;
  s.lesson.rules.count_knives = false;
  s.lesson.rules.look_at_bays = false;
}

}  // namespace

Sample two_pans() {
  Sample s = blank(45);
  no_counting(s);
  s.lesson.room = two_bays(1);
  s.lesson.dishes = {hot_dish("Pasta", {boil("Boil pasta", "pot", 8), drain(0)}, 1), sauce(),
                     whip()};
  s.lesson.cooks = {cook("Jo, Kit and Lou", 3, 0, {0, 1}, 45), cook("Mia", 1, 1, {2}, 45)};
  s.lesson.cooks[1].avoids = {kitchen::Allergen::kMilk};
  s.apron(0, 0, 2);
  s.step(0, 0, 0, 2, 10).cooker = 0;
  drained(s, 0, 0, 10, 12);
  s.step(0, 1, 0, 2, 6).kit_units = {0};
  Task& clean = s.add(TaskKind::kFullClean, 0, 6, 12);
  clean.kit = 0;
  clean.kit_units = {0};
  s.step(0, 1, 1, 12, 17).cooker = 0;
  s.step(0, 1, 2, 17, 19);
  s.wash_up(0, 0, 19, 23);  // 8 + 3 min: three parts of 3 2/3, so 4
  s.wash_up(0, 1, 23, 27);
  s.wash_up(0, 2, 27, 31);
  s.serve(0, 24);
  s.apron(1, 0, 2);
  s.step(1, 2, 0, 2, 7).cooker = 1;
  drained(s, 1, 2, 7, 9);
  s.step(1, 2, 2, 12, 17).kit_units = {0};
  s.wash_up(1, 0, 17, 22);  // 14 min: three parts of 4 2/3, so 5
  s.wash_up(1, 1, 22, 27);
  s.wash_up(1, 2, 27, 32);
  s.serve(1, 20);
  s.plan.wave_of_cook = {0, 1};
  s.plan.waves = 2;
  s.plan.buffer = {minutes(3), minutes(3)};
  // Ready at 12 and 19: 7 min apart, 3 are free. Waits 12 + 5 + 3. Ends 31 + 32.
  s.levels({0, 0, 0, 4, 20, 63});
  return s;
}

Sample take_home() {
  Sample s = blank(38);
  no_counting(s);
  s.lesson.room = two_bays(4);
  s.lesson.purpose = kitchen::Purpose::kTakeHome;
  s.lesson.sittings.clear();
  s.lesson.dishes = {bread(), soup()};
  s.lesson.carry = {{0, 0, false}, {1, 0, true}};
  s.lesson.cooks = {cook("Ned", 1, 0, {0}, 38), cook("Oki", 1, 1, {1}, 38)};
  s.apron(0, 0, 2);
  s.step(0, 0, 0, 2, 15);
  s.wash_up(0, 0, 15, 20);
  s.add(TaskKind::kStore, 0, 20, 22).dish = 0;
  s.wash_up(0, 1, 22, 27);
  s.wash_up(0, 2, 27, 32);
  s.apron(1, 0, 2);
  s.add(TaskKind::kTakeOutOfStore, 1, 2, 3).dish = 1;
  s.step(1, 1, 1, 3, 14).cooker = 1;
  s.step(1, 1, 2, 14, 16);
  s.step(1, 1, 3, 16, 19);
  s.wash_up(1, 0, 19, 24);
  s.add(TaskKind::kPack, 1, 24, 26).dish = 1;
  s.wash_up(1, 1, 26, 31);
  s.wash_up(1, 2, 31, 36);
  s.plan.wave_of_cook = {0, 1};
  s.plan.waves = 2;
  // Ned: 169 (e^0.36 - 1) + 0.0289 * 169 = 73.2 + 4.9, sd 8.84, 7.42 - 0.5 = 6.92: 7 min. Oki:
  // 0.0289 * 25 + 100 (e^0.25 - 1) = 0.7 + 28.4, sd 5.40, 4.53 - 1 = 3.53: 4 min.
  s.plan.buffer = {minutes(7), minutes(4)};
  // 6 of 7 and 2 of 4 min are left; one minute of simmering too many costs 2. Ends 32 + 36.
  s.levels({0, 3, 0, 0, 2, 68});
  return s;
}

}  // namespace timeplan::sample
