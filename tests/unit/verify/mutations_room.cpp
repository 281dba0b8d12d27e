#include "mutations.h"

namespace timeplan::sample {

using base::minutes;
using base::Seconds;
using kitchen::OvenKind;
using Kind = TaskKind;

namespace {

void move_to(Task& t, Seconds start) {
  t.end += start - t.start;
  t.start = start;
}
void move_by(Task& t, int by) { move_to(t, t.start + minutes(by)); }

kitchen::Room& room(Sample& s) { return s.lesson.room; }
kitchen::Step& method(Sample& s, int dish, int step) {
  return s.lesson.dishes[static_cast<std::size_t>(dish)].method[static_cast<std::size_t>(step)];
}
Task& a_heat_task(Sample& s, const Choose& choose) {
  const int which = choose(4);
  return which == 0   ? s.at(Kind::kStep, 0, 0, 2)
         : which == 1 ? s.at(Kind::kStep, 0, 0, 3)
         : which == 2 ? s.at(Kind::kStep, 1, 2, 2)
                      : s.at(Kind::kStep, 2, 3, 1);
}

void add_attention(std::vector<Mutation>& list) {
  list.push_back({"A1", "attention no scale knows", supper, [](Sample& s, const Choose& choose) {
                    constexpr int kNone[] = {3, 4, 6, 7, 9, 11};
                    method(s, choose(3), choose(3)).attention = static_cast<kitchen::Attention>(
                        kNone[choose(6)]);
                  }});
  list.push_back(
      {"A2", "two things for one pair of hands", supper, [](Sample& s, const Choose& choose) {
         move_to(s.at(Kind::kStep, 0, 0, 5), minutes(28 + choose(5)));
       }});
  list.push_back(
      {"A2", "apron and hands takes everybody", supper, [](Sample& s, const Choose& choose) {
         move_to(s.at(Kind::kCollectEquipment, 1), minutes(5 + choose(3)));
       }});
  // Three people washing up keep 6 halves of a person, stirring a seventh: 29 tenths of 30, and yet
  // too much.
  list.push_back({"A3", "the sum fits and nobody is free to stir", two_pans,
                  [](Sample& s, const Choose& choose) {
                    move_to(s.at(Kind::kWashUp, 0, -1, -1, 0), minutes(13 + choose(4)));
                  }});
  list.push_back({"Y9", "one of them is away", supper, [](Sample& s, const Choose& choose) {
                    const int from = 57 + choose(4);
                    s.lesson.cooks[1].away = {{minutes(from), minutes(from + 1 + choose(9))}};
                  }});
}

void add_vessels(std::vector<Mutation>& list) {
  list.push_back({"O1", "on no cooker", supper, [](Sample& s, const Choose& choose) {
                    a_heat_task(s, choose).cooker = choose(2) == 0 ? -1 : 3 + choose(9);
                  }});
  list.push_back({"O1", "out of reach", supper, [](Sample& s, const Choose& choose) {
                    Task& t = a_heat_task(s, choose);
                    t.cooker = t.cooker == 2 ? 0 : 2;
                  }});
  list.push_back({"O1", "a pan hops to another ring", supper, [](Sample& s, const Choose& choose) {
                    s.at(Kind::kStep, 0, 0, 2 + choose(2)).cooker = 1;
                  }});
  list.push_back({"O1", "an oven without a fan", supper,
                  [](Sample& s, const Choose&) { s.at(Kind::kStep, 1, 2, 2).cooker = 1; }});
  list.push_back(
      {"O2", "the pot is still on the only ring", two_pans, [](Sample& s, const Choose& choose) {
         move_to(s.at(Kind::kStep, 0, 1, 1), minutes(6 + choose(6)));
       }});
  list.push_back({"O3", "no setting", supper,
                  [](Sample& s, const Choose&) { s.at(Kind::kStep, 1, 2, 2).setting.reset(); }});
  list.push_back({"O3", "beyond the tolerance", supper, [](Sample& s, const Choose& choose) {
                    s.at(Kind::kStep, 1, 2, 2).setting = {
                        choose(2) == 0 ? 200 + 10 * choose(5) : 160 - 10 * choose(5),
                        OvenKind::kFan};
                  }});
  list.push_back({"O3", "another kind of heat", supper, [](Sample& s, const Choose&) {
                    s.at(Kind::kStep, 1, 2, 2).setting = {180, OvenKind::kConventional};
                  }});
  list.push_back({"O3", "two settings at once", bakery, [](Sample& s, const Choose& choose) {
                    move_to(s.at(Kind::kStep, choose(2), 1, 1), minutes(13 + choose(11)));
                  }});
  list.push_back({"O3", "too many trays", bakery, [](Sample& s, const Choose& choose) {
                    const int dish = choose(3);
                    method(s, dish == 2 ? 3 : dish, 1).heat->shelf_twelfths = 13 + choose(9);
                  }});
  list.push_back(
      {"O4", "in before the oven has cooled", bakery, [](Sample& s, const Choose& choose) {
         const int early = 1 + choose(6);
         for (int c = 0; c < 2; ++c) move_by(s.at(Kind::kStep, c, 1, 1), -early);
       }});
  list.push_back({"O5", "in before the oven is hot", supper, [](Sample& s, const Choose& choose) {
                    move_to(s.at(Kind::kStep, 1, 2, 2), minutes(choose(10)));
                  }});
  list.push_back(
      {"O5", "from another opening setting", bakery, [](Sample& s, const Choose& choose) {
         s.lesson.ovens[0].setting.celsius = 50 + 10 * choose(6);
       }});
  list.push_back({"O6", "a tray in the break", bakery, [](Sample& s, const Choose& choose) {
                    move_to(s.at(Kind::kStep, 2 + choose(2), 3, 1), minutes(36 + choose(19)));
                  }});
  list.push_back({"O6", "in before the oven is hot after the break", bakery,
                  [](Sample& s, const Choose& choose) {
                    move_to(s.at(Kind::kStep, 2 + choose(2), 3, 1), minutes(55 + choose(12)));
                  }});
  list.push_back({"O7", "the door opens on a bake", bakery, [](Sample& s, const Choose& choose) {
                    move_to(s.at(Kind::kStep, choose(2), 1, 1), minutes(11 + choose(4)));
                  }});
  list.push_back({"O8", "one place under the grill", bakery,
                  [](Sample& s, const Choose&) { room(s).cookers[1].grill_places = 1; }});
  list.push_back({"Y7", "a shared tray goes in twice", bakery, [](Sample& s, const Choose& choose) {
                    move_by(s.at(Kind::kStep, choose(2), 0, 1), 1 + choose(9));
                  }});
}

void add_shared(std::vector<Mutation>& list) {
  list.push_back(
      {"K4", "too few sinks", supper, [](Sample& s, const Choose&) { room(s).bays[0].sinks = 1; }});
  list.push_back({"K4", "one sink, two cooks", supper, [](Sample& s, const Choose& choose) {
                    room(s).places[1].bay = 0;
                    for (auto& t : s.plan.tasks) {
                      if (t.cook == 2 && t.sink_bay == 1) t.sink_bay = 0;
                    }
                    move_to(s.at(Kind::kWashUp, 2, -1, -1, choose(2)), minutes(36 + choose(2)));
                  }});
  list.push_back({"K4", "at somebody else's sink", supper, [](Sample& s, const Choose& choose) {
                    Task& t = s.at(Kind::kWashUp, choose(3), -1, -1, choose(3));
                    t.sink_bay = choose(2) == 0 ? -1 : 1 - t.sink_bay;
                  }});
  list.push_back(
      {"K4", "too few basins", supper, [](Sample& s, const Choose&) { room(s).hand_basins = 1; }});
  list.push_back({"H7", "hands at a sink that is not for hands", supper,
                  [](Sample& s, const Choose&) { room(s).hands_at_sinks = false; }});
  list.push_back({"K6", "a full fridge", supper,
                  [](Sample& s, const Choose& choose) { room(s).fridge_tenths = choose(4); }});
  list.push_back({"K6", "what is stored stays to the bell", take_home,
                  [](Sample& s, const Choose& choose) { room(s).fridge_tenths = choose(3); }});
  list.push_back({"K7", "a crowd at the table", supper,
                  [](Sample& s, const Choose& choose) { room(s).table_positions = choose(2); }});
}

void add_kit(std::vector<Mutation>& list) {
  list.push_back({"K1", "a unit the room has not", supper, [](Sample& s, const Choose& choose) {
                    s.at(Kind::kStep, 0, 0, choose(2)).kit_units = {4 + choose(9)};
                  }});
  list.push_back({"K1", "no unit named", supper, [](Sample& s, const Choose& choose) {
                    s.at(Kind::kStep, 0, 0, choose(2)).kit_units.clear();
                  }});
  list.push_back({"K1", "two cooks with one knife", supper, [](Sample& s, const Choose& choose) {
                    s.at(Kind::kStep, 1, 2, 4).kit_units = {1};
                    s.at(Kind::kStep, 1, 1, 1).kit_units = {1, 0};
                    move_to(s.at(Kind::kStep, 1, 2, 4), minutes(28 + choose(7)));
                  }});
  list.push_back({"K1", "the wash names another unit", supper,
                  [](Sample& s, const Choose&) { s.at(Kind::kKitWash, 1, 1, 1).kit_units = {1}; }});
  list.push_back(
      {"K1", "used while it waits to be washed", two_pans, [](Sample& s, const Choose& choose) {
         room(s).kit[0].washed_between = true;
         for (const int c : {0, 1}) {
           Task& t = s.add(Kind::kKitWash, c, 23 + choose(2), 25 + choose(2));
           t.dish = c == 0 ? 1 : 2;
           t.kit = 0;
           t.kit_units = {0};
         }
       }});
  list.push_back({"K2", "no full clean after milk", two_pans,
                  [](Sample& s, const Choose&) { s.drop(s.at(Kind::kFullClean, 0)); }});
  list.push_back(
      {"K2", "a full clean that comes too late", two_pans, [](Sample& s, const Choose& choose) {
         move_by(s.at(Kind::kFullClean, 0), 1 + choose(12));
       }});
  list.push_back({"K2", "a full clean of the other mixer", two_pans,
                  [](Sample& s, const Choose&) { s.at(Kind::kFullClean, 0).kit_units = {1}; }});
  list.push_back({"K2", "a full clean by somebody else", two_pans,
                  [](Sample& s, const Choose&) { s.at(Kind::kFullClean, 0).cook = 1; }});
  list.push_back({"K2", "a full clean nobody needs", two_pans, [](Sample& s, const Choose&) {
                    s.lesson.cooks[1].avoids = {kitchen::Allergen::kEggs};
                  }});
  list.push_back({"K2", "a short full clean", two_pans, [](Sample& s, const Choose& choose) {
                    s.at(Kind::kFullClean, 0).end -= minutes(1 + choose(4));
                  }});
}

void add_hygiene(std::vector<Mutation>& list) {
  list.push_back({"H2", "salad beside raw meat", supper, [](Sample& s, const Choose& choose) {
                    move_to(s.at(Kind::kStep, 1, 1, 3), minutes(18 + choose(5)));
                  }});
  list.push_back(
      {"H2", "leaves rinsed beside raw meat", supper, [](Sample& s, const Choose& choose) {
         move_to(s.at(Kind::kStep, 1, 1, 0), minutes(17 + choose(6)));
       }});
  list.push_back({"H3", "no clean-down", supper, [](Sample& s, const Choose& choose) {
                    s.drop(s.at(Kind::kCleanDown, choose(2)));
                  }});
  list.push_back(
      {"H3", "the clean-down comes too late", supper, [](Sample& s, const Choose& choose) {
         move_by(s.at(Kind::kCleanDown, choose(2)), 3 + choose(30));
       }});
  list.push_back(
      {"H3", "the clean-down comes too early", supper, [](Sample& s, const Choose& choose) {
         move_to(s.at(Kind::kCleanDown, 0), minutes(10 + choose(12)));
       }});
  list.push_back({"H3", "raw work cleaned as if it were leaves", supper,
                  [](Sample& s, const Choose&) { s.at(Kind::kCleanDown, 0).end -= minutes(2); }});
  list.push_back({"H3", "a clean-down nobody needs", supper, [](Sample& s, const Choose& choose) {
                    choose(2) == 0 ? s.add(Kind::kCleanDown, 2, 30, 32)
                                   : s.add(Kind::kCleanDown, 0, 43 + choose(5), 49);
                  }});
  list.push_back(
      {"H3", "somebody works while it is cleaned", supper, [](Sample& s, const Choose& choose) {
         move_to(s.at(Kind::kStep, 1, 1, 0), minutes(22 + choose(6)));
       }});
}

}  // namespace

std::vector<Mutation> room_mutations() {
  std::vector<Mutation> list;
  add_attention(list);
  add_vessels(list);
  add_shared(list);
  add_kit(list);
  add_hygiene(list);
  return list;
}

}  // namespace timeplan::sample
