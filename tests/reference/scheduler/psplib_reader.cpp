#include "psplib_reader.h"

#include <algorithm>
#include <fstream>
#include <sstream>
#include <stdexcept>

namespace scheduler::testing {
namespace {

std::size_t at(int index) { return static_cast<std::size_t>(index); }

std::vector<std::string> lines_of(const std::filesystem::path& file) {
  std::ifstream in(file);
  if (!in) throw std::runtime_error("cannot read " + file.string());
  std::vector<std::string> lines;
  for (std::string line; std::getline(in, line);) lines.push_back(line);
  return lines;
}

std::vector<int> numbers(std::string line) {
  std::replace(line.begin(), line.end(), '[', ' ');
  std::replace(line.begin(), line.end(), ']', ' ');
  std::istringstream in(line);
  std::vector<int> result;
  for (int value = 0; in >> value;) result.push_back(value);
  return result;
}

std::size_t line_with(const std::vector<std::string>& lines, const std::string& text) {
  for (std::size_t i = 0; i < lines.size(); ++i) {
    if (lines[i].find(text) != std::string::npos) return i;
  }
  throw std::runtime_error("no line with " + text);
}

void set_job(Problem& problem, int job, int duration, const int* demands) {
  Activity& activity = problem.activities[at(job)];
  activity.name = std::to_string(job);
  activity.duration_min = activity.duration_max = duration;
  activity.modes.assign(1, {});
  for (int r = 0; r < static_cast<int>(problem.resources.size()); ++r) {
    if (demands[r] == 0) continue;
    Use use;
    use.resource = r;
    use.amount = demands[r];
    activity.modes[0].uses.push_back(use);
  }
}

void add_makespan(Problem& problem) {
  Term term;
  term.high = {{static_cast<int>(problem.activities.size()) - 1, Side::kStart}};
  problem.goals.push_back({"makespan", {term}, 0});
}

Problem read_sm(const std::vector<std::string>& lines) {
  Problem problem;
  const auto after_colon = [&](const std::string& text) {
    const std::string& line = lines[line_with(lines, text)];
    return std::stoi(line.substr(line.find(':') + 1));
  };
  const int jobs = after_colon("jobs (incl.");
  problem.horizon = after_colon("horizon");
  problem.resources.resize(at(after_colon("- renewable")));
  problem.activities.resize(at(jobs));
  const std::vector<int> capacities = numbers(
      lines[line_with(lines, "RESOURCEAVAILABILITIES") + 2]);
  for (std::size_t r = 0; r < problem.resources.size(); ++r)
    problem.resources[r].capacity = capacities.at(r);
  const std::size_t relations = line_with(lines, "PRECEDENCE RELATIONS") + 2;
  const std::size_t requests = line_with(lines, "REQUESTS/DURATIONS") + 3;
  for (int j = 0; j < jobs; ++j) {
    const std::vector<int> relation = numbers(lines[relations + at(j)]);
    for (std::size_t k = 3; k < relation.size(); ++k) {
      problem.lags.push_back({{j, Side::kEnd}, {relation[k] - 1, Side::kStart}, 0, kNoLimit, -1});
    }
    const std::vector<int> request = numbers(lines[requests + at(j)]);
    set_job(problem, j, request.at(2), request.data() + 3);
  }
  add_makespan(problem);
  return problem;
}

Problem read_sch(const std::vector<std::string>& lines) {
  Problem problem;
  const std::vector<int> head = numbers(lines.at(0));
  const int jobs = head.at(0) + 2;
  problem.activities.resize(at(jobs));
  problem.resources.resize(at(head.at(1)));
  const std::vector<int> capacities = numbers(lines.at(at(2 * jobs + 1)));
  for (std::size_t r = 0; r < problem.resources.size(); ++r)
    problem.resources[r].capacity = capacities.at(r);
  std::vector<int> longest(at(jobs), 0);
  for (int j = 0; j < jobs; ++j) {
    const std::vector<int> request = numbers(lines.at(at(1 + jobs + j)));
    set_job(problem, j, request.at(2), request.data() + 3);
    longest[at(j)] = request[2];
    const std::vector<int> relation = numbers(lines.at(at(1 + j)));
    const int successors = relation.at(2);
    for (int k = 0; k < successors; ++k) {
      const int lag = relation.at(at(3 + successors + k));
      problem.lags.push_back(
          {{j, Side::kStart}, {relation.at(at(3 + k)), Side::kStart}, lag, kNoLimit, -1});
      longest[at(j)] = std::max(longest[at(j)], lag);
    }
  }
  // Every job waits at most for the longest lag out of each other job: a schedule that exists fits
  // in the sum.
  for (const int length : longest) problem.horizon += length;
  add_makespan(problem);
  return problem;
}

}  // namespace

Problem read_project(const std::filesystem::path& file) {
  const std::vector<std::string> lines = lines_of(file);
  return file.extension() == ".sm" ? read_sm(lines) : read_sch(lines);
}

std::map<std::pair<std::string, std::string>, BestKnown> read_best_known(
    const std::filesystem::path& file) {
  std::map<std::pair<std::string, std::string>, BestKnown> result;
  for (const std::string& line : lines_of(file)) {
    std::vector<std::string> cells;
    std::istringstream in(line);
    for (std::string cell; std::getline(in, cell, ',');) cells.push_back(cell);
    if (cells.size() < 5 || cells[0] == "set") continue;
    BestKnown known;
    if (!cells[2].empty()) known.low = std::stoi(cells[2]);
    if (!cells[3].empty()) known.high = std::stoi(cells[3]);
    known.proved = cells[4];
    result[{cells[0], cells[1]}] = known;
  }
  return result;
}

}  // namespace scheduler::testing
