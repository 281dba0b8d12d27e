// Classes and rooms made by chance, for properties. Invented names only.
#pragma once

#include <rapidcheck.h>

#include <string>
#include <utility>
#include <vector>

#include "desk/class_list.h"
#include "kitchen/room.h"
#include "kitchen/words.h"

namespace desk_test {

inline bool one_in(int n) { return *rc::gen::inRange(0, n) == 0; }

inline desk::Pupil any_pupil(int number) {
  desk::Pupil pupil;
  // Letters of several scripts, as class lists have them.
  static const std::vector<std::string> kNames{"Aisha", "Ben",    "Zoë",    "Łukasz",
                                               "نور",   "Élodie", "Ø'Brien"};
  pupil.name = *rc::gen::elementOf(kNames) + " " + std::to_string(number);
  if (one_in(3)) pupil.pace = *rc::gen::inRange(2, 9) / 4.0;
  if (one_in(3)) {
    for (const auto& word : kitchen::kAllergenWords)
      if (one_in(8))
        pupil.needs.push_back(
            {word.value, *rc::gen::elementOf(std::vector{safety::Reach::kEat, safety::Reach::kTouch,
                                                         safety::Reach::kRoom})});
    for (const auto& word : safety::kDietWords)
      if (one_in(10)) pupil.needs.push_back({word.value, safety::Reach::kEat});
  }
  for (const auto limit : {desk::Limit::kLowBench, desk::Limit::kNotAtHobAlone,
                           desk::Limit::kLeftHanded, desk::Limit::kNearTeacher})
    if (one_in(8)) pupil.limits.push_back(limit);
  return pupil;
}

/// Up to 40 pupils, at least `least`; seating rules that do not contradict each other.
inline desk::Class any_class(int least) {
  desk::Class group;
  group.name = *rc::gen::elementOf(std::vector<std::string>{"7B", "9K", "Year 10 \"food\""});
  group.year = *rc::gen::inRange(1, 14);
  group.together = *rc::gen::inRange(1, 4);
  const int pupils = *rc::gen::inRange(least, 41);
  for (int i = 0; i < pupils; ++i) group.pupils.push_back(any_pupil(i));
  if (pupils < 2) return group;
  const int rules = *rc::gen::inRange(0, 12);
  for (int i = 0; i < rules; ++i) {
    const int a = *rc::gen::inRange(0, pupils), b = *rc::gen::inRange(0, pupils);
    if (a == b) continue;
    const std::pair rule{group.pupils[static_cast<std::size_t>(a)].name,
                         group.pupils[static_cast<std::size_t>(b)].name};
    const std::pair turned{rule.second, rule.first};
    const auto in = [&](const auto& list) {
      return std::find(list.begin(), list.end(), rule) != list.end() ||
             std::find(list.begin(), list.end(), turned) != list.end();
    };
    if (one_in(4)) {
      if (!in(group.never_together)) group.always_together.push_back(rule);
    } else if (!in(group.always_together)) {
      group.never_together.push_back(rule);
    }
  }
  return group;
}

/// Bays of up to four places, one cooker each.
inline kitchen::Room any_room() {
  kitchen::Room room;
  room.name = "A room";
  const int bays = *rc::gen::inRange(1, 7);
  for (int b = 0; b < bays; ++b) {
    const std::string letter(1, static_cast<char>('A' + b));
    room.bays.push_back({letter, 1});
    kitchen::Cooker cooker;
    cooker.name = letter + "1";
    cooker.bay = b;
    room.cookers.push_back(cooker);
    const int places = *rc::gen::inRange(1, 5);
    for (int p = 0; p < places; ++p)
      room.places.push_back({letter + std::to_string(p + 1) + (one_in(8) ? " low" : ""), b, {b}});
  }
  return room;
}

}  // namespace desk_test
