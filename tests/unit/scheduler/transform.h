// The same problem told another way, and problems with a little more or less in them. What happens
// to the optimum is known, whatever it is.
#pragma once

#include <cstdint>
#include <vector>

#include "scheduler/problem.h"

namespace scheduler::testing {

/// Activity i becomes activity to[i].
Problem with_activities_permuted(const Problem& problem, const std::vector<int>& to);
/// Resource r becomes resource to[r].
Problem with_resources_permuted(const Problem& problem, const std::vector<int>& to);
/// Every time `factor` times as long: levels of lengths grow by the factor, counts stay.
Problem with_times_scaled(const Problem& problem, int factor);
/// Minute t becomes horizon - t. Only for problems that reversible() gives.
Problem reversed(const Problem& problem);
/// Drops what has a direction: doors, initial settings, soil, terms that count from minute 0 or
/// look at starts alone.
Problem reversible(Problem problem);
/// Everything `minutes` later. Only for problems without initial settings.
Problem shifted(const Problem& problem, Time minutes);

/// Adds lags that follow from two others, a lag twice, and a second copy of resource `copied`.
Problem with_implied_rules(Problem problem, int copied);
/// Takes one rule away (a lag, blocked time, span, limit or use), by `choice`; false when there is
/// none.
bool take_one_rule(Problem& problem, std::uint64_t choice);

}  // namespace scheduler::testing
