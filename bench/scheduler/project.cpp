// A project as a Problem, and the check that knows nothing of the engine.
#include "project.h"
#include "base/index.h"

#include <algorithm>

namespace projects {
namespace {

using base::at;

std::string job_name(const Project& project, int job) {
  return "job " + std::to_string(project.first_number + job);
}

scheduler::Activity to_activity(const Project& project, int job) {
  const Job& from = project.jobs[at(job)];
  scheduler::Activity activity;
  activity.name = job_name(project, job);
  activity.duration_min = activity.duration_max = from.duration;
  for (std::size_t r = 0; r < from.demands.size(); ++r) {
    if (from.demands[r] == 0) continue;
    scheduler::Use use;
    use.resource = static_cast<int>(r);
    use.amount = from.demands[r];
    activity.modes[0].uses.push_back(use);
  }
  return activity;
}

}  // namespace

scheduler::Problem to_problem(const Project& project) {
  scheduler::Problem problem;
  for (const int capacity : project.capacities) {
    scheduler::Resource resource;
    resource.capacity = capacity;
    problem.resources.push_back(resource);
  }
  std::vector<int> longest;
  for (int j = 0; j < static_cast<int>(project.jobs.size()); ++j) {
    problem.activities.push_back(to_activity(project, j));
    longest.push_back(project.jobs[at(j)].duration);
  }
  using scheduler::Side;
  for (const StartLag& lag : project.lags) {
    problem.lags.push_back(
        {{lag.from, Side::kStart}, {lag.to, Side::kStart}, lag.least, scheduler::kNoLimit, -1});
    longest[at(lag.from)] = std::max(longest[at(lag.from)], lag.least);
  }
  // In a schedule that cannot be shifted to the left no stretch of time is idle for longer than the
  // longest lag out of one job, and each job accounts for one stretch: what exists fits in the sum.
  for (const int length : longest) problem.horizon += length;
  scheduler::Term term;
  term.high = {{static_cast<int>(project.jobs.size()) - 1, Side::kStart}};
  problem.goals.push_back({"makespan", {term}, 0});
  return problem;
}

std::vector<std::string> breaches(const Project& project, const std::vector<int>& starts) {
  if (starts.size() != project.jobs.size()) return {"not one start time for each job"};
  std::vector<std::string> result;
  int end = 0;
  for (int j = 0; j < static_cast<int>(starts.size()); ++j) {
    if (starts[at(j)] < 0) result.push_back(job_name(project, j) + " starts before 0");
    end = std::max(end, starts[at(j)] + project.jobs[at(j)].duration);
  }
  for (const StartLag& lag : project.lags) {
    if (starts[at(lag.to)] - starts[at(lag.from)] >= lag.least) continue;
    result.push_back(job_name(project, lag.to) + " starts less than " + std::to_string(lag.least) +
                     " after the start of " + job_name(project, lag.from));
  }
  for (std::size_t r = 0; r < project.capacities.size(); ++r) {
    for (int minute = 0; minute < end; ++minute) {
      long long used = 0;
      for (std::size_t j = 0; j < starts.size(); ++j) {
        const Job& job = project.jobs[j];
        if (starts[j] <= minute && minute < starts[j] + job.duration) used += job.demands[r];
      }
      if (used <= project.capacities[r]) continue;
      result.push_back("resource " + std::to_string(r + 1) + " at " + std::to_string(minute) +
                       ": " + std::to_string(used) + " of " +
                       std::to_string(project.capacities[r]));
    }
  }
  return result;
}

}  // namespace projects
