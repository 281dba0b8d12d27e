// What everybody shares and queues for: sinks, hand basins, the ingredients table, the cold.
#include <algorithm>
#include <functional>

#include <fmt/format.h>

#include "timeplan/verify/checks.h"
#include "timeplan/verify/holds.h"
#include "timeplan/verify/lengths.h"
#include "timeplan/verify/sweep.h"

namespace timeplan::judge {

namespace {

bool washes_hands(const Task& t) {
  return t.kind == TaskKind::kApronAndHands || t.kind == TaskKind::kHandWash;
}

// Positions a task takes at the place where it washes: hands, kit, vegetables, the washing-up.
int positions(const Case& c, const Task& t) {
  using enum TaskKind;
  switch (t.kind) {
    case kApronAndHands:
      return std::min(c.cook(t.cook).people, hand_positions(c, t.cook, t.basin));
    case kHandWash:
    case kKitWash:
    case kWashUp:
      return 1;
    case kStep:
      return c.step(t.dish, t.step).sink;
    default:
      return 0;
  }
}

void report_over(Case& c, const char* rule, const std::string& what, const std::vector<Use>& uses,
                 int there_is) {
  for (const auto& e : over(uses, there_is)) {
    c.report(rule,
             fmt::format("{}: {} wanted at {}, and there are {}.", what, e.amount, c.at(e.span),
                         there_is),
             e.tasks, e.span);
  }
}

// Which sink, or the basins: the plan must say, and only what is allowed.
void check_where(Case& c, int index) {
  const Task& t = c.task(index);
  if (positions(c, t) == 0 && !washes_hands(t)) return;
  const int bay = c.place_of(t.cook).bay;
  if (washes_hands(t)) {
    const char* rule = t.kind == TaskKind::kApronAndHands ? "H7" : "H5";
    if (t.basin ? c.lesson.room.hand_basins == 0 : !c.lesson.room.hands_at_sinks) {
      c.report(rule, fmt::format("{}: hands may not be washed there.", c.label(index)), {index},
               when(t));
    }
    if (t.basin) return;
  }
  if (t.sink_bay == bay) return;
  c.report("K4",
           fmt::format("{}: it must be at a sink of bay {}.", c.label(index),
                       c.lesson.room.bays[static_cast<std::size_t>(bay)].name),
           {index}, when(t));
}

void check_sinks(Case& c) {
  const auto& room = c.lesson.room;
  std::vector<std::vector<Use>> sinks(room.bays.size());
  std::vector<Use> basins;
  for (const int index : c.all()) {
    const Task& t = c.task(index);
    check_where(c, index);
    const int amount = positions(c, t);
    if (amount == 0) continue;
    const Use use{when(t), amount, {index}};
    if (washes_hands(t) && t.basin) {
      basins.push_back(use);
    } else if (t.sink_bay >= 0 && t.sink_bay < std::ssize(sinks)) {
      sinks[static_cast<std::size_t>(t.sink_bay)].push_back(use);
    }
  }
  for (std::size_t b = 0; b < sinks.size(); ++b) {
    report_over(c, "K4", "Sink positions of bay " + room.bays[b].name, sinks[b],
                room.bays[b].sinks);
  }
  report_over(c, "K4", "Hand basins", basins, room.hand_basins);
}

void check_table(Case& c) {
  std::vector<Use> uses;
  for (const int index : c.all()) {
    const Task& t = c.task(index);
    const bool there = t.kind == TaskKind::kCollectIngredients ||
                       (t.kind == TaskKind::kStep && c.step(t.dish, t.step).at_table);
    if (there) uses.push_back({when(t), 1, {index}});
  }
  report_over(c, "K7", "Positions at the ingredients table", uses, c.lesson.room.table_positions);
}

// What is put away for the next lesson stays in the cold until the bell (rule C2).
void add_stored(const Case& c, bool freezer, std::vector<Use>& uses) {
  for (const int index : c.all()) {
    const Task& t = c.task(index);
    if (t.kind != TaskKind::kStore) continue;
    const auto& split = *c.half(t.dish).split;
    if ((split.kept == kitchen::KeptIn::kFreezer) != freezer) continue;
    uses.push_back({{t.end, c.lesson.bell}, split.fridge_tenths, {index}});
  }
}

// Boxes that go home out of the fridge wait in it to the bell (rule Y12).
void add_boxes(const Case& c, std::vector<Use>& fridge) {
  constexpr int kBox = 2;  // tenths of a shelf
  for (const int index : c.all()) {
    const Task& t = c.task(index);
    if (t.kind == TaskKind::kPack && chilled(c, t.dish))
      fridge.push_back({{t.end, c.lesson.bell}, kBox, {index}});
  }
}

void check_cold(Case& c) {
  constexpr int kHeldDish = 2;  // tenths of a shelf (rule S3)
  std::vector<Use> fridge;
  std::vector<Use> freezer;
  for (const int index : c.all()) {
    const Task& t = c.task(index);
    if (t.kind != TaskKind::kStep) continue;
    const auto& step = c.step(t.dish, t.step);
    if (step.fridge_tenths > 0) fridge.push_back({when(t), step.fridge_tenths, {index}});
    if (step.freezer_tenths > 0) freezer.push_back({when(t), step.freezer_tenths, {index}});
  }
  add_stored(c, false, fridge);
  add_stored(c, true, freezer);
  add_boxes(c, fridge);
  for (const auto& w : all_waiting(c)) {
    if (c.dish(w.dish).hold.in == kitchen::HoldIn::kFridge)
      fridge.push_back({w.span, kHeldDish, {}});
  }
  report_over(c, "K6", "Tenths of a fridge shelf", fridge, c.lesson.room.fridge_tenths);
  report_over(c, "K6", "Tenths of a freezer shelf", freezer, c.lesson.room.freezer_tenths);
}

}  // namespace

void check_shared(Case& c) {
  check_sinks(c);
  check_table(c);
  check_cold(c);
}

}  // namespace timeplan::judge
