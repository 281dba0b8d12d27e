// Parts of a problem that may change places.
#include <gtest/gtest.h>

#include <functional>

#include "random_problem.h"
#include "scheduler/problem.h"
#include "scheduler/random.h"
#include "scheduler/solve.h"
#include "scheduler/symmetry.h"

namespace scheduler::testing {
namespace {

using Pairs = std::vector<std::pair<int, int>>;

Event moved(Event e, int by) { return {e.activity + by, e.side}; }

std::vector<Event> moved(std::vector<Event> events, int by) {
  for (Event& e : events) e = moved(e, by);
  return events;
}

std::vector<int> moved(std::vector<int> activities, int by) {
  for (int& i : activities) i += by;
  return activities;
}

/// The problem twice in one room: the first resource is common and twice as large, each copy has
/// its own of the others.
Problem twice(const Problem& one) {
  Problem both = one;
  const int count = static_cast<int>(one.activities.size());
  const int resources = static_cast<int>(one.resources.size());
  both.resources[0].capacity *= 2;
  for (int r = 1; r < resources; ++r)
    both.resources.push_back(one.resources[static_cast<std::size_t>(r)]);
  const auto own = [&](int resource) { return resource == 0 ? 0 : resource + resources - 1; };
  const auto rename = [&](std::vector<Use>& uses) {
    for (Use& use : uses) use.resource = own(use.resource);
  };
  for (Activity a : one.activities) {
    if (a.cleans) a.cleans = own(*a.cleans);
    for (Mode& mode : a.modes) rename(mode.uses);
    both.activities.push_back(a);
  }
  for (Lag lag : one.lags) {
    lag.from = moved(lag.from, count);
    lag.to = moved(lag.to, count);
    both.lags.push_back(lag);
  }
  for (Span span : one.spans) {
    span.from = moved(span.from, count);
    span.to = moved(span.to, count);
    if (span.like) span.like = *span.like + count;
    span.excludes = moved(span.excludes, count);
    for (auto& uses : span.uses_by_mode) rename(uses);
    both.spans.push_back(span);
  }
  for (Blocked blocked : one.blocked) {
    blocked.activities = moved(blocked.activities, count);
    both.blocked.push_back(blocked);
  }
  for (const auto& same : one.same_mode) both.same_mode.push_back(moved(same, count));
  for (const auto& choice : one.exactly_one) both.exactly_one.push_back(moved(choice, count));
  for (GoalLevel& level : both.goals) {
    const std::vector<Term> terms = level.terms;
    for (Term term : terms) {
      term.high = moved(term.high, count);
      term.low = moved(term.low, count);
      term.activity += count;
      term.other += count;
      level.terms.push_back(term);
    }
  }
  return both;
}

Pairs halves(const Problem& both) {
  Pairs pairs;
  const int count = static_cast<int>(both.activities.size() / 2);
  for (int i = 0; i < count; ++i) pairs.emplace_back(i, i + count);
  return pairs;
}

Problem random_twins(std::uint64_t seed) {
  Recipe recipe;
  recipe.activities = 4;
  return twice(random_problem(seed, recipe));
}

TEST(can_swap, two_copies_of_a_problem_in_one_room) {
  int schedules = 0;
  for (std::uint64_t seed = 1; seed <= 200; ++seed) {
    const Problem both = random_twins(seed);
    ASSERT_TRUE(can_swap(both, halves(both))) << "seed " << seed;
    Options options;
    options.first_only = true;
    const Outcome outcome = solve(both, options);
    if (outcome.best.empty()) continue;
    Schedule swapped = outcome.best;
    for (const auto& [a, b] : halves(both))
      std::swap(swapped[static_cast<std::size_t>(a)], swapped[static_cast<std::size_t>(b)]);
    EXPECT_TRUE(check(both, swapped).empty()) << "seed " << seed;
    EXPECT_EQ(evaluate(both, swapped), outcome.values) << "seed " << seed;
    ++schedules;
  }
  EXPECT_GT(schedules, 50);
}

TEST(can_swap, sees_one_number_that_differs) {
  const std::vector<std::pair<const char*, std::function<bool(Problem&, Random&)>>> changes{
      {"a length",
       [](Problem& p, Random&) {
         ++p.activities[0].duration_max;
         return true;
       }},
      {"an earliest start",
       [](Problem& p, Random&) {
         ++p.activities[0].earliest;
         return true;
       }},
      {"an amount",
       [](Problem& p, Random&) {
         for (Use& use : p.activities[0].modes[0].uses) {
           ++use.amount;
           return true;
         }
         return false;
       }},
      {"a lag",
       [](Problem& p, Random& random) {
         if (p.lags.empty()) return false;
         ++p.lags[static_cast<std::size_t>(random.below(static_cast<int>(p.lags.size())))].min;
         return true;
       }},
      {"a span",
       [](Problem& p, Random&) {
         if (p.spans.empty() || p.spans[0].uses_by_mode[0].empty()) return false;
         ++p.spans[0].uses_by_mode[0][0].amount;
         return true;
       }},
      {"a capacity",
       [](Problem& p, Random&) {
         for (const Use& use : p.activities[0].modes[0].uses) {
           if (use.resource == 0) continue;
           ++p.resources[static_cast<std::size_t>(use.resource)].capacity;
           return true;
         }
         return false;
       }},
      {"a ban",
       [](Problem& p, Random&) {
         p.blocked.push_back({1, 2, {0}});
         return true;
       }},
      {"a weight", [](Problem& p, Random&) {
         if (p.goals.empty() || p.goals[0].terms.empty()) return false;
         ++p.goals[0].terms[0].weight;
         return true;
       }}};
  Random random(1);
  for (const auto& [what, change] : changes) {
    int changed = 0;
    for (std::uint64_t seed = 1; seed <= 40; ++seed) {
      Problem both = random_twins(seed);
      if (!change(both, random)) continue;
      ++changed;
      EXPECT_FALSE(can_swap(both, halves(both))) << what << ", seed " << seed;
    }
    EXPECT_GT(changed, 5) << what;
  }
}

TEST(can_swap, is_refused_when_something_outside_waits_for_one_of_them) {
  Problem both = random_twins(1);
  const Pairs pairs = halves(both);
  both.activities.push_back({});
  both.lags.push_back(
      {{0, Side::kEnd}, {static_cast<int>(both.activities.size()) - 1, Side::kStart}});
  EXPECT_FALSE(can_swap(both, pairs));
  both.lags.push_back({{pairs[0].second, Side::kEnd},
                       {static_cast<int>(both.activities.size()) - 1, Side::kStart}});
  EXPECT_TRUE(can_swap(both, pairs));
}

}  // namespace
}  // namespace scheduler::testing
