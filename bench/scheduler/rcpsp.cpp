// Project scheduling instances: bounds, schedules and proofs as a table. `rcpsp --help` says how.
#include <algorithm>
#include <cstdio>
#include <fstream>
#include <iostream>
#include <map>
#include <optional>

#include "known_counts.h"
#include "project.h"
#include "rcpsp_options.h"
#include "scheduler/proof_log.h"
#include "scheduler/solve.h"

namespace {

using namespace projects;
using scheduler::Outcome;
using scheduler::Status;

constexpr int kBadInput = 2, kWrongAnswer = 3;

struct Instance {
  std::string name;
  Project project;
};

/// A schedule that breaks a rule, or a bound that contradicts one.
class WrongAnswer : public std::runtime_error {
 public:
  using std::runtime_error::runtime_error;
};

std::vector<int> starts_of(const scheduler::Schedule& schedule) {
  std::vector<int> result;
  for (const scheduler::Placement& placement : schedule) result.push_back(placement.start);
  return result;
}

/// Writes the proof where one is asked for.
class ProofFile {
 public:
  explicit ProofFile(const std::filesystem::path& path) : path_(path) {
    if (path_.empty()) return;
    out_.open(path_);
    log_.emplace(out_);
  }
  scheduler::ProofSink* sink() { return log_ ? &*log_ : nullptr; }
  void finish() {
    if (log_ && !out_.flush()) throw std::runtime_error("cannot write " + path_.string());
  }

 private:
  std::filesystem::path path_;
  std::ofstream out_;
  std::optional<scheduler::ProofLog> log_;
};

/// An instance's outcome, and the makespan of its first schedule.
struct Search {
  Outcome outcome;
  long long first_upper = 0;
};

Search run_search(const scheduler::Problem& problem, const Arguments& arguments) {
  Search search;
  scheduler::Options options;
  options.seconds = arguments.seconds;
  options.seed = arguments.seed;
  options.threads = std::min(arguments.threads, 2);
  ProofFile proof(arguments.proof);
  options.proof = proof.sink();
  bool first = true;
  options.on_better = [&](const scheduler::Schedule&, const std::vector<std::int64_t>& values) {
    if (first) search.first_upper = values[0];
    first = false;
  };
  search.outcome = solve(problem, options);
  proof.finish();
  return search;
}

Answer answer_of(const Search& search, const std::string& name) {
  const Outcome& outcome = search.outcome;
  Answer answer;
  answer.instance = name;
  answer.seconds = outcome.seconds;
  if (!outcome.bounds.empty()) answer.lower = outcome.bounds[0];
  if (outcome.status == Status::kInfeasible) answer.proved = Answer::Proved::kInfeasible;
  if (outcome.best.empty()) return answer;
  answer.has_schedule = true;
  answer.upper = outcome.values[0];
  answer.first_upper = search.first_upper;
  answer.first_seconds = outcome.first_seconds;
  answer.best_seconds = outcome.best_seconds;
  if (answer.lower > answer.upper) throw WrongAnswer("the bound lies above the schedule");
  if (answer.lower == answer.upper) answer.proved = Answer::Proved::kOptimal;
  return answer;
}

void check_schedule(const Instance& instance, const Answer& answer,
                    const std::vector<int>& starts) {
  const std::vector<std::string> faults = breaches(instance.project, starts);
  if (!faults.empty()) throw WrongAnswer("the schedule breaks a rule: " + faults.front());
  if (starts.back() != answer.upper)
    throw WrongAnswer("the last job starts at " + std::to_string(starts.back()) +
                      ", the engine says " + std::to_string(answer.upper));
}

void write_schedule(const std::filesystem::path& folder, const Instance& instance,
                    const std::vector<int>& starts) {
  const std::filesystem::path file = folder / (instance.name + ".csv");
  std::ofstream out(file);
  out << "job,start\n";
  for (std::size_t j = 0; j < starts.size(); ++j)
    out << instance.project.first_number + static_cast<int>(j) << ',' << starts[j] << '\n';
  if (!out.flush()) throw ReadError(file.string() + ": cannot be written");
}

std::string csv_line(const Answer& answer) {
  const bool infeasible = answer.proved == Answer::Proved::kInfeasible;
  const auto time = [](double seconds) {
    char text[32];
    std::snprintf(text, sizeof text, "%.3f", seconds);
    return std::string(text);
  };
  const auto if_found = [&](const std::string& text) { return answer.has_schedule ? text : ""; };
  const char* words[] = {"no", "optimal", "infeasible"};
  return answer.instance + ',' + (infeasible ? "" : std::to_string(answer.lower)) + ',' +
         if_found(std::to_string(answer.upper)) + ',' + words[static_cast<int>(answer.proved)] +
         ',' + if_found(std::to_string(answer.first_upper)) + ',' +
         if_found(time(answer.first_seconds)) + ',' + if_found(time(answer.best_seconds)) + ',' +
         time(answer.seconds);
}

/// All faults of all files are said before anything is solved.
std::optional<std::vector<Instance>> read_all(const Arguments& arguments) {
  std::vector<Instance> result;
  std::map<std::string, std::filesystem::path> names;
  bool good = true;
  const auto say = [&](const std::string& fault) {
    std::cerr << "rcpsp: " << fault << '\n';
    good = false;
  };
  for (const std::filesystem::path& file : arguments.files) {
    try {
      result.push_back({file.filename().string(), read_project(file)});
    } catch (const ReadError& error) {
      say(error.what());
      continue;
    }
    const auto [entry, fresh] = names.emplace(result.back().name, file);
    if (!fresh && !arguments.schedule.empty())
      say(file.string() + ": its schedule would overwrite that of " + entry->second.string());
  }
  if (!good) return std::nullopt;
  return result;
}

int solve_all(const Arguments& arguments, const std::vector<Instance>& instances) {
  std::optional<KnownCounts> counts;
  if (!arguments.known.empty()) counts.emplace(read_best_known(arguments.known), arguments.set);
  std::ofstream file;
  if (!arguments.csv.empty()) {
    file.open(arguments.csv);
    if (!file) throw ReadError(arguments.csv.string() + ": cannot be written");
  }
  std::ostream& out = arguments.csv.empty() ? std::cout : file;
  if (!arguments.schedule.empty()) std::filesystem::create_directories(arguments.schedule);
  int code = 0;
  const auto wrong = [&](const std::string& name, const std::string& what) {
    std::cerr << "rcpsp: " << name << ": WRONG: " << what << '\n';
    code = kWrongAnswer;
  };
  out << "instance,lower,upper,proved,first_upper,first_seconds,best_seconds,seconds" << std::endl;
  for (const Instance& instance : instances) {
    try {
      const Search search = run_search(to_problem(instance.project), arguments);
      const Answer answer = answer_of(search, instance.name);
      const std::vector<int> starts = starts_of(search.outcome.best);
      if (answer.has_schedule) check_schedule(instance, answer, starts);
      // Flushed: a run that is broken off keeps what it has.
      out << csv_line(answer) << std::endl;
      if (answer.has_schedule && !arguments.schedule.empty())
        write_schedule(arguments.schedule, instance, starts);
      const std::string fault = counts ? counts->add(answer) : "";
      if (!fault.empty()) wrong(instance.name, fault);
    } catch (const std::logic_error& error) {
      wrong(instance.name, error.what());  // the engine's own check has found a fault
    } catch (const WrongAnswer& error) {
      wrong(instance.name, error.what());
    }
    if (!out) throw ReadError(arguments.csv.string() + ": cannot be written");
  }
  if (counts) std::cerr << counts->summary();
  return code;
}

}  // namespace

int main(int argc, char** argv) {
  try {
    const Arguments arguments = read_arguments({argv + 1, argv + argc});
    if (arguments.help || argc == 1) {
      std::cout << kHelp;
      return 0;
    }
    const std::optional<std::vector<Instance>> instances = read_all(arguments);
    return instances ? solve_all(arguments, *instances) : kBadInput;
  } catch (const UsageError& error) {
    std::cerr << "rcpsp: " << error.what() << "; rcpsp --help says more\n";
    return kBadInput;
  } catch (const ReadError& error) {
    std::cerr << "rcpsp: " << error.what() << '\n';
    return kBadInput;
  } catch (const std::filesystem::filesystem_error& error) {
    std::cerr << "rcpsp: " << error.what() << '\n';
    return kBadInput;
  }
}
