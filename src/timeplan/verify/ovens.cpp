#include "timeplan/verify/ovens.h"

#include <algorithm>

#include <fmt/format.h>

#include "timeplan/verify/checks.h"

namespace timeplan::judge {

namespace {

const kitchen::Cooker& cooker_of(const Case& c, int cooker) {
  return c.lesson.room.cookers[static_cast<std::size_t>(cooker)];
}

std::vector<int> both(const Tray& a, const Tray& b) {
  auto tasks = a.tasks;
  tasks.insert(tasks.end(), b.tasks.begin(), b.tasks.end());
  return tasks;
}

Tray tray_of(const Case& c, const Vessel& v) {
  Tray tray{fmt::format("the {} of {}", v.name, c.cook(v.cook).name),
            v.span,
            v.setting,
            v.amount,
            v.tasks,
            {}};
  for (const int s : v.steps) {
    const auto shut = base::grid_up(c.step(v.dish, s).heat->door_shut);
    const auto bake = c.span(v.cook, v.dish, s);
    if (bake && shut.count() > 0) tray.door_shut.push_back({bake->from, bake->from + shut});
  }
  return tray;
}

void judge_shelves(const Case& c, int cooker, const std::vector<Tray>& trays,
                   std::vector<Violation>& found) {
  std::vector<Use> uses;
  for (const auto& t : trays) uses.push_back({t.span, t.twelfths, t.tasks});
  const int shelves = cooker_of(c, cooker).shelves;
  for (const auto& e : over(uses, 12 * shelves)) {
    found.push_back({"O3",
                     fmt::format("The oven of cooker {} has {} shelves; the trays at {} need {} "
                                 "twelfths of a shelf.",
                                 cooker_of(c, cooker).name, shelves, c.at(e.span), e.amount),
                     e.tasks, e.span.from, e.span.to});
  }
}

bool between(const std::vector<Span>& pauses, Seconds from, Seconds to) {
  return std::any_of(pauses.begin(), pauses.end(),
                     [&](const Span& p) { return p.from >= from && p.to <= to; });
}

// Is some third tray wholly between? Then the two change-overs next to it say all there is to say.
bool tray_between(const std::vector<Tray>& trays, Seconds from, Seconds to) {
  return std::any_of(trays.begin(), trays.end(), [&](const Tray& t) {
    return t.span.from < t.span.to && t.span.from >= from && t.span.to <= to;
  });
}

void judge_pair(const Case& c, int cooker, const std::vector<Tray>& trays, const Tray& a,
                const Tray& b, std::vector<Violation>& found) {
  const auto& name = cooker_of(c, cooker).name;
  if (a.setting == b.setting) return;
  if (overlap(a.span, b.span)) {
    found.push_back({"O3",
                     fmt::format("The oven of cooker {} cannot stand at two settings: {} ({} "
                                 "degrees) and {} ({} degrees) are in it together.",
                                 name, a.name, a.setting.celsius, b.name, b.setting.celsius),
                     both(a, b), std::max(a.span.from, b.span.from),
                     std::min(a.span.to, b.span.to)});
    return;
  }
  if (a.span.to > b.span.from || between(breaks_with_ovens_off(c), a.span.to, b.span.from) ||
      tray_between(trays, a.span.to, b.span.from)) {
    return;
  }
  const auto change = kitchen::change_over(c.lesson.room.change_over, a.setting, b.setting);
  const auto needed = base::grid_up(change);
  if (b.span.from - a.span.to >= needed) return;
  found.push_back({"O4",
                   fmt::format("The oven of cooker {} needs {} from {} to {} degrees; {} "
                               "comes out at {} and {} goes in at {}.",
                               name, minutes_text(needed), a.setting.celsius, b.setting.celsius,
                               a.name, c.at(a.span.to), b.name, c.at(b.span.from)),
                   both(a, b), a.span.to, b.span.from});
}

void judge_door(const Case& c, int cooker, const Tray& shut, const Tray& other,
                std::vector<Violation>& found) {
  for (const auto& quiet : shut.door_shut) {
    for (const auto moment : {other.span.from, other.span.to}) {
      if (moment <= quiet.from || moment >= quiet.to) continue;
      found.push_back(
          {"O7",
           fmt::format("The door of cooker {} must stay shut from {} for {}, and "
                       "{} goes in or out at {}.",
                       cooker_of(c, cooker).name, c.at(quiet), shut.name, other.name, c.at(moment)),
           both(shut, other), quiet.from, quiet.to});
    }
  }
}

}  // namespace

std::vector<Tray> trays_in(const Case& c, const std::vector<Vessel>& vessels, int cooker) {
  std::vector<Tray> trays;
  for (const auto& v : vessels) {
    if (v.cooker == cooker && in_oven(c, v)) trays.push_back(tray_of(c, v));
  }
  return trays;
}

std::vector<Violation> judge_oven(const Case& c, int cooker, const std::vector<Tray>& trays) {
  std::vector<Violation> found = judge_cold_starts(c, cooker, trays);
  judge_shelves(c, cooker, trays, found);
  for (std::size_t i = 0; i < trays.size(); ++i) {
    for (std::size_t j = 0; j < trays.size(); ++j) {
      if (i == j) continue;
      // An overlap is the same from both sides; a change-over has a first and a second tray.
      if (i < j || !overlap(trays[i].span, trays[j].span)) {
        judge_pair(c, cooker, trays, trays[i], trays[j], found);
      }
      judge_door(c, cooker, trays[i], trays[j], found);
    }
  }
  return found;
}

void check_ovens(Case& c) {
  const auto vessels = all_vessels(c);
  for (int k = 0; k < static_cast<int>(c.lesson.room.cookers.size()); ++k) {
    for (auto& v : judge_oven(c, k, trays_in(c, vessels, k))) {
      c.report(v.rule, v.message, v.tasks, {v.from, v.to});
    }
  }
}

}  // namespace timeplan::judge
