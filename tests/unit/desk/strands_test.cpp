// The method as lines that meet: a picture that may not lie about hands and waits.
#include "desk/strands.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <map>

#include "../../support/lesson_file.h"
#include "kitchen/read.h"
#include "shipped/dishes.h"

namespace {

using base::minutes;
using base::Seconds;
using desk::Strand;
using desk::Strands;
using kitchen::Dish;

std::vector<Dish> all_dishes() {
  std::vector<Dish> out;
  for (const shipped::Dish& dish : shipped::dishes()) {
    auto versions = kitchen::read_dish_variants(dish.text, std::string(dish.key));
    if (!versions) {
      ADD_FAILURE() << dish.key;
      continue;
    }
    for (const Dish& each : versions.value()) out.push_back(each);
  }
  return out;
}

const kitchen::Step& step_of(const Dish& dish, const Strand& strand) {
  return dish.method[static_cast<std::size_t>(strand.step)];
}

TEST(Strands, EveryStepIsThereOnceAndAsLongAsItIs) {
  for (const Dish& dish : all_dishes()) {
    const Strands strands = desk::strands(dish);
    ASSERT_EQ(strands.steps.size(), dish.method.size()) << dish.name;
    std::vector<bool> seen(dish.method.size(), false);
    for (const Strand& strand : strands.steps) {
      EXPECT_FALSE(seen[static_cast<std::size_t>(strand.step)]);
      seen[static_cast<std::size_t>(strand.step)] = true;
      EXPECT_EQ(strand.to - strand.from, step_of(dish, strand).least) << dish.name;
      EXPECT_GE(strand.from, Seconds{0});
      EXPECT_LE(strand.to, strands.length);
    }
  }
}

TEST(Strands, NoTwoHandsOnStepsOverlap) {
  for (const Dish& dish : all_dishes()) {
    std::vector<Strand> busy;
    for (const Strand& strand : desk::strands(dish).steps)
      if (kitchen::hands_on(step_of(dish, strand).attention)) busy.push_back(strand);
    std::sort(busy.begin(), busy.end(),
              [](const Strand& a, const Strand& b) { return a.from < b.from; });
    for (std::size_t i = 1; i < busy.size(); ++i)
      EXPECT_GE(busy[i].from, busy[i - 1].to) << dish.name;
  }
}

TEST(Strands, LeastWaitsAreKept) {
  for (const Dish& dish : all_dishes()) {
    std::map<int, Strand> at;
    for (const Strand& strand : desk::strands(dish).steps) at[strand.step] = strand;
    for (std::size_t s = 0; s < dish.method.size(); ++s) {
      for (const kitchen::Follows& wait : dish.method[s].follows) {
        const Strand &own = at[static_cast<int>(s)], &other = at[wait.step];
        const Seconds here = wait.moment == kitchen::Moment::kEnd ? own.to : own.from;
        const Seconds there = wait.of == kitchen::Moment::kEnd ? other.to : other.from;
        EXPECT_GE(here - there, wait.least) << dish.name << ": " << dish.method[s].id;
      }
    }
  }
}

TEST(Strands, NothingOverlapsInItsLane) {
  for (const Dish& dish : all_dishes()) {
    std::map<int, std::vector<Strand>> lanes;
    for (const Strand& strand : desk::strands(dish).steps) {
      EXPECT_EQ(strand.lane == 0, kitchen::hands_on(step_of(dish, strand).attention)) << dish.name;
      lanes[strand.lane].push_back(strand);
    }
    for (auto& [lane, steps] : lanes) {
      std::sort(steps.begin(), steps.end(),
                [](const Strand& a, const Strand& b) { return a.from < b.from; });
      for (std::size_t i = 1; i < steps.size(); ++i)
        EXPECT_GE(steps[i].from, steps[i - 1].to) << dish.name << lane;
    }
  }
}

TEST(Strands, HandsAreTheSumOfTheirStepsAndTheListGoesByStart) {
  for (const Dish& dish : all_dishes()) {
    Seconds hands{0};
    for (const kitchen::Step& step : dish.method)
      if (kitchen::hands_on(step.attention)) hands += step.least;
    const Strands strands = desk::strands(dish);
    EXPECT_EQ(strands.hands, hands) << dish.name;
    EXPECT_LE(strands.hands, strands.length);
    EXPECT_TRUE(std::is_sorted(strands.steps.begin(), strands.steps.end(),
                               [](const Strand& a, const Strand& b) { return a.from < b.from; }));
  }
}

// Chop 6 min, then boil 20 by itself; meanwhile grate 4: in hands 0-6 and 6-10, in the lane beside
// them 6-26.
TEST(Strands, WhatWaitsRunsBesideTheHands) {
  Dish dish;
  dish.method.resize(3);
  dish.method[0].least = minutes(6);
  dish.method[1].least = minutes(20);
  dish.method[1].attention = kitchen::Attention::kGlance;
  dish.method[1].follows = {{0, kitchen::Moment::kEnd, kitchen::Moment::kStart, Seconds{0}, {}}};
  dish.method[2].least = minutes(4);
  const Strands strands = desk::strands(dish);
  EXPECT_EQ(strands.length, minutes(26));
  EXPECT_EQ(strands.hands, minutes(10));
  for (const Strand& strand : strands.steps) {
    if (strand.step == 1) {
      EXPECT_EQ(strand, (Strand{1, 1, minutes(6), minutes(26)}));
    }
  }
}

}  // namespace
