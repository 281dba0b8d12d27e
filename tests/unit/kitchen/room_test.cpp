#include "kitchen/room.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <nlohmann/json.hpp>

#include "kitchen/change_over.h"
#include "kitchen/read.h"
#include "samples.h"

namespace {

using namespace kitchen;
using base::minutes;

OvenSetting at(int celsius, OvenKind kind = OvenKind::kConventional) { return {celsius, kind}; }

TEST(ChangeOver, WarmingTakesAMinuteForTenDegreesAndCoolingSevenDegreesAMinute) {
  const ChangeOver usual;
  EXPECT_EQ(change_over(usual, at(180), at(220)), minutes(4));
  EXPECT_EQ(change_over(usual, at(220), at(180)), minutes(6));  // 40 / 7 = 5.7, up to 6
  EXPECT_EQ(change_over(usual, at(180), at(180)), minutes(0));
}

TEST(ChangeOver, AnotherKindOfHeatTakesAMinuteAtLeast) {
  const ChangeOver usual;
  EXPECT_EQ(change_over(usual, at(180), at(180, OvenKind::kFan)), minutes(1));
  EXPECT_EQ(change_over(usual, at(180), at(220, OvenKind::kFan)), minutes(4));
}

TEST(ChangeOver, AColdOvenReaches180InTenMinutesAndEachTenDegreesMoreInOneMore) {
  const ChangeOver usual;
  EXPECT_EQ(heat_up(usual, at(180)), minutes(10));
  EXPECT_EQ(heat_up(usual, at(220)), minutes(14));
  EXPECT_EQ(heat_up(usual, at(150)), minutes(7));
  EXPECT_EQ(heat_up(usual, at(50)), minutes(1));  // never nothing
}

RC_GTEST_PROP(ChangeOver, GoingByWayOfAThirdSettingIsNeverQuickerWhenTheReaderLetsItThrough, ()) {
  ChangeOver rates;
  rates.cold_to_180 = base::Seconds{*rc::gen::inRange(1, 2000)};
  rates.cold_more_per_10 = base::Seconds{*rc::gen::inRange(0, 200)};
  rates.heat_per_10 = base::Seconds{*rc::gen::inRange(0, 200)};
  rates.cool_degrees_per_minute = *rc::gen::inRange(1, 60);
  RC_PRE(!quicker_detour(rates));
  const auto any = [] {
    return at(*rc::gen::inRange(5, 27) * 10,
              *rc::gen::element(OvenKind::kConventional, OvenKind::kFan, OvenKind::kGrill));
  };
  const OvenSetting a = any(), b = any(), c = any();
  RC_ASSERT(change_over(rates, a, c) <= change_over(rates, a, b) + change_over(rates, b, c));
  RC_ASSERT(heat_up(rates, c) <= heat_up(rates, b) + change_over(rates, b, c));
  RC_ASSERT(change_over(rates, a, c).count() % 60 == 0);
}

TEST(ChangeOver, ColdThatHeatsSlowerThanWarmIsFoundOut) {
  ChangeOver rates;
  rates.cold_more_per_10 = minutes(2);
  const auto detour = quicker_detour(rates);
  ASSERT_TRUE(detour);
  EXPECT_FALSE(detour->from);
  EXPECT_LT(detour->around, detour->straight);
}

TEST(Room, PlainPlacesAreSpreadOverTheCookersOfTheirBay) {
  const auto room = read_room(samples::room().dump(), "room.json");
  ASSERT_TRUE(room) << samples::told(room.problems());
  EXPECT_EQ(room.value().places[0].cookers, std::vector<int>{0});
  EXPECT_EQ(room.value().places[1].cookers, std::vector<int>{0});
  EXPECT_EQ(room.value().places[2].cookers, std::vector<int>{1});
}

TEST(Room, MorePlacesThanCookersOrFewerEveryCookerIsSomebodysOwn) {
  auto text = samples::room();
  text["bays"][0]["places"] = {"A1"};
  const auto room = read_room(text.dump(), "room.json");
  ASSERT_TRUE(room) << samples::told(room.problems());
  EXPECT_EQ(room.value().places[0].cookers, (std::vector<int>{0, 1}));
}

TEST(Room, AHobHasNoFanAndNoGrillUnlessItSaysSo) {
  const Room room = read_room(samples::room().dump(), "room.json").value();
  EXPECT_FALSE(room.cookers[2].fan);
  EXPECT_EQ(room.cookers[2].grill, GrillKind::kNone);
}

TEST(Room, KnowsItsKitByName) {
  const Room room = read_room(samples::room().dump(), "room.json").value();
  ASSERT_NE(find_kit(room, "scales"), nullptr);
  EXPECT_EQ(find_kit(room, "scales")->count, 2);
  EXPECT_EQ(find_kit(room, "mixer"), nullptr);
}

}  // namespace
