// The engine's proofs of instances made up here, judged by the checker.
#include <gtest/gtest.h>

#include <fstream>
#include <iostream>
#include <sstream>

#include "proof_check/checker.h"
#include "random_project.h"
#include "scheduler/proof_log.h"
#include "scheduler/solve.h"

namespace proof_check::testing {
namespace {

struct Verified {
  int none = 0;    ///< proved to have no schedule
  int closed = 0;  ///< proved to have none shorter than the one found
};

/// Checks the proofs of `count` random projects.
Verified verify_all(const ProjectRecipe& recipe, std::uint64_t first_seed, std::uint64_t count) {
  Verified verified;
  long lemmas = 0, derived = 0;
  std::size_t bytes = 0;
  for (std::uint64_t seed = first_seed; seed < first_seed + count; ++seed) {
    const projects::Project project = random_project(seed, recipe);
    const Proof proof = proof_of(project);
    std::istringstream in(proof.text);
    const Result result = check(instance_of(project), in);
    EXPECT_TRUE(result.accepted) << "seed " << seed << ": " << result.fault;
    EXPECT_EQ(result.none, proof.infeasible) << "seed " << seed;
    if (!proof.infeasible) {
      EXPECT_EQ(result.bound, proof.bound) << "seed " << seed;
      EXPECT_LE(result.bound, proof.value) << "seed " << seed;
      verified.closed += result.bound == proof.value ? 1 : 0;
    }
    verified.none += result.none ? 1 : 0;
    lemmas += result.lemmas;
    derived += result.derived;
    bytes += proof.text.size();
  }
  std::cout << count << " proofs of projects of " << recipe.jobs << " jobs, " << verified.closed
            << " of the optimum, " << verified.none << " that there is no schedule: " << lemmas
            << " lemmas, " << derived << " derived clauses, " << bytes / 1024 << " KB\n";
  return verified;
}

TEST(proof, of_every_project_with_lags_is_accepted_and_closes_at_the_optimum) {
  ProjectRecipe recipe;
  recipe.max_lag_chance = 70;
  const Verified verified = verify_all(recipe, 1, 120);
  EXPECT_EQ(verified.none + verified.closed, 120);
  EXPECT_GE(verified.none, 10);
  EXPECT_GE(verified.closed, 40);
}

TEST(proof, of_projects_crowded_on_one_resource_is_accepted) {
  ProjectRecipe recipe;
  recipe.jobs = 11;
  recipe.resources = 1;
  recipe.max_lag_chance = 0;
  EXPECT_GE(verify_all(recipe, 1000, 50).closed, 45);
}

TEST(proof, of_a_cycle_of_lags_that_never_holds_is_accepted) {
  projects::Project project = random_project(1, {});
  project.lags.push_back({2, 3, 4});
  project.lags.push_back({3, 2, -3});
  const Proof proof = proof_of(project);
  std::istringstream in(proof.text);
  const Result result = check(instance_of(project), in);
  EXPECT_TRUE(result.accepted) << result.fault;
  EXPECT_TRUE(result.none);
}

TEST(proof, in_the_documentation_is_one) {
  std::ifstream page(std::string(BENCHBELL_SOURCE_DIR) + "/docs/methods/proof.md");
  std::string example;
  bool inside = false;
  for (std::string line; std::getline(page, line);) {
    if (line.substr(0, 3) == "```")
      inside = !inside;
    else if (inside && (!example.empty() || line.substr(0, 7) == "horizon"))
      example += line + '\n';
  }
  // Lengths 3 and 2, hands for one, both before the end.
  Instance instance;
  instance.jobs = {{0, {0}}, {3, {1}}, {2, {1}}, {0, {0}}};
  instance.lags = {{0, 1, 0}, {0, 2, 0}, {1, 3, 3}, {2, 3, 2}};
  instance.capacities = {1};
  std::istringstream in(example);
  const Result result = check(instance, in);
  EXPECT_TRUE(result.accepted) << result.fault;
  EXPECT_EQ(result.bound, 5);
  instance.capacities = {2};
  std::istringstream again(example);
  EXPECT_FALSE(check(instance, again).accepted);
}

TEST(proof, changes_nothing_about_the_run) {
  for (std::uint64_t seed = 1; seed <= 40; ++seed) {
    const scheduler::Problem problem = projects::to_problem(random_project(seed, {}));
    scheduler::Options options;
    options.seconds = 1000;
    options.work_limit = 300000;
    const scheduler::Outcome silent = scheduler::solve(problem, options);
    std::ostringstream out;
    scheduler::ProofLog log(out);
    options.proof = &log;
    const scheduler::Outcome told = scheduler::solve(problem, options);
    EXPECT_EQ(silent.ticks, told.ticks) << "seed " << seed;
    EXPECT_EQ(silent.best, told.best) << "seed " << seed;
    EXPECT_EQ(silent.bounds, told.bounds) << "seed " << seed;
  }
}

}  // namespace
}  // namespace proof_check::testing
