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

std::vector<std::string> printed_lines(const kitchen::Lesson& lesson, const timeplan::Plan& plan) {
  std::set<std::string> lines;
  for (const timeplan::Task& task : plan.tasks) {
    if (task.kind == timeplan::TaskKind::kStep && task.cook >= 0 && task.dish >= 0)
      lines.insert(line_of(lesson, plan, task));
  }
  for (const timeplan::Checkpoint& check : plan.checkpoints)
    lines.insert(say(wave_name(plan.waves, check.wave), ": ", kitchen::clock(lesson, check.at), " ",
                     check.says));
  return {lines.begin(), lines.end()};
}

WhatChanged what_changed(const kitchen::Lesson& before, const timeplan::Answer& old_plan,
                         const kitchen::Lesson& after, const timeplan::Answer& new_plan) {
  WhatChanged out;
  const auto old_seats = seats(before), new_seats = seats(after);
  for (const auto& [cook, place] : old_seats) {
    const auto now = new_seats.find(cook);
    if (now == new_seats.end()) {
      out.says.push_back(say(cook, " is no longer in it."));
    } else if (now->second != place) {
      ++out.seats_moved;
      out.says.push_back(say(cook, " moves from ", place, " to ", now->second, "."));
    }
  }
  for (const auto& [cook, place] : new_seats) {
    if (old_seats.count(cook) == 0) out.says.push_back(say(cook, " is new, at ", place, "."));
  }
  if (!old_plan.plan || !new_plan.plan) return out;
  if (old_plan.plan->waves != new_plan.plan->waves)
    out.says.push_back(say(base::counted(new_plan.plan->waves, "wave", "waves"), " instead of ",
                           old_plan.plan->waves, "."));
  const auto was = printed_lines(before, *old_plan.plan), is = printed_lines(after, *new_plan.plan);
  std::vector<std::string> gone, added;
  std::set_difference(was.begin(), was.end(), is.begin(), is.end(), std::back_inserter(gone));
  std::set_difference(is.begin(), is.end(), was.begin(), was.end(), std::back_inserter(added));
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
