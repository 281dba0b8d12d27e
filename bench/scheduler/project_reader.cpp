// The file formats line by line. Every fault names file, line and what was expected.
#include <algorithm>
#include <charconv>
#include <fstream>
#include <sstream>

#include "base/index.h"
#include "project.h"

namespace projects {
namespace {

/// More than any published instance has; keeps a mistyped figure from asking for all memory.
constexpr int kMostJobs = 100000;
constexpr int kMostResources = 1000;
/// Sums of durations and lags stay far below what a Time holds.
constexpr int kMostTime = 1000000;

using base::at;

class Reader {
 public:
  explicit Reader(const std::filesystem::path& file) : name_(file.string()) {
    std::ifstream in(file);
    if (!in || std::filesystem::is_directory(file))
      throw ReadError(name_ + ": cannot be opened for reading");
    for (std::string line; std::getline(in, line);) lines_.push_back(line);
    if (in.bad()) throw ReadError(name_ + ": reading broke off");
    while (!lines_.empty() && lines_.back().find_first_not_of(" \t\r") == std::string::npos)
      lines_.pop_back();
    if (lines_.empty()) throw ReadError(name_ + ": is empty");
  }

  [[noreturn]] void fail(std::size_t line, const std::string& what) const {
    throw ReadError(name_ + ":" + std::to_string(line + 1) + ": " + what);
  }

  const std::string& line(std::size_t index, const std::string& expected) const {
    if (index >= lines_.size())
      fail(lines_.size(), "the file ends where " + expected + " should be");
    return lines_[index];
  }

  std::size_t size() const { return lines_.size(); }

  /// The line that has this text in it.
  std::size_t find(const std::string& text) const {
    for (std::size_t i = 0; i < lines_.size(); ++i) {
      if (lines_[i].find(text) != std::string::npos) return i;
    }
    fail(lines_.size(), "no line with \"" + text + "\"");
  }

  /// All whole numbers of a line; brackets count as blanks.
  std::vector<int> numbers(std::size_t index, const std::string& expected) const {
    std::string text = line(index, expected);
    std::replace(text.begin(), text.end(), '[', ' ');
    std::replace(text.begin(), text.end(), ']', ' ');
    std::istringstream in(text);
    std::vector<int> result;
    for (std::string word; in >> word;) {
      int value = 0;
      const auto [end, error] = std::from_chars(word.data(), word.data() + word.size(), value);
      if (error != std::errc() || end != word.data() + word.size())
        fail(index, "\"" + word + "\" is not a whole number; expected " + expected);
      result.push_back(value);
    }
    return result;
  }

  /// As numbers(), at least `count` of them.
  std::vector<int> numbers(std::size_t index, const std::string& expected, int count) const {
    std::vector<int> result = numbers(index, expected);
    if (static_cast<int>(result.size()) < count)
      fail(index, "only " + std::to_string(result.size()) + " numbers; expected " + expected);
    return result;
  }

  int in_range(std::size_t index, const std::string& what, int value, int low, int high) const {
    if (value < low || value > high)
      fail(index, what + " is " + std::to_string(value) + ", not between " + std::to_string(low) +
                      " and " + std::to_string(high));
    return value;
  }

 private:
  std::string name_;
  std::vector<std::string> lines_;
};

void read_capacities(const Reader& in, std::size_t line, Project& project, int resources) {
  project.capacities = in.numbers(line, std::to_string(resources) + " capacities", resources);
  project.capacities.resize(at(resources));
  for (const int capacity : project.capacities)
    in.in_range(line, "a capacity", capacity, 0, kMostTime);
}

void read_demands(const Reader& in, std::size_t line, Project& project, int duration,
                  const int* demands) {
  Job job;
  job.duration = in.in_range(line, "the duration", duration, 0, kMostTime);
  for (std::size_t r = 0; r < project.capacities.size(); ++r)
    job.demands.push_back(in.in_range(line, "a demand", demands[r], 0, kMostTime));
  project.jobs.push_back(job);
}

void expect_job(const Reader& in, std::size_t line, int number, int expected) {
  if (number != expected)
    in.fail(line, "job " + std::to_string(number) + " where job " + std::to_string(expected) +
                      " should be");
}

void expect_one_mode(const Reader& in, std::size_t line, int modes) {
  if (modes != 1) in.fail(line, std::to_string(modes) + " modes; only single-mode jobs are read");
}

int after_colon(const Reader& in, const std::string& text, int most) {
  const std::size_t line = in.find(text);
  const std::string& words = in.line(line, text);
  const std::size_t colon = words.find(':');
  if (colon == std::string::npos) in.fail(line, "no colon after \"" + text + "\"");
  std::istringstream rest(words.substr(colon + 1));
  int value = 0;
  if (!(rest >> value)) in.fail(line, "no number after the colon");
  return in.in_range(line, text, value, 0, most);
}

Project read_sm(const Reader& in) {
  Project project;
  project.first_number = 1;
  const int jobs = after_colon(in, "jobs (incl.", kMostJobs);
  const int resources = after_colon(in, "- renewable", kMostResources);
  if (after_colon(in, "- nonrenewable", kMostResources) > 0)
    in.fail(in.find("- nonrenewable"), "non-renewable resources are not read");
  if (jobs < 2) in.fail(in.find("jobs (incl."), "fewer than the two dummy jobs");
  read_capacities(in, in.find("RESOURCEAVAILABILITIES") + 2, project, resources);
  const std::size_t relations = in.find("PRECEDENCE RELATIONS") + 2;
  const std::size_t requests = in.find("REQUESTS/DURATIONS") + 3;
  for (int j = 0; j < jobs; ++j) {
    const std::size_t line = requests + at(j);
    const std::vector<int> request = in.numbers(line, "job, mode, duration and demands",
                                                3 + resources);
    expect_job(in, line, request[0], j + 1);
    read_demands(in, line, project, request[2], request.data() + 3);
  }
  for (int j = 0; j < jobs; ++j) {
    const std::size_t line = relations + at(j);
    std::vector<int> relation = in.numbers(line, "job, modes, count and successors", 3);
    expect_job(in, line, relation[0], j + 1);
    expect_one_mode(in, line, relation[1]);
    if (relation[2] != static_cast<int>(relation.size()) - 3)
      in.fail(line, "the count of successors is not the number of them");
    for (std::size_t k = 3; k < relation.size(); ++k) {
      const int to = in.in_range(line, "a successor", relation[k], 1, jobs) - 1;
      project.lags.push_back({j, to, project.jobs[at(j)].duration});
    }
  }
  return project;
}

void read_relations(const Reader& in, std::size_t line, int job, int jobs, Project& project) {
  const std::vector<int> relation = in.numbers(line, "job, modes, count, successors, lags", 3);
  expect_job(in, line, relation[0], job);
  expect_one_mode(in, line, relation[1]);
  const int successors = in.in_range(line, "the count of successors", relation[2], 0, kMostJobs);
  if (static_cast<int>(relation.size()) != 3 + 2 * successors)
    in.fail(line, "expected " + std::to_string(successors) + " successors and as many lags");
  for (int k = 0; k < successors; ++k) {
    const int to = in.in_range(line, "a successor", relation[at(3 + k)], 0, jobs - 1);
    const int least = in.in_range(line, "a lag", relation[at(3 + successors + k)], -kMostTime,
                                  kMostTime);
    project.lags.push_back({job, to, least});
  }
}

Project read_progen_max(const Reader& in) {
  Project project;
  const std::vector<int> head = in.numbers(0, "jobs, resources, 0, 0", 2);
  const int jobs = in.in_range(0, "the number of jobs", head[0], 0, kMostJobs) + 2;
  const int resources = in.in_range(0, "the number of resources", head[1], 0, kMostResources);
  read_capacities(in, at(2 * jobs + 1), project, resources);
  for (int j = 0; j < jobs; ++j) {
    const std::size_t line = at(1 + jobs + j);
    const std::vector<int> request = in.numbers(line, "job, mode, duration and demands",
                                                3 + resources);
    expect_job(in, line, request[0], j);
    read_demands(in, line, project, request[2], request.data() + 3);
  }
  for (int j = 0; j < jobs; ++j) read_relations(in, at(1 + j), j, jobs, project);
  if (in.size() > at(2 * jobs + 2))
    in.fail(at(2 * jobs + 2), "more lines than the first line promises");
  return project;
}

// The short form is a stream of numbers; where lines break means nothing.
Project read_short(const Reader& in) {
  std::vector<int> stream;
  std::vector<std::size_t> lines;
  for (std::size_t i = 0; i < in.size(); ++i) {
    for (const int number : in.numbers(i, "whole numbers")) {
      stream.push_back(number);
      lines.push_back(i);
    }
  }
  std::size_t next = 0;
  const auto take = [&](const std::string& what, int low, int high) {
    if (next >= stream.size()) in.fail(in.size(), "the file ends where " + what + " should be");
    const std::size_t index = next++;
    return in.in_range(lines[index], what, stream[index], low, high);
  };
  Project project;
  project.first_number = 1;
  const int jobs = take("the number of jobs", 2, kMostJobs);
  const int resources = take("the number of resources", 0, kMostResources);
  for (int r = 0; r < resources; ++r)
    project.capacities.push_back(take("a capacity", 0, kMostTime));
  for (int j = 0; j < jobs; ++j) {
    Job job;
    job.duration = take("a duration", 0, kMostTime);
    for (int r = 0; r < resources; ++r) job.demands.push_back(take("a demand", 0, kMostTime));
    project.jobs.push_back(job);
    const int successors = take("the count of successors", 0, jobs);
    for (int k = 0; k < successors; ++k)
      project.lags.push_back({j, take("a successor", 1, jobs) - 1, job.duration});
  }
  if (next < stream.size()) in.fail(lines[next], "more numbers than the first line promises");
  return project;
}

}  // namespace

Project read_project(const std::filesystem::path& file) {
  const Reader in(file);
  if (file.extension() == ".sm") return read_sm(in);
  const std::vector<int> head = in.numbers(0, "jobs, resources and, in ProGen/max, 0 0", 2);
  return head.size() == 2 ? read_short(in) : read_progen_max(in);
}

}  // namespace projects
