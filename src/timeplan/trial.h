// One attempt at a lesson: cooks split into waves, network and brief made, the engine asked. The
// planner, the causes, the remedies and the last safe starts are all made of attempts.
#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <vector>

#include "scheduler/solve.h"
#include "timeplan/brief.h"
#include "timeplan/network.h"

namespace timeplan {

/// How long one attempt may work, and for what. Work is counted in the engine's ticks, so that the
/// same lesson gives the same plan however busy the machine is; a clock stops it only when the
/// machine is much slower than that.
struct TrialLimits {
  double seconds = 1.0;  ///< of work on an ordinary machine
  std::uint64_t seed = 1;
  std::int64_t close_enough = -1;  ///< as scheduler::Options::close_enough
  bool first_only = false;         ///< a schedule or a proof that there is none is enough
  std::function<bool()> stop;
};

/// The engine's options for these limits and a problem of so many activities.
scheduler::Options engine_options(const TrialLimits&, std::size_t activities);
/// Work done, in seconds of an ordinary machine.
double work_of(const scheduler::Outcome&);

struct Trial {
  std::vector<int> wave_of_cook;
  int waves = 1;
  Network net;
  Brief brief;
  scheduler::Outcome outcome;

  bool found() const { return !outcome.best.empty(); }
  bool refuted() const { return outcome.status == scheduler::Status::kInfeasible; }
};

/// Makes the problem without solving it.
Trial prepare(const kitchen::Lesson&, const std::vector<int>& wave_of_cook, const BriefOptions&);
/// Solves (again), from the schedule it has if that still stands, e.g. after the problem was
/// changed.
void solve(Trial&, const TrialLimits&);
/// Of bounds proved for schedules no worse than `then` on the levels before, those that hold for
/// schedules no worse than `now`; 0 for levels behind one that got worse.
std::vector<std::int64_t> still_holding(std::vector<std::int64_t> bounds,
                                        const std::vector<std::int64_t>& then,
                                        const std::vector<std::int64_t>& now);
/// Works on at the same problem: the schedule only gets better, and what is proved stays so where
/// it still speaks of it.
void solve_on(Trial&, const TrialLimits&);
Trial attempt(const kitchen::Lesson&, const std::vector<int>& wave_of_cook, const BriefOptions&,
              const TrialLimits&);

/// Ways to split the cooks into `waves` waves worth trying, best guess first: by bay, by cooker
/// mates, by halves. Empty splits and repeats are left out. One wave: one split.
std::vector<std::vector<int>> splits(const kitchen::Lesson&, int waves);

/// The same lesson with a timeline for every cook.
kitchen::Lesson with_own_timelines(const kitchen::Lesson&);

/// Last end of washing up and packing over all cooks, in minutes after the opening.
int last_end(const Trial&, const kitchen::Lesson&);
/// By how much the last cook misses the bell; 0 when nobody does.
Seconds overrun_of(const Trial&, const kitchen::Lesson&);

}  // namespace timeplan
