// Proofs with one thing changed. What the change makes false must be refused; a change that leaves
// the proof true may be accepted, but never with more than the instance bears out.
#include <gtest/gtest.h>

#include <functional>
#include <iostream>
#include <sstream>

#include "proof_check/checker.h"
#include "random_project.h"

namespace proof_check::testing {
namespace {

struct Hard {
  projects::Project project;
  Proof proof;
};

/// Projects whose proofs need more than lags: several derived clauses.
std::vector<Hard> find_hard() {
  ProjectRecipe recipe;
  recipe.jobs = 10;
  std::vector<Hard> chosen;
  for (std::uint64_t seed = 1; chosen.size() < 8; ++seed) {
    const projects::Project project = random_project(seed, recipe);
    const Proof proof = proof_of(project);
    const auto lines = static_cast<long>(lines_of(proof.text).size());
    if (!proof.infeasible && lines > 200 && lines < 3000) chosen.push_back({project, proof});
  }
  return chosen;
}

const std::vector<Hard>& hard_projects() {
  static const std::vector<Hard> found = find_hard();
  return found;
}

Result check_text(const projects::Project& project, const std::string& text) {
  std::istringstream in(text);
  return check(instance_of(project), in);
}

/// Literals of a clause line: positions of the words, without names, sources and premises.
std::vector<std::pair<std::size_t, std::size_t>> literals_in(const std::string& line) {
  std::vector<std::pair<std::size_t, std::size_t>> found;
  const bool lemma = line[0] == 'l';
  const std::size_t colon = line.find(':');
  for (std::size_t i = 0; i < line.size();) {
    std::size_t end = line.find(' ', i);
    if (end == std::string::npos) end = line.size();
    const bool there = lemma ? i > colon : i < colon;
    if (there && line.substr(i, end - i).find('=') != std::string::npos) found.push_back({i, end});
    i = end + 1;
  }
  return found;
}

struct Count {
  int refused = 0, accepted = 0;
  double share() const { return static_cast<double>(refused) / (refused + accepted); }
};

/// Drops each literal of each line of the kind, one at a time, every `stride`th.
Count drop_literals(char kind, int stride, std::size_t least_literals) {
  Count count;
  int index = 0;
  for (const auto& [project, proof] : hard_projects()) {
    const std::vector<std::string> lines = lines_of(proof.text);
    for (std::size_t i = 0; i < lines.size(); ++i) {
      if (lines[i][0] != kind) continue;
      const auto literals = literals_in(lines[i]);
      if (literals.size() < least_literals) continue;
      for (const auto& [begin, end] : literals) {
        if (index++ % stride != 0) continue;
        std::vector<std::string> changed = lines;
        changed[i] = lines[i].substr(0, begin) +
                     (end < lines[i].size() ? lines[i].substr(end + 1) : std::string());
        const Result result = check_text(project, joined(changed));
        if (!result.accepted) {
          ++count.refused;
          continue;
        }
        ++count.accepted;
        EXPECT_FALSE(result.none);
        EXPECT_LE(result.bound, proof.value);
      }
    }
  }
  return count;
}

TEST(refused, a_bound_one_higher_than_the_proof_gives) {
  for (const auto& [project, proof] : hard_projects()) {
    std::vector<std::string> lines = lines_of(proof.text);
    lines.back() = "bound " + std::to_string(proof.bound + 1);
    EXPECT_FALSE(check_text(project, joined(lines)).accepted);
    lines.back() = "bound none";
    EXPECT_FALSE(check_text(project, joined(lines)).accepted);
    lines.pop_back();
    EXPECT_FALSE(check_text(project, joined(lines)).accepted);
  }
}

TEST(refused, nearly_every_lemma_that_lost_a_literal) {
  const Count count = drop_literals('l', 13, 2);
  std::cout << "lemmas with a literal less: " << count.refused << " refused, " << count.accepted
            << " true without it\n";
  EXPECT_GT(count.refused, 1000);
  EXPECT_GT(count.share(), 0.9);
}

TEST(refused, most_derived_clauses_that_lost_a_literal) {
  const Count count = drop_literals('d', 5, 2);
  std::cout << "derived clauses with a literal less: " << count.refused << " refused, "
            << count.accepted << " still follow\n";
  EXPECT_GT(count.refused, 300);
  EXPECT_GT(count.share(), 0.8);
}

TEST(refused, nearly_every_given_clause_that_lost_a_literal) {
  const Count count = drop_literals('g', 1, 2);
  EXPECT_GT(count.refused, 50);
  EXPECT_EQ(count.accepted, 0);
}

/// Changes every line that `change` changes, one at a time.
Count change_lines(const std::function<bool(std::string& line)>& change) {
  Count count;
  for (const auto& [project, proof] : hard_projects()) {
    const std::vector<std::string> lines = lines_of(proof.text);
    for (std::size_t i = 0; i < lines.size(); ++i) {
      std::vector<std::string> changed = lines;
      if (!change(changed[i])) continue;
      const Result result = check_text(project, joined(changed));
      (result.accepted ? count.accepted : count.refused) += 1;
      if (result.accepted) {
        EXPECT_LE(result.bound, proof.value);
      }
    }
  }
  return count;
}

TEST(refused, learnt_clauses_whose_premises_are_gone) {
  int index = 0;
  const Count count = change_lines([&](std::string& line) {
    const std::size_t colon = line.find(" :");
    if (line[0] != 'd' || colon == std::string::npos || index++ % 5 != 0) return false;
    line.resize(colon);
    return true;
  });
  EXPECT_GT(count.share(), 0.95);
}

TEST(refused, nearly_every_start_that_is_said_to_be_of_another_job) {
  const Count count = change_lines([](std::string& line) {
    if (line.find("start 3") == std::string::npos) return false;
    line.replace(line.find("start 3"), 7, "start 4");
    return true;
  });
  // Where nothing hangs on the job the proof stays one.
  EXPECT_GE(count.refused, 6);
}

TEST(refused, a_goal_that_is_said_to_be_another_time) {
  const Count count = change_lines([](std::string& line) {
    if (line.find("above 12 0") == std::string::npos) return false;
    line.replace(line.find("above 12 0"), 10, "above 5 0");
    return true;
  });
  EXPECT_EQ(count.accepted, 0);
  EXPECT_GT(count.refused, 0);
}

}  // namespace
}  // namespace proof_check::testing
