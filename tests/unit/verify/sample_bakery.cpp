// The bakery: two waves of two cooks, two ovens, a break and a tasting.
#include "sample.h"

namespace timeplan::sample {

using base::minutes;
using kitchen::Attention;
using kitchen::OvenKind;

namespace {

kitchen::Room room() {
  kitchen::Room r;
  r.name = "Food Room 2";
  r.bays = {{"A", 2}, {"B", 2}};
  kitchen::Cooker a1;
  a1.name = "A1";
  kitchen::Cooker b1 = a1;
  b1.name = "B1";
  b1.bay = 1;
  b1.grill = kitchen::GrillKind::kEyeLevel;
  b1.grill_places = 2;
  r.cookers = {a1, b1};
  r.places = {{"A1", 0, {0}}, {"A2", 0, {0}}, {"B1", 1, {1}}, {"B2", 1, {1}}};
  r.hand_basins = 4;
  return r;
}

kitchen::Step closing(const char* brief, int of) {
  auto s = step(brief, Attention::kHands, 1);  // 2 min
  after(s, of, 1).closes = of;
  return s;
}

kitchen::Dish dish(const char* name, const char* tag, std::vector<kitchen::Step> method) {
  kitchen::Dish d;
  d.name = name;
  d.tag = tag;
  d.method = std::move(method);
  d.hold = {kitchen::HoldKind::kKeeps, minutes(240), kitchen::HoldIn::kNone};
  d.wash_after = 0;
  return d;
}

kitchen::Dish scones() {
  auto rub = step("Rub in", Attention::kHands, 5);  // 6 min
  auto bake = step("Bake scones", Attention::kLeave, 12);
  after(bake, 0).heat = oven("tray", 220, OvenKind::kConventional, 6);
  bake.heat->shared_tray = true;
  bake.heat->door_shut = minutes(5);
  return dish("Scones", "SC", {rub, bake, closing("Scones out", 1)});
}

kitchen::Dish crumble() {
  auto mix = step("Mix crumble", Attention::kHands, 3);  // 4 min
  auto bake = step("Bake crumble", Attention::kLeave, 10);
  after(bake, 0).heat = oven("dish", 180, OvenKind::kConventional, 6);
  return dish("Crumble", "CR", {mix, bake, closing("Crumble out", 1)});
}

kitchen::Dish toast() {
  auto slice = step("Slice", Attention::kHands, 4);  // 5 min
  auto grill = step("Grill", Attention::kWatch, 5);
  after(grill, 0).heat = oven("rack", 240, OvenKind::kGrill, 12);
  grill.heat->with = kitchen::HeatKind::kGrill;
  return dish("Cheese toast", "TO", {slice, grill, closing("Toast off", 1)});
}

kitchen::Dish rolls() {
  auto shape = step("Shape", Attention::kHands, 3);  // 4 min
  auto bake = step("Bake rolls", Attention::kLeave, 10);
  after(bake, 0).heat = oven("tin", 200, OvenKind::kConventional, 12);
  return dish("Rolls", "RO", {shape, bake, closing("Rolls out", 1)});
}

void bake(Sample& s, int cook, int dish, int from, int to, int celsius) {
  Task& t = s.step(cook, dish, 1, from, to);
  t.cooker = cook < 2 ? 0 : 1;
  t.setting = {celsius, OvenKind::kConventional};
}

// 200 to 220 degrees is 2 min from the opening; 220 down to 180 is 40 / 7, so 6 min from 24.
void first_wave(Sample& s, int cook) {
  s.apron(cook, 0, 2);
  s.step(cook, 0, 0, 2, 8);
  bake(s, cook, 0, 10, 22, 220);
  s.step(cook, 0, 2, 22, 24);
  s.step(cook, 1, 0, 10, 14);
  bake(s, cook, 1, 30, 40, 180);
  s.step(cook, 1, 2, 40, 42);
  s.wash_up(cook, 0, 14, 19);  // 14 + 3 min: four parts of 4 1/4, so 5
  s.wash_up(cook, 1, 24, 29);
  s.wash_up(cook, 2, 29, 34);
  s.wash_up(cook, 3, 85, 90);
  s.serve(cook, 80);
}

// Cold after the break, which ends at 55: 200 degrees take 12 min.
void second_wave(Sample& s, int cook) {
  s.apron(cook, 0, 2);
  s.step(cook, 2, 0, 2, 7);
  s.step(cook, 2, 1, 7, 12).cooker = 1;
  s.step(cook, 2, 2, 12, 14);
  s.step(cook, 3, 0, 14, 18);
  bake(s, cook, 3, 67, 77, 200);
  s.step(cook, 3, 2, 77, 79);
  s.wash_up(cook, 0, 18, 23);
  s.wash_up(cook, 1, 23, 28);
  s.wash_up(cook, 2, 28, 33);
  s.wash_up(cook, 3, 85, 90);
  s.serve(cook, 80);
}

kitchen::Window window(const char* name, kitchen::WindowKind kind, int earliest, int latest,
                       int length) {
  kitchen::Window w;
  w.name = name;
  w.kind = kind;
  w.earliest = minutes(earliest);
  w.latest = minutes(latest);
  w.length = minutes(length);
  if (kind != kitchen::WindowKind::kBreak) w.led_by = 0;
  return w;
}

void windows(Sample& s) {
  auto look = window("Look at the dough", kitchen::WindowKind::kStop, 0, 60, 1);
  look.audience = {0, 1};
  look.after = {{0, 0}};
  look.before = {{0, 1}};
  auto tasting = window("Tasting", kitchen::WindowKind::kHandsOff, 80, 80, 5);
  tasting.tasting = true;
  s.lesson.windows = {look, window("Break", kitchen::WindowKind::kBreak, 45, 45, 10), tasting};
  const int starts[] = {8, 45, 80};
  const int ends[] = {9, 55, 85};
  for (int w = 0; w < 3; ++w) {
    Task& t = s.add(TaskKind::kWindow, -1, starts[w], ends[w]);
    t.window = w;
    t.adult = w == 1 ? -1 : 0;
  }
}

}  // namespace

Sample bakery() {
  Sample s = blank(110);
  s.lesson.room = room();
  s.lesson.purpose = kitchen::Purpose::kTaste;
  s.lesson.timelines = kitchen::Timelines::kWaves;
  s.lesson.trays_at_places = true;
  s.lesson.rules.count_knives = false;
  s.lesson.rules.look_at_bays = false;
  s.lesson.dishes = {scones(), crumble(), toast(), rolls()};
  s.lesson.cooks = {cook("Fen", 1, 0, {0, 1}, 110), cook("Gus", 1, 1, {0, 1}, 110),
                    cook("Hal", 1, 2, {2, 3}, 110), cook("Ida", 1, 3, {2, 3}, 110)};
  s.lesson.ovens = {{0, {200, OvenKind::kConventional}}};
  windows(s);
  for (int c = 0; c < 4; ++c) c < 2 ? first_wave(s, c) : second_wave(s, c);
  s.plan.wave_of_cook = {0, 0, 1, 1};
  s.plan.waves = 2;
  s.plan.checkpoints = {{0, minutes(30), 1, 1, "crumbles in"}, {1, minutes(85), -1, -1, "wash up"}};
  // 14 and 13 min of hands-on work, sd 2.4 and 2.2, less 2: the least buffer.
  s.plan.buffer.assign(4, minutes(3));
  s.levels({0, 0, 2, 0, 0, 360});
  return s;
}

}  // namespace timeplan::sample
