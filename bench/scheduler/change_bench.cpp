// One change in the middle of a planned class of 24: a cook falls behind by five minutes, an oven
// is out for eight. How long it takes until a plan stands again, and how much of the room it
// touches. change_bench [SEED]
#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <vector>

#include "base/index.h"
#include "classroom.h"
#include "scheduler/mend.h"

namespace {

using namespace scheduler;

using base::at;

constexpr Time kDay = 110;  // ten minutes more than the class needs
constexpr Time kBehind = 5, kOut = 8;

/// What cannot wait: tied closely to something that has begun.
std::vector<char> urgent(const Problem& problem, const Schedule& standing, Time now) {
  std::vector<char> result(standing.size(), 0);
  for (const Lag& lag : problem.lags) {
    if (lag.max != kNoLimit && lag.max <= kBehind && standing[at(lag.from.activity)].start < now)
      result[at(lag.to.activity)] = 1;
  }
  return result;
}

Problem behind(const Problem& problem, const Schedule& standing, Time now, int team) {
  Problem changed = problem;
  const std::vector<char> hurry = urgent(problem, standing, now);
  for (std::size_t i = 0; i < standing.size(); ++i) {
    Activity& activity = changed.activities[i];
    if (activity.team == team && standing[i].start >= now && !hurry[i])
      activity.earliest = std::max(activity.earliest, now + kBehind);
  }
  return changed;
}

/// Every use of the oven that is still to come keeps out of the minutes it is out.
Problem without_oven(const Problem& problem, const Schedule& standing, Time now, int oven,
                     std::vector<int>& teams) {
  Problem changed = problem;
  Blocked out{now, now + kOut, {}, -1};
  for (std::size_t i = 0; i < standing.size(); ++i) {
    const std::vector<Use>& uses = problem.activities[i].modes[0].uses;
    const bool bakes = std::any_of(uses.begin(), uses.end(),
                                   [oven](const Use& use) { return use.resource == oven; });
    if (!bakes || standing[i].start < now) continue;
    out.activities.push_back(static_cast<int>(i));
    teams.push_back(problem.activities[i].team);
  }
  changed.blocked.push_back(out);
  return changed;
}

struct Figures {
  std::vector<double> seconds;
  int widths[3] = {0, 0, 0};
  int lost = 0, unknown = 0;
};

void measure(const Problem& changed, const Schedule& standing, Time now, std::vector<int> teams,
             Figures& figures) {
  MendOptions options;
  options.now = now;
  options.teams = std::move(teams);
  options.engine.first_only = true;
  options.engine.seconds = 1;
  const auto start = std::chrono::steady_clock::now();
  const Mended mended = mend(changed, standing, options);
  figures.seconds.push_back(
      std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count());
  if (!mended.outcome.best.empty())
    ++figures.widths[mended.width];
  else
    ++(mended.outcome.status == Status::kInfeasible ? figures.lost : figures.unknown);
}

void print(const char* name, Figures& figures) {
  std::sort(figures.seconds.begin(), figures.seconds.end());
  const std::size_t count = figures.seconds.size();
  std::printf(
      "%-28s %3zu changes: median %.0f ms, nine in ten within %.0f ms; %d mended by their cooker, "
      "%d "
      "with those beside it, %d with the whole room, %d past saving, %d not known\n",
      name, count, 1000 * figures.seconds[count / 2], 1000 * figures.seconds[count * 9 / 10],
      figures.widths[0], figures.widths[1], figures.widths[2], figures.lost, figures.unknown);
}

}  // namespace

int main(int argc, char** argv) {
  bench::ClassroomOptions class_options;
  class_options.day = kDay;
  const Problem problem = bench::classroom(class_options);
  Options engine;
  engine.seconds = 3;
  engine.decide_pairs = false;
  engine.seed = argc > 1 ? std::strtoull(argv[1], nullptr, 10) : 1;
  const Schedule standing = solve(problem, engine).best;
  if (standing.empty()) {
    std::printf("no plan to begin with\n");
    return 1;
  }
  int teams = 0;
  for (const Activity& activity : problem.activities) teams = std::max(teams, activity.team + 1);
  Figures late, ovens;
  for (const Time now : {20, 35, 50, 65}) {
    for (int team = 0; team < teams; ++team)
      measure(behind(problem, standing, now, team), standing, now, {team}, late);
    for (int r = 0; r < static_cast<int>(problem.resources.size()); ++r) {
      if (problem.resources[at(r)].kind != ResourceKind::kSettings) continue;
      std::vector<int> concerned;
      const Problem changed = without_oven(problem, standing, now, r, concerned);
      if (!concerned.empty()) measure(changed, standing, now, concerned, ovens);
    }
  }
  print("a cook five minutes behind", late);
  print("an oven out for eight", ovens);
}
