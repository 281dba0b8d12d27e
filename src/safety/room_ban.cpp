#include "safety/room_ban.h"

#include <algorithm>
#include <set>

#include "base/text.h"
#include "safety/conflict_parts.h"

namespace safety {
namespace {

using base::say;
using kitchen::Lesson;

std::vector<std::string> listed(const std::set<std::string>& all) {
  return {all.begin(), all.end()};
}

// The things that the steps of a dish leave it on.
void things_of(const Lesson& lesson, int d, const Need& need, const Evidence& evidence,
               std::set<std::string>& kit, std::set<std::string>& vessels,
               std::set<std::string>& air) {
  const kitchen::Dish& dish = dish_at(lesson, d);
  for (std::size_t s = 0; s < dish.method.size(); ++s) {
    const kitchen::Step& step = dish.method[s];
    if (!may_be_there(strongest(findings_of_step(dish, static_cast<int>(s), need, evidence))))
      continue;
    for (const kitchen::KitNeed& item : step.kit) kit.insert(item.item);
    if (step.heat) vessels.insert(step.heat->vessel);
    if (step.hazard == kitchen::Hazard::kHotOil) vessels.insert("frying oil: throw it away");
    const std::string how = flies(dish, static_cast<int>(s), need, evidence);
    if (!how.empty()) air.insert(how);
  }
}

void list_cleaning(const Lesson& before, const std::set<int>& bays, const Need& need,
                   const Evidence& evidence, Leftover& out) {
  std::set<std::string> kit, vessels, air;
  for (const int d : out.dishes) things_of(before, d, need, evidence, kit, vessels, air);
  out.replace = {"dish cloths and tea towels", "aprons", "sponges and washing-up water"};
  for (const kitchen::Kit& item : before.room.kit) {
    if (kit.contains(item.item))
      out.clean.push_back(say(item.item, ": full clean, ", base::minutes_text(item.full_clean)));
  }
  if (!vessels.empty()) out.clean.push_back("vessels: " + base::joined(listed(vessels)));
  out.clean.emplace_back("trays, racks and oven shelves used");
  std::vector<std::string> names;
  for (const int b : bays) names.push_back(before.room.bays[static_cast<std::size_t>(b)].name);
  out.clean.push_back(say("benches, sinks, taps and handles of ",
                          names.size() == 1 ? "bay " : "bays ", base::joined(names)));
  if (!before.trays_at_places) out.clean.emplace_back("the ingredients table and its scales");
  out.clean.emplace_back("bins: empty them");
  if (!air.empty())
    out.clean.push_back(say("the air: ", base::joined(listed(air)),
                            "; extraction and windows, then wipe what it settled on"));
}

std::optional<Leftover> left_by(const Lesson& before, const Need& need, const Evidence& evidence) {
  Leftover out;
  out.need = need;
  out.stated = Stated::kNotListed;
  std::set<int> bays;
  for (std::size_t c = 0; c < before.cooks.size(); ++c) {
    for (const int d : before.cooks[c].dishes) {
      const Stated stated = strongest(findings(dish_at(before, d), need, evidence));
      if (!may_be_there(stated)) continue;
      out.stated = stronger(out.stated, stated);
      bays.insert(kitchen::bay_of(before, static_cast<int>(c)));
      if (std::find(out.dishes.begin(), out.dishes.end(), d) == out.dishes.end())
        out.dishes.push_back(d);
    }
  }
  if (out.dishes.empty()) return std::nullopt;
  out.since = kitchen::clock(before, before.bell);
  list_cleaning(before, bays, need, evidence, out);
  return out;
}

}  // namespace

std::vector<Leftover> leftovers(const std::vector<DayLesson>& day, const Evidence& evidence) {
  std::vector<int> by_time(day.size());
  for (std::size_t i = 0; i < day.size(); ++i) by_time[i] = static_cast<int>(i);
  const auto lesson_at = [&](int i) -> const Lesson& {
    return day[static_cast<std::size_t>(i)].lesson;
  };
  std::stable_sort(by_time.begin(), by_time.end(), [&](int a, int b) {
    return lesson_at(a).opens_minute < lesson_at(b).opens_minute;
  });
  std::vector<Leftover> out;
  for (std::size_t now = 0; now < by_time.size(); ++now) {
    const Lesson& lesson = lesson_at(by_time[now]);
    for (const CookNeeds& cook : day[static_cast<std::size_t>(by_time[now])].needs) {
      for (const Need& need : cook.needs) {
        if (need.reach != Reach::kRoom) continue;
        for (std::size_t b = now; b-- > 0;) {
          const Lesson& before = lesson_at(by_time[b]);
          if (before.date != lesson.date || before.room.name != lesson.room.name) continue;
          auto left = left_by(before, need, evidence);
          if (!left) continue;
          left->lesson = by_time[now];
          left->cook = cook.cook;
          left->before = by_time[b];
          out.push_back(std::move(*left));
        }
      }
    }
  }
  return out;
}

}  // namespace safety
