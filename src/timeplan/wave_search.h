// How many waves: the fewest that leave nobody short of the buffer before the bell.
#pragma once

#include <cstdint>
#include <optional>
#include <utility>
#include <vector>

#include "timeplan/plan_time.h"

namespace timeplan {

struct WaveFindings {
  std::optional<Trial> best;     ///< of all waves and splits tried
  std::optional<Candidate> own;  ///< own timelines, begun when one wave was not found at once
  std::vector<WaveTrial> trials;
  /// (waves, proved bound of the first level over the splits that were tried).
  std::vector<std::pair<int, std::int64_t>> first_level_bound;
  bool own_refuted = false;             ///< proved: no plan at all, with waves or without
  double refuted_seconds = 0;           ///< as in Answer
  std::optional<double> waves_seconds;  ///< as in Answer
};

/// A quick look at every number of waves first, so that some plan stands soon; then, from the
/// fewest up, as long as it takes to know whether they will do (docs/methods/planner.md, "Waves").
WaveFindings search_waves(const kitchen::Lesson&, PlanTime&);

/// By how much fewer waves than the best plan's miss the bell ("one wave misses it by 9 min"): the
/// least found, not proved. What is not found in a moment is left out.
void measure_misses(const kitchen::Lesson&, PlanTime&, WaveFindings&);

}  // namespace timeplan
