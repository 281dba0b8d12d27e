#include "sample.h"

#include <algorithm>
#include <string>

#include "base/index.h"
#include "sample_dishes.h"

namespace sample {
namespace {

using base::minutes;
using base::Seconds;
using kitchen::Lesson;
using timeplan::Plan;
using timeplan::Task;
using timeplan::TaskKind;

using base::at;

const char* const kNames[] = {
    "Aisha", "Ben",   "Callum", "Daisy", "Elif",  "Freya", "George", "Hana",  "Imani", "Jonah",
    "Kira",  "Leo",   "Maya",   "Noah",  "Olive", "Priya", "Quinn",  "Rosa",  "Sam",   "Tariq",
    "Uma",   "Viola", "Will",   "Xanti", "Yusuf", "Zara",  "Amos",   "Bella", "Cyrus", "Dara"};

kitchen::Room room(int places, int in_bay) {
  kitchen::Room r;
  r.name = "Food Room 2";
  for (int p = 0; p < places; ++p) {
    const int bay = p / in_bay;
    const std::string letter(1, static_cast<char>('A' + bay));
    if (p % in_bay == 0) r.bays.push_back({letter, 2});
    kitchen::Cooker cooker;
    cooker.name = letter + std::to_string(p % in_bay + 1);
    cooker.bay = bay;
    r.cookers.push_back(cooker);
    r.places.push_back({cooker.name, bay, {p}});
  }
  r.kit = {{"knife", 24, false, Seconds{360}},
           {"scales", 6, false, Seconds{360}},
           {"stick blender", 6, true, Seconds{360}}};
  return r;
}

Lesson lesson(int cooks, int people, int in_bay, int length) {
  Lesson l;
  l.title = "9K, soup and scones";
  l.date = "2026-11-17";
  l.opens_minute = 10 * 60 + 50;
  l.bell = minutes(length);
  l.check_out = minutes(2);
  l.purpose = kitchen::Purpose::kTakeHome;
  l.room = room(cooks, in_bay);
  l.rules.school = "Quillbridge School";
  l.adults = {{"Ms Hart", true, {kitchen::Hazard::kHotOil}, Seconds{0}, l.bell},
              {"Mr Reed", false, {kitchen::Hazard::kHotOil}, Seconds{0}, l.bell}};
  for (int c = 0; c < cooks; ++c) {
    kitchen::Cook cook;
    cook.people = people;
    cook.name = people == 2
                    ? std::string(kNames[at(c * 2 % 30)]) + " and " + kNames[at((c * 2 + 1) % 30)]
                    : kNames[at(c % 30)];
    cook.place = c;
    cook.leaves = l.bell;
    l.cooks.push_back(std::move(cook));
  }
  return l;
}

Task task(TaskKind kind, int cook, Seconds start, int length) {
  Task t;
  t.kind = kind;
  t.cook = cook;
  t.start = start;
  t.end = start + minutes(length);
  return t;
}

/// Does one thing after another, dish by dish, and the next dish while something cooks by itself.
class Layout {
 public:
  Layout(const Lesson& l, Plan& p) : lesson_(l), plan_(p) {}

  /// Steps of all the cook's dishes from `now` on; the moment the last has ended.
  Seconds cook(int c, Seconds now) {
    const auto& dishes = lesson_.cooks[at(c)].dishes;
    std::vector<std::size_t> next(dishes.size(), 0);
    std::vector<Seconds> ready(dishes.size(), now);
    for (;;) {
      const int d = choose(dishes, next, ready, now);
      if (d < 0) return now;
      now = std::max(now, ready[at(d)]);
      ready[at(d)] = one_step(c, dishes[at(d)], static_cast<int>(next[at(d)]++), now);
    }
  }

 private:
  int choose(const std::vector<int>& dishes, const std::vector<std::size_t>& next,
             const std::vector<Seconds>& ready, Seconds now) const {
    int best = -1;
    for (int d = 0; at(d) < dishes.size(); ++d) {
      if (next[at(d)] >= lesson_.dishes[at(dishes[at(d)])].method.size()) continue;
      if (best < 0 || (ready[at(best)] > now && ready[at(d)] < ready[at(best)])) best = d;
    }
    return best;
  }

  Seconds one_step(int c, int dish, int index, Seconds& now) {
    const kitchen::Step& s = lesson_.dishes[at(dish)].method[at(index)];
    for (const auto& w : lesson_.windows) {  // hands wait for the register, the stop and the break
      if (kitchen::hands_on(s.attention) && now < w.earliest + w.length &&
          now + s.least > w.earliest)
        now = w.earliest + w.length;
    }
    Task t = task(TaskKind::kStep, c, now, static_cast<int>(s.least.count() / 60));
    t.dish = dish;
    t.step = index;
    if (s.heat) t.cooker = c;
    if (s.heat && s.heat->with == kitchen::HeatKind::kOven) t.setting = s.heat->setting;
    for (const auto& need : s.kit) t.kit_units.push_back(need.item == "knife" ? c : c % 4);
    if (s.hazard) t.adult = c % 2;
    plan_.tasks.push_back(t);
    Seconds free = t.end;
    if (kitchen::hands_on(s.attention)) now = t.end;
    if (s.gate) {
      Task look = task(TaskKind::kLook, c, t.end + minutes(c % 4), 1);
      look.dish = dish;
      look.step = index;
      look.adult = 0;
      plan_.tasks.push_back(look);
      free = now = t.end + minutes(5);
    }
    return free;
  }

  const Lesson& lesson_;
  Plan& plan_;
};

void arrive(const Lesson& l, Plan& plan, int c, int order, Seconds from) {
  Task apron = task(TaskKind::kApronAndHands, c, from + minutes(order / 2 * 2), 2);
  apron.basin = order % 2 == 0;
  if (!apron.basin) apron.sink_bay = l.room.places[at(c)].bay;
  plan.tasks.push_back(apron);
  plan.tasks.push_back(task(TaskKind::kCollectIngredients, c, apron.end + minutes(1), 3));
  plan.tasks.push_back(task(TaskKind::kCollectEquipment, c, apron.end + minutes(4), 3));
}

Seconds clear_up(const Lesson& l, Plan& plan, int c, int order, Seconds from) {
  for (int part = 0; part < 2; ++part) {
    Task wash = task(TaskKind::kWashUp, c, from + minutes(order % 2 * 5 + part * 10), 5);
    wash.part = part;
    wash.sink_bay = l.room.places[at(c)].bay;
    plan.tasks.push_back(wash);
    from = std::max(from, wash.start - minutes(part * 10));
  }
  if (l.purpose == kitchen::Purpose::kTakeHome) {
    plan.tasks.push_back(task(TaskKind::kPack, c, plan.tasks.back().end, 2));
  }
  return plan.tasks.back().end;
}

void sort(Plan& plan) {
  std::stable_sort(plan.tasks.begin(), plan.tasks.end(), [](const Task& a, const Task& b) {
    return std::tuple(a.start, a.cook, a.kind, a.dish, a.step, a.part) <
           std::tuple(b.start, b.cook, b.kind, b.dish, b.step, b.part);
  });
}

void windows(Lesson& l, Plan& plan) {
  for (int w = 0; at(w) < l.windows.size(); ++w) {
    Task t = task(TaskKind::kWindow, -1, l.windows[at(w)].earliest,
                  static_cast<int>(l.windows[at(w)].length.count() / 60));
    t.window = w;
    t.adult = l.windows[at(w)].led_by.value_or(-1);
    plan.tasks.push_back(t);
  }
}

void knives_and_bays(const Lesson& l, Plan& plan) {
  Task out = task(TaskKind::kKnivesOut, -1, minutes(14), 2);
  Task in = task(TaskKind::kKnivesIn, -1, l.bell - minutes(10), 2);
  out.adult = in.adult = 0;
  plan.tasks.push_back(out);
  plan.tasks.push_back(in);
  for (int b = 0; at(b) < l.room.bays.size(); ++b) {
    Task look = task(TaskKind::kBayLook, -1, l.bell - minutes(8) + minutes(b), 1);
    look.bay = b;
    look.adult = 0;
    plan.tasks.push_back(look);
  }
}

void levels(Plan& plan) {
  plan.levels = {{"G1 overrun", 0, 0, true, {}},
                 {"G2 buffer", 12, 0, false, timeplan::OnTheGrid{10, 6}},
                 {"Gw waves", 2, 2, true, {}},
                 {"G6 last", 1032, 960, false, timeplan::OnTheGrid{1032, 960}}};
}

Lesson class_of_pairs(int length) {
  Lesson l = lesson(12, 2, 4, length);
  l.dishes = {soup(), scones()};
  for (auto& cook : l.cooks) cook.dishes = {0, 1};
  l.windows = {{"Register",
                kitchen::WindowKind::kHandsOff,
                Seconds{0},
                Seconds{0},
                minutes(4),
                {},
                0,
                {},
                {},
                false,
                false},
               {"How to cut scones",
                kitchen::WindowKind::kStop,
                minutes(45),
                minutes(50),
                minutes(3),
                {},
                0,
                {},
                {},
                false,
                false}};
  return l;
}

Plan plan_of_pairs(Lesson& l) {
  Plan p;
  p.waves = 2;
  Layout layout(l, p);
  for (int c = 0; at(c) < l.cooks.size(); ++c) {
    const int wave = c / 6;
    p.wave_of_cook.push_back(wave);
    arrive(l, p, c, c % 6, minutes(4 + wave * 9));
    const Seconds done = layout.cook(c, minutes(16 + wave * 9));
    clear_up(l, p, c, c % 4, done);
    p.buffer.push_back(minutes(4));
  }
  for (int wave = 0; wave < 2; ++wave) {
    const Seconds later = minutes(wave * 5);
    p.checkpoints.push_back({wave, minutes(30) + later, 0, 2, "leeks in the pan"});
    p.checkpoints.push_back({wave, minutes(55) + later, 1, 3, "scones in"});
    p.checkpoints.push_back({wave, minutes(75) + later, -1, -1, "washing up"});
  }
  windows(l, p);
  knives_and_bays(l, p);
  levels(p);
  sort(p);
  return p;
}

/// 1640 of 2000 runs in time; sixteen of twenty marks before the bell at 12:45.
timeplan::Chance chance_of_pairs(const Plan& plan) {
  timeplan::Chance c;
  c.runs = 2000;
  c.room = 0.82;
  c.interval = {0.803, 0.836};
  c.word = timeplan::ChanceWord::kTight;
  c.about = "about 8 in 10";
  c.p50 = minutes(112);
  c.p90 = minutes(117);
  c.cooks.assign(12, {0.97, {0.96, 0.98}});
  c.cooks[11].share = 0.78;
  for (int i = 0; at(i) < c.marks.size(); ++i) {
    c.marks[at(i)] = i < 4    ? minutes(107)
                     : i < 16 ? minutes(109 + (i - 4) / 2)
                              : minutes(116 + (i - 16) * 2);
  }
  c.late_starts = {{minutes(5), 0.61, {0.59, 0.63}, 2000}, {minutes(10), 0.2, {0.18, 0.22}, 2000}};
  const auto bake = std::find_if(plan.tasks.begin(), plan.tasks.end(),
                                 [](const Task& t) { return t.dish == 1 && t.step == 3; });
  c.deciding = {{static_cast<int>(bake - plan.tasks.begin()), 240, 0.12}};
  return c;
}

}  // namespace

Told two_waves() {
  Told t{class_of_pairs(115), {}};
  t.answer.verdict = timeplan::Verdict::kFits;
  t.answer.plan = plan_of_pairs(t.lesson);
  t.answer.trials = {{1, false, true, minutes(9)}, {2, true, true, {}}};
  t.answer.chance = chance_of_pairs(*t.answer.plan);
  t.answer.spare = minutes(6);
  t.answer.grid_cost = minutes(3);
  t.answer.seconds = 1.4;
  t.answer.last_safe_starts = {
      {0, 0, minutes(58), "scones in the oven",
       "finish cold: the technician bakes them after the bell"},
      {0, 1, minutes(63), "scones in the oven", "the technician bakes them after the bell"},
      {0, 1, minutes(47), "soup on to simmer", "next lesson: chill the cut vegetables"}};
  t.answer.notes = {"A closing step was added: lift the pan off after simmering."};
  return t;
}

Told over_the_bell() {
  Told t{class_of_pairs(96), {}};
  t.answer.verdict = timeplan::Verdict::kDoesNotFit;
  t.answer.plan = plan_of_pairs(t.lesson);
  t.answer.trials = {{1, false, true, minutes(14)}, {2, false, true, minutes(9)}};
  t.answer.overrun = minutes(9);
  t.answer.causes = {
      {"sinks", "12 sets of washing up need 20 minutes at 6 sinks and there are 14."},
      {"bell", "The bell leaves 96 minutes; soup and scones take a pair 77 before washing up."}};
  t.answer.remedies = {{"trios", "Work in threes instead of pairs",
                        "fits in two waves, 6 min spare", true, minutes(15)},
                       {"weigh out", "The technician weighs out before the lesson",
                        "4 min over instead of 9", false, minutes(5)}};
  return t;
}

Told assessed(int cooks) {
  Lesson l = lesson(cooks, 1, 4, 180);
  l.title = "11B, three-dish practical";
  l.purpose = kitchen::Purpose::kJudged;
  l.timelines = kitchen::Timelines::kOwn;
  l.dishes = {soup(), scones(), spring_rolls()};
  for (auto& cook : l.cooks) cook.dishes = {0, 1, 2};
  l.windows = {{"Break",
                kitchen::WindowKind::kBreak,
                minutes(85),
                minutes(85),
                minutes(15),
                {},
                {},
                {},
                {},
                false,
                false}};
  Plan p;
  Layout layout(l, p);
  for (int c = 0; c < cooks; ++c) {
    p.wave_of_cook.push_back(c);
    arrive(l, p, c, c % 10, minutes(c % 3));
    const Seconds done = layout.cook(c, minutes(20 + c % 5 * 3));
    p.served.push_back({c, 0, done});
    clear_up(l, p, c, c % 4, done + minutes(10));
    p.buffer.push_back(minutes(5));
  }
  p.waves = cooks;
  windows(l, p);
  knives_and_bays(l, p);
  levels(p);
  sort(p);
  Told t{std::move(l), {}};
  t.answer.verdict = timeplan::Verdict::kFits;
  t.answer.plan = std::move(p);
  t.answer.spare = minutes(11);
  return t;
}

Told nothing() {
  Told t;
  t.lesson.room.bays = {{"A", 1}};
  t.lesson.room.cookers = {kitchen::Cooker{}};
  t.lesson.room.places = {{"A1", 0, {0}}};
  t.lesson.bell = minutes(60);
  t.lesson.adults = {{"Ms Hart", true, {}, Seconds{0}, minutes(60)}};
  t.answer.plan = Plan{};
  return t;
}

}  // namespace sample
