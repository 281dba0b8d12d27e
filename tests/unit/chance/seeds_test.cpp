// The eight worked chances: every combination of durations played must give the file's numbers
// exactly.
#include <gtest/gtest.h>

#include "seed_model.h"

namespace {

class WorkedChance : public testing::TestWithParam<const char*> {};

TEST_P(WorkedChance, comes_out_exactly_when_every_combination_is_played) {
  const seeds::Seed seed = seeds::read(GetParam());
  const seeds::Exact exact = seeds::enumerate(seed);
  // Sums of a few halves and quarters: exact in binary.
  EXPECT_EQ(exact.room, seeds::ratio(seed.chance.at("room")));
  EXPECT_EQ(exact.expected_not_out, seeds::ratio(seed.chance.at("expected_not_out")));
  EXPECT_EQ(exact.quality_fault, seeds::ratio(seed.chance.at("quality_fault")));
  for (std::size_t c = 0; c < seed.cooks.size(); ++c)
    EXPECT_EQ(exact.cooks[c], seeds::ratio(seed.chance.at("cooks").at(seed.cooks[c])))
        << "cook " << seed.cooks[c];
  std::map<int, double> finish;
  for (const auto& [minute, chance] : seed.chance.at("last_finish").items())
    finish[std::stoi(minute)] = seeds::ratio(chance);
  EXPECT_EQ(exact.last_finish, finish);
}

INSTANTIATE_TEST_SUITE_P(small, WorkedChance,
                         testing::Values("dispatch-1-chain.json", "dispatch-2-clock-bound.json",
                                         "dispatch-3-sink.json", "dispatch-4-demonstration.json",
                                         "dispatch-5-drain.json",
                                         "dispatch-6-drain-while-busy.json",
                                         "dispatch-7-oven-patience.json", "dispatch-8-adult.json"));

}  // namespace
