// Kit: who has which unit, what must be washed between uses, and allergens left on a unit (rules
// K1, K2).
#include <algorithm>
#include <numeric>

#include <fmt/format.h>

#include "timeplan/verify/checks.h"
#include "timeplan/verify/expected.h"
#include "timeplan/verify/sweep.h"

namespace timeplan::judge {

namespace {

// A step (or one part of it) with the units of one item it has in hand.
struct Handling {
  int task = -1;
  std::vector<int> units;
};

const kitchen::Kit& item_of(const Case& c, int kit) {
  return c.lesson.room.kit[static_cast<std::size_t>(kit)];
}

bool unit_exists(const Case& c, int kit, int unit) {
  return unit >= 0 && unit < item_of(c, kit).count;
}

int units_needed(const kitchen::Step& step) {
  return std::accumulate(step.kit.begin(), step.kit.end(), 0,
                         [](int sum, const auto& need) { return sum + need.count; });
}

// The units of one item a step names, those that exist: needs stand one after another in the task.
std::vector<int> units_of(const Case& c, int index, int kit) {
  const Task& t = c.task(index);
  std::vector<int> units;
  std::size_t at = 0;
  for (const auto& need : c.step(t.dish, t.step).kit) {
    for (int i = 0; i < need.count; ++i, ++at) {
      if (need.item != item_of(c, kit).item || at >= t.kit_units.size()) continue;
      if (unit_exists(c, kit, t.kit_units[at])) units.push_back(t.kit_units[at]);
    }
  }
  return units;
}

// Every use of an item, in the order of the plan.
std::vector<Handling> handlings(const Case& c, int kit) {
  std::vector<Handling> list;
  for (const int index : c.all()) {
    const Task& t = c.task(index);
    if (t.kind != TaskKind::kStep) continue;
    auto units = units_of(c, index, kit);
    if (!units.empty()) list.push_back({index, std::move(units)});
  }
  return list;
}

// Every step names as many units as it needs, each of them one the room has.
void check_named(Case& c, int index) {
  const Task& t = c.task(index);
  const auto& step = c.step(t.dish, t.step);
  if (std::ssize(t.kit_units) != units_needed(step)) {
    c.report("K1",
             fmt::format("{}: it needs {} pieces of kit and the plan names {}.", c.label(index),
                         units_needed(step), t.kit_units.size()),
             {index}, when(t));
    return;
  }
  std::size_t at = 0;
  for (const auto& need : step.kit) {
    const auto* item = kitchen::find_kit(c.lesson.room, need.item);
    for (int i = 0; i < need.count; ++i, ++at) {
      const int unit = t.kit_units[at];
      if (item != nullptr && unit >= 0 && unit < item->count) continue;
      c.report(
          "K1",
          fmt::format("{}: the room has no {} number {}.", c.label(index), need.item, unit + 1),
          {index}, when(t));
    }
  }
}

// What a dish of a cook holds of an item washed between uses: from its first use to the end of the
// wash.
struct Holding {
  Span span;
  std::vector<int> units;
  std::vector<int> tasks;
};

std::optional<Holding> holding(const Case& c, int cook, int dish, int kit) {
  std::optional<Holding> held;
  for (const int s : steps_using(c, dish, kit)) {
    for (const int t : c.parts(cook, dish, s)) {
      if (!held) held = Holding{when(c.task(t)), {}, {}};
      held->span = {std::min(held->span.from, c.task(t).start),
                    std::max(held->span.to, c.task(t).end)};
      held->tasks.push_back(t);
      for (const int u : units_of(c, t, kit)) {
        if (std::find(held->units.begin(), held->units.end(), u) == held->units.end()) {
          held->units.push_back(u);
        }
      }
    }
  }
  return held;
}

void check_wash(Case& c, int index, int kit, const Holding& held) {
  const Task& t = c.task(index);
  const auto last = held.span.to;  // of the uses; the wash is not in yet
  const auto within = base::grid_down(c.lesson.rules.kit_wash_within);
  if (t.start < last || t.start > last + within) {
    c.report("K1",
             fmt::format("{}: it must start within {} of {}, the end of its last use.",
                         c.label(index), minutes_text(within), c.at(last)),
             {index}, {std::min(t.start, last), std::max(t.start, last)});
  }
  const bool its_own = t.kit_units.size() == 1 &&
                       std::find(held.units.begin(), held.units.end(), t.kit_units.front()) !=
                           held.units.end();
  if (!its_own) {
    c.report(
        "K1",
        fmt::format("{}: it must name the {} that was used.", c.label(index), item_of(c, kit).item),
        {index}, when(t));
  }
  if (t.step != steps_using(c, t.dish, kit).back()) {
    c.report("K1", fmt::format("{}: it must name the last step that uses it.", c.label(index)),
             {index}, when(t));
  }
}

// A dish keeps to its units; they are its own until washed.
std::vector<Holding> holdings(Case& c, int kit) {
  std::vector<Holding> list;
  for (int k = 0; k < c.cooks(); ++k) {
    for (const int d : c.cook(k).dishes) {
      auto held = holding(c, k, d, kit);
      if (!held) continue;
      int most = 0;
      for (const int t : held->tasks) {
        most = std::max(most, static_cast<int>(units_of(c, t, kit).size()));
      }
      if (std::ssize(held->units) > most) {
        c.report("K1",
                 fmt::format("{}, {}: more than one {} is used where one washed at the end "
                             "would do.",
                             c.cook(k).name, c.dish(d).name, item_of(c, kit).item),
                 held->tasks, held->span);
      }
      if (const auto wash = c.find({TaskKind::kKitWash, k, d, -1, 0, kit})) {
        check_wash(c, *wash, kit, *held);
        held->span.to = std::max(held->span.to, c.task(*wash).end);
        held->tasks.push_back(*wash);
      }
      list.push_back(*held);
    }
  }
  return list;
}

void check_units(Case& c, int kit) {
  std::vector<Holding> list;
  if (item_of(c, kit).washed_between) {
    list = holdings(c, kit);
  } else {
    for (const auto& h : handlings(c, kit))
      list.push_back({when(c.task(h.task)), h.units, {h.task}});
  }
  for (const int t : c.full_cleans) {
    if (c.task(t).kit == kit) list.push_back({when(c.task(t)), c.task(t).kit_units, {t}});
  }
  std::vector<Use> all;
  std::map<int, std::vector<Use>> by_unit;
  for (const auto& h : list) {
    all.push_back({h.span, static_cast<int>(h.units.size()), h.tasks});
    for (const int u : h.units) by_unit[u].push_back({h.span, 1, h.tasks});
  }
  const auto& item = item_of(c, kit);
  for (const auto& e : over(all, item.count)) {
    c.report("K1",
             fmt::format("The room has {} of \"{}\" and {} are wanted at {}.", item.count,
                         item.item, e.amount, c.at(e.span)),
             e.tasks, e.span);
  }
  for (const auto& [unit, uses] : by_unit) {
    for (const auto& e : over(uses, 1)) {
      c.report("K1",
               fmt::format("{} number {} is wanted by {} at once at {}.", item.item, unit + 1,
                           e.amount, c.at(e.span)),
               e.tasks, e.span);
    }
  }
}

bool meet(const kitchen::Allergens& a, const kitchen::Allergens& b) {
  return std::any_of(a.begin(), a.end(), [&](auto x) { return b.contains(x); });
}

bool cleans(const Case& c, int clean, int kit, int unit, int cook) {
  const Task& t = c.task(clean);
  return t.kit == kit && t.cook == cook && t.kit_units.size() == 1 && t.kit_units.front() == unit;
}

// On one unit: does what `before` leaves matter to whoever uses it `after`?
bool matters(const Case& c, int before, int after) {
  const Task& a = c.task(before);
  const Task& b = c.task(after);
  return a.end <= b.start &&
         meet(kitchen::allergens(c.dish(a.dish), a.step), c.cook(b.cook).avoids);
}

// Reports unclean uses of a unit and returns the full cleans that were needed.
std::vector<int> judge_unit(Case& c, int kit, int unit, const std::vector<int>& uses) {
  std::vector<int> needed;
  for (const int a : uses) {
    std::vector<int> after_a;  // full cleans by its cook, earliest first
    for (const int t : c.full_cleans) {
      const bool its = cleans(c, t, kit, unit, c.task(a).cook);
      if (its && c.task(t).start >= c.task(a).end) after_a.push_back(t);
    }
    std::sort(after_a.begin(), after_a.end(),
              [&](int x, int y) { return c.task(x).start < c.task(y).start; });
    for (const int b : uses) {
      if (!matters(c, a, b)) continue;
      if (!after_a.empty() && c.task(after_a.front()).end <= c.task(b).start) {
        needed.push_back(after_a.front());
        continue;
      }
      c.report("K2",
               fmt::format("{}: {} number {} was used before for {}, which {} must avoid, and "
                           "had no full clean.",
                           c.label(b), item_of(c, kit).item, unit + 1, c.dish(c.task(a).dish).name,
                           c.cook(c.task(b).cook).name),
               {a, b}, {c.task(a).end, c.task(b).start});
    }
  }
  return needed;
}

void check_allergens(Case& c, int kit, std::vector<int>& needed) {
  std::map<int, std::vector<int>> by_unit;
  for (const auto& h : handlings(c, kit)) {
    for (const int u : h.units) by_unit[u].push_back(h.task);
  }
  for (const auto& [unit, uses] : by_unit) {
    const auto more = judge_unit(c, kit, unit, uses);
    needed.insert(needed.end(), more.begin(), more.end());
  }
}

void check_full_cleans(Case& c, const std::vector<int>& needed) {
  for (const int t : c.full_cleans) {
    const Task& clean = c.task(t);
    if (std::find(needed.begin(), needed.end(), t) == needed.end()) {
      c.report("K2", fmt::format("{}, is not needed.", c.label(t)), {t}, when(clean));
    }
    const auto length = base::grid_up(item_of(c, clean.kit).full_clean);
    if (clean.end - clean.start != length) {
      c.report("K2",
               fmt::format("{}, lasts {}; it should last {}.", c.label(t),
                           minutes_text(clean.end - clean.start), minutes_text(length)),
               {t}, when(clean));
    }
  }
}

}  // namespace

void check_kit(Case& c) {
  for (const int t : c.all()) {
    if (c.task(t).kind == TaskKind::kStep) check_named(c, t);
  }
  std::vector<int> needed;
  for (int kit = 0; kit < static_cast<int>(c.lesson.room.kit.size()); ++kit) {
    check_units(c, kit);
    check_allergens(c, kit, needed);
  }
  check_full_cleans(c, needed);
}

}  // namespace timeplan::judge
