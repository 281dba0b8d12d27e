#include "print/sheets/room_sheets.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "look_at_pdf.h"
#include "sample.h"

namespace {

using namespace print::sheets;
using testing::HasSubstr;

TEST(Rota, everybody_moves_on_and_every_job_is_somebodys) {
  const sample::Told told = sample::two_waves();
  const Planned planned{told.lesson, told.answer, ""};
  const std::string now = look::words(pdf_of_rota(planned, 0));
  EXPECT_NE(now, look::words(pdf_of_rota(planned, 1)));
  for (const char* job : {"Wash up", "Dry, put away", "Sink, drainer", "Food waste"})
    EXPECT_THAT(now, HasSubstr(job));
  // Four jobs a bay: with as many turns as cooks it comes round again.
  const auto in_bay = told.lesson.cooks.size() / told.lesson.room.bays.size();
  const auto whole = in_bay * told.lesson.room.bays.size();
  EXPECT_EQ(now, look::words(pdf_of_rota(planned, static_cast<int>(whole))));
}

TEST(ProbeLog, asks_for_what_is_raw_or_served_hot_and_not_for_a_scone) {
  kitchen::Dish dish;
  dish.hold.kind = kitchen::HoldKind::kKeeps;
  dish.method.resize(1);
  EXPECT_FALSE(wants_probe(dish));  // a salad
  dish.method[0].heat = kitchen::Heat{};
  EXPECT_FALSE(wants_probe(dish));  // a scone
  dish.hold.kind = kitchen::HoldKind::kHot;
  EXPECT_TRUE(wants_probe(dish));
  dish.hold.kind = kitchen::HoldKind::kKeeps;
  dish.method[0].hygiene = kitchen::Hygiene::kRaw;
  EXPECT_TRUE(wants_probe(dish));
}

// 75 °C for 30 s and 70 °C for 2 min: advice of the Food Standards Agency on cooking; both stand on
// the log, with the school's own figure.
TEST(ProbeLog, says_the_temperatures_and_defers_to_the_school) {
  const sample::Told told = sample::two_waves();
  const std::string said = look::words(pdf_of_probe_log({told.lesson, told.answer, ""}));
  EXPECT_THAT(said, HasSubstr("75 °C for 30 seconds or 70 °C for 2 minutes"));
  EXPECT_THAT(said, HasSubstr("school's own figure"));
  EXPECT_THAT(said, HasSubstr("63 °C or more"));
}

TEST(BayCheck, has_the_plans_times_and_counts_knives_by_bay) {
  const sample::Told told = sample::two_waves();
  const std::string said = look::words(pdf_of_bay_check({told.lesson, told.answer, ""}));
  for (const timeplan::Task& task : told.answer.plan->tasks) {
    if (task.kind != timeplan::TaskKind::kBayLook && task.kind != timeplan::TaskKind::kKnivesOut)
      continue;
    EXPECT_THAT(said, HasSubstr(kitchen::clock(told.lesson, task.start)));
  }
  EXPECT_THAT(said, HasSubstr("Nobody leaves while one is missing"));
}

TEST(BayCheck, counts_the_knives_that_a_place_has_in_use_at_once) {
  sample::Told told = sample::two_waves();
  const std::size_t cook = static_cast<std::size_t>(
      told.answer.plan->tasks.front().cook < 0 ? 0 : told.answer.plan->tasks.front().cook);
  for (kitchen::Dish& dish : told.lesson.dishes) {
    for (kitchen::Step& step : dish.method) step.kit.clear();
  }
  kitchen::Dish&
      dish = told.lesson.dishes[static_cast<std::size_t>(told.lesson.cooks[cook].dishes.front())];
  for (kitchen::Step& step : dish.method) step.kit = {{"vegetable knife", 2}};
  const std::string said = look::words(pdf_of_bay_check({told.lesson, told.answer, ""}));
  EXPECT_THAT(said, HasSubstr("(2)"));
}

}  // namespace
