#include "timeplan/chance/luck.h"

#include <gtest/gtest.h>

#include <cmath>
#include <set>

#include "timeplan/chance/draw.h"

namespace {

using namespace timeplan;

TEST(Luck, the_normal_quantile_undoes_the_distribution_function) {
  for (double p = 1e-6; p < 1; p += 0.00137) {
    const double z = normal_quantile(p);
    EXPECT_NEAR(0.5 * std::erfc(-z / std::sqrt(2.0)), p, 2e-9 + 1e-8 * p) << p;
  }
  EXPECT_NEAR(normal_quantile(0.975), 1.959963984540054, 1e-7);
}

TEST(Luck, every_purpose_run_cook_and_step_has_a_number_of_its_own) {
  std::set<double> seen;
  int asked = 0;
  for (std::uint64_t seed = 0; seed < 3; ++seed)
    for (std::uint64_t run = 0; run < 20; ++run)
      for (std::uint64_t cook = 0; cook < 20; ++cook)
        for (std::uint64_t step = 0; step < 20; ++step)
          for (const LuckFor what : {LuckFor::kCook, LuckFor::kCookStep}) {
            seen.insert(uniform(seed, run, cook, step, what));
            ++asked;
          }
  EXPECT_EQ(static_cast<int>(seen.size()), asked);
}

TEST(Luck, numbers_are_uniform_and_uncorrelated_between_neighbours) {
  // 40,000 numbers: the mean of uniforms has standard error 0.2887 / 200 = 0.00144, a correlation 1
  // / 200 = 0.005. Four standard errors each.
  double sum = 0, product = 0;
  constexpr int n = 40000;
  for (std::uint64_t run = 0; run < n; ++run) {
    const double u = uniform(1, run, 5, 9, LuckFor::kStep),
                 v = uniform(1, run, 6, 9, LuckFor::kStep);
    sum += u;
    product += (u - 0.5) * (v - 0.5) * 12;
  }
  EXPECT_NEAR(sum / n, 0.5, 4 * 0.00144);
  EXPECT_NEAR(product / n, 0.0, 4 * 0.005);
}

TEST(Luck, half_of_a_steps_spread_is_shared_by_all_who_do_it) {
  LengthOf length;
  length.spread = 0.4;
  length.hands_on = true;
  // ln 1 = sqrt(1/2) 0.4 (z_own + z_step): each alone moves it by 0.2828.
  EXPECT_NEAR(std::log(length_factor(length, 1, 0, 0, 0)), 0.4 * std::sqrt(0.5), 1e-12);
  EXPECT_NEAR(std::log(length_factor(length, 0, 1, 0, 0)), 0.4 * std::sqrt(0.5), 1e-12);
  EXPECT_NEAR(std::log(length_factor(length, 0, 0, 1, 0)), 0.15, 1e-12);
  EXPECT_NEAR(std::log(length_factor(length, 0, 0, 0, 1)), 0.08, 1e-12);
  length.hands_on = false;
  EXPECT_NEAR(std::log(length_factor(length, 1, 5, 5, 5)), 0.4, 1e-12);
}

TEST(Luck, nothing_takes_less_than_two_fifths_or_more_than_four_times_its_median) {
  LengthOf length;
  length.spread = 1.5;
  EXPECT_EQ(length_factor(length, 9, 0, 0, 0), 4.0);
  EXPECT_EQ(length_factor(length, -9, 0, 0, 0), 0.4);
}

}  // namespace
