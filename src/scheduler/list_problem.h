// The plain project inside a Problem: fixed lengths, one mode each, cumulative resources, lags, and
// one goal that wants the end early. For those the schedule generation schemes and the population
// work on flat arrays, some tens of thousands of schedules a second.
//
// Activities are renumbered so that every lag of a plain project goes from a lower to a higher
// number. The last one stands for the goal: it has no length and follows what the goal measures.
// Not for spans, blocked times, modes, optional or elastic activities; the exact core does those.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "base/index.h"
#include "scheduler/solve.h"

namespace scheduler {

/// start(other) >= start(owner of the list) + least, or the other way round in a list `in`.
struct ListArc {
  int other = 0;
  Time least = 0;
};

struct ListProblem {
  int count = 0;  ///< activities and the goal's, which is the last (the first when mirrored)
  int goal = 0;
  std::vector<int> original;  ///< activity of the Problem, -1 for the goal's
  std::vector<Time> duration;
  std::vector<Time> earliest, latest;    ///< windows of the start from lags and limits alone
  std::vector<int> in_begin, out_begin;  ///< count + 1 offsets
  std::vector<ListArc> in, out;
  Time horizon = 0;
  /// Every lag is at least the length of its first activity and no end is limited: a list in order
  /// of numbers always gives a schedule.
  bool plain = false;

  /// Resources packed four to a word, 16 bits each, the highest of them kept free.
  int words = 0;
  std::vector<std::uint64_t> capacity;  ///< by word
  std::vector<std::uint64_t> demand;    ///< by activity and word

  const std::uint64_t* demand_of(int i) const {
    return demand.data() + base::at(i) * base::at(words);
  }
};

/// Nothing when the problem has more than that, or the lags alone leave an activity no room.
std::optional<ListProblem> list_problem(const Problem& problem, const Options& options);

/// Time runs backwards: activity i is count - 1 - i, start s becomes horizon - s - duration.
ListProblem mirrored(const ListProblem& list);

/// Start times by number as a schedule of the problem.
Schedule to_schedule(const Problem& problem, const ListProblem& list,
                     const std::vector<Time>& starts);
/// And back; the goal's activity as early as its lags let it.
std::vector<Time> to_starts(const ListProblem& list, const Schedule& schedule);

}  // namespace scheduler
