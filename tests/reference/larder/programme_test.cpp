// The least cost of a food's packs, held against every combination of packs (small programmes) and
// against GLPK, an independent general-purpose mixed-integer solver (class-size programmes).
#include <glpk.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "random_food.h"

namespace {

using larder::Batch;
using larder::FoodPlan;
using larder::FoodProgramme;
using larder::Lot;

// The most that can be served, by augmenting flows and not by the order of dates: an independent
// check of which counts are enough. Capacities lots -> days.
struct Flow {
  std::vector<Lot> lots;
  std::vector<double> need;

  // Fords and Fulkerson's way, on a graph so small that any way will do.
  double most() const {
    const std::size_t n = lots.size(), m = need.size();
    std::vector<std::vector<double>> flow(n, std::vector<double>(m, 0.0));
    std::vector<double> left, open = need;
    for (const Lot& lot : lots) left.push_back(lot.size);
    double total = 0;
    for (;;) {
      std::vector<int> lot_from(n, -2), day_from(m, -2);
      std::vector<std::size_t> queue;
      for (std::size_t i = 0; i < n; ++i) {
        if (left[i] > 1e-9) lot_from[i] = -1, queue.push_back(i);
      }
      int end = -1;
      for (std::size_t at = 0; at < queue.size() && end < 0; ++at) {
        const std::size_t i = queue[at];
        for (std::size_t d = 0; d < m && end < 0; ++d) {
          const int day = static_cast<int>(d);
          if (day < lots[i].first || day > lots[i].last || day_from[d] != -2) continue;
          day_from[d] = static_cast<int>(i);
          if (open[d] > 1e-9) end = day;
          for (std::size_t j = 0; j < n; ++j) {
            if (flow[j][d] > 1e-9 && lot_from[j] == -2) lot_from[j] = day, queue.push_back(j);
          }
        }
      }
      if (end < 0) return total;
      double push = open[static_cast<std::size_t>(end)];
      for (int d = end;;) {
        const auto i = static_cast<std::size_t>(day_from[static_cast<std::size_t>(d)]);
        if (lot_from[i] == -1) {
          push = std::min(push, left[i]);
          break;
        }
        d = lot_from[i];
        push = std::min(push, flow[i][static_cast<std::size_t>(d)]);
      }
      for (int d = end;;) {
        const auto i = static_cast<std::size_t>(day_from[static_cast<std::size_t>(d)]);
        flow[i][static_cast<std::size_t>(d)] += push;
        if (lot_from[i] == -1) {
          left[i] -= push;
          break;
        }
        d = lot_from[i];
        flow[i][static_cast<std::size_t>(d)] -= push;
      }
      open[static_cast<std::size_t>(end)] -= push;
      total += push;
    }
  }
};

double cost_of(const FoodProgramme& p, const std::vector<int>& counts) {
  Flow flow{p.stock, p.need};
  double price = 0, total = 0, held_not_lasting = 0, held = 0;
  for (std::size_t b = 0; b < counts.size(); ++b) {
    price += p.batches[b].price * counts[b];
    if (counts[b] == 0) continue;
    Lot lot = p.batches[b].lot;
    lot.size *= counts[b];
    flow.lots.push_back(lot);
  }
  for (const double need : p.need) total += need;
  if (flow.most() < total - 1e-6) return std::numeric_limits<double>::infinity();
  if (p.worth <= 0) return price;
  // Left that lasts = all that lasts less what the rest cannot serve.
  Flow rest{{}, p.need};
  for (const Lot& lot : flow.lots) {
    if (lot.lasts)
      held += lot.size;
    else
      rest.lots.push_back(lot), held_not_lasting += lot.size;
  }
  const double left = held - (total - rest.most());
  return price - p.worth * std::min(p.worth_most, left);
}

double least_of_all(const FoodProgramme& p) {
  double total = 0;
  for (const double need : p.need) total += need;
  std::vector<int> counts(p.batches.size(), 0), most;
  for (const Batch& b : p.batches) {
    double reach = 0;
    for (int d = b.lot.first; d <= b.lot.last; ++d) reach += p.need[static_cast<std::size_t>(d)];
    most.push_back(static_cast<int>(std::ceil(reach / b.lot.size)));
  }
  double best = std::numeric_limits<double>::infinity();
  for (;;) {
    best = std::min(best, cost_of(p, counts));
    std::size_t i = 0;
    while (i < counts.size() && counts[i] == most[i]) counts[i++] = 0;
    if (i == counts.size()) return best;
    ++counts[i];
  }
}

double combinations(const FoodProgramme& p) {
  double all = 1;
  for (const Batch& b : p.batches) {
    double reach = 0;
    for (int d = b.lot.first; d <= b.lot.last; ++d) reach += p.need[static_cast<std::size_t>(d)];
    all *= std::ceil(reach / b.lot.size) + 1;
  }
  return all;
}

TEST(FoodProgramme, IsTheBestOfEveryCombinationOnTwoHundredSmallFoods) {
  int checked = 0;
  for (std::uint64_t seed = 1; checked < 200 && seed < 2000; ++seed) {
    const FoodProgramme p = tests::random_food(seed, {3, 2, 700, 250});
    if (combinations(p) > 20000) continue;
    const double best = least_of_all(p);
    const FoodPlan plan = larder::solve(p, {0, 200000, 5});
    ASSERT_TRUE(plan.feasible) << seed;
    EXPECT_NEAR(plan.cost, best, 1e-6) << seed;
    EXPECT_LE(plan.bound, best + 1e-6) << seed;
    EXPECT_NEAR(cost_of(p, plan.counts), plan.cost, 1e-6) << seed;
    const FoodPlan other = larder::solve_by_milp(p, {0, 0, 5});
    ASSERT_TRUE(other.feasible) << seed;
    EXPECT_NEAR(other.cost, best, 1e-4 * best + 1e-4) << seed;
    ++checked;
  }
  EXPECT_EQ(checked, 200);
}

// The programme of docs/methods/ordering.md in GLPK's own words.
struct Glpk {
  double cost = 0, bound = 0;
};

Glpk by_glpk(const FoodProgramme& p) {
  glp_prob* m = glp_create_prob();
  glp_set_obj_dir(m, GLP_MIN);
  const int days = static_cast<int>(p.need.size());
  std::vector<int> row = {0}, column = {0};
  std::vector<double> value = {0};
  const auto put = [&](int r, int c, double v) {
    row.push_back(r), column.push_back(c), value.push_back(v);
  };
  for (int d = 0; d < days; ++d) {
    const int r = glp_add_rows(m, 1);
    glp_set_row_bnds(m, r, GLP_LO, p.need[static_cast<std::size_t>(d)] * (1 - 1e-9), 0);
  }
  const int kept = glp_add_rows(m, 1);
  double stock_that_lasts = 0;
  const auto lot = [&](const Lot& l, int count) {
    const int hold = glp_add_rows(m, 1);
    if (count > 0) {
      glp_set_row_bnds(m, hold, GLP_UP, 0, 0);
      put(hold, count, -l.size);
      if (l.lasts) put(kept, count, l.size);
    } else {
      glp_set_row_bnds(m, hold, GLP_UP, 0, l.size);
      if (l.lasts) stock_that_lasts += l.size;
    }
    for (int d = l.first; d <= l.last; ++d) {
      const int use = glp_add_cols(m, 1);
      glp_set_col_bnds(m, use, GLP_LO, 0, 0);
      put(hold, use, 1);
      put(d + 1, use, 1);
      if (l.lasts) put(kept, use, -1);
    }
  };
  for (const Batch& b : p.batches) {
    const int x = glp_add_cols(m, 1);
    glp_set_col_kind(m, x, GLP_IV);
    glp_set_col_bnds(m, x, GLP_DB, 0, 1000);
    glp_set_obj_coef(m, x, b.price);
    lot(b.lot, x);
  }
  for (const Lot& l : p.stock) lot(l, 0);
  const int left = glp_add_cols(m, 1);
  glp_set_col_bnds(m, left, p.worth_most > 0 ? GLP_DB : GLP_FX, 0, p.worth_most);
  glp_set_obj_coef(m, left, -p.worth);
  put(kept, left, -1);
  glp_set_row_bnds(m, kept, GLP_LO, -stock_that_lasts, 0);
  glp_load_matrix(m, static_cast<int>(row.size()) - 1, row.data(), column.data(), value.data());
  glp_iocp how;
  glp_init_iocp(&how);
  how.msg_lev = GLP_MSG_OFF;
  how.presolve = GLP_ON;
  how.mir_cuts = how.gmi_cuts = GLP_ON;
  how.mip_gap = 1e-4;
  how.tm_lim = 20000;
  const int failed = glp_intopt(m, &how);
  EXPECT_TRUE(failed == 0 || failed == GLP_ETMLIM || failed == GLP_EMIPGAP) << failed;
  const Glpk out{glp_mip_obj_val(m), 0};
  glp_delete_prob(m);
  return out;
}

TEST(FoodProgramme, AgreesWithGlpkWithinHalfAPerCentOnFiftyClassSizeFoods) {
  glp_term_out(GLP_OFF);
  for (std::uint64_t seed = 1; seed <= 50; ++seed) {
    // Five days, up to 24 sets of 150 g a day, three packs from 250 g to 2 kg.
    const FoodProgramme p = tests::random_food(seed, {5, 3, 3600, 500});
    const FoodPlan plan = larder::solve(p, {0.002, 4000, 2});
    ASSERT_TRUE(plan.feasible) << seed;
    const Glpk other = by_glpk(p);
    EXPECT_LE(plan.cost, other.cost * 1.005 + 0.01) << seed;
    EXPECT_LE(plan.bound, other.cost + 0.01) << seed;
  }
  glp_free_env();
}

}  // namespace
