// The checker's arguments against all schedules of tiny instances, one by one: what it takes for a
// lemma or derives is never false of a schedule.
#include <gtest/gtest.h>

#include <algorithm>
#include <functional>
#include <sstream>

#include "proof_check/checker.h"
#include "random_project.h"
#include "scheduler/random.h"

namespace proof_check::testing {
namespace {

constexpr int kHorizon = 7;

bool keeps_all(const Instance& instance, const std::vector<int>& starts) {
  for (const Lag& lag : instance.lags) {
    const auto start = [&](int job) { return starts[static_cast<std::size_t>(job)]; };
    if (start(lag.to) < start(lag.from) + lag.gap) return false;
  }
  for (std::size_t r = 0; r < instance.capacities.size(); ++r) {
    for (int t = 0; t < kHorizon; ++t) {
      int sum = 0;
      for (std::size_t j = 0; j < starts.size(); ++j) {
        if (starts[j] <= t && t < starts[j] + instance.jobs[j].duration)
          sum += instance.jobs[j].demands[r];
      }
      if (sum > instance.capacities[r]) return false;
    }
  }
  return true;
}

std::vector<std::vector<int>> all_schedules(const Instance& instance) {
  std::vector<std::vector<int>> found;
  std::vector<int> starts(instance.jobs.size(), 0);
  const std::function<void(std::size_t)> choose = [&](std::size_t job) {
    if (job == starts.size()) {
      if (keeps_all(instance, starts)) found.push_back(starts);
      return;
    }
    for (starts[job] = 0; starts[job] + instance.jobs[job].duration <= kHorizon; ++starts[job])
      choose(job + 1);
  };
  choose(0);
  return found;
}

struct Bound {
  int job, value;
  bool least;
};

std::string words(const std::vector<Bound>& clause) {
  std::ostringstream out;
  for (const Bound& bound : clause)
    out << ' ' << bound.job << (bound.least ? ">=" : "<=") << bound.value;
  return out.str();
}

bool holds(const std::vector<Bound>& clause, const std::vector<int>& starts) {
  return std::any_of(clause.begin(), clause.end(), [&](const Bound& bound) {
    const int start = starts[static_cast<std::size_t>(bound.job)];
    return bound.least ? start >= bound.value : start <= bound.value;
  });
}

std::string preamble(const Instance& instance) {
  std::ostringstream out;
  out << "horizon " << kHorizon << '\n';
  for (std::size_t j = 0; j < instance.jobs.size(); ++j)
    out << "var " << j << " start " << j << '\n';
  return out.str();
}

TEST(lemma, that_the_checker_accepts_holds_in_every_schedule) {
  ProjectRecipe recipe;
  recipe.jobs = 3;
  recipe.resources = 1;
  recipe.longest = 4;
  int accepted = 0, refused = 0;
  for (std::uint64_t seed = 1; seed <= 120; ++seed) {
    const projects::Project project = random_project(seed, recipe);
    const Instance instance = instance_of(project);
    const std::vector<std::vector<int>> schedules = all_schedules(instance);
    if (schedules.empty()) continue;
    scheduler::Random random(seed);
    for (int k = 0; k < 60; ++k) {
      std::vector<Bound> clause;
      for (int n = 1 + random.below(3); n > 0; --n)
        clause.push_back({random.below(5), random.below(kHorizon), random.below(2) == 0});
      std::istringstream proof(preamble(instance) +
                               (random.below(3) == 0 ? "l arc :" : "l use 0 :") + words(clause) +
                               "\nbound 0\n");
      if (!check(instance, proof).accepted) {
        ++refused;
        continue;
      }
      ++accepted;
      for (const std::vector<int>& starts : schedules)
        ASSERT_TRUE(holds(clause, starts)) << "seed " << seed << ":" << words(clause);
    }
  }
  EXPECT_GT(accepted, 300);
  EXPECT_GT(refused, 300);
}

TEST(lemma, of_a_model_clause_holds_in_every_schedule) {
  ProjectRecipe recipe;
  recipe.jobs = 3;
  recipe.resources = 1;
  recipe.longest = 4;
  int accepted = 0, refused = 0;
  for (std::uint64_t seed = 1; seed <= 400; ++seed) {
    const Instance instance = instance_of(random_project(seed, recipe));
    const std::vector<std::vector<int>> schedules = all_schedules(instance);
    scheduler::Random random(seed);
    const int a = 1 + random.below(3), b = 1 + random.below(3);
    const int gap_ab = 1 + random.below(4), gap_ba = 1 + random.below(4);
    std::ostringstream text;
    text << preamble(instance) << "var 10 order " << a << ' ' << b << ' ' << gap_ab
         << "\nvar 11 order " << b << ' ' << a << ' ' << gap_ba << "\ng 1 10>=1 11>=1\nbound 0\n";
    std::istringstream proof(text.str());
    if (!check(instance, proof).accepted) {
      ++refused;
      continue;
    }
    ++accepted;
    for (const std::vector<int>& starts : schedules) {
      const int s = starts[static_cast<std::size_t>(a)], t = starts[static_cast<std::size_t>(b)];
      ASSERT_TRUE(t >= s + gap_ab || s >= t + gap_ba) << "seed " << seed;
    }
  }
  EXPECT_GT(accepted, 20);
  EXPECT_GT(refused, 20);
}

TEST(bound, above_the_optimum_is_refused_however_short_the_proof) {
  ProjectRecipe recipe;
  recipe.jobs = 3;
  const Instance instance = instance_of(random_project(3, recipe));
  for (const std::string claim : {"bound 1\n", "bound none\n", "d 1\nbound none\n",
                                  "d 1 4>=5\nbound 5\n", "l sum : 4>=5\nd 1 4>=5\nbound 5\n"}) {
    std::istringstream proof(preamble(instance) + claim);
    EXPECT_FALSE(check(instance, proof).accepted) << claim;
  }
}

}  // namespace
}  // namespace proof_check::testing
