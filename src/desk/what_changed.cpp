#include "desk/what_changed.h"

#include <algorithm>
#include <iterator>
#include <map>
#include <set>

#include "base/text.h"

namespace desk {
namespace {

using base::say;

constexpr std::size_t kMostSaid = 12;  // the rest is counted: nobody reads sixty lines before a
                                       // bell

std::map<std::string, std::string> seats(const kitchen::Lesson& lesson) {
  std::map<std::string, std::string> out;
  for (const kitchen::Cook& cook : lesson.cooks)
    out[cook.name] = lesson.room.places[static_cast<std::size_t>(cook.place)].name;
  return out;
}

std::string wave_name(int waves, int wave) {
  return waves == 1 ? std::string("Everybody") : say("Wave ", wave + 1);
}

std::string line_of(const kitchen::Lesson& lesson, const timeplan::Plan& plan,
                    const timeplan::Task& task) {
  const bool own = lesson.timelines == kitchen::Timelines::kOwn;
  const std::string who = own ? lesson.cooks[static_cast<std::size_t>(task.cook)].name
                              : wave_name(plan.waves,
                                          plan.wave_of_cook[static_cast<std::size_t>(task.cook)]);
  const kitchen::Dish& dish = lesson.dishes[static_cast<std::size_t>(task.dish)];
  const kitchen::Step& step = dish.method[static_cast<std::size_t>(task.step)];
  return say(who, ": ", kitchen::clock(lesson, task.start), " ", step.brief, " (", dish.tag, ")");
}

}  // namespace

Printed printed(const kitchen::Lesson& lesson, const timeplan::Answer& answer) {
  Printed out;
  out.seats = seats(lesson);
  if (!answer.plan) return out;
  const timeplan::Plan& plan = *answer.plan;
  out.waves = plan.waves;
  std::set<std::string> lines;
  for (const timeplan::Task& task : plan.tasks) {
    if (task.kind == timeplan::TaskKind::kStep && task.cook >= 0 && task.dish >= 0)
      lines.insert(line_of(lesson, plan, task));
  }
  for (const timeplan::Checkpoint& check : plan.checkpoints)
    lines.insert(say(wave_name(plan.waves, check.wave), ": ", kitchen::clock(lesson, check.at), " ",
                     check.says));
  out.lines.assign(lines.begin(), lines.end());
  return out;
}

WhatChanged what_changed(const Printed& before, const Printed& after) {
  WhatChanged out;
  for (const auto& [cook, place] : before.seats) {
    const auto now = after.seats.find(cook);
    if (now == after.seats.end()) {
      out.says.push_back(say(cook, " is no longer in it."));
    } else if (now->second != place) {
      ++out.seats_moved;
      out.says.push_back(say(cook, " moves from ", place, " to ", now->second, "."));
    }
  }
  for (const auto& [cook, place] : after.seats) {
    if (before.seats.count(cook) == 0) out.says.push_back(say(cook, " is new, at ", place, "."));
  }
  if (before.waves == 0 || after.waves == 0) return out;
  if (before.waves != after.waves)
    out.says.push_back(
        say(base::counted(after.waves, "wave", "waves"), " instead of ", before.waves, "."));
  std::vector<std::string> gone, added;
  std::set_difference(before.lines.begin(), before.lines.end(), after.lines.begin(),
                      after.lines.end(), std::back_inserter(gone));
  std::set_difference(after.lines.begin(), after.lines.end(), before.lines.begin(),
                      before.lines.end(), std::back_inserter(added));
  out.lines_moved = static_cast<int>(std::max(gone.size(), added.size()));
  for (std::size_t i = 0; i < added.size(); ++i) {
    if (out.says.size() >= kMostSaid) {
      out.says.push_back(say("and ", added.size() - i, " more printed lines."));
      break;
    }
    out.says.push_back("New: " + added[i]);
  }
  return out;
}

}  // namespace desk
