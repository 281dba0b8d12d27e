#include "random_project.h"

#include <map>
#include <sstream>

#include "scheduler/proof_log.h"
#include "scheduler/random.h"
#include "scheduler/solve.h"

namespace proof_check::testing {

projects::Project random_project(std::uint64_t seed, const ProjectRecipe& recipe) {
  scheduler::Random random(seed);
  projects::Project project;
  const int count = recipe.jobs + 2, last = count - 1;
  for (int r = 0; r < recipe.resources; ++r) project.capacities.push_back(3 + random.below(3));
  for (int j = 0; j < count; ++j) {
    projects::Job job;
    const bool dummy = j == 0 || j == last;
    job.duration = dummy ? 0 : 1 + random.below(recipe.longest);
    for (const int capacity : project.capacities)
      job.demands.push_back(dummy || random.below(4) == 0 ? 0 : 1 + random.below(capacity));
    project.jobs.push_back(job);
  }
  std::map<std::pair<int, int>, int> lags;
  for (int j = 1; j < last; ++j) {
    lags[{0, j}] = 0;
    lags[{j, last}] = project.jobs[static_cast<std::size_t>(j)].duration;
    if (j == 1 || random.below(2) == 0) continue;
    const int before = 1 + random.below(j - 1);
    const int least = random.below(recipe.longest + 1);
    lags[{before, j}] = least;
    if (random.below(100) < recipe.max_lag_chance)
      lags[{j, before}] = -(least + random.below(2 * recipe.longest));
  }
  for (const auto& [pair, least] : lags) project.lags.push_back({pair.first, pair.second, least});
  return project;
}

std::string text_of(const projects::Project& project) {
  std::ostringstream out;
  const int count = static_cast<int>(project.jobs.size());
  out << count - 2 << ' ' << project.capacities.size() << " 0 0\n";
  for (int j = 0; j < count; ++j) {
    std::ostringstream successors, lags;
    int number = 0;
    for (const projects::StartLag& lag : project.lags) {
      if (lag.from != j) continue;
      ++number;
      successors << ' ' << lag.to;
      lags << " [" << lag.least << ']';
    }
    out << j << " 1 " << number << successors.str() << lags.str() << '\n';
  }
  for (int j = 0; j < count; ++j) {
    const projects::Job& job = project.jobs[static_cast<std::size_t>(j)];
    out << j << " 1 " << job.duration;
    for (const int demand : job.demands) out << ' ' << demand;
    out << '\n';
  }
  for (const int capacity : project.capacities) out << capacity << ' ';
  out << '\n';
  return out.str();
}

Instance instance_of(const projects::Project& project) {
  std::istringstream in(text_of(project));
  return read_sch(in);
}

Proof proof_of(const projects::Project& project) {
  std::ostringstream out;
  scheduler::ProofLog log(out);
  scheduler::Options options;
  options.seconds = 1000;
  options.work_limit = 3000000;
  options.proof = &log;
  const scheduler::Outcome outcome = scheduler::solve(projects::to_problem(project), options);
  Proof proof{out.str(), outcome.status == scheduler::Status::kInfeasible,
              static_cast<int>(outcome.bounds[0]), -1};
  if (!outcome.best.empty()) proof.value = static_cast<int>(outcome.values[0]);
  return proof;
}

std::vector<std::string> lines_of(const std::string& text) {
  std::istringstream in(text);
  std::vector<std::string> lines;
  for (std::string line; std::getline(in, line);) lines.push_back(line);
  return lines;
}

std::string joined(const std::vector<std::string>& lines) {
  std::string text;
  for (const std::string& line : lines) text += line + '\n';
  return text;
}

}  // namespace proof_check::testing
