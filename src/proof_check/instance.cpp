#include "proof_check/instance.h"

#include <algorithm>
#include <sstream>
#include <stdexcept>
#include <string>

namespace proof_check {
namespace {

std::vector<std::string> lines_of(std::istream& in) {
  std::vector<std::string> lines;
  for (std::string line; std::getline(in, line);) lines.push_back(line);
  return lines;
}

/// The whole numbers of a line, brackets taken as blanks; `least` of them at least.
std::vector<int> numbers(const std::vector<std::string>& lines, std::size_t index,
                         std::size_t least) {
  if (index >= lines.size()) throw std::runtime_error("the instance ends too early");
  std::string text = lines[index];
  std::replace_if(
      text.begin(), text.end(), [](char c) { return c == '[' || c == ']'; }, ' ');
  std::istringstream words(text);
  std::vector<int> result;
  for (int value = 0; words >> value;) result.push_back(value);
  if (result.size() < least || !words.eof())
    throw std::runtime_error("instance, line " + std::to_string(index + 1) + ": not understood");
  return result;
}

std::size_t line_with(const std::vector<std::string>& lines, const std::string& text) {
  for (std::size_t i = 0; i < lines.size(); ++i) {
    if (lines[i].find(text) != std::string::npos) return i;
  }
  throw std::runtime_error("the instance has no line with " + text);
}

int after_colon(const std::vector<std::string>& lines, const std::string& text) {
  const std::string& line = lines[line_with(lines, text)];
  return std::stoi(line.substr(line.find(':') + 1));
}

Job job_of(const std::vector<int>& request, std::size_t resources) {
  return {request[2], std::vector<int>(request.begin() + 3,
                                       request.begin() + 3 + static_cast<long>(resources))};
}

void check_lags(const Instance& instance) {
  const int jobs = static_cast<int>(instance.jobs.size());
  for (const Lag& lag : instance.lags) {
    if (lag.from < 0 || lag.to < 0 || lag.from >= jobs || lag.to >= jobs)
      throw std::runtime_error("the instance names a job that it does not have");
  }
}

}  // namespace

Instance read_sm(std::istream& in) {
  const std::vector<std::string> lines = lines_of(in);
  Instance instance;
  const std::size_t jobs = static_cast<std::size_t>(after_colon(lines, "jobs (incl."));
  const std::size_t resources = static_cast<std::size_t>(after_colon(lines, "- renewable"));
  instance.capacities = numbers(lines, line_with(lines, "RESOURCEAVAILABILITIES") + 2, resources);
  const std::size_t relations = line_with(lines, "PRECEDENCE RELATIONS") + 2;
  const std::size_t requests = line_with(lines, "REQUESTS/DURATIONS") + 3;
  for (std::size_t j = 0; j < jobs; ++j) {
    instance.jobs.push_back(job_of(numbers(lines, requests + j, 3 + resources), resources));
    const std::vector<int> relation = numbers(lines, relations + j, 3);
    for (std::size_t k = 3; k < relation.size(); ++k)
      instance.lags.push_back({static_cast<int>(j), relation[k] - 1, instance.jobs[j].duration});
  }
  check_lags(instance);
  return instance;
}

Instance read_sch(std::istream& in) {
  const std::vector<std::string> lines = lines_of(in);
  const std::vector<int> head = numbers(lines, 0, 2);
  const std::size_t jobs = static_cast<std::size_t>(head[0]) + 2;
  const std::size_t resources = static_cast<std::size_t>(head[1]);
  Instance instance;
  instance.capacities = numbers(lines, 2 * jobs + 1, resources);
  for (std::size_t j = 0; j < jobs; ++j) {
    instance.jobs.push_back(job_of(numbers(lines, 1 + jobs + j, 3 + resources), resources));
    const std::vector<int> relation = numbers(lines, 1 + j, 3);
    const std::size_t count = static_cast<std::size_t>(relation[2]);
    if (relation.size() != 3 + 2 * count) throw std::runtime_error("a job without all its lags");
    for (std::size_t k = 3; k < 3 + count; ++k)
      instance.lags.push_back({static_cast<int>(j), relation[k], relation[k + count]});
  }
  check_lags(instance);
  return instance;
}

}  // namespace proof_check
