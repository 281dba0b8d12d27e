// A published project instance as the proof checker reads it. Its own reader on purpose: nothing
// here is shared with the engine or its programs, so one mistake cannot hide in both.
#pragma once

#include <istream>
#include <vector>

namespace proof_check {

struct Job {
  int duration = 0;
  std::vector<int> demands;  ///< one a resource
};

/// start(to) >= start(from) + gap.
struct Lag {
  int from = 0, to = 0, gap = 0;
};

struct Instance {
  std::vector<Job> jobs;  ///< the last one is the sink; its start is the makespan
  std::vector<Lag> lags;
  std::vector<int> capacities;
};

/// PSPLIB single mode (`.sm`). Errors: std::runtime_error.
Instance read_sm(std::istream& in);
/// ProGen/max (`.SCH`). Errors: std::runtime_error.
Instance read_sch(std::istream& in);

}  // namespace proof_check
