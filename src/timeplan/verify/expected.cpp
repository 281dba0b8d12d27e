#include "timeplan/verify/expected.h"

#include <algorithm>
#include <utility>

#include <fmt/format.h>

#include "timeplan/verify/lengths.h"

namespace timeplan::judge {

namespace {

std::string rule_of_step(const Case& c, int cook, int dish, int step) {
  if (c.step(dish, step).closes) return "L3";
  return step_parts(c, cook, dish, step) > 1 ? "P1" : "L2";
}

void add_steps(const Case& c, int cook, int dish, std::vector<Expected>& list) {
  for (const int s : c.half(dish).reading) {
    const auto rule = rule_of_step(c, cook, dish, s);
    for (int part = 0; part < step_parts(c, cook, dish, s); ++part) {
      list.push_back({{TaskKind::kStep, cook, dish, s, part}, rule});
    }
    if (c.step(dish, s).gate) list.push_back({{TaskKind::kLook, cook, dish, s}, "Y5"});
  }
}

void add_cleaning(const Case& c, int cook, int dish, std::vector<Expected>& list) {
  for (const auto& group : raw_groups(c, dish)) {
    list.push_back({{TaskKind::kHandWash, cook, dish, group.back()}, "H5"});
  }
  for (int k = 0; k < static_cast<int>(c.lesson.room.kit.size()); ++k) {
    const bool washed = c.lesson.room.kit[static_cast<std::size_t>(k)].washed_between;
    if (washed && !steps_using(c, dish, k).empty()) {
      list.push_back({{TaskKind::kKitWash, cook, dish, -1, 0, k}, "K1"});
    }
  }
}

void add_dish(const Case& c, int cook, int dish, std::vector<Expected>& list) {
  add_steps(c, cook, dish, list);
  add_cleaning(c, cook, dish, list);
  const auto& half = c.half(dish);
  if (half.first()) list.push_back({{TaskKind::kStore, cook, dish}, "C2"});
  if (half.second) list.push_back({{TaskKind::kTakeOutOfStore, cook, dish}, "C3"});
  const bool goes_home = c.lesson.purpose == kitchen::Purpose::kTakeHome && !c.lesson.rack_for;
  if (goes_home && !half.first()) list.push_back({{TaskKind::kPack, cook, dish}, "Y12"});
}

void add_cook(const Case& c, int cook, std::vector<Expected>& list) {
  list.push_back({{TaskKind::kApronAndHands, cook}, "H7"});
  if (!c.lesson.trays_at_places) {
    list.push_back({{TaskKind::kCollectIngredients, cook}, "K7"});
    list.push_back({{TaskKind::kCollectEquipment, cook}, "K7"});
  }
  for (const int d : c.cook(cook).dishes) add_dish(c, cook, d, list);
  for (int part = 0; part < wash_up_parts(c, cook); ++part) {
    list.push_back({{TaskKind::kWashUp, cook, -1, -1, part}, "K5"});
  }
}

void add_adults_tasks(const Case& c, std::vector<Expected>& list) {
  for (int w = 0; w < static_cast<int>(c.lesson.windows.size()); ++w) {
    list.push_back({{TaskKind::kWindow, -1, -1, -1, 0, w}, "W1"});
  }
  if (c.lesson.rules.count_knives && knives_in_use(c)) {
    list.push_back({{TaskKind::kKnivesOut}, "Y8"});
    list.push_back({{TaskKind::kKnivesIn}, "Y8"});
  }
  for (int b = 0; c.lesson.rules.look_at_bays && b < std::ssize(c.lesson.room.bays); ++b) {
    for (int k = 0; k < c.cooks(); ++k) {
      if (c.place_of(k).bay != b) continue;
      list.push_back({{TaskKind::kBayLook, -1, -1, -1, 0, b}, "Y8"});
      break;
    }
  }
}

// The rule an invented task breaks: that of its kind, or C1 for a step of the half not cooked here.
std::string rule_of_invented(const Case& c, const Task& t) {
  using enum TaskKind;
  switch (t.kind) {
    case kApronAndHands:
      return "H7";
    case kCollectIngredients:
    case kCollectEquipment:
      return "K7";
    case kHandWash:
      return "H5";
    case kCleanDown:
      return "H3";
    case kKitWash:
      return "K1";
    case kFullClean:
      return "K2";
    case kLook:
      return "Y5";
    case kStore:
      return "C2";
    case kTakeOutOfStore:
      return "C3";
    case kPack:
      return "Y12";
    case kWashUp:
      return "K5";
    case kWindow:
      return "W1";
    case kBayLook:
    case kKnivesOut:
    case kKnivesIn:
      return "Y8";
    case kStep:
      break;
  }
  const bool a_step = t.cook >= 0 && t.cook < c.cooks() && t.dish >= 0 &&
                      t.dish < std::ssize(c.lesson.dishes) && t.step >= 0 &&
                      t.step < std::ssize(c.dish(t.dish).method);
  if (!a_step) return "L2";
  const auto& dishes = c.cook(t.cook).dishes;
  if (std::find(dishes.begin(), dishes.end(), t.dish) == dishes.end()) return "L2";
  if (!c.half(t.dish).here[static_cast<std::size_t>(t.step)]) return "C1";
  return t.part > 0 ? "P1" : rule_of_step(c, t.cook, t.dish, t.step);
}

bool kit_exists(const Case& c, const Task& t) {
  return t.kit >= 0 && t.kit < std::ssize(c.lesson.room.kit);
}

// Cleaning that follows from the order of the plan is taken as it is here; whether it was needed
// comes later.
bool take_cleaning(Case& c, int index) {
  const Task& t = c.task(index);
  if (t.cook < 0 || t.cook >= c.cooks()) return false;
  if (t.kind == TaskKind::kCleanDown) {
    c.clean_downs.push_back(index);
    return true;
  }
  if (t.kind == TaskKind::kFullClean && kit_exists(c, t)) {
    c.full_cleans.push_back(index);
    return true;
  }
  return false;
}

void check_times(Case& c, int index, const std::string& name) {
  const Task& t = c.task(index);
  if (t.end - t.start < base::kGrid) {
    c.report("T2", fmt::format("{} lasts less than a minute.", name), {index}, when(t));
  }
  if (t.start % base::kGrid != Seconds{0} || t.end % base::kGrid != Seconds{0}) {
    c.report("T3", fmt::format("{} does not start and end on whole minutes.", name), {index},
             when(t));
  }
}

void check_length(Case& c, int index, const std::string& rule) {
  const Task& t = c.task(index);
  const auto range = length_of(c, t);
  const auto length = t.end - t.start;
  if (length >= range.least && length <= range.most) return;
  const auto should = range.least == range.most ? minutes_text(range.least)
                                                : fmt::format("{} to {}", minutes_text(range.least),
                                                              minutes_text(range.most));
  c.report(
      rule,
      fmt::format("{}, lasts {}; it should last {}.", c.label(index), minutes_text(length), should),
      {index}, when(t));
}

std::string missing_name(const Case& c, const Expected& e) {
  const auto& k = e.key;
  std::string name = k.cook >= 0 ? c.cook(k.cook).name : "the room";
  if (k.dish >= 0) name += ", " + c.dish(k.dish).name;
  if (k.step >= 0) name += fmt::format(", \"{}\"", c.step(k.dish, k.step).brief);
  return name;
}

const char* kind_name(TaskKind kind) {
  using enum TaskKind;
  switch (kind) {
    case kApronAndHands:
      return "apron and hands";
    case kCollectIngredients:
      return "collecting ingredients";
    case kCollectEquipment:
      return "collecting equipment";
    case kStep:
      return "a step";
    case kHandWash:
      return "washing hands after raw work";
    case kCleanDown:
      return "cleaning down a place";
    case kKitWash:
      return "washing kit";
    case kFullClean:
      return "a full clean of kit";
    case kLook:
      return "the adult's look";
    case kStore:
      return "putting into store";
    case kTakeOutOfStore:
      return "taking out of store";
    case kPack:
      return "packing";
    case kWashUp:
      return "washing up";
    case kWindow:
      return "a window";
    case kBayLook:
      return "the look at a bay";
    case kKnivesOut:
      return "counting knives out";
    case kKnivesIn:
      return "counting knives in";
  }
  return "a task of no known kind";
}

}  // namespace

std::vector<std::vector<int>> raw_groups(const Case& c, int dish) {
  std::vector<std::vector<int>> groups;
  bool open = false;
  for (const int s : c.half(dish).reading) {
    const bool raw = c.step(dish, s).hygiene == kitchen::Hygiene::kRaw;
    if (raw && !open) groups.emplace_back();
    if (raw) groups.back().push_back(s);
    open = raw;
  }
  return groups;
}

std::vector<int> steps_using(const Case& c, int dish, int kit) {
  const auto& item = c.lesson.room.kit[static_cast<std::size_t>(kit)].item;
  std::vector<int> result;
  for (const int s : c.half(dish).reading) {
    const auto& needs = c.step(dish, s).kit;
    if (std::any_of(needs.begin(), needs.end(), [&](const auto& n) { return n.item == item; })) {
      result.push_back(s);
    }
  }
  return result;
}

bool knives_in_use(const Case& c) {
  for (const auto& cook : c.lesson.cooks) {
    for (const int d : cook.dishes) {
      for (const int s : c.half(d).reading) {
        for (const auto& need : c.step(d, s).kit) {
          if (need.item == "knife") return true;
        }
      }
    }
  }
  return false;
}

std::vector<Expected> expected_tasks(const Case& c) {
  std::vector<Expected> list;
  for (int k = 0; k < c.cooks(); ++k) add_cook(c, k, list);
  add_adults_tasks(c, list);
  return list;
}

void match_tasks(Case& c) {
  const auto expected = expected_tasks(c);
  std::map<Key, std::string> rule_of;
  for (const auto& e : expected) rule_of[e.key] = e.rule;
  for (int i = 0; i < static_cast<int>(c.plan.tasks.size()); ++i) {
    const Task& t = c.task(i);
    const auto wanted = rule_of.find(key_of(t));
    const auto name = fmt::format("{} at {}", kind_name(t.kind), c.at(t.start));
    check_times(c, i, name);
    if (wanted == rule_of.end()) {
      if (take_cleaning(c, i)) continue;
      c.report(rule_of_invented(c, t),
               fmt::format("The plan holds {} that this lesson does not ask for.", name), {i},
               when(t));
    } else if (!c.tasks.emplace(wanted->first, i).second) {
      c.report(wanted->second, fmt::format("{} is in the plan twice.", c.label(i)), {i}, when(t));
    } else {
      check_length(c, i, wanted->second);
    }
  }
  for (const auto& e : expected) {
    if (c.find(e.key)) continue;
    c.report(
        e.rule,
        fmt::format("{}: {} is missing from the plan.", missing_name(c, e), kind_name(e.key.kind)),
        {}, {});
  }
}

}  // namespace timeplan::judge
