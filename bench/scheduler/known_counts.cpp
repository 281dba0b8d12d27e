#include "known_counts.h"

#include <cstdio>

namespace projects {
namespace {

/// A limit of 10 s on a shared machine decides by chance what is proved near it.
constexpr double kNearLimitFrom = 8, kNearLimitTo = 12;

std::string contradiction(const Answer& answer, const BestKnown& known) {
  if (known.proved == "infeasible") {
    return answer.has_schedule ? "a schedule where the table says there is none" : "";
  }
  if (answer.proved == Answer::Proved::kInfeasible && known.high > 0)
    return "said to be infeasible, the table has a schedule of " + std::to_string(known.high);
  if (known.high > 0 && answer.lower > known.high)
    return "bound " + std::to_string(answer.lower) + " above the known schedule of " +
           std::to_string(known.high);
  if (answer.has_schedule && answer.upper < known.low)
    return "schedule of " + std::to_string(answer.upper) + " below the known bound of " +
           std::to_string(known.low);
  return "";
}

}  // namespace

std::string KnownCounts::add(const Answer& answer) {
  ++count_;
  seconds_ += answer.seconds;
  if (answer.proved != Answer::Proved::kNo) {
    ++proved_;
    late_ += answer.seconds >= kNearLimitFrom && answer.seconds <= kNearLimitTo ? 1 : 0;
  }
  without_ += !answer.has_schedule && answer.proved != Answer::Proved::kInfeasible ? 1 : 0;
  const auto entry = table_.find({set_, answer.instance});
  if (entry == table_.end()) {
    ++unknown_;
    return "";
  }
  const BestKnown& known = entry->second;
  if (answer.has_schedule && known.high > 0) {
    ++compared_;
    at_best_ += answer.upper <= known.high ? 1 : 0;
    gaps_ += 100.0 * static_cast<double>(answer.upper - known.high) / known.high;
  }
  const std::string fault = contradiction(answer, known);
  wrong_ += fault.empty() ? 0 : 1;
  return fault;
}

std::string KnownCounts::summary() const {
  char text[512];
  std::snprintf(text, sizeof text,
                "%s: %d instances, %d proved, %d at the best known value, mean gap to it %.2f %% "
                "(over %d), %d without a schedule or a proof, %d WRONG, %d proved between 8 and "
                "12 s, %d not in the table, %.1f s\n",
                set_.c_str(), count_, proved_, at_best_, compared_ > 0 ? gaps_ / compared_ : 0.0,
                compared_, without_, wrong_, late_, unknown_, seconds_);
  return text;
}

}  // namespace projects
