#include "sample.h"

#include <algorithm>
#include <stdexcept>

namespace timeplan::sample {

using base::minutes;
using kitchen::Attention;
using kitchen::Hazard;

Task& Sample::add(TaskKind kind, int cook, int from, int to) {
  Task t;
  t.kind = kind;
  t.cook = cook;
  t.start = minutes(from);
  t.end = minutes(to);
  plan.tasks.push_back(t);
  return plan.tasks.back();
}

Task& Sample::step(int cook, int dish, int step, int from, int to, int part) {
  Task& t = add(TaskKind::kStep, cook, from, to);
  t.dish = dish;
  t.step = step;
  t.part = part;
  return t;
}

void Sample::apron(int cook, int from, int to) {
  add(TaskKind::kApronAndHands, cook, from, to).basin = true;
}

void Sample::wash_up(int cook, int part, int from, int to) {
  Task& t = add(TaskKind::kWashUp, cook, from, to);
  t.part = part;
  const int place = lesson.cooks[static_cast<std::size_t>(cook)].place;
  t.sink_bay = lesson.room.places[static_cast<std::size_t>(place)].bay;
}

void Sample::levels(std::vector<std::int64_t> values) {
  const char* names[] = {"G1 overrun", "G2 buffer",  "Gw waves",
                         "G3 spread",  "G4 quality", "G6 early"};
  for (std::size_t i = 0; i < 6; ++i) {
    plan.levels.push_back({names[i], values.at(i), values.at(i), true, {}});
  }
}

Task& Sample::at(TaskKind kind, int cook, int dish, int step, int part) {
  for (auto& t : plan.tasks) {
    const bool same_step = step == -1 || t.step == step;
    if (t.kind == kind && t.cook == cook && t.dish == dish && same_step && t.part == part) return t;
  }
  throw std::logic_error("the sample has no such task");
}

void Sample::drop(const Task& task) { std::erase(plan.tasks, Task(task)); }

kitchen::Step step(std::string brief, Attention attention, int length) {
  kitchen::Step s;
  s.id = brief;
  s.says = brief + ".";
  s.brief = std::move(brief);
  s.least = s.most = minutes(length);
  s.spread = 0;
  s.attention = attention;
  return s;
}

kitchen::Step& after(kitchen::Step& s, int of, int most, int least) {
  kitchen::Follows wait;
  wait.step = of;
  wait.least = minutes(least);
  if (most >= 0) wait.most = minutes(most);
  s.follows.push_back(wait);
  return s;
}

kitchen::Heat ring(std::string vessel) {
  kitchen::Heat heat;
  heat.vessel = std::move(vessel);
  return heat;
}

kitchen::Heat oven(std::string vessel, int celsius, kitchen::OvenKind kind, int twelfths) {
  kitchen::Heat heat;
  heat.with = kitchen::HeatKind::kOven;
  heat.vessel = std::move(vessel);
  heat.setting = {celsius, kind};
  heat.shelf_twelfths = twelfths;
  return heat;
}

kitchen::HouseRules house_rules() {
  kitchen::HouseRules rules;
  rules.school = "Quillbridge School";
  rules.watch = {{Hazard::kHotOil, {50, 2}},      {Hazard::kFirstKnife, {4, 1000}},
                 {Hazard::kLargePan, {20, 1000}}, {Hazard::kBlender, {20, 1000}},
                 {Hazard::kProbing, {50, 1000}},  {Hazard::kAdultOnly, {100, 1000}}};
  return rules;
}

Sample blank(int bell) {
  Sample s;
  s.lesson.title = "9Q, sample";
  s.lesson.date = "2026-11-17";
  s.lesson.opens_minute = 600;
  s.lesson.bell = minutes(bell);
  s.lesson.timelines = kitchen::Timelines::kOwn;
  s.lesson.rules = house_rules();
  kitchen::Adult teacher;
  teacher.name = "Ms Okonedo";
  teacher.leads = true;
  teacher.may_watch = {Hazard::kHotOil,  Hazard::kFirstKnife, Hazard::kLargePan,
                       Hazard::kBlender, Hazard::kProbing,    Hazard::kAdultOnly};
  teacher.to = minutes(bell);
  s.lesson.adults = {teacher};
  kitchen::Sitting sitting;
  sitting.name = "the meal";
  sitting.latest = minutes(bell);
  s.lesson.sittings = {sitting};
  return s;
}

kitchen::Cook cook(std::string name, int people, int place, std::vector<int> dishes, int bell) {
  kitchen::Cook c;
  c.name = std::move(name);
  c.people = people;
  c.place = place;
  c.dishes = std::move(dishes);
  c.leaves = minutes(bell);
  return c;
}

}  // namespace timeplan::sample
