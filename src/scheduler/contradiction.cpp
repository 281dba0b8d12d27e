// Positive cycles of lags by longest paths (Bellman and Ford): nodes are starts and ends, arcs are
// both sides of each lag and both sides of each duration.
#include <algorithm>

#include "base/index.h"

#include "scheduler/solve.h"

namespace scheduler {
namespace {

using base::at;

struct Arc {
  int from, to;
  std::int64_t length;
  int lag;  // -1: a duration
};

int node(Event event) { return 2 * event.activity + (event.side == Side::kEnd ? 1 : 0); }

std::vector<Arc> arcs_of(const Problem& problem) {
  std::vector<Arc> arcs;
  const auto optional = [&](Event event) {
    return problem.activities[at(event.activity)].optional;
  };
  for (int i = 0; i < static_cast<int>(problem.activities.size()); ++i) {
    const Activity& activity = problem.activities[at(i)];
    arcs.push_back({2 * i, 2 * i + 1, activity.duration_min, -1});
    arcs.push_back({2 * i + 1, 2 * i, -std::int64_t{activity.duration_max}, -1});
  }
  for (int l = 0; l < static_cast<int>(problem.lags.size()); ++l) {
    const Lag& lag = problem.lags[at(l)];
    if (optional(lag.from) || optional(lag.to))
      continue;  // void when absent: no contradiction by itself
    arcs.push_back({node(lag.from), node(lag.to), lag.min, l});
    if (lag.max != kNoLimit)
      arcs.push_back({node(lag.to), node(lag.from), -std::int64_t{lag.max}, l});
  }
  return arcs;
}

}  // namespace

std::optional<Contradiction> contradiction(const Problem& problem) {
  const std::vector<Arc> arcs = arcs_of(problem);
  const std::size_t nodes = 2 * problem.activities.size();
  std::vector<std::int64_t> longest(nodes, 0);
  std::vector<int> last(nodes, -1);  // arc that set the node
  int changed = -1;
  for (std::size_t pass = 0; pass <= nodes; ++pass) {
    changed = -1;
    for (int a = 0; a < static_cast<int>(arcs.size()); ++a) {
      const Arc& arc = arcs[at(a)];
      if (longest[at(arc.from)] + arc.length <= longest[at(arc.to)]) continue;
      longest[at(arc.to)] = longest[at(arc.from)] + arc.length;
      last[at(arc.to)] = a;
      changed = arc.to;
    }
    if (changed < 0) return std::nullopt;
  }
  // Still changing after as many passes as nodes: walking back far enough is on the cycle.
  int on_cycle = changed;
  for (std::size_t i = 0; i < nodes; ++i) on_cycle = arcs[at(last[at(on_cycle)])].from;
  Contradiction result;
  int walk = on_cycle;
  do {
    const Arc& arc = arcs[at(last[at(walk)])];
    if (arc.lag >= 0) result.lags.push_back(arc.lag);
    walk = arc.from;
  } while (walk != on_cycle);
  std::reverse(result.lags.begin(), result.lags.end());
  return result;
}

}  // namespace scheduler
