#include "mutations.h"

namespace timeplan::sample {

using base::minutes;
using base::Seconds;
using Kind = TaskKind;

namespace {

Task& any(Sample& s, const Choose& choose) {
  return s.plan.tasks[static_cast<std::size_t>(choose(static_cast<int>(s.plan.tasks.size())))];
}

Task& any_of(Sample& s, const Choose& choose, Kind kind) {
  std::vector<Task*> list;
  for (auto& t : s.plan.tasks) {
    if (t.kind == kind) list.push_back(&t);
  }
  return *list[static_cast<std::size_t>(choose(static_cast<int>(list.size())))];
}

void move_to(Task& t, Seconds start) {
  t.end += start - t.start;
  t.start = start;
}
void move_by(Task& t, int by) { move_to(t, t.start + minutes(by)); }
void lengthen(Task& t, int by) { t.end += minutes(by); }

Mutation missing(const char* rule, Kind kind, Sample (*lesson)()) {
  return {rule, "a task is left out", lesson,
          [kind](Sample& s, const Choose& choose) { s.drop(any_of(s, choose, kind)); }};
}
Mutation twice(const char* rule, Kind kind, Sample (*lesson)()) {
  return {rule, "a task is there twice", lesson, [kind](Sample& s, const Choose& choose) {
            Task copy = any_of(s, choose, kind);
            move_by(copy, choose(20));
            s.plan.tasks.push_back(copy);
          }};
}
Mutation too_long(const char* rule, Kind kind, Sample (*lesson)()) {
  return {rule, "a task is too long", lesson, [kind](Sample& s, const Choose& choose) {
            lengthen(any_of(s, choose, kind), 1 + choose(9));
          }};
}

void add_existence(std::vector<Mutation>& list) {
  struct Row {
    const char* rule;
    Kind kind;
    Sample (*lesson)();
  };
  const Row rows[] = {
      {"H7", Kind::kApronAndHands, supper},    {"K7", Kind::kCollectIngredients, supper},
      {"K7", Kind::kCollectEquipment, supper}, {"H5", Kind::kHandWash, supper},
      {"K1", Kind::kKitWash, supper},          {"Y5", Kind::kLook, supper},
      {"C2", Kind::kStore, take_home},         {"C3", Kind::kTakeOutOfStore, take_home},
      {"Y12", Kind::kPack, take_home},         {"K5", Kind::kWashUp, supper},
      {"W1", Kind::kWindow, bakery},           {"Y8", Kind::kKnivesOut, supper},
      {"Y8", Kind::kKnivesIn, supper},         {"Y8", Kind::kBayLook, supper}};
  for (const auto& row : rows) {
    list.push_back(missing(row.rule, row.kind, row.lesson));
    list.push_back(twice(row.rule, row.kind, row.lesson));
    list.push_back(too_long(row.rule, row.kind, row.lesson));
  }
  list.push_back(missing("L2", Kind::kStep, two_pans));
  list.back().break_it = [](Sample& s, const Choose& choose) {
    s.drop(choose(2) == 0 ? s.at(Kind::kStep, 0, 0, 0) : s.at(Kind::kStep, 1, 2, 2));
  };
  list.push_back({"L2", "a hands-on step at its median, not its mean", supper,
                  [](Sample& s, const Choose&) { lengthen(s.at(Kind::kStep, 0, 0, 0), -1); }});
  list.push_back(
      {"L2", "a simmer longer than it may be", supper, [](Sample& s, const Choose& choose) {
         lengthen(s.at(Kind::kStep, 0, 0, 3), 6 + choose(5));
       }});
  list.push_back({"L2", "a step of a dish the cook does not make", supper,
                  [](Sample& s, const Choose& choose) { s.step(2, 0, choose(6), 30, 32); }});
  list.push_back({"L3", "nobody takes it out", supper, [](Sample& s, const Choose& choose) {
                    const int closing = choose(3);
                    s.drop(closing == 0   ? s.at(Kind::kStep, 0, 0, 4)
                           : closing == 1 ? s.at(Kind::kStep, 1, 2, 3)
                                          : s.at(Kind::kStep, 2, 3, 2));
                  }});
  list.push_back({"P1", "a part is missing", supper, [](Sample& s, const Choose& choose) {
                    s.drop(s.at(Kind::kStep, 1, 2, 1, choose(3)));
                  }});
  list.push_back({"P1", "parts out of order", supper, [](Sample& s, const Choose& choose) {
                    move_by(s.at(Kind::kStep, 1, 2, 1, 1 + choose(2)), -1 - choose(4));
                  }});
  list.push_back({"C1", "a step of the other half", take_home, [](Sample& s, const Choose& choose) {
                    choose(2) == 0 ? s.step(0, 0, 1, 27, 31) : s.step(1, 1, 0, 3, 8);
                  }});
}

void add_times(std::vector<Mutation>& list) {
  list.push_back({"T2", "a task of no length", supper, [](Sample& s, const Choose& choose) {
                    Task& t = any(s, choose);
                    t.end = t.start - minutes(choose(2));
                  }});
  list.push_back({"T3", "half a minute late", supper, [](Sample& s, const Choose& choose) {
                    Task& t = any(s, choose);
                    move_to(t, t.start + Seconds{1 + choose(59)});
                  }});
  list.push_back({"T3", "served between two minutes", supper, [](Sample& s, const Choose& choose) {
                    s.plan.served[static_cast<std::size_t>(choose(3))].at += Seconds{30};
                  }});
  list.push_back({"W7", "a cook comes late", supper, [](Sample& s, const Choose& choose) {
                    s.lesson.cooks[static_cast<std::size_t>(choose(3))].arrives = minutes(
                        6 + choose(20));
                  }});
  list.push_back(
      {"W7", "something before the opening", supper, [](Sample& s, const Choose& choose) {
         Task& t = any(s, choose);
         move_to(t, minutes(-1 - choose(9)));
       }});
  list.push_back(
      {"W7", "a pan is still on when the cook has gone", supper,
       [](Sample& s, const Choose&) { move_to(s.at(Kind::kStep, 1, 1, 2), minutes(85)); }});
}

void add_waits(std::vector<Mutation>& list) {
  list.push_back(
      {"L1", "a step before the one it follows", supper, [](Sample& s, const Choose& choose) {
         const int step = 1 + choose(5);
         Task& t = s.at(Kind::kStep, 0, 0, step);
         move_to(t, s.at(Kind::kStep, 0, 0, step - 1).end - minutes(1 + choose(3)));
       }});
  list.push_back({"L1", "taken out too late", supper, [](Sample& s, const Choose& choose) {
                    move_by(s.at(Kind::kStep, 1, 2, 3), 2 + choose(8));
                  }});
  list.push_back(
      {"H7", "something before clean hands", supper, [](Sample& s, const Choose& choose) {
         move_to(any_of(s, choose, Kind::kCollectEquipment), minutes(4));
       }});
  list.push_back(
      {"K7", "collecting after cooking has begun", supper, [](Sample& s, const Choose& choose) {
         move_to(any_of(s, choose, Kind::kCollectIngredients), minutes(13 + choose(20)));
       }});
  list.push_back(
      {"Y5", "the look before the end of the step", supper, [](Sample& s, const Choose& choose) {
         move_by(s.at(Kind::kLook, 2, 3, 0), -1 - choose(5));
       }});
  list.push_back({"Y5", "the look too late", supper, [](Sample& s, const Choose& choose) {
                    move_by(s.at(Kind::kLook, 2, 3, 0), 6 + choose(10));
                  }});
  list.push_back({"Y5", "going on before the look", supper, [](Sample& s, const Choose&) {
                    move_to(s.at(Kind::kStep, 2, 3, 1), minutes(18));
                  }});
  list.push_back({"H5", "hands washed late", supper, [](Sample& s, const Choose& choose) {
                    move_by(s.at(Kind::kHandWash, 0, 0, 1), 2 + choose(6));
                  }});
  list.push_back({"H5", "other work with raw hands", supper, [](Sample& s, const Choose& choose) {
                    move_to(s.at(Kind::kStep, 0, 0, 5), minutes(19 + choose(5)));
                  }});
  list.push_back(
      {"H5", "a window between meat and soap", supper, [](Sample& s, const Choose& choose) {
         move_to(s.at(Kind::kWindow, -1), minutes(16 + choose(7)));
       }});
  list.push_back({"C2", "stored before it is cool", take_home, [](Sample& s, const Choose& choose) {
                    move_by(s.at(Kind::kStore, 0, 0), -1 - choose(6));
                  }});
  list.push_back(
      {"C2", "stored after more than 90 minutes", take_home, [](Sample& s, const Choose& choose) {
         move_to(s.at(Kind::kStore, 0, 0), minutes(15 + 89 + choose(9)));
       }});
  list.push_back({"C3", "cooking before it is out of the store", take_home,
                  [](Sample& s, const Choose& choose) {
                    move_by(s.at(Kind::kTakeOutOfStore, 1, 1), 1 + choose(10));
                  }});
  list.push_back(
      {"K1", "kit washed before its last use", supper, [](Sample& s, const Choose& choose) {
         move_by(s.at(Kind::kKitWash, 1, 1, 1), -1 - choose(9));
       }});
  list.push_back({"K1", "kit washed late", supper, [](Sample& s, const Choose& choose) {
                    move_by(s.at(Kind::kKitWash, 1, 1, 1), 16 + choose(9));
                  }});
}

void add_serving(std::vector<Mutation>& list) {
  list.push_back({"S2", "nothing served", supper, [](Sample& s, const Choose& choose) {
                    s.plan.served.erase(s.plan.served.begin() + choose(3));
                  }});
  list.push_back({"S2", "served twice", supper,
                  [](Sample& s, const Choose& choose) { s.serve(choose(3), 50 + choose(9)); }});
  list.push_back({"S2", "served by nobody", supper,
                  [](Sample& s, const Choose& choose) { s.serve(3 + choose(5), 60); }});
  list.push_back({"S2", "served before it is ready", supper, [](Sample& s, const Choose& choose) {
                    s.plan.served[static_cast<std::size_t>(choose(3))].at = minutes(40 + choose(9));
                  }});
  list.push_back({"S2", "served outside the sitting", supper, [](Sample& s, const Choose& choose) {
                    s.lesson.sittings[0].earliest = minutes(56 + choose(5));
                  }});
  list.push_back({"S2", "tasted at another time", bakery, [](Sample& s, const Choose& choose) {
                    s.plan.served[static_cast<std::size_t>(choose(4))].at += minutes(1 + choose(5));
                  }});
  list.push_back({"S2", "the tasting comes before it is served", supper,
                  [](Sample& s, const Choose&) { s.lesson.windows[0].tasting = true; }});
  list.push_back({"S4", "crisp no more", supper, [](Sample& s, const Choose& choose) {
                    s.plan.served[2].at = minutes(61 + choose(9));
                  }});
  list.push_back({"S3", "no room to keep it hot", supper, [](Sample& s, const Choose&) {
                    s.lesson.room.places[0].cookers = {0};
                    s.lesson.dishes[0].hold.in = kitchen::HoldIn::kOven80;
                  }});
  list.push_back({"S3", "no ring to keep it hot", supper, [](Sample& s, const Choose&) {
                    s.lesson.room.places[0].cookers = {0};
                    s.lesson.room.cookers[0].rings = 1;
                    s.lesson.dishes[2].hold.in = kitchen::HoldIn::kRing;
                    move_by(s.at(Kind::kStep, 0, 0, 4), 2);
                  }});
  list.push_back({"S6", "washed up before serving", supper, [](Sample& s, const Choose& choose) {
                    s.plan.served[static_cast<std::size_t>(choose(3))].at = minutes(61 + choose(9));
                  }});
  list.push_back(
      {"W8", "not when it is pinned", supper, [](Sample& s, const Choose& choose) {
         const Task& brown = s.at(Kind::kStep, 0, 0, 2);
         const int off = 1 + choose(5);
         s.lesson.pins = {{{0, 2}, brown.start + minutes(choose(2) == 0 ? off : -off), {}}};
         if (choose(2) == 0) s.lesson.pins.front().cooks = {0};
       }});
  list.push_back({"Y12", "packed while hot", take_home, [](Sample& s, const Choose& choose) {
                    move_by(s.at(Kind::kPack, 1, 1), -1 - choose(9));
                  }});
  list.push_back({"K5", "packed after the bell", take_home, [](Sample& s, const Choose& choose) {
                    move_to(s.at(Kind::kPack, 1, 1), minutes(37 + choose(9)));
                  }});
  list.push_back({"K5", "out after the bell", supper, [](Sample& s, const Choose& choose) {
                    move_to(s.at(Kind::kWashUp, choose(3), -1, -1, 2), minutes(82 + choose(9)));
                  }});
  list.push_back(
      {"K5", "an early part after the bell", supper, [](Sample& s, const Choose& choose) {
         move_to(s.at(Kind::kWashUp, choose(3), -1, -1, 0), minutes(87 + choose(9)));
       }});
  list.push_back({"K5", "washed up while still busy", supper, [](Sample& s, const Choose& choose) {
                    move_to(s.at(Kind::kWashUp, 0, -1, -1, 2), minutes(43 + choose(14)));
                  }});
  list.push_back({"Y6", "a part before there is anything to wash", supper,
                  [](Sample& s, const Choose& choose) {
                    move_to(s.at(Kind::kWashUp, choose(3), -1, -1, choose(2)), minutes(13));
                  }});
  list.push_back(
      {"Y6", "parts of washing up out of order", supper, [](Sample& s, const Choose& choose) {
         const int c = choose(3);
         move_to(s.at(Kind::kWashUp, c, -1, -1, 1),
                 s.at(Kind::kWashUp, c, -1, -1, 0).end - minutes(1 + choose(3)));
       }});
}

void add_windows(std::vector<Mutation>& list) {
  list.push_back({"W1", "a window off its time", supper, [](Sample& s, const Choose& choose) {
                    move_by(s.at(Kind::kWindow, -1), 1 + choose(50));
                  }});
  list.push_back({"W2", "hands busy in the register", supper, [](Sample& s, const Choose& choose) {
                    move_to(s.at(Kind::kWindow, -1), minutes(5 + choose(55)));
                  }});
  list.push_back({"W2", "two windows at once", bakery, [](Sample& s, const Choose& choose) {
                    for (auto& t : s.plan.tasks) {
                      if (t.kind == Kind::kWindow && t.window == 0) {
                        move_to(t, minutes(45 + choose(10)));
                      }
                    }
                  }});
  list.push_back({"W3", "work in the break", bakery, [](Sample& s, const Choose& choose) {
                    move_to(s.at(Kind::kWashUp, choose(4), -1, -1, 1), minutes(41 + choose(14)));
                  }});
  list.push_back(
      {"W3", "a tray in the oven in the break", bakery, [](Sample& s, const Choose& choose) {
         move_to(s.at(Kind::kStep, 2 + choose(2), 3, 1), minutes(44 + choose(11)));
       }});
  list.push_back({"W3", "kept hot on a ring in the break", supper, [](Sample& s, const Choose&) {
                    s.lesson.windows[0].kind = kitchen::WindowKind::kBreak;
                    s.lesson.windows[0].audience = {0};
                    move_to(s.at(Kind::kWindow, -1), minutes(58));
                  }});
  list.push_back(
      {"W6", "begun before the demonstration", supper, [](Sample& s, const Choose& choose) {
         move_to(s.at(Kind::kStep, 0, 0, 0), minutes(choose(5)));
       }});
  list.push_back({"W6", "the demonstration before its steps are done", supper,
                  [](Sample& s, const Choose& choose) {
                    s.lesson.windows[0].after = {{0, choose(6)}};
                  }});
  list.push_back(
      {"Y4", "the stop before everybody is there", bakery, [](Sample& s, const Choose& choose) {
         move_to(s.at(Kind::kWindow, -1), minutes(choose(8)));
       }});
  list.push_back({"Y4", "going on before the stop", bakery, [](Sample& s, const Choose& choose) {
                    move_to(s.at(Kind::kWindow, -1), minutes(10 + choose(40)));
                  }});
}

}  // namespace

std::vector<Mutation> time_mutations() {
  std::vector<Mutation> list;
  add_existence(list);
  add_times(list);
  add_waits(list);
  add_serving(list);
  add_windows(list);
  return list;
}

}  // namespace timeplan::sample
