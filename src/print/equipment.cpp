#include "print/equipment.h"

#include <algorithm>
#include <map>
#include <tuple>

#include "base/index.h"
#include "print/stays.h"

namespace print {
namespace {

using base::at;

Usage usage(std::map<Seconds, int> changes) {
  Usage out;
  int now = 0;
  for (const auto& [when, change] : changes) {
    if (change == 0) continue;
    now += change;
    out.counts.push_back({when, now});
  }
  for (std::size_t i = 0; i < out.counts.size(); ++i) {
    if (out.counts[i].in_use <= out.most) continue;
    out.most = out.counts[i].in_use;
    out.most_from = out.counts[i].from;
    out.most_to = i + 1 < out.counts.size() ? out.counts[i + 1].from : out.most_from;
  }
  return out;
}

void take(std::map<Seconds, int>& changes, Seconds from, Seconds to, int amount) {
  changes[from] += amount;
  changes[to] -= amount;
}

/// How many units of a kit item a step's task holds; `need` counts along Task::kit_units.
int units(const kitchen::Lesson& lesson, const Task& task, int kit) {
  const kitchen::Step* step = task.kind == TaskKind::kStep ? step_of(lesson, task) : nullptr;
  if (step == nullptr) return 0;
  int out = 0;
  for (const kitchen::KitNeed& need : step->kit) {
    if (need.item == lesson.room.kit[at(kit)].item) out += need.count;
  }
  return out;
}

}  // namespace

std::vector<Stay> stays(const kitchen::Lesson& lesson, const Plan& plan) {
  using Key = std::tuple<int, int, std::string, kitchen::HeatKind>;
  std::map<Key, Stay> found;
  for (const Task& task : plan.tasks) {
    const kitchen::Step* step = step_of(lesson, task);
    if (task.kind != TaskKind::kStep || step == nullptr || !step->heat) continue;
    auto [stay, fresh] = found.try_emplace(
        Key{task.cook, task.dish, step->heat->vessel, step->heat->with});
    if (fresh) {
      stay->second = {task.cook,  task.dish, task.step,    task.cooker,
                      task.start, task.end,  task.setting, &*step->heat};
    }
    stay->second.to = std::max(stay->second.to, task.end);
  }
  for (const Task& task : plan.tasks) {  // a tray is in the oven until it has been taken out
    const kitchen::Step* step = step_of(lesson, task);
    if (task.kind != TaskKind::kStep || step == nullptr || !step->closes) continue;
    const kitchen::Step& closed = lesson.dishes[at(task.dish)].method[at(*step->closes)];
    if (!closed.heat) continue;
    const auto stay = found.find(Key{task.cook, task.dish, closed.heat->vessel, closed.heat->with});
    if (stay != found.end()) stay->second.to = std::max(stay->second.to, task.end);
  }
  std::vector<Stay> out;
  for (auto& [key, stay] : found) out.push_back(stay);
  std::stable_sort(out.begin(), out.end(), [](const Stay& a, const Stay& b) {
    return std::tie(a.from, a.cook) < std::tie(b.from, b.cook);
  });
  return out;
}

Usage ring_use(const kitchen::Lesson& lesson, const Plan& plan) {
  std::map<Seconds, int> changes;
  for (const Stay& stay : stays(lesson, plan)) {
    if (stay.heat->with == kitchen::HeatKind::kRing)
      take(changes, stay.from, stay.to, stay.heat->rings);
  }
  return usage(std::move(changes));
}

Usage sink_use(const kitchen::Lesson& lesson, const Plan& plan) {
  std::map<Seconds, int> changes;
  for (const Task& task : plan.tasks) {
    if (task.sink_bay < 0) continue;
    int positions = 1;
    if (task.kind == TaskKind::kApronAndHands && task.cook >= 0) {  // rule H7: as many people as
                                                                    // fit
      positions = std::min(lesson.cooks[at(task.cook)].people,
                           lesson.room.bays[at(task.sink_bay)].sinks);
    }
    take(changes, task.start, task.end, positions);
  }
  return usage(std::move(changes));
}

Usage kit_use(const kitchen::Lesson& lesson, const Plan& plan, int kit) {
  std::map<Seconds, int> changes;
  for (const Task& task : plan.tasks) {
    if (const int n = units(lesson, task, kit); n > 0) take(changes, task.start, task.end, n);
  }
  return usage(std::move(changes));
}

std::vector<Turn> kit_turns(const kitchen::Lesson& lesson, const Plan& plan, int kit) {
  std::vector<Turn> out;
  for (const Task& task : plan.tasks) {
    if (task.cook < 0 || units(lesson, task, kit) == 0) continue;
    const auto same = std::find_if(out.begin(), out.end(),
                                   [&](const Turn& t) { return t.start == task.start; });
    if (same != out.end()) {
      same->cooks.push_back(task.cook);
      same->end = std::max(same->end, task.end);
    } else {
      out.push_back({task.start, task.end, {task.cook}});
    }
  }
  return out;
}

int rings_in_room(const kitchen::Lesson& lesson) {
  int n = 0;
  for (const kitchen::Cooker& c : lesson.room.cookers) n += c.rings;
  return n;
}

int sinks_in_room(const kitchen::Lesson& lesson) {
  int n = 0;
  for (const kitchen::Bay& b : lesson.room.bays) n += b.sinks;
  return n;
}

}  // namespace print
