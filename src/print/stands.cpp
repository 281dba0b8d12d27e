// Where each adult must be. Neighbouring tasks with one reason become one stand: "11:20 A1 B1,
// 11:21 A2: look at the onions".
#include <algorithm>

#include "base/index.h"

#include "print/facts.h"

namespace print {
namespace {

using base::at;

struct Gathered {
  Task first;
  Stand stand;
  std::vector<std::string> does;  ///< briefs of its steps, each once
};

std::optional<kitchen::Hazard> hazard_of(const kitchen::Lesson& lesson, const Task& task) {
  const kitchen::Step* step = step_of(lesson, task);
  return step != nullptr && task.kind == TaskKind::kStep ? step->hazard : std::nullopt;
}

bool joins(const kitchen::Lesson& lesson, const Gathered& g, const Task& task) {
  // A stand of its own when more than two minutes lie between: the adult walks off and comes back.
  const auto hazard = hazard_of(lesson, task);
  if (hazard && hazard == hazard_of(lesson, g.first))
    return task.start <= g.stand.to + base::minutes(2);
  return g.first.kind == task.kind && g.first.dish == task.dish && g.first.step == task.step &&
         task.kind != TaskKind::kWindow && task.start <= g.stand.to + base::minutes(2);
}

int bay_of_task(const kitchen::Lesson& lesson, const Task& task) {
  if (task.kind == TaskKind::kBayLook) return task.bay;
  return task.cook >= 0 ? bay_of(lesson, task.cook) : -1;
}

void gather(const kitchen::Lesson& lesson, const Task& task, std::vector<Gathered>& all) {
  auto found = std::find_if(all.rbegin(), all.rend(),
                            [&](const Gathered& g) { return joins(lesson, g, task); });
  if (found == all.rend()) {
    Gathered fresh;
    fresh.first = task;
    fresh.stand.from = task.start;
    all.push_back(std::move(fresh));
    found = all.rbegin();
  }
  found->stand.to = std::max(found->stand.to, task.end);
  std::string who = task.kind == TaskKind::kBayLook ? "bay " + lesson.room.bays[at(task.bay)].name
                    : task.cook >= 0                ? call(lesson, task.cook)
                                                    : "";
  // Warm the oil, fry, lift out: one stay with one cook.
  const auto same = std::find_if(
      found->stand.visits.begin(), found->stand.visits.end(), [&](const Visit& v) {
        return !who.empty() && v.who == who && task.start <= v.to + base::minutes(2);
      });
  if (same != found->stand.visits.end()) {
    same->to = std::max(same->to, task.end);
  } else {
    found->stand.visits.push_back(
        {task.start, task.end, bay_of_task(lesson, task), std::move(who)});
  }
  const std::string does = brief(lesson, task);
  if (std::find(found->does.begin(), found->does.end(), does) == found->does.end())
    found->does.push_back(does);
}

std::string reason(const kitchen::Lesson& lesson, const Gathered& gathered) {
  const Task& task = gathered.first;
  const kitchen::Step* step = step_of(lesson, task);
  switch (task.kind) {
    case TaskKind::kWindow: {
      const kitchen::Window& w = lesson.windows[at(task.window)];
      return w.kind == kitchen::WindowKind::kStop ? w.name + ", everybody stops" : w.name;
    }
    case TaskKind::kLook:
      return "look" + (step && step->gate ? ": " + step->gate->look_for : "");
    case TaskKind::kBayLook:
      return "look before they go";
    case TaskKind::kKnivesOut:
      return "count the knives out";
    case TaskKind::kKnivesIn:
      return "count the knives in";
    default:
      break;
  }
  if (step == nullptr) return sentence(lesson, task);
  const std::string does = joined(gathered.does, ", then ");
  return step->hazard ? hazard(*step->hazard) + " (" + does + ")" : does;
}

}  // namespace

std::string where_words(const kitchen::Lesson& lesson, const Stand& stand) {
  std::vector<std::pair<Seconds, std::vector<std::string>>> turns;
  for (const Visit& visit : stand.visits) {
    if (visit.who.empty()) return "front";
    if (turns.empty() || turns.back().first != visit.from) turns.push_back({visit.from, {}});
    turns.back().second.push_back(visit.who);
  }
  std::vector<std::string> parts;
  for (const auto& [when, who] : turns) {
    parts.push_back((turns.size() > 1 ? kitchen::clock(lesson, when) + " " : "") + together(who));
  }
  return joined(parts, ", ");
}

std::string stand_words(const kitchen::Lesson& lesson, const Stand& stand) {
  const std::string where = where_words(lesson, stand);
  return where == "front" ? "Front: " + stand.why : capital(stand.why) + ": " + where;
}

std::vector<Stand> stands(const kitchen::Lesson& lesson, const Plan& plan, int adult) {
  std::vector<Gathered> all;
  for (const Task& task : plan.tasks) {
    if (task.adult == adult) gather(lesson, task, all);
  }
  std::vector<Stand> out;
  for (Gathered& g : all) {
    g.stand.why = reason(lesson, g);
    g.stand.hazard = hazard_of(lesson, g.first);
    out.push_back(std::move(g.stand));
  }
  std::stable_sort(out.begin(), out.end(),
                   [](const Stand& a, const Stand& b) { return a.from < b.from; });
  return out;
}

}  // namespace print
