#include "timeplan/changes.h"

#include <algorithm>
#include <map>

#include <fmt/format.h>

namespace timeplan {
namespace {

/// Whether a pin names cooks, who are others once the class is grouped anew.
bool pins_by_name(const kitchen::Lesson& lesson) {
  return std::any_of(lesson.pins.begin(), lesson.pins.end(),
                     [](const kitchen::Pin& pin) { return !pin.cooks.empty(); });
}

using kitchen::Lesson;
using Applied = std::optional<Lesson>;

Applied trays_set_out(const Lesson& lesson) {
  if (lesson.trays_at_places) return std::nullopt;
  Lesson changed = lesson;
  changed.trays_at_places = true;
  return changed;
}

// Cooks of `from` people become cooks of `to`: neighbours in the lesson with the same dishes work
// together.
Applied regroup(const Lesson& lesson, int to) {
  std::map<std::vector<int>, int> people;
  std::vector<std::vector<int>> menus;
  int largest = 0;
  for (const kitchen::Cook& c : lesson.cooks) {
    largest = std::max(largest, c.people);
    if (people.emplace(c.dishes, 0).second) menus.push_back(c.dishes);
    people[c.dishes] += c.people;
  }
  if (largest >= to || lesson.timelines == kitchen::Timelines::kOwn) return std::nullopt;
  Lesson changed = lesson;
  changed.cooks.clear();
  std::vector<kitchen::Cook> left = lesson.cooks;
  for (const std::vector<int>& menu : menus) {
    kitchen::Cook open;
    bool started = false;
    for (const kitchen::Cook& c : left) {
      if (c.dishes != menu) continue;
      if (!started) {
        open = c;
        started = true;
      } else if (open.people + c.people <= to) {
        open.name += " and " + c.name;
        open.people += c.people;
        open.avoids.insert(c.avoids.begin(), c.avoids.end());
        open.pace = std::max(open.pace, c.pace);
        open.arrives = std::max(open.arrives, c.arrives);
        open.leaves = std::min(open.leaves, c.leaves);
        open.away.insert(open.away.end(), c.away.begin(), c.away.end());
      } else {
        changed.cooks.push_back(open);
        open = c;
      }
    }
    if (started) changed.cooks.push_back(open);
  }
  if (changed.cooks.size() == lesson.cooks.size()) return std::nullopt;
  for (kitchen::Window& w : changed.windows) {
    if (!w.audience.empty()) return std::nullopt;  // whose window it is would have to be asked
  }
  if (pins_by_name(changed)) return std::nullopt;
  return changed;
}

// Half of what is cut, shaped and filled: about two thirds of the minutes (common practice, no
// source).
Applied half_batch(const Lesson& lesson) {
  Lesson changed = lesson;
  bool any = false;
  for (kitchen::Dish& dish : changed.dishes) {
    if (dish.portions < 2) continue;
    for (kitchen::Step& step : dish.method) {
      if (!kitchen::hands_on(step.attention) || step.least < base::minutes(5)) continue;
      step.least = step.most = base::Seconds{step.least.count() * 2 / 3};
      any = true;
    }
    dish.portions /= 2;
  }
  return any ? Applied(changed) : std::nullopt;
}

Applied half_the_class(const Lesson& lesson) {
  if (lesson.cooks.size() < 4 || lesson.timelines == kitchen::Timelines::kOwn ||
      pins_by_name(lesson))
    return std::nullopt;
  Lesson changed = lesson;
  changed.cooks.clear();
  for (std::size_t c = 0; c < lesson.cooks.size(); c += 2) changed.cooks.push_back(lesson.cooks[c]);
  for (kitchen::Window& w : changed.windows) w.audience.clear();
  return changed;
}

Applied carry_over(const Lesson& lesson) {
  Lesson changed = lesson;
  bool any = false;
  for (int d = 0; d < static_cast<int>(lesson.dishes.size()); ++d) {
    const bool known = std::any_of(lesson.carry.begin(), lesson.carry.end(),
                                   [&](const kitchen::CarryOver& c) { return c.dish == d; });
    const bool pinned = std::any_of(lesson.pins.begin(), lesson.pins.end(),
                                    [&](const kitchen::Pin& p) { return p.step.dish == d; });
    if (known || pinned || lesson.dishes[static_cast<std::size_t>(d)].splits.empty()) continue;
    changed.carry.push_back({d, 0, false});
    any = true;
  }
  return any ? Applied(changed) : std::nullopt;
}

Applied leave_on_rack(const Lesson& lesson) {
  if (lesson.purpose != kitchen::Purpose::kTakeHome || lesson.rack_for) return std::nullopt;
  for (int a = 0; a < static_cast<int>(lesson.adults.size()); ++a) {
    if (lesson.adults[static_cast<std::size_t>(a)].leads) continue;
    Lesson changed = lesson;
    changed.rack_for = a;
    return changed;
  }
  return std::nullopt;
}

Applied free_the_windows(const Lesson& lesson) {
  Lesson changed = lesson;
  bool any = false;
  for (kitchen::Window& w : changed.windows) {
    if (w.kind != kitchen::WindowKind::kHandsOff || w.tasting || w.latest > w.earliest) continue;
    if (w.earliest.count() == 0 && w.length <= base::minutes(5)) continue;  // register stays first
    w.earliest = std::max(base::Seconds{0}, w.earliest - base::minutes(10));
    w.latest = std::min(lesson.bell - w.length, w.latest + base::minutes(15));
    any = true;
  }
  return any ? Applied(changed) : std::nullopt;
}

Applied second_adult(const Lesson& lesson) {
  const bool hazards = std::any_of(
      lesson.dishes.begin(), lesson.dishes.end(), [](const kitchen::Dish& d) {
        return std::any_of(d.method.begin(), d.method.end(),
                           [](const kitchen::Step& s) { return s.hazard.has_value(); });
      });
  if (!hazards) return std::nullopt;
  Lesson changed = lesson;
  const auto leader = std::find_if(lesson.adults.begin(), lesson.adults.end(),
                                   [](const kitchen::Adult& a) { return a.leads; });
  kitchen::Adult second = *leader;
  second.name = "a second adult";
  second.leads = false;
  changed.adults.push_back(second);
  return changed;
}

Applied ban_later(const Lesson& lesson) {
  if (lesson.bans.empty()) return std::nullopt;
  Lesson changed = lesson;
  for (kitchen::Ban& ban : changed.bans)
    ban.after = std::min(lesson.bell, ban.after + base::minutes(20));
  return changed;
}

Applied oven_next_door(const Lesson& lesson) {
  Lesson changed = lesson;
  if (changed.room.cookers.empty()) return std::nullopt;
  kitchen::Cooker spare = changed.room.cookers.front();
  spare.name = "next door";
  spare.rings = 0;
  spare.gas = kitchen::Gas::kNone;  // one that every class may use
  spare.grill = kitchen::GrillKind::kNone;
  const int index = static_cast<int>(changed.room.cookers.size());
  changed.room.cookers.push_back(spare);
  for (kitchen::Place& p : changed.room.places) p.cookers.push_back(index);
  const bool oven = std::any_of(
      lesson.dishes.begin(), lesson.dishes.end(), [](const kitchen::Dish& d) {
        return std::any_of(d.method.begin(), d.method.end(), [](const kitchen::Step& s) {
          return s.heat && s.heat->with == kitchen::HeatKind::kOven;
        });
      });
  return oven ? Applied(changed) : std::nullopt;
}

int oven_of(const Lesson& lesson, const kitchen::Cook& cook) {
  for (const int d : cook.dishes) {
    for (const kitchen::Step& s : lesson.dishes[static_cast<std::size_t>(d)].method) {
      if (s.heat && s.heat->with == kitchen::HeatKind::kOven) return s.heat->setting.celsius;
    }
  }
  return 0;
}

Applied seats_by_oven(const Lesson& lesson) {
  std::vector<int> places, order(lesson.cooks.size());
  for (std::size_t c = 0; c < lesson.cooks.size(); ++c) {
    places.push_back(lesson.cooks[c].place);
    order[c] = static_cast<int>(c);
  }
  std::stable_sort(order.begin(), order.end(), [&](int a, int b) {
    return oven_of(lesson, lesson.cooks[static_cast<std::size_t>(a)]) <
           oven_of(lesson, lesson.cooks[static_cast<std::size_t>(b)]);
  });
  std::stable_sort(places.begin(), places.end());
  Lesson changed = lesson;
  bool any = false;
  for (std::size_t i = 0; i < order.size(); ++i) {
    kitchen::Cook& cook = changed.cooks[static_cast<std::size_t>(order[i])];
    any = any || cook.place != places[i];
    cook.place = places[i];
  }
  return any ? Applied(changed) : std::nullopt;
}

Applied gate_not_stop(const Lesson& lesson) {
  Lesson changed = lesson;
  bool any = false;
  for (std::size_t w = 0; w < changed.windows.size();) {
    const kitchen::Window stop = changed.windows[w];
    if (stop.kind != kitchen::WindowKind::kStop || stop.after.empty()) {
      ++w;
      continue;
    }
    for (const kitchen::StepRef& ref : stop.after) {
      kitchen::Step& step = changed.dishes[static_cast<std::size_t>(ref.dish)]
                                .method[static_cast<std::size_t>(ref.step)];
      if (!step.gate) step.gate = kitchen::Gate{stop.name, base::minutes(1), base::minutes(10)};
    }
    changed.windows.erase(changed.windows.begin() + static_cast<std::ptrdiff_t>(w));
    any = true;
  }
  return any ? Applied(changed) : std::nullopt;
}

Applied stop_not_gates(const Lesson& lesson) {
  Lesson changed = lesson;
  bool any = false;
  int leader = 0;
  for (int a = 0; a < static_cast<int>(lesson.adults.size()); ++a) {
    if (lesson.adults[static_cast<std::size_t>(a)].leads) leader = a;
  }
  for (int d = 0; d < static_cast<int>(changed.dishes.size()); ++d) {
    kitchen::Dish& dish = changed.dishes[static_cast<std::size_t>(d)];
    for (int s = 0; s < static_cast<int>(dish.method.size()); ++s) {
      kitchen::Step& step = dish.method[static_cast<std::size_t>(s)];
      if (!step.gate) continue;
      kitchen::Window stop;
      stop.name = step.gate->look_for;
      stop.kind = kitchen::WindowKind::kStop;
      stop.latest = lesson.bell;
      stop.length = base::minutes(2);
      stop.led_by = leader;
      stop.after = {{d, s}};
      for (int f = 0; f < static_cast<int>(dish.method.size()); ++f) {
        for (const kitchen::Follows& follows : dish.method[static_cast<std::size_t>(f)].follows) {
          if (follows.step == s) stop.before.push_back({d, f});
        }
      }
      step.gate.reset();
      changed.windows.push_back(stop);
      any = true;
    }
  }
  return any && lesson.cooks.size() > 3 ? Applied(changed) : std::nullopt;
}

Applied one_dish_less(const Lesson& lesson) {
  if (pins_by_name(lesson)) return std::nullopt;
  Lesson changed = lesson;
  bool any = false;
  for (kitchen::Cook& c : changed.cooks) {
    if (c.dishes.size() < 2) continue;
    c.dishes.pop_back();
    any = true;
  }
  return any ? Applied(changed) : std::nullopt;
}

Applied without_pins(const Lesson& lesson) {
  if (lesson.pins.empty()) return std::nullopt;
  Lesson changed = lesson;
  changed.pins.clear();
  return changed;
}

Applied more_waves(const Lesson& lesson) {
  if (lesson.timelines == kitchen::Timelines::kOwn || lesson.most_waves >= 3) return std::nullopt;
  Lesson changed = lesson;
  changed.most_waves = lesson.most_waves + 1;
  return changed;
}

Applied wash_in_parts(const Lesson& lesson) {
  if (lesson.rules.wash_in_parts) return std::nullopt;
  Lesson changed = lesson;
  changed.rules.wash_in_parts = true;
  return changed;
}

}  // namespace

std::vector<Change> changes(const kitchen::Lesson& lesson) {
  const bool pairs = std::any_of(lesson.cooks.begin(), lesson.cooks.end(),
                                 [](const kitchen::Cook& c) { return c.people == 2; });
  std::vector<Change> all{
      {"without pins", "Take the pins off: every step starts when it can.", without_pins},
      {"another wave", "Let the class work in one more wave.", more_waves},
      {"wash in parts", "Wash up in parts while food cooks, not all at the end.", wash_in_parts},
      {"trays set out", "Have the technician weigh out and set a tray at each place.",
       trays_set_out},
      {"move the demonstration", "Let the demonstration move by up to a quarter of an hour.",
       free_the_windows},
      {"gate cooker by cooker", "Look at each cooker in turn instead of stopping everybody.",
       gate_not_stop},
      {"stop together", "Stop everybody once and show, instead of looking at each cooker.",
       stop_not_gates},
      {"seats by oven", "Swap seats so that those who bake at one temperature share an oven.",
       seats_by_oven},
      {"second adult", "Have a second adult in the room who may watch the hazards.", second_adult},
      {"later ban", "Let the hazard go on for up to twenty minutes longer.", ban_later},
      {"rack", "Leave the dishes on the rack to cool; another adult lids and labels them.",
       leave_on_rack},
      {"oven next door", "Use one oven next door as well, with an adult there.", oven_next_door},
      {"pairs", "Work in pairs.", [](const Lesson& l) { return regroup(l, 2); }},
      {"trios", pairs ? "Work in threes instead of pairs." : "Work in threes.",
       [](const Lesson& l) { return regroup(l, 3); }},
      {"half the batch", "Make half the batch each.", half_batch},
      {"carry over", "Put the dish away at its halfway point and finish it next lesson.",
       carry_over},
      {"half cook, half write",
       "Let half the class cook while half write, and change over next lesson.", half_the_class},
      {"one dish less", "Cook one dish less.", one_dish_less},
  };
  return all;
}

}  // namespace timeplan
