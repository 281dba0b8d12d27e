// Who sits where with whom: what holds for every class, and what a teacher would expect of a few.
#include "desk/seating.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <map>
#include <set>

#include "random_class.h"

namespace {

using desk::Class;
using desk::Limit;
using desk::Seat;
using desk::Seating;
using desk::SeatingWish;

std::map<std::string, int> times_seated(const Seating& seating) {
  std::map<std::string, int> out;
  for (const Seat& seat : seating.seats)
    for (const std::string& name : seat.pupils) ++out[name];
  return out;
}

bool never(const Class& group, const std::string& a, const std::string& b) {
  return std::any_of(
      group.never_together.begin(), group.never_together.end(), [&](const auto& pair) {
        return (pair.first == a && pair.second == b) || (pair.first == b && pair.second == a);
      });
}

bool may_join(const Class& group, const Seat& seat, const std::string& name) {
  return seat.pupils.size() < 3 &&
         std::none_of(seat.pupils.begin(), seat.pupils.end(),
                      [&](const std::string& other) { return never(group, other, name); });
}

/// A class, a room and a wish; some are away, and some may have sat somewhere before.
struct Case {
  Class group = desk_test::any_class(1);
  kitchen::Room room = desk_test::any_room();
  SeatingWish wish;

  Case() {
    wish.together = *rc::gen::inRange(1, 4);
    for (const desk::Pupil& pupil : group.pupils)
      if (desk_test::one_in(8)) wish.away.push_back(pupil.name);
  }
  bool away(const std::string& name) const {
    return std::find(wish.away.begin(), wish.away.end(), name) != wish.away.end();
  }
  Seating seat() const { return desk::seat(group, room, wish); }
};

RC_GTEST_PROP(Seating, EverybodyPresentSitsExactlyOnce, ()) {
  const Case c;
  const auto seated = times_seated(c.seat());
  std::size_t present = 0;
  for (const desk::Pupil& pupil : c.group.pupils) {
    const auto found = seated.find(pupil.name);
    RC_ASSERT((found == seated.end()) == c.away(pupil.name));
    if (found != seated.end()) RC_ASSERT(found->second == 1);
    present += c.away(pupil.name) ? 0 : 1;
  }
  RC_ASSERT(seated.size() == present);
}

RC_GTEST_PROP(Seating, ThoseWhoMustNotAreNeverOneCook, ()) {
  const Case c;
  for (const Seat& seat : c.seat().seats)
    for (const std::string& a : seat.pupils)
      for (const std::string& b : seat.pupils) RC_ASSERT(!never(c.group, a, b));
}

RC_GTEST_PROP(Seating, SeatsAreAtPlacesOfTheRoomInTheirOrderAndHoldOneToThree, ()) {
  const Case c;
  const Seating seating = c.seat();
  int last = 0;
  std::map<int, int> used;
  for (const Seat& seat : seating.seats) {
    RC_ASSERT(seat.place >= last && seat.place < static_cast<int>(c.room.places.size()));
    RC_ASSERT(!seat.pupils.empty() && seat.pupils.size() <= (c.wish.together == 1 ? 1U : 3U));
    last = seat.place;
    ++used[seat.place];
  }
  const bool shares = std::any_of(used.begin(), used.end(),
                                  [](const auto& each) { return each.second > 1; });
  RC_ASSERT(seating.shares_places == shares);
}

RC_GTEST_PROP(Seating, NobodySharesAPlaceWhileOneIsFree, ()) {
  const Case c;
  const Seating seating = c.seat();
  if (seating.seats.size() <= c.room.places.size()) RC_ASSERT(!seating.shares_places);
}

RC_GTEST_PROP(Seating, NobodyWhoMayJoinIsLeftAlone, ()) {
  Case c;
  c.wish.together = std::max(c.wish.together, 2);
  const Seating seating = c.seat();
  for (const Seat& alone : seating.seats) {
    if (alone.pupils.size() != 1) continue;
    for (const Seat& other : seating.seats)
      RC_ASSERT(&other == &alone || !may_join(c.group, other, alone.pupils.front()));
  }
}

RC_GTEST_PROP(Seating, TheSameInputGivesTheSameSeats, ()) {
  const Case c;
  RC_ASSERT(c.seat() == c.seat());
}

RC_GTEST_PROP(Seating, WhatWasGivenOnceStaysWhenNothingChanges, ()) {
  Case c;
  const Seating first = c.seat();
  c.wish.keep = first.seats;
  const auto threes = std::count_if(first.seats.begin(), first.seats.end(),
                                    [](const Seat& seat) { return seat.pupils.size() > 2; });
  // Mostly threes where pairs were asked for: nobody could be kept apart from another otherwise.
  RC_PRE(c.wish.together != 2 || threes * 2 <= static_cast<std::ptrdiff_t>(first.seats.size()));
  std::vector<Seat> before = first.seats, after = c.seat().seats;
  for (std::vector<Seat>* seats : {&before, &after})
    for (Seat& seat : *seats) std::sort(seat.pupils.begin(), seat.pupils.end());
  std::set<std::pair<int, std::vector<std::string>>> was, is;
  for (const Seat& seat : before) was.emplace(seat.place, seat.pupils);
  for (const Seat& seat : after) is.emplace(seat.place, seat.pupils);
  RC_ASSERT(was == is);
}

RC_GTEST_PROP(Seating, WhoeverStaysKeepsTheirPlaceWhenSomeAreAway, ()) {
  Case c;
  c.wish.away.clear();
  for (desk::Pupil& pupil : c.group.pupils) pupil.limits.clear();
  const Seating first = c.seat();
  c.wish.keep = first.seats;
  for (const desk::Pupil& pupil : c.group.pupils)
    if (desk_test::one_in(6)) c.wish.away.push_back(pupil.name);
  std::map<std::string, int> was;
  for (const Seat& seat : first.seats)
    for (const std::string& name : seat.pupils) was[name] = seat.place;
  const auto threes = std::count_if(first.seats.begin(), first.seats.end(),
                                    [](const Seat& seat) { return seat.pupils.size() > 2; });
  RC_PRE(c.wish.together != 2 || threes * 2 <= static_cast<std::ptrdiff_t>(first.seats.size()));
  for (const Seat& seat : c.seat().seats)
    for (const std::string& name : seat.pupils) RC_ASSERT(was.at(name) == seat.place);
}

RC_GTEST_PROP(Seating, SeatsOfPupilsWhoLeftAndPlacesThatAreGoneDoNoHarm, ()) {
  Case c;
  c.wish.keep.push_back({{"Somebody who left"}, 0});
  c.wish.keep.push_back({{c.group.pupils.front().name, c.group.pupils.front().name}, 99});
  c.wish.keep.push_back({{c.group.pupils.back().name}, -1});
  const auto seated = times_seated(c.seat());
  RC_ASSERT(seated.count("Somebody who left") == 0);
  for (const auto& [name, times] : seated) RC_ASSERT(times == 1);
}

Class class_of(int pupils, int together) {
  Class group;
  group.name = "8T";
  group.together = together;
  for (int i = 0; i < pupils; ++i) {
    desk::Pupil pupil;
    pupil.name = "Pupil " + std::to_string(i + 1);
    group.pupils.push_back(std::move(pupil));
  }
  return group;
}

kitchen::Room room_of(int bays, int places_each) {
  kitchen::Room room;
  for (int b = 0; b < bays; ++b) {
    room.bays.push_back({std::string(1, static_cast<char>('A' + b)), 1});
    for (int p = 0; p < places_each; ++p)
      room.places.push_back({room.bays.back().name + std::to_string(p + 1), b, {0}});
  }
  kitchen::Cooker cooker;
  cooker.name = "A1";
  room.cookers.push_back(cooker);
  return room;
}

bool told(const Seating& seating, const std::string& words) {
  return std::any_of(seating.notes.begin(), seating.notes.end(), [&](const std::string& note) {
    return note.find(words) != std::string::npos;
  });
}

TEST(Seating, FortyPupilsInPairsAreTwentyCooks) {
  const Seating seating = desk::seat(class_of(40, 2), room_of(6, 4), {2, {}, {}});
  EXPECT_EQ(seating.seats.size(), 20U);
  EXPECT_FALSE(seating.shares_places);
  EXPECT_TRUE(seating.notes.empty());
}

TEST(Seating, MoreCooksThanPlacesShareAndItIsSaid) {
  const Seating seating = desk::seat(class_of(40, 1), room_of(3, 4), {1, {}, {}});
  EXPECT_EQ(seating.seats.size(), 40U);
  EXPECT_TRUE(seating.shares_places);
  EXPECT_TRUE(told(seating, "40 cooks and 12 places"));
  std::map<int, int> used;
  for (const Seat& seat : seating.seats) ++used[seat.place];
  for (const auto& [place, cooks] : used)
    EXPECT_TRUE(cooks == 3 || cooks == 4) << place;  // 40 at 12 places: dealt evenly
}

TEST(Seating, AnOddPupilMakesOnePairAThree) {
  const Seating seating = desk::seat(class_of(25, 2), room_of(6, 4), {2, {}, {}});
  EXPECT_EQ(seating.seats.size(), 12U);
  EXPECT_EQ(std::count_if(seating.seats.begin(), seating.seats.end(),
                          [](const Seat& seat) { return seat.pupils.size() == 3; }),
            1);
}

TEST(Seating, ThoseAlwaysTogetherAreOneCook) {
  Class group = class_of(8, 2);
  group.always_together = {{"Pupil 1", "Pupil 8"}};
  const Seating seating = desk::seat(group, room_of(2, 4), {2, {}, {}});
  EXPECT_TRUE(std::any_of(seating.seats.begin(), seating.seats.end(), [](const Seat& seat) {
    return seat.pupils == std::vector<std::string>{"Pupil 1", "Pupil 8"};
  }));
}

TEST(Seating, ARuleThatCannotBeKeptIsSaid) {
  Class group = class_of(4, 2);
  group.always_together = {{"Pupil 1", "Pupil 2"}, {"Pupil 2", "Pupil 3"}};
  EXPECT_TRUE(told(desk::seat(group, room_of(2, 4), {2, {}, {}}),
                   "Pupil 2 and Pupil 3 are to be together and are not"));
}

TEST(Seating, AloneIsSaidWhereNobodyMayJoin) {
  Class group = class_of(3, 2);
  group.never_together = {{"Pupil 1", "Pupil 2"}, {"Pupil 1", "Pupil 3"}};
  const Seating seating = desk::seat(group, room_of(2, 4), {2, {}, {}});
  EXPECT_EQ(seating.seats.size(), 2U);
  EXPECT_TRUE(told(seating, "Pupil 1 cooks alone"));
}

TEST(Seating, WhoMayNotBeAtTheHobAloneIsNotEvenWhenTheirPartnerIsAway) {
  Class group = class_of(6, 2);
  group.pupils[0].limits = {Limit::kNotAtHobAlone};
  SeatingWish wish{2, {}, {}};
  wish.keep = desk::seat(group, room_of(2, 4), wish).seats;
  wish.away = {"Pupil 2"};
  const Seating seating = desk::seat(group, room_of(2, 4), wish);
  for (const Seat& seat : seating.seats) {
    if (std::find(seat.pupils.begin(), seat.pupils.end(), "Pupil 1") != seat.pupils.end()) {
      EXPECT_EQ(seat.pupils.size(), 3U);
    }
  }
  EXPECT_TRUE(seating.notes.empty());
}

TEST(Seating, WhoMayNotBeAtTheHobAloneIsSaidWhenEverybodyWorksAlone) {
  Class group = class_of(2, 1);
  group.pupils[1].limits = {Limit::kNotAtHobAlone};
  SeatingWish wish{1, {}, {}};
  EXPECT_TRUE(told(desk::seat(group, room_of(1, 4), wish), "Pupil 2 may not be at the hob alone"));
  wish.keep = desk::seat(group, room_of(1, 4), wish).seats;
  EXPECT_TRUE(told(desk::seat(group, room_of(1, 4), wish), "Pupil 2 may not be at the hob alone"));
}

TEST(Seating, ALowBenchGoesToWhoNeedsItAndToNobodyElseWhileOthersAreFree) {
  kitchen::Room room = room_of(1, 4);
  room.places[0].name = "A1 low bench";
  Class group = class_of(3, 1);
  group.pupils[2].limits = {Limit::kLowBench};
  const Seating seating = desk::seat(group, room, {1, {}, {}});
  EXPECT_EQ(seating.seats.front().pupils, std::vector<std::string>{"Pupil 3"});
  EXPECT_EQ(seating.seats.front().place, 0);
  EXPECT_TRUE(seating.notes.empty());
  group.pupils[1].limits = {Limit::kLowBench};
  EXPECT_TRUE(told(desk::seat(group, room, {1, {}, {}}), "no free place is named a low bench"));
}

TEST(Seating, NearTheTeacherIsTheFirstBayOrItIsSaid) {
  Class group = class_of(4, 1);
  group.pupils[3].limits = {Limit::kNearTeacher};
  const Seating seating = desk::seat(group, room_of(4, 1), {1, {}, {}});
  EXPECT_EQ(seating.seats.front().pupils, std::vector<std::string>{"Pupil 4"});
  SeatingWish wish{1, {}, {{{"Pupil 1"}, 0}}};
  EXPECT_TRUE(told(desk::seat(group, room_of(4, 1), wish), "no place was free in the first bay"));
}

TEST(Seating, ThoseKeptApartAreNotNeighboursWhileAnotherBayIsFree) {
  Class group = class_of(2, 1);
  group.never_together = {{"Pupil 1", "Pupil 2"}};
  const kitchen::Room room = room_of(2, 2);
  const Seating seating = desk::seat(group, room, {1, {}, {}});
  EXPECT_NE(room.places[static_cast<std::size_t>(seating.seats[0].place)].bay,
            room.places[static_cast<std::size_t>(seating.seats[1].place)].bay);
}

TEST(Seating, AClassOfThreesAskedForInPairsIsDealtAnew) {
  const Class group = class_of(12, 3);
  SeatingWish wish{3, {}, {}};
  wish.keep = desk::seat(group, room_of(3, 4), wish).seats;
  wish.together = 2;
  EXPECT_EQ(desk::seat(group, room_of(3, 4), wish).seats.size(), 6U);
}

TEST(Seating, ACookIsNamedByItsPupilsAndNoNameIsTooLongForALesson) {
  EXPECT_EQ(desk::cook_name({{"Aisha"}, 0}), "Aisha");
  EXPECT_EQ(desk::cook_name({{"Aisha", "Ben"}, 0}), "Aisha and Ben");
  EXPECT_EQ(desk::cook_name({{"Aisha", "Ben", "Cara"}, 0}), "Aisha, Ben and Cara");
  const std::string all = desk::cook_name({{std::string(50, 'a'), std::string(50, 'b')}, 0});
  EXPECT_EQ(all.substr(0, 54), std::string(50, 'a') + " and");
  EXPECT_LE(all.size(), 57U);  // 54 letters and a sign of three bytes
}

}  // namespace
