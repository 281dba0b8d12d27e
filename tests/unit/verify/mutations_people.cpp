#include "mutations.h"

namespace timeplan::sample {

using base::minutes;
using base::Seconds;
using kitchen::Hazard;
using Kind = TaskKind;

namespace {

void move_to(Task& t, Seconds start) {
  t.end += start - t.start;
  t.start = start;
}
void move_by(Task& t, int by) { move_to(t, t.start + minutes(by)); }

Task& fry(Sample& s) { return s.at(Kind::kStep, 2, 3, 1); }

Task& led(Sample& s, const Choose& choose) {
  const Kind kinds[] = {Kind::kKnivesOut, Kind::kKnivesIn, Kind::kBayLook, Kind::kWindow};
  const int which = choose(5);
  return which == 4 ? s.at(Kind::kLook, 2, 3, 0) : s.at(kinds[which], -1);
}

void add_adults(std::vector<Mutation>& list) {
  list.push_back(
      {"V1", "counting knives beside hot oil", supper, [](Sample& s, const Choose& choose) {
         move_to(s.at(Kind::kKnivesIn, -1), minutes(40 + choose(8)));
       }});
  list.push_back({"V1", "the house rules say nothing", supper,
                  [](Sample& s, const Choose&) { s.lesson.rules.watch.erase(Hazard::kHotOil); }});
  list.push_back(
      {"V2", "too many pans for one adult", two_pans, [](Sample& s, const Choose& choose) {
         s.lesson.rules.watch[Hazard::kLargePan].at_once = 1;
         move_to(s.at(Kind::kStep, 1, 2, 1), minutes(9 + choose(3)));
       }});
  list.push_back(
      {"V3", "an adult who may not", supper, [](Sample& s, const Choose&) { fry(s).adult = 1; }});
  list.push_back({"V3", "an adult who does not lead", supper,
                  [](Sample& s, const Choose& choose) { led(s, choose).adult = 1; }});
  list.push_back({"V3", "nobody does it", supper, [](Sample& s, const Choose& choose) {
                    led(s, choose).adult = choose(2) == 0 ? -1 : 2 + choose(9);
                  }});
  list.push_back({"V3", "the adult has gone", supper, [](Sample& s, const Choose& choose) {
                    s.lesson.adults[0].to = minutes(41 + choose(7));
                  }});
  list.push_back({"V4", "two bays at once", two_pans, [](Sample& s, const Choose& choose) {
                    move_to(s.at(Kind::kStep, 1, 2, 1), minutes(9 + choose(3)));
                  }});
  list.push_back({"V5", "nobody watches the oil", supper, [](Sample& s, const Choose& choose) {
                    fry(s).adult = choose(2) == 0 ? -1 : 2 + choose(9);
                  }});
  list.push_back({"W3", "the leader of a window looks at something else", bakery,
                  [](Sample& s, const Choose& choose) {
                    s.lesson.dishes[2].method[0].hazard = Hazard::kFirstKnife;
                    for (const int c : {2, 3}) s.at(Kind::kStep, c, 2, 0).adult = 0;
                    move_to(s.at(Kind::kWindow, -1), minutes(2 + choose(5)));
                  }});
  list.push_back({"W3", "watching oil in the break", supper, [](Sample& s, const Choose& choose) {
                    s.lesson.windows[0].kind = kitchen::WindowKind::kBreak;
                    s.lesson.windows[0].audience = {0};
                    s.lesson.windows[0].led_by.reset();
                    move_to(s.at(Kind::kWindow, -1), minutes(37 + choose(11)));
                  }});
  list.push_back({"W5", "oil after the ban", supper, [](Sample& s, const Choose& choose) {
                    s.lesson.bans = {{Hazard::kHotOil, minutes(30 + choose(18))}};
                  }});
}

void add_house(std::vector<Mutation>& list) {
  list.push_back({"Y11", "a school that does not fry", supper,
                  [](Sample& s, const Choose&) { s.lesson.rules.frying = false; }});
  list.push_back({"Y11", "too young to fry or to cut", supper, [](Sample& s, const Choose& choose) {
                    auto& rules = s.lesson.rules;
                    (choose(2) == 0 ? rules.frying_from_year : rules.knives_from_year) = 10;
                  }});
  list.push_back(
      {"Y11", "too young for the gas it is on", supper, [](Sample& s, const Choose& choose) {
         s.lesson.rules.gas_from_year = 10 + choose(5);
         const int used = s.at(Kind::kStep, 0, 0, 2).cooker;
         s.lesson.room.cookers[static_cast<std::size_t>(used)].gas = choose(2) == 0
                                                                         ? kitchen::Gas::kRings
                                                                         : kitchen::Gas::kAll;
       }});
  list.push_back({"Y11", "a raw mixture is tasted", supper, [](Sample& s, const Choose& choose) {
                    s.lesson.rules.no_raw_tasting = true;
                    auto& step = s.lesson.dishes[0].method[static_cast<std::size_t>(choose(2))];
                    step.hygiene = kitchen::Hygiene::kRaw;
                    step.says = choose(2) == 0 ? "Taste it." : "Mix; lick the spoon.";
                  }});
  list.push_back({"Y11", "the second adult has gone", supper, [](Sample& s, const Choose& choose) {
                    s.lesson.rules.second_adult_for_frying = true;
                    s.lesson.adults[1].to = minutes(20 + choose(28));
                  }});
  list.push_back(
      {"Y11", "nuts where none are allowed", supper, [](Sample& s, const Choose& choose) {
         s.lesson.rules.nuts = false;
         s.lesson.dishes[2].ingredients[0].contains = {
             choose(2) == 0 ? kitchen::Allergen::kNuts : kitchen::Allergen::kPeanuts};
       }});
  list.push_back(
      {"Y8", "knives before they are counted", supper, [](Sample& s, const Choose& choose) {
         move_to(s.at(Kind::kKnivesOut, -1), minutes(12 + choose(30)));
       }});
  list.push_back({"Y8", "knives counted while in use", supper, [](Sample& s, const Choose& choose) {
                    move_to(s.at(Kind::kKnivesIn, -1), minutes(20 + choose(35)));
                  }});
  list.push_back(
      {"Y8", "knives counted after the bell", supper, [](Sample& s, const Choose& choose) {
         move_to(s.at(Kind::kKnivesIn, -1), minutes(89 + choose(5)));
       }});
  list.push_back(
      {"Y8", "a bay looked at before it is washed up", supper,
       [](Sample& s, const Choose& choose) { move_by(s.at(Kind::kBayLook, -1), -1 - choose(9)); }});
  list.push_back(
      {"Y8", "a bay looked at after the bell", supper, [](Sample& s, const Choose& choose) {
         move_to(s.at(Kind::kBayLook, -1), minutes(90 + choose(9)));
       }});
}

void add_waves(std::vector<Mutation>& list) {
  list.push_back({"Y1", "out of step", bakery, [](Sample& s, const Choose& choose) {
                    const int cook = choose(4);
                    const int by = 1 + choose(3);
                    cook < 2 ? move_by(s.at(Kind::kStep, cook, 1, choose(3)), by)
                             : move_by(s.at(Kind::kStep, cook, 3, choose(3)), by);
                  }});
  list.push_back({"Y1", "more waves than allowed", bakery,
                  [](Sample& s, const Choose&) { s.lesson.most_waves = 1; }});
  list.push_back({"Y1", "a wave that is not there", bakery, [](Sample& s, const Choose& choose) {
                    s.plan.wave_of_cook[static_cast<std::size_t>(choose(4))] = choose(2) == 0
                                                                                   ? -1
                                                                                   : 2 + choose(5);
                  }});
  list.push_back(
      {"Y1", "a wave without cooks", bakery, [](Sample& s, const Choose&) { s.plan.waves = 3; }});
  list.push_back({"Y1", "cooks without a wave", bakery,
                  [](Sample& s, const Choose&) { s.plan.wave_of_cook.pop_back(); }});
  list.push_back({"Y3", "off the five minutes", bakery, [](Sample& s, const Choose& choose) {
                    s.plan.checkpoints[static_cast<std::size_t>(choose(2))].at -= minutes(
                        1 + choose(4));
                  }});
  list.push_back({"Y3", "on the grid of the opening, not of the clock", bakery,
                  [](Sample& s, const Choose& choose) { s.lesson.opens_minute += 1 + choose(4); }});
  list.push_back({"Y3", "begun before the checkpoint", bakery, [](Sample& s, const Choose& choose) {
                    s.plan.checkpoints[static_cast<std::size_t>(choose(2))].at += minutes(
                        5 + 5 * choose(3));
                  }});
  list.push_back({"Y3", "a checkpoint for nobody", bakery, [](Sample& s, const Choose& choose) {
                    s.plan.checkpoints[0].wave = choose(2) == 0 ? 1 : 2;
                  }});
}

void add_goals(std::vector<Mutation>& list) {
  list.push_back({"8.1", "another buffer", take_home, [](Sample& s, const Choose& choose) {
                    s.plan.buffer[static_cast<std::size_t>(choose(2))] += minutes(1 + choose(5));
                  }});
  list.push_back(
      {"8.1", "no buffer", take_home, [](Sample& s, const Choose&) { s.plan.buffer.pop_back(); }});
  const char* marks[] = {"G1", "G2", "Gw", "G3", "G4", "G6"};
  for (std::size_t i = 0; i < 6; ++i) {
    for (const auto lesson : {supper, bakery, two_pans, take_home}) {
      list.push_back(
          {marks[i], "a value that is not so", lesson, [i](Sample& s, const Choose& choose) {
             s.plan.levels[i].value += 1 + choose(9);
             s.plan.levels[i].bound = 0;
           }});
      list.push_back(
          {marks[i], "a bound above the value", lesson, [i](Sample& s, const Choose& choose) {
             s.plan.levels[i].bound = s.plan.levels[i].value + 1 + choose(9);
           }});
    }
    list.push_back({marks[i], "a level is missing", supper, [i](Sample& s, const Choose&) {
                      s.plan.levels.erase(s.plan.levels.begin() + static_cast<std::ptrdiff_t>(i));
                    }});
  }
  list.push_back({"Z5", "levels in another order", supper,
                  [](Sample& s, const Choose&) { std::swap(s.plan.levels[1], s.plan.levels[3]); }});
  list.push_back({"Z5", "the lesson wants the other order", supper,
                  [](Sample& s, const Choose&) { s.lesson.spread_before_buffer = true; }});
}

}  // namespace

std::vector<Mutation> people_mutations() {
  std::vector<Mutation> list;
  add_adults(list);
  add_house(list);
  add_waves(list);
  add_goals(list);
  return list;
}

}  // namespace timeplan::sample
