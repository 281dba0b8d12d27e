#include "print/facts.h"

#include <fmt/format.h>

#include <algorithm>
#include <tuple>

#include "base/index.h"

namespace print {
namespace {

using base::at;

const kitchen::Dish* dish_of(const kitchen::Lesson& lesson, int dish) {
  return dish < 0 || at(dish) >= lesson.dishes.size() ? nullptr : &lesson.dishes[at(dish)];
}

std::string kit_name(const kitchen::Lesson& lesson, const Task& task) {
  return task.kit < 0 ? "equipment" : lesson.room.kit[at(task.kit)].item;
}

bool attends(const kitchen::Lesson& lesson, const Task& window, const std::vector<int>& cooks) {
  const auto there = audience(lesson, lesson.windows[at(window.window)]);
  return std::any_of(cooks.begin(), cooks.end(), [&](int c) {
    return std::find(there.begin(), there.end(), c) != there.end();
  });
}

void add_once(std::vector<int>& list, int value) {
  if (std::find(list.begin(), list.end(), value) == list.end()) list.push_back(value);
}

void add_turn(Doing& doing, const Task& task) {
  doing.start = doing.turns.empty() ? task.start : std::min(doing.start, task.start);
  doing.end = std::max(doing.end, task.end);
  auto turn = std::find_if(doing.turns.begin(), doing.turns.end(),
                           [&](const Turn& t) { return t.start == task.start; });
  if (turn == doing.turns.end())
    turn = doing.turns.insert(doing.turns.end(), Turn{task.start, task.end, {}});
  turn->end = std::max(turn->end, task.end);
  if (task.cook >= 0) turn->cooks.push_back(task.cook);
}

/// Tasks of one wave that a teacher would call by one name.
bool same_thing(const Task& a, const Task& b) {
  return std::tie(a.kind, a.dish, a.step, a.part, a.window, a.kit) ==
         std::tie(b.kind, b.dish, b.step, b.part, b.window, b.kit);
}

std::vector<Doing> doings_of(const kitchen::Lesson& lesson, const Plan& plan,
                             const std::vector<int>& cooks) {
  std::vector<Doing> out;
  for (const Task& task : plan.tasks) {
    const bool ours = task.kind == TaskKind::kWindow
                          ? attends(lesson, task, cooks)
                          : task.cook >= 0 &&
                                std::find(cooks.begin(), cooks.end(), task.cook) != cooks.end();
    if (!ours) continue;
    auto doing = std::find_if(out.begin(), out.end(),
                              [&](const Doing& d) { return same_thing(d.example, task); });
    if (doing == out.end()) {
      out.push_back({task, {}, {}, {}});
      doing = out.end() - 1;
    }
    add_turn(*doing, task);
  }
  for (Doing& d : out) {
    std::stable_sort(d.turns.begin(), d.turns.end(),
                     [](const Turn& a, const Turn& b) { return a.start < b.start; });
    for (Turn& t : d.turns) std::sort(t.cooks.begin(), t.cooks.end());
  }
  std::stable_sort(out.begin(), out.end(),
                   [](const Doing& a, const Doing& b) { return a.start < b.start; });
  return out;
}

}  // namespace

const kitchen::Step* step_of(const kitchen::Lesson& lesson, const Task& task) {
  const kitchen::Dish* dish = dish_of(lesson, task.dish);
  if (dish == nullptr || task.step < 0 || at(task.step) >= dish->method.size()) return nullptr;
  return &dish->method[at(task.step)];
}

Look look(const kitchen::Lesson& lesson, const Task& task) {
  switch (task.kind) {
    case TaskKind::kApronAndHands:
    case TaskKind::kHandWash:
    case TaskKind::kCleanDown:
    case TaskKind::kKitWash:
    case TaskKind::kFullClean:
    case TaskKind::kWashUp:
      return Look::kClean;
    case TaskKind::kLook:
    case TaskKind::kBayLook:
    case TaskKind::kKnivesOut:
    case TaskKind::kKnivesIn:
      return Look::kGrownUp;
    case TaskKind::kWindow:
      return Look::kLeave;
    case TaskKind::kStep:
      break;
    case TaskKind::kCollectIngredients:
    case TaskKind::kCollectEquipment:
    case TaskKind::kStore:
    case TaskKind::kTakeOutOfStore:
    case TaskKind::kPack:
      return Look::kHands;
  }
  const kitchen::Step* step = step_of(lesson, task);
  if (task.adult >= 0 || (step != nullptr && step->hazard)) return Look::kGrownUp;
  if (step == nullptr || kitchen::hands_on(step->attention)) return Look::kHands;
  return step->attention == kitchen::Attention::kLeave ? Look::kLeave : Look::kWatch;
}

std::string look_word(Look l) {
  switch (l) {
    case Look::kHands:
      return "hands";
    case Look::kWatch:
      return "watch";
    case Look::kLeave:
      return "leave";
    case Look::kGrownUp:
      return "grown-up";
    case Look::kClean:
      return "clean";
  }
  return "hands";
}

bool keeps_hands_busy(const kitchen::Lesson& lesson, const Task& task) {
  if (task.kind == TaskKind::kLook || task.kind == TaskKind::kWindow) return false;
  if (task.kind != TaskKind::kStep) return true;
  const kitchen::Step* step = step_of(lesson, task);
  return step == nullptr || kitchen::hands_on(step->attention);
}

std::string brief(const kitchen::Lesson& lesson, const Task& task) {
  const auto part = [&](std::string name) {
    return task.part > 0 ? fmt::format("{} {}", name, task.part + 1) : name;
  };
  switch (task.kind) {
    case TaskKind::kApronAndHands:
      return "apron on";
    case TaskKind::kCollectIngredients:
      return "collect food";
    case TaskKind::kCollectEquipment:
      return "collect kit";
    case TaskKind::kHandWash:
      return "wash hands";
    case TaskKind::kCleanDown:
      return "clean down";
    case TaskKind::kKitWash:
      return "wash kit";
    case TaskKind::kFullClean:
      return "full clean";
    case TaskKind::kLook:
      return "look";
    case TaskKind::kStore:
      return "put away";
    case TaskKind::kTakeOutOfStore:
      return "take out";
    case TaskKind::kPack:
      return "lid and label";
    case TaskKind::kWashUp:
      return part("wash up");
    case TaskKind::kWindow:
      return shortened(lesson.windows[at(task.window)].name, 14);
    case TaskKind::kBayLook:
      return "look at bay";
    case TaskKind::kKnivesOut:
      return "knives out";
    case TaskKind::kKnivesIn:
      return "knives in";
    case TaskKind::kStep:
      break;
  }
  const kitchen::Step* step = step_of(lesson, task);
  if (step == nullptr) return "step";
  return part(shortened(step->brief.empty() ? step->says : step->brief, 14));
}

std::string sentence(const kitchen::Lesson& lesson, const Task& task) {
  const kitchen::Step* step = step_of(lesson, task);
  const auto part = [&](std::string says) { return task.part > 0 ? says + ", carry on" : says; };
  const auto plain = [](std::string says) {
    while (!says.empty() && says.back() == '.') says.pop_back();
    return says;
  };
  switch (task.kind) {
    case TaskKind::kApronAndHands:
      return "Apron on, wash hands";
    case TaskKind::kCollectIngredients:
      return "Collect ingredients";
    case TaskKind::kCollectEquipment:
      return "Collect equipment";
    case TaskKind::kHandWash:
      return "Wash hands";
    case TaskKind::kCleanDown:
      return "Clean board and bench";
    case TaskKind::kKitWash:
      return "Wash the " + kit_name(lesson, task);
    case TaskKind::kFullClean:
      return "Full clean of the " + kit_name(lesson, task) + ", for an allergy";
    case TaskKind::kLook:
      return "Stop for the look" + (step && step->gate ? ": " + plain(step->gate->look_for) : "");
    case TaskKind::kStore:
      return "Cover, label and put away";
    case TaskKind::kTakeOutOfStore:
      return "Take out what was put away";
    case TaskKind::kPack:
      return kitchen::chilled_before_home(lesson, task.dish)
                 ? "Lid and label, then into the fridge until it goes home"
                 : "Lid and label to take home";
    case TaskKind::kWashUp:
      return part("Wash up");
    case TaskKind::kWindow:
      return plain(lesson.windows[at(task.window)].name);
    case TaskKind::kBayLook:
      return "Look at the bay";
    case TaskKind::kKnivesOut:
      return "Count the knives out";
    case TaskKind::kKnivesIn:
      return "Count the knives in";
    case TaskKind::kStep:
      break;
  }
  return step == nullptr ? "Step" : part(plain(step->says));
}

std::string task_words(const kitchen::Lesson& lesson, const Task& task) {
  std::string out;
  if (task.cook >= 0) {
    const kitchen::Cook& cook = lesson.cooks[at(task.cook)];
    out = lesson.room.places[at(cook.place)].name + " " + cook.name + ": ";
  }
  out += stopped(sentence(lesson, task)) + " " + span(lesson, task.start, task.end) + ", " +
         minutes(task.end - task.start);
  if (task.kind != TaskKind::kWindow) out += ", " + look_word(look(lesson, task));
  if (task.adult >= 0) out += " with " + lesson.adults[at(task.adult)].name;
  if (const kitchen::Dish* dish = dish_of(lesson, task.dish)) out += ". " + dish_name(*dish);
  if (task.setting && task.cooker >= 0) {
    out += ", oven " + lesson.room.cookers[at(task.cooker)].name + " at " + setting(*task.setting);
  } else if (task.cooker >= 0) {
    out += ", cooker " + lesson.room.cookers[at(task.cooker)].name;
  }
  if (task.basin) out += ", at the hand basin";
  if (task.sink_bay >= 0) out += ", at a sink of bay " + lesson.room.bays[at(task.sink_bay)].name;
  const kitchen::Step* step = step_of(lesson, task);
  if (step != nullptr && task.kind == TaskKind::kStep) {
    std::vector<std::string> kit;
    for (const kitchen::KitNeed& need : step->kit) kit.push_back(need.item);
    if (!kit.empty()) out += ", with " + listed(kit);
  }
  return out + ".";
}

std::string dish_name(const kitchen::Dish& dish) {
  const bool said = dish.variant.empty() || dish.name.find(dish.variant) != std::string::npos;
  return said ? dish.name : dish.name + ", " + dish.variant;
}

std::string tag(const kitchen::Lesson& lesson, int dish) {
  const kitchen::Dish* found = dish_of(lesson, dish);
  return found == nullptr ? "" : found->tag;
}

std::string call(const kitchen::Lesson& lesson, int cook) {
  const kitchen::Cook& who = lesson.cooks[at(cook)];
  const auto shares = std::count_if(lesson.cooks.begin(), lesson.cooks.end(),
                                    [&](const kitchen::Cook& c) { return c.place == who.place; });
  const std::string& place = lesson.room.places[at(who.place)].name;
  return shares > 1 ? place + " " + who.name : place;
}

std::vector<int> audience(const kitchen::Lesson& lesson, const kitchen::Window& window) {
  if (!window.audience.empty()) return window.audience;
  std::vector<int> everyone;
  for (int c = 0; at(c) < lesson.cooks.size(); ++c) everyone.push_back(c);
  return everyone;
}

std::vector<Wave> waves(const kitchen::Lesson& lesson, const Plan& plan) {
  std::vector<Wave> out;
  const bool own = plan.wave_of_cook.size() != lesson.cooks.size();
  for (int c = 0; at(c) < lesson.cooks.size(); ++c) {
    const int number = own ? c : plan.wave_of_cook[at(c)];
    auto wave = std::find_if(out.begin(), out.end(),
                             [&](const Wave& w) { return w.number == number; });
    if (wave == out.end()) {
      Wave fresh;
      fresh.number = number;
      wave = out.insert(out.end(), std::move(fresh));
    }
    wave->cooks.push_back(c);
    add_once(wave->bays, bay_of(lesson, c));
    for (const int d : lesson.cooks[at(c)].dishes) add_once(wave->dishes, d);
  }
  std::sort(out.begin(), out.end(),
            [](const Wave& a, const Wave& b) { return a.number < b.number; });
  for (Wave& w : out) {
    std::sort(w.bays.begin(), w.bays.end());
    std::sort(w.dishes.begin(), w.dishes.end());
    w.doings = doings_of(lesson, plan, w.cooks);
  }
  return out;
}

std::string call_order(const kitchen::Lesson& lesson, const Doing& doing) {
  std::vector<std::string> groups;
  bool alone = true;
  for (const Turn& turn : doing.turns) {
    std::vector<std::string> names;
    for (const int c : turn.cooks) names.push_back(call(lesson, c));
    alone = alone && names.size() == 1;
    groups.push_back(together(names));
  }
  return joined(groups, alone ? ", " : ", then ");
}

}  // namespace print
