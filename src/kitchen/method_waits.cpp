// Do the waits of a method contradict each other? The starts and ends of its steps form a network
// of least and most times; a round trip with a positive sum is a contradiction, and is told in
// kitchen words.
#include <algorithm>

#include "kitchen/method.h"

namespace kitchen {

using base::in_quotes;
using base::say;

namespace {

/// One rule of the network: t(to) >= t(from) + length. Moments are numbered 2 * step (start) and 2
/// * step + 1 (end).
struct Arc {
  int from = 0;
  int to = 0;
  Seconds length{0};
  enum class Why : std::int8_t { kTakes, kTakesAtMost, kLeastWait, kMostWait } why = Why::kTakes;
  Follows wait;  // of kLeastWait, kMostWait
  int step = 0;  // whose minutes or whose wait
};

int moment(int step, Moment m) { return 2 * step + (m == Moment::kEnd ? 1 : 0); }

std::vector<Arc> arcs_of(const std::vector<Step>& steps) {
  std::vector<Arc> arcs;
  for (std::size_t k = 0; k < steps.size(); ++k) {
    const int i = static_cast<int>(k);
    const Step& step = steps[k];
    arcs.push_back({moment(i, Moment::kStart),
                    moment(i, Moment::kEnd),
                    base::grid_up(step.least),
                    Arc::Why::kTakes,
                    {},
                    i});
    arcs.push_back({moment(i, Moment::kEnd),
                    moment(i, Moment::kStart),
                    -base::grid_up(step.most),
                    Arc::Why::kTakesAtMost,
                    {},
                    i});
    for (const Follows& wait : step.follows) {
      const int other = moment(wait.step, wait.of);
      const int own = moment(i, wait.moment);
      arcs.push_back({other, own, base::grid_up(wait.least), Arc::Why::kLeastWait, wait, i});
      if (wait.most)
        arcs.push_back({own, other, -base::grid_down(*wait.most), Arc::Why::kMostWait, wait, i});
    }
  }
  return arcs;
}

/// The arcs of one contradiction in their order, or none (Bellman and Ford's longest path).
std::vector<Arc> contradiction(const std::vector<Arc>& arcs, std::size_t moments) {
  std::vector<Seconds> at(moments, Seconds{0});
  std::vector<int> by(moments, -1);
  int last = -1;
  for (std::size_t round = 0; round <= moments; ++round) {
    last = -1;
    for (std::size_t k = 0; k < arcs.size(); ++k) {
      const Seconds reached = at[static_cast<std::size_t>(arcs[k].from)] + arcs[k].length;
      if (reached <= at[static_cast<std::size_t>(arcs[k].to)]) continue;
      at[static_cast<std::size_t>(arcs[k].to)] = reached;
      by[static_cast<std::size_t>(arcs[k].to)] = static_cast<int>(k);
      last = arcs[k].to;
    }
    if (last < 0) return {};
  }
  const auto arc_into = [&](int m) -> const Arc& {
    return arcs[static_cast<std::size_t>(by[static_cast<std::size_t>(m)])];
  };
  for (std::size_t i = 0; i < moments; ++i) last = arc_into(last).from;  // surely on the cycle now
  std::vector<Arc> cycle;
  int m = last;
  do {
    cycle.push_back(arc_into(m));
    m = cycle.back().from;
  } while (m != last);
  std::reverse(cycle.begin(), cycle.end());
  return cycle;
}

class Telling {
 public:
  Telling(const std::vector<Step>& steps, std::vector<Arc> cycle)
      : steps_(steps), cycle_(std::move(cycle)) {}

  std::string sentence() {
    const auto limit = [](const Arc& arc) { return arc.why == Arc::Why::kMostWait; };
    const auto limits = std::count_if(cycle_.begin(), cycle_.end(), limit);
    if (limits == 0 && std::none_of(cycle_.begin(), cycle_.end(),
                                    [](const Arc& a) { return a.why == Arc::Why::kTakesAtMost; }))
      return circle();
    if (limits == 1) {
      std::rotate(cycle_.begin(), std::find_if(cycle_.begin(), cycle_.end(), limit), cycle_.end());
      return one_limit();
    }
    std::vector<std::string> parts;
    for (const Arc& arc : cycle_) {
      if (std::string part = clause(arc); !part.empty()) parts.push_back(std::move(part));
    }
    return say("These waits contradict each other: ", base::joined(parts), ".");
  }

 private:
  const std::vector<Step>& steps_;
  std::vector<Arc> cycle_;

  std::string id(int step) const { return in_quotes(steps_[static_cast<std::size_t>(step)].id); }

  std::string circle() const {
    std::vector<std::string> parts;
    for (const Arc& arc : cycle_) {
      if (arc.why == Arc::Why::kLeastWait)
        parts.push_back(say(id(arc.step), " waits for ", id(arc.wait.step)));
    }
    return say("The steps wait for each other in a circle: ", base::joined(parts),
               ". None of them could ever start.");
  }

  std::string limit_clause(const Arc& arc) const {
    const Follows& w = arc.wait;
    return say(id(arc.step), " must ", w.moment == Moment::kStart ? "start" : "end", " within ",
               base::minutes_text(-arc.length), " of ", id(w.step),
               w.of == Moment::kEnd ? " ending" : " starting");
  }

  std::string clause(const Arc& arc) const {
    switch (arc.why) {
      case Arc::Why::kTakes:
        return say(id(arc.step), " takes ", base::minutes_text(arc.length));
      case Arc::Why::kTakesAtMost:
        return say(id(arc.step), " takes at most ", base::minutes_text(-arc.length));
      case Arc::Why::kMostWait:
        return limit_clause(arc);
      case Arc::Why::kLeastWait:
        if (arc.length == Seconds{0}) return {};
        return say(id(arc.step), " waits at least ", base::minutes_text(arc.length), " after ",
                   id(arc.wait.step));
    }
    return {};
  }

  /// "'bake' must start within 15 min of 'shape' ending, but 'prove' between them takes 20 min."
  std::string one_limit() const {
    std::vector<std::string> between;
    const Arc& limit = cycle_.front();
    for (std::size_t k = 1; k < cycle_.size(); ++k) {
      const Arc& arc = cycle_[k];
      if (arc.why == Arc::Why::kTakes && arc.step != limit.step && arc.step != limit.wait.step) {
        between.push_back(
            say(id(arc.step), " between them takes ", base::minutes_text(arc.length)));
      } else if (std::string part = clause(arc); !part.empty()) {
        between.push_back(std::move(part));
      }
    }
    return say(limit_clause(limit), ", but ", base::joined(between), ".");
  }
};

}  // namespace

void check_waits(Reader& reader, const Method& method) {
  bool sound = true;
  for (std::size_t i = 0; i < method.steps.size(); ++i) {
    for (const Follows& wait : method.steps[i].follows) {
      if (!wait.most || base::grid_up(wait.least) <= base::grid_down(*wait.most)) continue;
      sound = false;
      const bool rounded = wait.least <= *wait.most;
      const std::string other = in_quotes(method.steps[static_cast<std::size_t>(wait.step)].id);
      reader.add(
          "dish.step.wait_least_over_most", method.where[i],
          say("The step ", in_quotes(method.steps[i].id), " waits at least ",
              base::number_text(static_cast<double>(wait.least.count()) / 60), " min and at most ",
              base::number_text(static_cast<double>(wait.most->count()) / 60), " min for ", other,
              rounded ? say("; in whole minutes that is at least ",
                            base::minutes_text(base::grid_up(wait.least)), " and at most ",
                            base::minutes_text(base::grid_down(*wait.most)), ".")
                      : "."),
          "Make the longest wait at least as long as the shortest, in whole minutes.");
    }
  }
  if (!sound) return;
  const std::vector<Arc> cycle = contradiction(arcs_of(method.steps), 2 * method.steps.size());
  if (cycle.empty()) return;
  reader.add("dish.method.contradiction",
             method.where[static_cast<std::size_t>(cycle.front().step)],
             Telling(method.steps, cycle).sentence(),
             "Lengthen the limit, shorten what lies between, or change what follows what.");
}

}  // namespace kitchen
