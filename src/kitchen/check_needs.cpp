// What the dishes need and the room has: cookers within reach, kit, space.
#include <algorithm>
#include <set>

#include "kitchen/check_parts.h"

namespace kitchen {
namespace {

/// Why a cooker cannot give a step its heat, or empty when it can.
std::string lacks(const Cooker& cooker, const Heat& heat) {
  switch (heat.with) {
    case HeatKind::kRing:
      if (cooker.rings < heat.rings)
        return say("it needs ", base::counted(heat.rings, "ring", "rings"), " and ", cooker.name,
                   " has ", cooker.rings);
      return {};
    case HeatKind::kGrill:
      if (cooker.grill == GrillKind::kNone)
        return say("it needs a grill and ", cooker.name, " has none");
      return {};
    case HeatKind::kOven:
      if (cooker.shelves == 0) return say("it needs an oven and ", cooker.name, " has none");
      if (heat.setting.kind == OvenKind::kFan && !cooker.fan)
        return say("it needs a fan oven and ", cooker.name, " has no fan");
      if (heat.setting.kind == OvenKind::kGrill && cooker.grill != GrillKind::kInOven)
        return say("it needs a grill in the oven and ", cooker.name, " has none");
      if (heat.shelf_twelfths > 12 * cooker.shelves)
        return say("it needs ", heat.shelf_twelfths, " twelfths of a shelf and ", cooker.name,
                   " has ", base::counted(cooker.shelves, "shelf", "shelves"));
      return {};
  }
  return {};
}

void refuse_gas(const Lesson& lesson, const std::string& what, const Place& place,
                const std::string& where, Problems& problems) {
  add(problems, "rules.gas_year", where,
      say(what, " has only gas within reach of ", in_quotes(place.name), "; this is year ",
          lesson.year, ", and gas is allowed from year ", lesson.rules.gas_from_year, "."),
      "Move the cook to a place with an electric cooker, let the place reach one, or choose a dish "
      "that does not need it.");
}

/// Food kept hot needs a ring or an oven as well, and by the same rule. No hold, nothing to say; no
/// cooker at all is told elsewhere.
void check_held_on_gas(const Lesson& lesson, const Dish& dish, const Place& place,
                       const std::string& where, Problems& problems) {
  if (lesson.purpose == Purpose::kTakeHome) return;
  const bool oven = dish.hold.in == HoldIn::kOven80;
  if (!oven && dish.hold.in != HoldIn::kRing) return;
  int able = 0, allowed = 0;
  for (const int k : place.cookers) {
    const Cooker& cooker = lesson.room.cookers[static_cast<std::size_t>(k)];
    if ((oven ? cooker.shelves : cooker.rings) == 0) continue;
    ++able;
    if (may_use(lesson, cooker, oven ? HeatKind::kOven : HeatKind::kRing)) ++allowed;
  }
  if (able > 0 && allowed == 0)
    refuse_gas(lesson, say("Keeping ", dish_name(dish), " hot"), place, where, problems);
}

/// One pan or tin stays on one cooker, so one cooker within reach must suit all its steps.
void check_vessels(const Lesson& lesson, std::size_t c, int d, const std::string& where,
                   Problems& problems) {
  const Cook& cook = lesson.cooks[c];
  const Dish& dish = dish_at(lesson, d);
  const Place& place = lesson.room.places[static_cast<std::size_t>(cook.place)];
  const std::vector<bool> done = steps_done(lesson, d);
  std::set<std::string> vessels;
  for (std::size_t s = 0; s < dish.method.size(); ++s) {
    if (done[s] && dish.method[s].heat) vessels.insert(dish.method[s].heat->vessel);
  }
  for (const std::string& vessel : vessels) {
    std::string reason;
    const Step* step_with_reason = nullptr;
    const Step* on_gas_only = nullptr;  // a cooker would do, were it not for the rule on gas
    bool suits = false;
    for (const int k : place.cookers) {
      const Cooker& cooker = lesson.room.cookers[static_cast<std::size_t>(k)];
      std::string here;
      const Step* on_gas = nullptr;
      for (std::size_t s = 0; s < dish.method.size() && here.empty(); ++s) {
        const Step& step = dish.method[s];
        if (!done[s] || !step.heat || step.heat->vessel != vessel) continue;
        here = lacks(cooker, *step.heat);
        if (!here.empty() && step_with_reason == nullptr) {
          step_with_reason = &step;
          reason = here;
        }
        if (!may_use(lesson, cooker, step.heat->with)) on_gas = &step;
      }
      if (here.empty() && on_gas != nullptr) on_gas_only = on_gas;
      suits = suits || (here.empty() && on_gas == nullptr);
    }
    if (suits) continue;
    if (on_gas_only != nullptr) {
      refuse_gas(lesson, say("The step ", in_quotes(on_gas_only->id), " of ", dish_name(dish)),
                 place, where, problems);
      continue;
    }
    add(problems, "lesson.no_cooker", where,
        say("The step ", in_quotes(step_with_reason->id), " of ", dish_name(dish),
            " cannot be done at ", in_quotes(place.name), ": ", reason,
            place.cookers.size() > 1 ? ", and no other cooker within reach suits." : "."),
        "Move the cook to another place, let the place reach another cooker, or change the step.");
  }
  check_held_on_gas(lesson, dish, place, where, problems);
  const bool held_in_oven = dish.hold.in == HoldIn::kOven80;
  const bool has_oven = std::any_of(place.cookers.begin(), place.cookers.end(), [&](int k) {
    return lesson.room.cookers[static_cast<std::size_t>(k)].shelves > 0;
  });
  if (held_in_oven && !has_oven) {
    add(problems, "lesson.no_oven_to_hold", where,
        say("The dish ", dish_name(dish), " is kept hot in an oven, and no cooker within reach of ",
            in_quotes(place.name), " has one."),
        "Hold it another way, or move the cook.");
  }
}

void check_kit(const Lesson& lesson, const Dish& dish, const Step& step,
               std::set<std::string>& told, Problems& problems) {
  std::vector<std::string> names;
  for (const Kit& kit : lesson.room.kit) names.push_back(kit.item);
  for (const KitNeed& need : step.kit) {
    const Kit* kit = find_kit(lesson.room, need.item);
    if (kit != nullptr && kit->count >= need.count) continue;
    if (!told.insert(need.item).second) continue;
    if (kit == nullptr) {
      const auto near = base::nearest(need.item, names);
      add(problems, "lesson.kit_missing", "/room",
          say("The step ", in_quotes(step.id), " of ", dish_name(dish), " needs the kit ",
              in_quotes(need.item), ", and ", lesson.room.name, " has none",
              near ? say("; did you mean ", in_quotes(*near), "?") : std::string(".")),
          "Add it to the room's kit, or use the room's word for it in the dish.");
    } else {
      add(problems, "lesson.kit_short", "/room",
          say("The step ", in_quotes(step.id), " of ", dish_name(dish), " needs ", need.count,
              " of ", in_quotes(need.item), ", and ", lesson.room.name, " has ", kit->count, "."),
          "Use fewer at once, or get more.");
    }
  }
}

void check_space(const Lesson& lesson, const Dish& dish, const Step& step, Problems& problems) {
  const auto one = [&](int need, int has, std::string_view noun) {
    if (need <= has) return;
    add(problems, "lesson.no_space", "/room",
        say("The step ", in_quotes(step.id), " of ", dish_name(dish), " takes ", need,
            " tenths of a ", noun, " shelf, and ", lesson.room.name, " has ", has, "."),
        "Use a smaller dish, or give the room more space.");
  };
  one(step.fridge_tenths, lesson.room.fridge_tenths, "fridge");
  one(step.freezer_tenths, lesson.room.freezer_tenths, "freezer");
}

void check_ovens_set(const Lesson& lesson, Problems& problems) {
  std::set<int> seen;
  for (std::size_t i = 0; i < lesson.ovens.size(); ++i) {
    const OvenAtOpening& oven = lesson.ovens[i];
    const Cooker& cooker = lesson.room.cookers[static_cast<std::size_t>(oven.cooker)];
    const std::string where = place_in("ovens_set", i);
    if (!seen.insert(oven.cooker).second)
      add(problems, "lesson.oven_set_twice", where,
          say("The oven of ", in_quotes(cooker.name), " is set twice."), "Keep one setting.");
    Heat heat;
    heat.with = HeatKind::kOven;
    heat.setting = oven.setting;
    heat.shelf_twelfths = 1;
    if (const std::string reason = lacks(cooker, heat); !reason.empty()) {
      add(problems, "lesson.oven_cannot_be_set", where,
          say("The oven of ", in_quotes(cooker.name), " cannot be set so: ", reason, "."),
          "Name another cooker, or another kind of heat.");
    }
  }
}

}  // namespace

void check_needs(const Lesson& lesson, Problems& problems) {
  for (std::size_t c = 0; c < lesson.cooks.size(); ++c) {
    for (std::size_t i = 0; i < lesson.cooks[c].dishes.size(); ++i) {
      check_vessels(lesson, c, lesson.cooks[c].dishes[i],
                    below(below(place_in("cooks", c), "dishes"), i), problems);
    }
  }
  for (const int d : dishes_cooked(lesson)) {
    const Dish& dish = dish_at(lesson, d);
    const std::vector<bool> done = steps_done(lesson, d);
    std::set<std::string> told;
    for (std::size_t s = 0; s < dish.method.size(); ++s) {
      if (!done[s]) continue;
      check_kit(lesson, dish, dish.method[s], told, problems);
      check_space(lesson, dish, dish.method[s], problems);
    }
  }
  check_ovens_set(lesson, problems);
}

}  // namespace kitchen
