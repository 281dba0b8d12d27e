// The small worked instances: optimum known from exhaustive search and from a MiniZinc model (see
// tests/data/small).
#include <gtest/gtest.h>

#include <algorithm>

#include "scheduler/solve.h"
#include "small_reader.h"

namespace scheduler::testing {
namespace {

const std::filesystem::path kSmallData = std::filesystem::path(BENCHBELL_SOURCE_DIR) / "tests" /
                                         "data" / "small";

class Seed : public ::testing::TestWithParam<std::filesystem::path> {};

/// Makes every member of a group start like the group's class: equal timelines by lags of exactly
/// 0.
Problem with_classes(const SmallInstance& instance, const std::vector<int>& class_of) {
  Problem problem = instance.problem;
  for (std::size_t g = 0; g < class_of.size(); ++g) {
    for (std::size_t leader = 0; leader < g; ++leader) {
      if (class_of[leader] != class_of[g]) continue;
      for (std::size_t k = 0; k < instance.wave_groups[g].size(); ++k) {
        problem.lags.push_back({{instance.wave_groups[leader][k], Side::kStart},
                                {instance.wave_groups[g][k], Side::kStart},
                                0,
                                0,
                                -1});
      }
      break;
    }
  }
  return problem;
}

/// All ways to put the groups into exactly `classes` classes, numbered by first appearance.
void assign(std::size_t groups, int classes, std::vector<int>& current,
            std::vector<std::vector<int>>& out) {
  const int used = current.empty() ? 0 : 1 + *std::max_element(current.begin(), current.end());
  if (current.size() == groups) {
    if (used == classes) out.push_back(current);
    return;
  }
  for (int c = 0; c <= std::min(used, classes - 1); ++c) {
    current.push_back(c);
    assign(groups, classes, current, out);
    current.pop_back();
  }
}

void expect_waves(const SmallInstance& instance) {
  for (int classes = 1; classes <= static_cast<int>(instance.wave_groups.size()); ++classes) {
    std::vector<std::vector<int>> assignments;
    std::vector<int> current;
    assign(instance.wave_groups.size(), classes, current, assignments);
    std::vector<std::vector<std::int64_t>> found;
    for (const std::vector<int>& class_of : assignments) {
      const Outcome outcome = solve(with_classes(instance, class_of), {});
      ASSERT_NE(outcome.status, Status::kUnknown);
      if (outcome.status == Status::kInfeasible) continue;
      std::vector<std::int64_t> values{classes};
      values.insert(values.end(), outcome.values.begin(), outcome.values.end());
      found.push_back(values);
    }
    if (found.empty()) continue;
    EXPECT_EQ(*std::min_element(found.begin(), found.end()), instance.optimum);
    return;
  }
  FAIL() << "no number of classes is possible";
}

TEST_P(Seed, every_level_reaches_its_known_optimum_with_an_equal_bound) {
  const SmallInstance instance = read_small(GetParam());
  if (!instance.wave_groups.empty()) {
    expect_waves(instance);
    return;
  }
  const Outcome outcome = solve(instance.problem, {});
  if (!instance.feasible) {
    EXPECT_EQ(outcome.status, Status::kInfeasible);
    return;
  }
  EXPECT_EQ(outcome.status, Status::kOptimal);
  EXPECT_EQ(outcome.values, instance.optimum);
  EXPECT_EQ(outcome.bounds, instance.optimum);
  EXPECT_EQ(check(instance.problem, outcome.best), std::vector<std::string>{});
}

TEST_P(Seed, the_checker_accepts_the_example_plan) {
  const SmallInstance instance = read_small(GetParam());
  if (!instance.feasible) {
    EXPECT_TRUE(instance.example.empty());
    return;
  }
  EXPECT_EQ(check(instance.problem, instance.example), std::vector<std::string>{});
  std::vector<std::int64_t> expected = instance.optimum;
  if (!instance.wave_groups.empty())
    expected.erase(expected.begin());  // the level outside the engine
  EXPECT_EQ(evaluate(instance.problem, instance.example), expected);
}

INSTANTIATE_TEST_SUITE_P(small, Seed, ::testing::ValuesIn(small_files(kSmallData)),
                         [](const ::testing::TestParamInfo<std::filesystem::path>& info) {
                           std::string name = info.param.stem().string();
                           std::replace(name.begin(), name.end(), '-', '_');
                           return "n" + name;
                         });

TEST(contradiction, names_the_lags_of_the_positive_cycle_of_seed_08) {
  const SmallInstance instance = read_small(kSmallData / "08-lag-contradiction.json");
  const std::optional<Contradiction> found = contradiction(instance.problem);
  ASSERT_TRUE(found.has_value());
  // Shape to prove at once, prove 20, bake at least 0 later, yet at most 15 after shaping: all
  // three lags take part.
  std::vector<int> lags = found->lags;
  std::sort(lags.begin(), lags.end());
  EXPECT_EQ(lags, (std::vector<int>{0, 1, 2}));
}

}  // namespace
}  // namespace scheduler::testing
