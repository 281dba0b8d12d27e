// The problem as a MiniZinc model: what it says, and, where the program is installed, that Gecode
// behind it finds the engine's optimum (general-purpose solver, Debian package minizinc).
#include <gtest/gtest.h>

#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <stdexcept>

#include "random_problem.h"
#include "scheduler/minizinc.h"
#include "scheduler/solve.h"

namespace scheduler::testing {
namespace {

namespace fs = std::filesystem;

constexpr int kProblems = 40;

bool installed() { return std::system("minizinc --version > /dev/null 2>&1") == 0; }

std::string answer_to(const std::string& model) {
  const fs::path file = fs::temp_directory_path() /
                        ("benchbell-" + std::to_string(std::rand()) + ".mzn");
  std::ofstream(file) << model;
  const std::string command = "minizinc --solver gecode " + file.string() + " 2>&1";
  FILE* pipe = ::popen(command.c_str(), "r");
  std::string said;
  char part[4096];
  while (pipe != nullptr && std::fgets(part, sizeof part, pipe) != nullptr) said += part;
  if (pipe != nullptr) ::pclose(pipe);
  fs::remove(file);
  return said;
}

/// "levels = [3, 7]" of the last solution.
std::vector<std::int64_t> levels_in(const std::string& said) {
  const std::string mark = "levels = [";
  const std::size_t from = said.rfind(mark);
  std::vector<std::int64_t> values;
  if (from == std::string::npos) return values;
  const char* at = said.c_str() + from + mark.size();
  for (char* end = nullptr; *at != ']' && *at != '\0'; at = end + (*end == ',' ? 1 : 0))
    values.push_back(std::strtoll(at, &end, 10));
  return values;
}

TEST(minizinc, a_general_purpose_solver_finds_the_same_optimum_of_every_level) {
  if (!installed()) GTEST_SKIP() << "minizinc is not installed: nothing was compared";
  int compared = 0;
  for (std::uint64_t seed = 1; compared < kProblems; ++seed) {
    const Problem problem = random_problem(seed, Recipe{});
    const Outcome outcome = solve(problem, {});
    const std::size_t last = problem.goals.size() - 1;
    const bool none = outcome.status == Status::kInfeasible;
    const std::string said = answer_to(
        minizinc(problem, none ? 0 : last, none ? std::vector<std::int64_t>{} : outcome.values));
    if (none) {
      EXPECT_NE(said.find("UNSATISFIABLE"), std::string::npos) << "seed " << seed << ": " << said;
    } else {
      EXPECT_NE(said.find("=========="), std::string::npos) << "seed " << seed << ": " << said;
      EXPECT_EQ(levels_in(said), outcome.values) << "seed " << seed;
    }
    ++compared;
  }
}

TEST(minizinc, the_level_and_what_the_levels_before_may_be_stand_at_the_top) {
  const Problem problem = random_problem(1, Recipe{});
  ASSERT_GE(problem.goals.size(), 2u);
  const std::string model = minizinc(problem, 1, {7});
  EXPECT_NE(model.find("int: level = 2;\narray[int] of int: at_most = [7];\n"), std::string::npos);
}

TEST(minizinc, a_level_that_is_not_there_or_has_no_values_before_it_is_refused) {
  const Problem problem = random_problem(1, Recipe{});
  EXPECT_THROW((void)minizinc(problem, problem.goals.size(), {1, 2, 3}), std::invalid_argument);
  EXPECT_THROW((void)minizinc(problem, 1, {}), std::invalid_argument);
}

}  // namespace
}  // namespace scheduler::testing
