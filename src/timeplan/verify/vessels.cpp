#include "timeplan/verify/vessels.h"

#include <algorithm>
#include <tuple>

#include <fmt/format.h>

#include "timeplan/verify/checks.h"

namespace timeplan::judge {

namespace {

using kitchen::HeatKind;

const kitchen::Cooker& cooker_of(const Case& c, int cooker) {
  return c.lesson.room.cookers[static_cast<std::size_t>(cooker)];
}

bool exists(const Case& c, int cooker) {
  return cooker >= 0 && cooker < std::ssize(c.lesson.room.cookers);
}

const kitchen::Heat& heat_of(const Case& c, const Vessel& v, int step) {
  return *c.step(v.dish, step).heat;
}

std::vector<int> heat_tasks(const Case& c, const Vessel& v) {
  std::vector<int> tasks;
  for (const int s : v.steps) {
    for (const int t : c.parts(v.cook, v.dish, s)) tasks.push_back(t);
  }
  return tasks;
}

// Fills in everything that follows from which steps the vessel has.
void complete(const Case& c, Vessel& v) {
  const auto heated = heat_tasks(c, v);
  v.tasks = heated;
  for (const int s : c.half(v.dish).reading) {
    const auto& closes = c.step(v.dish, s).closes;
    if (!closes || std::find(v.steps.begin(), v.steps.end(), *closes) == v.steps.end()) continue;
    for (const int t : c.parts(v.cook, v.dish, s)) v.tasks.push_back(t);
  }
  if (heated.empty()) return;
  const Task& first = c.task(heated.front());
  v.cooker = exists(c, first.cooker) ? first.cooker : -1;
  v.setting = first.setting.value_or(heat_of(c, v, v.steps.front()).setting);
  v.span = when(first);
  for (const int t : heated) v.span.from = std::min(v.span.from, c.task(t).start);
  for (const int t : v.tasks) v.span.to = std::max(v.span.to, c.task(t).end);
  v.amount = 1;
  for (const int s : v.steps) {
    const auto& heat = heat_of(c, v, s);
    v.amount = std::max(v.amount, v.kind == HeatKind::kRing ? heat.rings : heat.shelf_twelfths);
  }
}

std::vector<Vessel> vessels_of(const Case& c, int cook, int dish) {
  std::vector<Vessel> list;
  for (const int s : c.half(dish).reading) {
    const auto& heat = c.step(dish, s).heat;
    if (!heat) continue;
    auto it = std::find_if(list.begin(), list.end(), [&](const Vessel& v) {
      return v.name == heat->vessel && v.kind == heat->with;
    });
    if (it == list.end()) {
      list.push_back({cook, dish, heat->vessel, heat->with, {}, {}, -1, {}, 1, {}});
      it = std::prev(list.end());
    }
    it->steps.push_back(s);
  }
  for (auto& v : list) complete(c, v);
  std::erase_if(list, [&](const Vessel& v) { return heat_tasks(c, v).empty(); });
  return list;
}

std::string name_of(const Case& c, const Vessel& v) {
  return fmt::format("the {} of {} ({})", v.name, c.cook(v.cook).name, c.dish(v.dish).name);
}

void check_cooker(Case& c, const Vessel& v) {
  const auto& reach = c.place_of(v.cook).cookers;
  for (const int t : heat_tasks(c, v)) {
    const Task& task = c.task(t);
    std::string fault;
    if (!exists(c, task.cooker)) {
      fault = "is on no cooker";
    } else if (task.cooker != v.cooker) {
      fault = fmt::format("moves to cooker {}", cooker_of(c, task.cooker).name);
    } else if (std::find(reach.begin(), reach.end(), task.cooker) == reach.end()) {
      fault = fmt::format("is on cooker {}, out of reach", cooker_of(c, task.cooker).name);
    } else if (!able(cooker_of(c, task.cooker), heat_of(c, v, task.step))) {
      fault = fmt::format("is on cooker {}, which has no such heat",
                          cooker_of(c, task.cooker).name);
    } else {
      continue;
    }
    c.report("O1", fmt::format("{}: {} {}.", c.label(t), name_of(c, v), fault), {t}, when(task));
  }
}

// The school's rule on gas: who is too young for a flame has nothing on one (Y11).
void check_gas(Case& c, const Vessel& v) {
  if (v.cooker < 0 || !too_young_for(c, v.cooker, v.kind)) return;
  for (const int t : heat_tasks(c, v)) {
    c.report(
        "Y11",
        fmt::format("{}: {} is on the gas of cooker {}, and gas is for year {} and up.", c.label(t),
                    name_of(c, v), cooker_of(c, v.cooker).name, c.lesson.rules.gas_from_year),
        {t}, when(c.task(t)));
  }
}

std::string knob(const kitchen::OvenSetting& s) {
  const char* kind = s.kind == kitchen::OvenKind::kFan     ? "fan"
                     : s.kind == kitchen::OvenKind::kGrill ? "grill"
                                                           : "conventional";
  return fmt::format("{} degrees {}", s.celsius, kind);
}

// One setting for the whole stay, and one that every step accepts.
void check_setting(Case& c, const Vessel& v) {
  if (!in_oven(c, v)) return;
  for (const int t : heat_tasks(c, v)) {
    const Task& task = c.task(t);
    const auto& heat = heat_of(c, v, task.step);
    if (!task.setting) {
      c.report("O3", fmt::format("{}: no oven setting.", c.label(t)), {t}, when(task));
      continue;
    }
    const auto away = std::abs(task.setting->celsius - heat.setting.celsius);
    const bool fits = task.setting->kind == heat.setting.kind && away <= heat.tolerance &&
                      task.setting->celsius % 10 == 0;
    if (!fits) {
      c.report("O3",
               fmt::format("{}: the oven stands at {}; the dish wants {}, {} either way.",
                           c.label(t), knob(*task.setting), knob(heat.setting), heat.tolerance),
               {t}, when(task));
    }
    if (*task.setting != v.setting) {
      c.report("O3",
               fmt::format("{}: the oven changes from {} to {} for one tray.", c.label(t),
                           knob(v.setting), knob(*task.setting)),
               {t}, when(task));
    }
  }
}

void report_excess(Case& c, const char* rule, const char* what, int cooker,
                   const std::vector<Use>& uses, int there_are) {
  for (const auto& e : over(uses, there_are)) {
    c.report(rule,
             fmt::format("Cooker {} has {} {} and {} are wanted at {}.", cooker_of(c, cooker).name,
                         there_are, what, e.amount, c.at(e.span)),
             e.tasks, e.span);
  }
}

void check_capacities(Case& c, const std::vector<Vessel>& vessels) {
  for (int k = 0; k < static_cast<int>(c.lesson.room.cookers.size()); ++k) {
    const auto& cooker = cooker_of(c, k);
    report_excess(c, "O2", "rings", k, ring_uses(vessels, k), cooker.rings);
    std::vector<Use> grill;
    for (const auto& v : vessels) {
      if (v.cooker == k && v.kind == HeatKind::kGrill && !in_oven(c, v)) {
        grill.push_back({v.span, 1, v.tasks});
      }
    }
    report_excess(c, "O8", "grill places", k, grill, cooker.grill_places);
  }
}

bool same_stay(const Case& c, const Vessel& a, const Vessel& b) {
  if (a.cooker != b.cooker || a.setting != b.setting) return false;
  return std::all_of(a.steps.begin(), a.steps.end(),
                     [&](int s) { return c.span(a.cook, a.dish, s) == c.span(b.cook, b.dish, s); });
}

// Cooks who share a tray put it in and take it out together (rule Y7).
void check_shared_trays(Case& c, const std::vector<Vessel>& vessels) {
  using Table = std::tuple<int, int, int, std::string>;  // line, dish, first cooker, vessel
  std::map<Table, std::vector<const Vessel*>> tables;
  for (const auto& v : vessels) {  // in the order of the lesson's cooks
    const bool shared = std::any_of(v.steps.begin(), v.steps.end(),
                                    [&](int s) { return heat_of(c, v, s).shared_tray; });
    if (!shared) continue;
    const auto line = c.line[static_cast<std::size_t>(v.cook)];
    tables[{line, v.dish, c.place_of(v.cook).cookers.front(), v.name}].push_back(&v);
  }
  for (const auto& [table, list] : tables) {
    const auto a_tray = static_cast<std::size_t>(std::max(1, 12 / list.front()->amount));
    for (std::size_t i = 0; i < list.size(); ++i) {
      const Vessel& head = *list[i - i % a_tray];
      if (same_stay(c, head, *list[i])) continue;
      c.report("Y7",
               fmt::format("{} and {} share a tray; it must go in and come out together, on "
                           "one cooker at one setting.",
                           name_of(c, head), name_of(c, *list[i])),
               list[i]->tasks, list[i]->span);
    }
  }
}

}  // namespace

std::vector<Vessel> all_vessels(const Case& c) {
  std::vector<Vessel> list;
  for (int k = 0; k < c.cooks(); ++k) {
    for (const int d : c.cook(k).dishes) {
      for (auto& v : vessels_of(c, k, d)) list.push_back(std::move(v));
    }
  }
  return list;
}

bool able(const kitchen::Cooker& cooker, const kitchen::Heat& heat) {
  using kitchen::GrillKind;
  switch (heat.with) {
    case HeatKind::kRing:
      return cooker.rings >= heat.rings;
    case HeatKind::kOven:
      if (heat.setting.kind == kitchen::OvenKind::kFan && !cooker.fan) return false;
      if (heat.setting.kind == kitchen::OvenKind::kGrill && cooker.grill != GrillKind::kInOven) {
        return false;
      }
      return cooker.shelves > 0;
    case HeatKind::kGrill:
      return cooker.grill == GrillKind::kEyeLevel ||
             (cooker.grill == GrillKind::kInOven && cooker.shelves > 0);
  }
  return false;
}

bool too_young_for(const Case& c, int cooker, HeatKind heat) {
  if (c.lesson.year >= c.lesson.rules.gas_from_year) return false;
  switch (cooker_of(c, cooker).gas) {
    case kitchen::Gas::kNone:
      return false;
    case kitchen::Gas::kRings:
      return heat == HeatKind::kRing;
    case kitchen::Gas::kAll:
      return true;
  }
  return false;
}

bool in_oven(const Case& c, const Vessel& v) {
  if (v.kind == HeatKind::kOven) return true;
  return v.kind == HeatKind::kGrill && v.cooker >= 0 &&
         cooker_of(c, v.cooker).grill == kitchen::GrillKind::kInOven;
}

std::vector<Use> ring_uses(const std::vector<Vessel>& vessels, int cooker) {
  std::vector<Use> uses;
  for (const auto& v : vessels) {
    if (v.cooker == cooker && v.kind == HeatKind::kRing) {
      uses.push_back({v.span, v.amount, v.tasks});
    }
  }
  return uses;
}

void check_vessels(Case& c) {
  const auto vessels = all_vessels(c);
  for (const auto& v : vessels) {
    check_cooker(c, v);
    check_gas(c, v);
    check_setting(c, v);
  }
  check_capacities(c, vessels);
  check_shared_trays(c, vessels);
}

}  // namespace timeplan::judge
