// Seated pupils as the cooks of a lesson: what each avoids, how fast they are, which version they
// cook.
#include "desk/cooks.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "demo_lessons.h"

namespace {

using namespace desk_test;
using desk::Class;
using desk::Cooks;
using desk::KeyedDish;
using desk::Seating;
using kitchen::Allergen;
using kitchen::Node;

std::vector<kitchen::Dish> versions(const std::string& dish) {
  auto read = kitchen::read_dish_variants(demo_file("dishes/" + dish + ".json"), dish);
  if (!read) throw std::runtime_error(read.problems().front().message);
  return std::move(read).value();
}

kitchen::Room room() {
  auto read = kitchen::read_room(demo_file("rooms/food-room-1.json"), "room");
  if (!read) throw std::runtime_error(read.problems().front().message);
  return std::move(read).value();
}

desk::Pupil pupil(const std::string& name, std::vector<safety::Need> needs = {}, double pace = 1) {
  desk::Pupil out;
  out.name = name;
  out.needs = std::move(needs);
  out.pace = pace;
  return out;
}

std::vector<std::string> texts(const Node* list) {
  std::vector<std::string> out;
  if (list != nullptr)
    for (const Node& each : list->items) out.push_back(each.text);
  return out;
}
using Words = std::vector<std::string>;

TEST(Cooks, AreNamedByTheirPupilsAndKnowTheirPlace) {
  Class group{"9K", 9, 2, {pupil("Aisha K."), pupil("Ben T.")}, {}, {}};
  Seating seating;
  seating.seats = {{{"Aisha K.", "Ben T."}, 3}};
  const Cooks cooks = desk::cooks_of(group, room(), seating,
                                     {{"scones", versions("fruit-scones")}});
  ASSERT_EQ(cooks.list.items.size(), 1U);
  const Node& cook = cooks.list.items.front();
  EXPECT_EQ(cook.find("name")->text, "Aisha K. and Ben T.");
  EXPECT_EQ(cook.find("people")->number, 2);
  EXPECT_EQ(cook.find("place")->text, room().places[3].name);
  EXPECT_EQ(texts(cook.find("dishes")), Words{"scones"});
  EXPECT_EQ(cook.find("avoids"), nullptr);
  EXPECT_EQ(cook.find("pace"), nullptr);
  EXPECT_EQ(texts(cooks.seats.find("Aisha K. and Ben T.")), (Words{"Aisha K.", "Ben T."}));
}

TEST(Cooks, TheSlowestPupilSetsThePace) {
  Class group{"9K", 9, 2, {pupil("Aisha K.", {}, 0.8), pupil("Ben T.", {}, 1.3)}, {}, {}};
  Seating seating;
  seating.seats = {{{"Aisha K.", "Ben T."}, 0}};
  EXPECT_EQ(desk::cooks_of(group, room(), seating, {}).list.items.front().find("pace")->number,
            1.3);
  seating.seats = {{{"Aisha K."}, 0}};
  EXPECT_EQ(desk::cooks_of(group, room(), seating, {}).list.items.front().find("pace")->number,
            0.8);
}

TEST(Cooks, WhatAnyOfThemMustNotHaveTheCookAvoidsAndTheVersionLeavesOut) {
  const safety::Need milk{Allergen::kMilk, safety::Reach::kEat};
  Class group{"9K", 9, 2, {pupil("Aisha K."), pupil("Daisy M.", {milk})}, {}, {}};
  Seating seating;
  seating.seats = {{{"Aisha K.", "Daisy M."}, 0}};
  const auto scones = versions("fruit-scones");
  ASSERT_TRUE(kitchen::allergens(scones.front()).count(Allergen::kMilk));
  const Cooks cooks = desk::cooks_of(group, room(), seating, {{"scones", scones}});
  EXPECT_EQ(texts(cooks.list.items.front().find("avoids")), Words{"milk"});
  const std::string chosen = texts(cooks.list.items.front().find("dishes")).front();
  EXPECT_EQ(chosen, "scones: oat drink and spread");
  ASSERT_EQ(cooks.notes.size(), 1U);
  EXPECT_EQ(cooks.notes.front(), "Aisha K. and Daisy M. cooks Fruit scones oat drink and spread.");
}

TEST(Cooks, ForEveryDemoDishAndEveryAllergenTheVersionChosenIsSafeOrItIsSaid) {
  for (const char* name :
       {"fruit-scones", "chicken-fajitas", "macaroni-cheese", "lentil-dhal", "tomato-bean-soup"}) {
    const auto all = versions(name);
    for (const auto& word : kitchen::kAllergenWords) {
      Class group{"9K", 9, 1, {pupil("Daisy M.", {{word.value, safety::Reach::kEat}})}, {}, {}};
      Seating seating;
      seating.seats = {{{"Daisy M."}, 0}};
      const Cooks cooks = desk::cooks_of(group, room(), seating, {{"dish", all}});
      const std::string chosen = texts(cooks.list.items.front().find("dishes")).front();
      const std::string variant = chosen == "dish" ? "" : chosen.substr(6);
      const auto version = std::find_if(
          all.begin(), all.end(), [&](const kitchen::Dish& d) { return d.variant == variant; });
      ASSERT_NE(version, all.end());
      const bool safe = kitchen::allergens(*version).count(word.value) == 0;
      const bool said = !cooks.notes.empty() &&
                        cooks.notes.front().find("no version of") != std::string::npos;
      EXPECT_NE(safe, said) << name << " without " << word.word;
      const bool could = std::any_of(all.begin(), all.end(), [&](const kitchen::Dish& d) {
        return kitchen::allergens(d).count(word.value) == 0;
      });
      EXPECT_EQ(safe, could) << name << " without " << word.word;
    }
  }
}

TEST(Cooks, NotesOfTheSeatingAreKept) {
  Seating seating;
  seating.notes = {"Ben cooks alone."};
  EXPECT_EQ(desk::cooks_of({}, room(), seating, {}).notes, seating.notes);
}

TEST(Cooks, TwoCooksNeverHaveOneName) {
  const std::string long_a(58, 'a');
  Class group{"9K", 9, 1, {pupil(long_a + "1"), pupil(long_a + "2")}, {}, {}};
  Seating seating;
  seating.seats = {{{long_a + "1"}, 0}, {{long_a + "2"}, 1}};
  const Cooks cooks = desk::cooks_of(group, room(), seating, {});
  EXPECT_NE(cooks.list.items[0].find("name")->text, cooks.list.items[1].find("name")->text);
  EXPECT_EQ(cooks.seats.items.size(), 2U);
}

TEST(Cooks, OfADemoClassMakeALessonThatCanBeRead) {
  const auto group = desk::read_class(demo_file("classes/9k.json"), "9k");
  ASSERT_TRUE(group);
  const auto seats = desk::seat(group.value(), room(), {group.value().together, {}, {}});
  Cooks cooks = desk::cooks_of(group.value(), room(), seats,
                               {{"scones", versions("fruit-scones")}});
  Node tree = tree_of(document_of("b-two-dishes"));
  tree.set("cooks", cooks.list);
  tree.find("dishes")->erase("soup");
  tree.find("dishes")->erase("macaroni");
  if (seats.shares_places) tree.set("share_places", Node::of(true));
  const kitchen::Lesson lesson = lesson_of(kitchen::json_text(tree));
  int people = 0;
  for (const kitchen::Cook& cook : lesson.cooks) people += cook.people;
  EXPECT_EQ(people, static_cast<int>(group.value().pupils.size()));
}

}  // namespace
