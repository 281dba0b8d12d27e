#include "larder/trays.h"

#include <gmock/gmock.h>

#include <algorithm>
#include <map>

#include "kitchen/read.h"
#include "larder/needs.h"
#include "made.h"
#include "print/say_trays.h"

namespace {

using namespace larder;
using kitchen::Ratio;
using tests::shipped_foods;

kitchen::Lesson demo(const std::string& name) {
  const std::string path = "demo/lessons/" + name + ".json";
  return kitchen::read_lesson(tests::text_of(path), path, tests::load).value();
}

TEST(Trays, ByFoodAndByPlaceSumToWhatTheLessonNeeds) {
  for (const char* name :
       {"a-first-hob", "b-two-dishes", "c-frying-in-turns", "h-stop-gate-demonstration"}) {
    const kitchen::Lesson lesson = demo(name);
    const Trays trays = trays_of(lesson, shipped_foods());
    std::map<std::string, Ratio> by_place, by_food;
    for (const Tray& tray : trays.trays) {
      for (const Pot& pot : tray.pots) by_place[pot.food] += pot.size;
    }
    for (const Weighing& w : trays.weighings) {
      EXPECT_EQ(by_food.count(w.food), 0U) << w.food << " is weighed twice";
      by_food[w.food] = w.total;
      Ratio portions = 0;
      for (const auto& p : w.portions) portions += p.size * Ratio(p.times);
      EXPECT_EQ(portions, w.total) << w.food;
    }
    EXPECT_EQ(by_place, by_food);
    Week week;
    week.lessons = {week_lesson(lesson)};
    for (const FoodNeed& need : needs_of(week, shipped_foods()).foods)
      EXPECT_EQ(by_food.at(need.food), need.total()) << name << " " << need.food;
  }
}

TEST(Trays, ThatStandApartComeFirstThenByBayAndPlace) {
  const Trays trays = trays_of(demo("b-two-dishes"), shipped_foods());
  EXPECT_TRUE(trays.trays.front().apart);  // Daisy's, without milk
  EXPECT_EQ(trays.trays.front().where, "Bay A, A4");
  for (std::size_t i = 2; i < trays.trays.size(); ++i)
    EXPECT_LT(std::pair(trays.trays[i - 1].bay, trays.trays[i - 1].place),
              std::pair(trays.trays[i].bay, trays.trays[i].place));
  // Nothing that anybody avoids is weighed before the last pot of a tray apart is done, unless the
  // list says to wash.
  bool seen_ordinary = false;
  for (const Weighing& w : trays.weighings) {
    const bool apart = std::any_of(w.portions.begin(), w.portions.end(),
                                   [](const auto& p) { return !p.places_apart.empty(); });
    EXPECT_FALSE(apart && seen_ordinary) << w.name;
    seen_ordinary = seen_ordinary || !apart;
  }
}

TEST(Trays, CardsTellNobodyApart) {
  // Two cooks with the same dish, one of whom avoids something: the same words on both cards, and
  // nothing on any card changes when the avoiding is taken away.
  kitchen::Lesson lesson = demo("b-two-dishes");
  const std::string with = print::tray_cards(lesson, trays_of(lesson, shipped_foods()));
  for (kitchen::Cook& cook : lesson.cooks) cook.avoids.clear();
  const std::string without = print::tray_cards(lesson, trays_of(lesson, shipped_foods()));
  EXPECT_EQ(with, without);
}

TEST(Trays, AreTheSameByteForByteWhoeverTheSchoolSupplies) {
  // The same week twice, the school supplying four pupils or none: what pupils can see is equal.
  const auto cards = [](const std::string& week_text) {
    auto week = read_week(week_text, "demo/weeks/week-47.json", tests::load);
    EXPECT_TRUE(week);
    const kitchen::Lesson lesson = demo("b-two-dishes");
    const Trays trays = trays_of(lesson, shipped_foods());
    return print::tray_cards(lesson, trays) + print::say_trays(lesson, trays) +
           print::trays_json(lesson, trays);
  };
  std::string text = tests::text_of("demo/weeks/week-47.json");
  const std::string four = cards(text);
  const auto at = text.find("\"school_sets\": 4");
  ASSERT_NE(at, std::string::npos);
  text.replace(at, 16, "\"school_sets\": 0");
  EXPECT_EQ(cards(text), four);
  EXPECT_EQ(four.find("school food"), std::string::npos);
}

TEST(Trays, WarnWhenAPotHoldsWhatItsCookAvoids) {
  kitchen::Lesson lesson = demo("b-two-dishes");
  lesson.cooks[0].avoids = {kitchen::Allergen::kGluten};  // and makes scones of wheat
  const Trays trays = trays_of(lesson, shipped_foods());
  EXPECT_THAT(trays.warnings, testing::Contains(testing::HasSubstr("self-raising flour")));
}

}  // namespace
