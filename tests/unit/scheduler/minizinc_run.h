// The general-purpose solver of the Debian package minizinc, where it is installed.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

namespace scheduler::testing {

bool minizinc_installed();

struct MinizincAnswer {
  bool proved = false;               ///< the search was ended
  bool refuted = false;              ///< there is no schedule
  std::vector<std::int64_t> levels;  ///< of the best schedule; empty without one
  std::string said;                  ///< everything, for the message of a test
};

/// Gecode's answer to a model, however long it takes.
MinizincAnswer minizinc_answer(const std::string& model);

}  // namespace scheduler::testing
