// The simulation against closed forms worked out here by other means: convolution on a grid,
// Lindley's recursion by enumeration, the mean of a clamped lognormal, a published interval. Seeds
// are fixed; a tolerance of so many standard errors is said in words where it stands.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include "timeplan/chance/draw.h"
#include "timeplan/chance/luck.h"
#include "timeplan/chance/room_play.h"
#include "timeplan/chance/statistics.h"

namespace {

using namespace timeplan;

double phi(double x) { return 0.5 * std::erfc(-x / std::sqrt(2.0)); }

/// One cook, hands-on steps one after another: medians in minutes, one spread.
LessonModel one_after_another(const std::vector<int>& medians, double spread) {
  LessonModel model;
  model.play.cooks.resize(1);
  model.cook_ids = {11};
  int at = 0;
  for (std::size_t i = 0; i < medians.size(); ++i) {
    PlayActivity a;
    a.cook = 0;
    a.attention = 8;
    a.busy = 2;
    a.hands_on = a.finish = true;
    a.planned_start = at;
    a.planned = 60 * medians[i];
    at += a.planned;
    model.play.activities.push_back(a);
    if (i > 0)
      model.play.waits.push_back(
          {static_cast<int>(i) - 1, true, static_cast<int>(i), false, 0, kNever, false});
    model.step_ids.push_back(100 + i);
    model.length.push_back({60.0 * medians[i], spread, true, 0, static_cast<int>(i)});
    model.task.push_back(-1);
    model.part.push_back(0);
  }
  return model;
}

/// Chance that the sum of clamped lognormals is at most `limit` seconds. Given the forms of cook
/// and room (one normal of variance 0.15^2 + 0.08^2) the steps are independent, so their sum is a
/// convolution on a grid of 2 s; the form is integrated by the trapezium rule over six sigmas.
double sum_at_most(const std::vector<int>& medians, double spread, double limit) {
  const double form = std::sqrt(kCookForm * kCookForm + kRoomForm * kRoomForm);
  constexpr int nodes = 121;
  constexpr double cell = 2;
  const auto cells = static_cast<std::size_t>(limit / cell) + 1;
  double chance = 0, weights = 0;
  for (int k = 0; k < nodes; ++k) {
    const double z = -6 + 12.0 * k / (nodes - 1), weight = std::exp(-z * z / 2);
    std::vector<double> sum(cells, 0);
    sum[0] = 1;
    for (const int minutes : medians) {
      const double median = 60.0 * minutes, shift = form * z;
      const auto below = [&](double x) {
        if (x < kLeastFactor * median) return 0.0;
        return x >= kMostFactor * median ? 1.0 : phi((std::log(x / median) - shift) / spread);
      };
      std::vector<double> mass(cells), next(cells, 0);
      for (std::size_t i = 0; i < cells; ++i) {
        const double x = cell * static_cast<double>(i);
        mass[i] = below(x + cell / 2) - below(x - cell / 2);
      }
      for (std::size_t i = 0; i < cells; ++i)
        if (sum[i] > 0)
          for (std::size_t j = 0; i + j < cells; ++j) next[i + j] += sum[i] * mass[j];
      sum = next;
    }
    double total = 0;
    for (const double p : sum) total += p;
    chance += weight * total;
    weights += weight;
  }
  return chance / weights;
}

TEST(Reference, one_cook_in_sequence_finishes_as_the_convolution_of_lognormals_says) {
  const std::vector<int> medians{6, 10, 4, 8};
  constexpr double spread = 0.35;
  const LessonModel model = one_after_another(medians, spread);
  RoomPlayer player(model.play);
  Draw draw(model, 20);
  constexpr int runs = 20000;
  for (const int limit : {26 * 60, 30 * 60, 36 * 60}) {
    int good = 0;
    for (int run = 0; run < runs; ++run)
      good += player.play(draw.of_run(static_cast<std::uint64_t>(run), 0)).finish[0] <= limit;
    const double exact = sum_at_most(medians, spread, limit);
    // Three standard errors of a share of 20,000, and half a grid cell a step, about 0.002.
    EXPECT_NEAR(static_cast<double>(good) / runs, exact,
                3 * std::sqrt(exact * (1 - exact) / runs) + 0.002)
        << limit;
  }
}

TEST(Reference, two_cooks_at_one_sink_wait_as_lindleys_recursion_says) {
  // Cooks arrive at the sink one behind the other: work A_i in {4, 7}, washing S_i in {3, 5}, five
  // cooks in a fixed order, each arriving A_i after the one before. Waiting: W_1 = 0, W_(i+1) =
  // max(0, W_i + S_i - A_(i+1)). All 2^10 combinations are played and compared one by one.
  constexpr int cooks = 5;
  PlayModel model;
  model.cooks.resize(cooks);
  model.resources = {{1, {}}};
  for (int c = 0; c < cooks; ++c) {
    PlayActivity work, wash;
    work.cook = wash.cook = c;
    work.attention = wash.attention = 8;
    work.hands_on = wash.hands_on = true;
    work.planned_start = c == 0 ? 0 : 5 * 60 * c;
    work.planned = 5 * 60;
    wash.planned_start = 5 * 60 * (c + 1);
    wash.planned = 4 * 60;
    wash.ways = {PlayWay{{{0, 1}}, kNever}};
    wash.finish = true;
    model.activities.push_back(work);
    model.activities.push_back(wash);
    model.waits.push_back({2 * c, true, 2 * c + 1, false, 0, kNever, false});
    if (c > 0) model.waits.push_back({2 * c - 2, true, 2 * c, false, 0, kNever, false});
  }
  RoomPlayer player(model);
  for (unsigned combination = 0; combination < (1U << (2 * cooks)); ++combination) {
    std::vector<int> length;
    for (int a = 0; a < 2 * cooks; ++a) {
      const bool longer = (combination >> a) & 1U;
      length.push_back(60 * (a % 2 == 0 ? (longer ? 7 : 4) : (longer ? 5 : 3)));
    }
    const auto& run = player.play({length, {}, 0});
    int wait = 0;
    for (int c = 0; c < cooks; ++c) {
      const auto work = static_cast<std::size_t>(2 * c), wash = work + 1;
      if (c > 0) wait = std::max(0, wait + length[wash - 2] - length[work]);
      ASSERT_EQ(run.start[wash] - run.end[work], wait)
          << "cook " << c << ", combination " << combination;
    }
  }
}

TEST(Reference, two_points_of_work_before_one_sink_give_the_enumerated_chance) {
  // Two cooks, work 8 or 12 min with even chance, then 5 min at the one sink; out by 18 unless both
  // take 12. Drawn here from the same generator as the lesson's luck: 20,000 runs, three standard
  // errors at 3/4 are 0.0092.
  PlayModel model;
  model.cooks.resize(2);
  model.resources = {{1, {}}};
  for (int c = 0; c < 2; ++c) {
    PlayActivity work, wash;
    work.cook = wash.cook = c;
    work.attention = wash.attention = 8;
    work.hands_on = wash.hands_on = true;
    work.planned = 600;
    wash.planned_start = 600 + 300 * c;
    wash.planned = 300;
    wash.ways = {PlayWay{{{0, 1}}, kNever}};
    wash.finish = true;
    wash.due = 18 * 60;
    model.activities.push_back(work);
    model.activities.push_back(wash);
    model.waits.push_back({2 * c, true, 2 * c + 1, false, 0, kNever, false});
  }
  RoomPlayer player(model);
  int good = 0;
  constexpr int runs = 20000;
  for (std::uint64_t run = 0; run < runs; ++run) {
    std::vector<int> length(4, 300);
    for (const std::uint64_t c : {std::uint64_t{0}, std::uint64_t{1}})
      length[2 * c] = uniform(3, run, c, 0, LuckFor::kCookStep) < 0.5 ? 480 : 720;
    const auto& played = player.play({length, {}, 0});
    good += played.in_time[0] && played.in_time[1];
  }
  EXPECT_NEAR(static_cast<double>(good) / runs, 0.75, 0.0092);
}

TEST(Reference, the_mean_of_a_clamped_lognormal_is_its_closed_form) {
  // E min(max(e^(sZ), a), b) = a P(low) + e^(s^2/2) [F(ln b / s - s) - F(ln a / s - s)] + b
  // P(high).
  for (const double sigma : {0.3, 0.5, 0.62}) {
    LengthOf length;
    length.spread = sigma;
    const double a = std::log(kLeastFactor) / sigma, b = std::log(kMostFactor) / sigma;
    const double exact = kLeastFactor * phi(a) +
                         std::exp(sigma * sigma / 2) * (phi(b - sigma) - phi(a - sigma)) +
                         kMostFactor * (1 - phi(b));
    double sum = 0, squares = 0;
    constexpr int n = 100000;
    for (std::uint64_t run = 0; run < n; ++run) {
      const double x = length_factor(length, normal(9, run, 1, 2, LuckFor::kCookStep), 0, 0, 0);
      sum += x;
      squares += x * x;
    }
    const double mean = sum / n, error = std::sqrt((squares / n - mean * mean) / n);
    EXPECT_NEAR(mean, exact, 4 * error) << sigma;  // four standard errors
    // The claim of 7.1: clamping moves the mean by less than 0.05 % up to 0.5 and by -0.6 % at
    // 0.62.
    const double moved = exact / std::exp(sigma * sigma / 2) - 1;
    if (sigma <= 0.5) {
      EXPECT_LT(std::abs(moved), 0.0005) << sigma;
    }
    if (sigma > 0.6) {
      EXPECT_NEAR(moved, -0.006, 0.006) << sigma;
    }
  }
}

TEST(Reference, wilsons_interval_is_the_worked_one) {
  // 81 of 263 without continuity correction: 0.2553 to 0.3662; 15 of 148: 0.0624 to 0.1605; 0 of
  // 20: 0 to 0.1611; 1 of 29: 0.0061 to 0.1718 (Newcombe 1998, table I, method 3, from memory).
  const auto near = [](Interval i, double low, double high) {
    EXPECT_NEAR(i.low, low, 5e-5);
    EXPECT_NEAR(i.high, high, 5e-5);
  };
  near(wilson(81, 263), 0.2553, 0.3662);
  near(wilson(15, 148), 0.0624, 0.1605);
  near(wilson(0, 20), 0.0, 0.1611);
  near(wilson(1, 29), 0.0061, 0.1718);
  // 2,000 runs at one half: 2.2 points either way (7.3).
  EXPECT_NEAR(wilson(1000, 2000).high - 0.5, 0.022, 0.0005);
}

}  // namespace
