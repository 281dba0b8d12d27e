// Project scheduling instances as published: jobs with durations and demands, lags between starts,
// capacities. Read from the two public families of formats, turned into a Problem, and checked
// without the engine.
//
// Formats, told apart by what the file says and not by its name alone:
//   .sm            PSPLIB, single mode (R. Kolisch, A. Sprecher 1996)
//   .sch .SCH .rcp ProGen/max (C. Schwindt 1996): first line "jobs resources 0 0", lags in brackets
//   .rcp           the older short form: first line "jobs resources", demands before successors
#pragma once

#include <filesystem>
#include <stdexcept>
#include <string>
#include <vector>

#include "scheduler/problem.h"

namespace projects {

/// start(to) >= start(from) + least; a negative `least` is a maximum lag read backwards.
struct StartLag {
  int from = 0, to = 0, least = 0;
};

struct Job {
  int duration = 0;
  std::vector<int> demands;  ///< one a resource
};

struct Project {
  std::vector<Job> jobs;  ///< first and last are the dummies; the makespan is the start of the last
  std::vector<StartLag> lags;
  std::vector<int> capacities;
  int first_number = 0;  ///< what the file calls the first job: 1 in .sm, 0 in ProGen/max
};

/// A file that cannot be read: "FILE:LINE: what is wrong".
class ReadError : public std::runtime_error {
 public:
  using std::runtime_error::runtime_error;
};

/// Errors: ReadError.
Project read_project(const std::filesystem::path& file);

/// One goal level: the makespan. The horizon is long enough for any project that has a schedule.
scheduler::Problem to_problem(const Project& project);

/// Every lag and every resource at every minute, from the file's own figures. Empty: satisfied.
std::vector<std::string> breaches(const Project& project, const std::vector<int>& starts);

}  // namespace projects
