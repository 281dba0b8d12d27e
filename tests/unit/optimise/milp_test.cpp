#include "optimise/milp.h"

#include <gtest/gtest.h>

#include <cmath>
#include <optional>
#include <random>
#include <stdexcept>

namespace {

using namespace optimise;

TEST(Milp, WithoutWholeNumbersItIsALinearProgramme) {
  // Hand: 3x + 2y is least on x + y >= 4, x <= 3 at x = 0, y = 4.
  Programme p;
  const auto x = p.add({0, 3, 3});
  const auto y = p.add({0, kNoLimit, 2});
  p.add({{{x, 1}, {y, 1}}, 4, kNoLimit});
  const Solution s = minimise(p);
  ASSERT_EQ(s.status, Status::kOptimal);
  EXPECT_NEAR(s.cost, 8, 1e-9);
  EXPECT_NEAR(s.values[y], 4, 1e-9);
}

TEST(Milp, WholePacksAreBoughtWhole) {
  // 1.8 kg from packs of 500 g at 90 and of 2 kg at 350: four small cost 360, one large 350.
  Programme p;
  const auto small = p.add({0, kNoLimit, 90, true});
  const auto large = p.add({0, kNoLimit, 350, true});
  p.add({{{small, 500}, {large, 2000}}, 1800, kNoLimit});
  const Solution s = minimise(p);
  ASSERT_EQ(s.status, Status::kOptimal);
  EXPECT_EQ(s.values, (std::vector<double>{0, 1}));
  EXPECT_DOUBLE_EQ(s.cost, 350);
  EXPECT_DOUBLE_EQ(s.bound, 350);
}

TEST(Milp, WhatCannotBeIsSaidToBeImpossible) {
  Programme p;
  const auto x = p.add({0, 10, 1, true});
  p.add({{{x, 2}}, 3, 3});  // twice a whole number is never three
  EXPECT_EQ(minimise(p).status, Status::kImpossible);
  p.variables[x].whole = false;
  EXPECT_EQ(minimise(p).status, Status::kOptimal);
  p.variables[x].least = 11;
  EXPECT_EQ(minimise(p).status, Status::kImpossible);
}

TEST(Milp, ACostThatFallsWithoutEndIsSaidToBeUnlimited) {
  Programme p;
  const auto x = p.add({0, kNoLimit, -1});
  p.add({{{x, 1}}, 3, kNoLimit});
  EXPECT_EQ(minimise(p).status, Status::kUnlimited);
}

TEST(Milp, TermsOfOneVariableAreAddedUp) {
  Programme p;
  const auto x = p.add({0, kNoLimit, 1});
  p.add({{{x, 1}, {x, 1}}, 6, kNoLimit});
  EXPECT_NEAR(minimise(p).values.at(x), 3, 1e-9);
}

TEST(Milp, AProgrammeWithoutRowsOrVariablesHasAnAnswer) {
  EXPECT_EQ(minimise({}).status, Status::kOptimal);
  Programme p;
  p.add({2, 5, 1, true});
  EXPECT_EQ(minimise(p).values, (std::vector<double>{2}));
}

TEST(Milp, BrokenPromisesAreThrown) {
  Programme p;
  p.add(Row{{{0, 1}}, 0, 1});
  EXPECT_THROW(minimise(p), std::invalid_argument);
  p.add({0, 1, std::nan("")});
  EXPECT_THROW(minimise(p), std::invalid_argument);
}

// Every combination of whole values, tried one by one.
std::optional<double> by_trying_all(const Programme& p) {
  std::optional<double> best;
  std::vector<double> values;
  for (const Variable& v : p.variables) values.push_back(v.least);
  while (true) {
    bool keeps = true;
    for (const Row& row : p.rows) {
      double sum = 0;
      for (const Term& t : row.terms) sum += t.coefficient * values[t.variable];
      keeps = keeps && sum >= row.least && sum <= row.most;
    }
    double cost = 0;
    for (std::size_t i = 0; i < values.size(); ++i) cost += p.variables[i].cost * values[i];
    if (keeps && (!best || cost < *best)) best = cost;
    std::size_t at = 0;
    while (at < values.size() && values[at] == p.variables[at].most) {
      values[at] = p.variables[at].least;
      ++at;
    }
    if (at == values.size()) return best;
    values[at] += 1;
  }
}

TEST(Milp, NothingIsCheaperThanTheAnswerInTwoHundredSmallProgrammes) {
  // Outside opinion: every combination tried one by one. A fixed seed; whole figures, so that sums
  // are exact.
  std::mt19937 random(7);
  const auto from_to = [&](int a, int b) {
    return a + static_cast<int>(random() % static_cast<unsigned>(b - a + 1));
  };
  int impossible = 0;
  for (int round = 0; round < 200; ++round) {
    Programme p;
    const int variables = from_to(2, 6);
    for (int i = 0; i < variables; ++i) {
      p.add({0, static_cast<double>(from_to(1, 4)), static_cast<double>(from_to(-9, 9)), true});
    }
    for (int r = from_to(1, 4); r > 0; --r) {
      Row row;
      for (int i = 0; i < variables; ++i) {
        row.terms.push_back({static_cast<std::size_t>(i), static_cast<double>(from_to(-5, 8))});
      }
      row.least = from_to(-10, 20);
      row.most = row.least + from_to(0, 6);
      p.add(row);
    }
    const auto expected = by_trying_all(p);
    const Solution s = minimise(p, {20, 1'000'000, 0});
    ASSERT_EQ(s.status, expected ? Status::kOptimal : Status::kImpossible) << "round " << round;
    if (expected) {
      EXPECT_DOUBLE_EQ(s.cost, *expected) << "round " << round;
    }
    impossible += expected ? 0 : 1;
  }
  EXPECT_GT(impossible, 10);
  EXPECT_LT(impossible, 190);
}

}  // namespace
