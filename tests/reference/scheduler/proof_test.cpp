// Proofs of published instances, judged by the checker: the engine's reader and the checker's read
// the same file, and nothing else is shared.
#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>
#include <iostream>
#include <sstream>

#include "../../../bench/scheduler/best_known.h"
#include "../../../bench/scheduler/project.h"
#include "bench_sets.h"
#include "proof_check/checker.h"
#include "scheduler/proof_log.h"
#include "scheduler/solve.h"

namespace scheduler::testing {
namespace {

/// Ticks an instance: a second or so. What is not closed by then has a lower bound, proved as well.
constexpr std::int64_t kWork = 8000000;

struct Sum {
  int accepted = 0, closed = 0;
  long lemmas = 0, derived = 0;
  std::size_t bytes = 0, largest = 0;
};

proof_check::Instance checkers_reading(const std::filesystem::path& file) {
  std::ifstream in(file);
  return file.extension() == ".sm" ? proof_check::read_sm(in) : proof_check::read_sch(in);
}

void verify(const std::filesystem::path& file, const projects::BestKnown& known, Sum& sum) {
  std::stringstream text;
  ProofLog log(text);
  Options options;
  options.seconds = 1000;
  options.work_limit = kWork;
  options.proof = &log;
  const Outcome outcome = solve(projects::to_problem(projects::read_project(file)), options);
  const proof_check::Result result = proof_check::check(checkers_reading(file), text);
  ASSERT_TRUE(result.accepted) << file << ": " << result.fault;
  EXPECT_EQ(result.none, outcome.status == Status::kInfeasible) << file;
  EXPECT_EQ(result.none, known.proved == "infeasible") << file;
  if (!result.none) {
    EXPECT_EQ(result.bound, outcome.bounds[0]) << file;
    EXPECT_LE(result.bound, known.high) << file;
  }
  ++sum.accepted;
  sum.closed += result.none || result.bound == known.high ? 1 : 0;
  sum.lemmas += result.lemmas;
  sum.derived += result.derived;
  sum.bytes += text.str().size();
  sum.largest = std::max(sum.largest, text.str().size());
}

/// Instances from all over the set; at least so many must be proved to the optimum.
void verify_set(const std::string& name, std::size_t count, int least_closed) {
  const BenchSet set(name);
  if (!set.at_hand()) GTEST_SKIP() << "no " << name << ".tar.xz in " << bench_folder();
  const auto known = projects::read_best_known(bench_folder() / "best_known.csv");
  std::vector<std::string> names;
  for (const auto& [key, best] : known) {
    if (key.first == name && best.proved != "open") names.push_back(key.second);
  }
  ASSERT_GE(names.size(), count);
  Sum sum;
  for (std::size_t k = 0; k < count; ++k) {
    const std::string& instance = names[k * names.size() / count];
    verify(set.instance(instance), known.at({name, instance}), sum);
  }
  EXPECT_GE(sum.closed, least_closed);
  std::cout << name << ": " << sum.accepted << " proofs accepted, " << sum.closed
            << " of them to the best known value; " << sum.lemmas << " lemmas, " << sum.derived
            << " derived clauses, " << sum.bytes / 1024 << " KB, the largest " << sum.largest / 1024
            << " KB\n";
}

TEST(proof, of_j30_instances_is_accepted) { verify_set("j30", 80, 68); }

TEST(proof, of_sm_j10_instances_is_accepted) { verify_set("sm_j10", 135, 134); }

TEST(proof, of_sm_j20_instances_is_accepted) { verify_set("sm_j20", 30, 24); }

}  // namespace
}  // namespace scheduler::testing
