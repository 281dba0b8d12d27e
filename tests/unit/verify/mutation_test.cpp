// Break one rule, at a place and by an amount left to chance: the judge must name it.
#include <algorithm>
#include <set>

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include "mutations.h"

namespace timeplan {
namespace {

using sample::Mutation;

std::vector<Mutation> all_mutations() {
  auto list = sample::time_mutations();
  for (auto more : {sample::room_mutations(), sample::people_mutations()}) {
    list.insert(list.end(), more.begin(), more.end());
  }
  return list;
}

// The rules a plan can break. T1, H4, S1, S5, Y2, Y10 only say what is allowed or meant;
// verify_test.cpp has them.
const std::set<std::string> kRules = {
    "T2", "T3",  "W7", "H7",  "K7", "L2", "L3", "P1", "C1", "C2", "C3",  "H5", "H3",
    "K1", "K2",  "Y5", "Y12", "K5", "Y6", "Y8", "A1", "A2", "A3", "Y9",  "W1", "W2",
    "W3", "W6",  "W8", "Y4",  "L1", "S2", "S3", "S4", "S6", "O1", "O2",  "O3", "O4",
    "O5", "O6",  "O7", "O8",  "Y7", "K4", "K6", "H2", "V1", "V2", "V3",  "V4", "V5",
    "W5", "Y11", "Y1", "Y3",  "G1", "G2", "Gw", "G3", "G4", "G6", "8.1", "Z5"};

std::set<std::string> rules_named(const std::vector<Violation>& found) {
  std::set<std::string> rules;
  for (const auto& v : found) rules.insert(v.rule);
  return rules;
}

// Every violation names a rule of the page, says something and points at tasks that are there.
bool sound(const std::vector<Violation>& found, const Plan& plan) {
  return std::all_of(found.begin(), found.end(), [&](const Violation& v) {
    const bool there = std::all_of(v.tasks.begin(), v.tasks.end(), [&](int t) {
      return t >= 0 && t < static_cast<int>(plan.tasks.size());
    });
    return there && !v.message.empty() && kRules.contains(v.rule);
  });
}

TEST(Mutations, ThereIsOneForEveryRuleAndNoneForAnother) {
  std::set<std::string> rules;
  for (const auto& m : all_mutations()) rules.insert(m.rule);
  EXPECT_EQ(rules, kRules);
}

class EveryMutation : public testing::TestWithParam<Mutation> {};

TEST_P(EveryMutation, IsNamedByTheJudge) {
  const Mutation& m = GetParam();
  const auto named = [&m](const sample::Choose& choose) {
    auto s = m.lesson();
    m.break_it(s, choose);
    const auto found = verify(s.lesson, s.plan);
    return rules_named(found).contains(m.rule) && sound(found, s.plan);
  };
  bool asked = false;
  EXPECT_TRUE(named([&asked](int) {
    asked = true;
    return 0;
  }));
  if (!asked) return;  // nothing is left to chance: once says it all
  EXPECT_TRUE(rc::check(m.rule + ", " + m.what, [&named] {
    RC_ASSERT(named([](int n) { return *rc::gen::inRange(0, n); }));
  }));
}

INSTANTIATE_TEST_SUITE_P(
    Rules, EveryMutation, testing::ValuesIn(all_mutations()), [](const auto& info) {
      std::string name = info.param.rule + "_" + info.param.what + "_" + std::to_string(info.index);
      std::replace_if(
          name.begin(), name.end(), [](unsigned char c) { return std::isalnum(c) == 0; }, '_');
      return name;
    });

}  // namespace
}  // namespace timeplan
