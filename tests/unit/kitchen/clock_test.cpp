#include "base/clock.h"

#include <gtest/gtest.h>

#include "kitchen/zone.h"

namespace {

using namespace base;

TEST(Clock, TimesAreReadAsPeopleWriteThem) {
  EXPECT_EQ(local_time_in("10:50")->after_midnight, minutes(650));
  EXPECT_EQ(local_time_in("9:05")->after_midnight, minutes(545));
  EXPECT_EQ(local_time_in("2026-11-17T10:50")->date, date_in("2026-11-17"));
  EXPECT_EQ(local_time_in("2026-11-17T10:50:00+01:00")->offset, minutes(60));
  EXPECT_EQ(local_time_in("2026-11-17T10:50Z")->offset, Seconds{0});
}

TEST(Clock, WhatIsNoTimeIsRefused) {
  for (const char* text : {"", "10", "10.50", "24:00", "10:60", "10:5", "10:50 am", "10:50Z",
                           "2026-11-31T10:50", "2026-11-17T1050", "2026-11-17T10:50+1"}) {
    EXPECT_EQ(local_time_in(text), std::nullopt) << text;
  }
}

TEST(Clock, DatesThatDoNotExistAreRefused) {
  EXPECT_TRUE(date_in("2028-02-29"));
  EXPECT_FALSE(date_in("2026-02-29"));
  EXPECT_FALSE(date_in("2026-13-01"));
  EXPECT_FALSE(date_in("17-11-2026"));
  EXPECT_EQ(date_text(*date_in("2026-03-01")), "2026-03-01");
}

TEST(Clock, TimesAreWrittenWithSecondsOnlyWhenThereAreAny) {
  EXPECT_EQ(clock_text(minutes(545)), "09:05");
  EXPECT_EQ(clock_text(minutes(545) + Seconds{30}), "09:05:30");
  EXPECT_EQ(clock_text(minutes(24 * 60 + 5)), "00:05");
}

// Great Britain in 2026: forward on 29 March at 01:00, back on 25 October at 02:00.
TEST(Zone, AnHourIsSkippedInSpringAndComesTwiceInAutumn) {
  const auto spring = *date_in("2026-03-29");
  const auto autumn = *date_in("2026-10-25");
  EXPECT_EQ(kitchen::meaning_of("Europe/London", spring, minutes(90)).kind,
            kitchen::LocalKind::kNever);
  EXPECT_EQ(kitchen::meaning_of("Europe/London", spring, minutes(59)).kind,
            kitchen::LocalKind::kOnce);
  const auto twice = kitchen::meaning_of("Europe/London", autumn, minutes(90));
  EXPECT_EQ(twice.kind, kitchen::LocalKind::kTwice);
  // The earlier of the two is still summer time: 00:30 UTC.
  EXPECT_EQ(twice.instant, Seconds{autumn.days * 86400LL} + minutes(30));
}

TEST(Zone, UnknownZonesAreKnownToBeUnknown) {
  EXPECT_TRUE(kitchen::known_zone("Europe/London"));
  EXPECT_FALSE(kitchen::known_zone("Europe/Atlantis"));
  EXPECT_FALSE(kitchen::known_zone("../../etc/passwd"));
}

}  // namespace
