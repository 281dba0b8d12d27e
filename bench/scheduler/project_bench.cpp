// Project scheduling instances (PSPLIB .sm, ProGen/max .sch): project_bench SECONDS BEST_KNOWN.csv
// SET FILE... prints an instance a line and the counts: proved, best known value reached, wrong
// proofs (must be 0).
#include <cstdio>
#include <cstdlib>
#include <filesystem>

#include "../../tests/reference/scheduler/psplib_reader.h"
#include "scheduler/solve.h"

int main(int argc, char** argv) {
  using namespace scheduler;
  if (argc < 4) {
    std::printf(
        "project_bench: give SECONDS BEST_KNOWN.csv SET FILE... (instances are not part of the "
        "project)\n");
    return 0;
  }
  const auto known = testing::read_best_known(argv[2]);
  int count = 0, proved = 0, reached = 0, wrong = 0, found = 0;
  double total = 0;
  for (int i = 4; i < argc; ++i) {
    const std::filesystem::path file = argv[i];
    const auto entry = known.find({argv[3], file.filename().string()});
    if (entry == known.end()) continue;
    const testing::BestKnown& best = entry->second;
    const Problem problem = testing::read_project(file);
    Options options;
    options.seconds = std::atof(argv[1]);
    const Outcome outcome = solve(problem, options);
    ++count;
    total += outcome.seconds;
    const bool closed = outcome.status == Status::kOptimal || outcome.status == Status::kInfeasible;
    proved += closed ? 1 : 0;
    const long long value = outcome.best.empty() ? -1 : static_cast<long long>(outcome.values[0]);
    const long long bound = outcome.bounds.empty() ? 0 : static_cast<long long>(outcome.bounds[0]);
    found += value >= 0 ? 1 : 0;
    reached += value >= 0 && best.high > 0 && value <= best.high ? 1 : 0;
    const bool bad = (outcome.status == Status::kInfeasible) != (best.proved == "infeasible") &&
                     closed;
    const bool off = best.proved == "optimal" && value >= 0 &&
                     (value < best.low || bound > best.high);
    wrong += bad || off ? 1 : 0;
    std::printf("%-16s value %4lld bound %4lld known %d..%d %s first %.3f s, %.3f s%s\n",
                file.filename().string().c_str(), value, bound, best.low, best.high,
                best.proved.c_str(), outcome.first_seconds, outcome.seconds,
                bad || off ? " WRONG" : "");
  }
  std::printf(
      "%s: %d instances, %d with a schedule, %d proved, %d at the best known value, %d wrong, %.1f "
      "s\n",
      argv[3], count, found, proved, reached, wrong, total);
  return wrong == 0 ? 0 : 1;
}
