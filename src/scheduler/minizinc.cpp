#include "scheduler/minizinc.h"

#include <algorithm>
#include <cstdlib>
#include <optional>
#include <stdexcept>

#include "base/index.h"
#include "scheduler/level_weights.h"
#include "scheduler/validate.h"

namespace scheduler {
namespace {

/// What Gecode can count to: a little less than 2^31.
constexpr std::int64_t kMostOfAll = std::numeric_limits<std::int32_t>::max() - 1;

using base::at;

std::string text(std::int64_t number) { return std::to_string(number); }

std::string joined(const std::vector<std::string>& parts, const std::string& between) {
  std::string all;
  for (const std::string& part : parts) all += (all.empty() ? "" : between) + part;
  return all;
}

std::string list(const std::vector<std::string>& parts) { return "[" + joined(parts, ", ") + "]"; }

/// A use in force from start to end while `on`; all three are names or expressions of the model.
struct Held {
  int owner;  // activity, or number of activities + span
  std::string start, end, on;
  std::string setting;        // empty: none
  std::vector<int> settings;  // what it may be
  const Use* use;
};

class Writer {
 public:
  explicit Writer(const Problem& problem)
      : problem_(problem),
        weights_(level_weights(problem, kMostOfAll)),
        held_(problem.resources.size()) {}

  /// `level` counts from 1; 0 is all levels at once.
  std::string write(std::size_t level, const std::vector<std::int64_t>& before) {
    write_head(level, before);
    for (int i = 0; i < count(); ++i) write_activity(i);
    for (const Lag& lag : problem_.lags) write_lag(lag);
    for (const Blocked& blocked : problem_.blocked) write_blocked(blocked);
    write_groups();
    for (int i = 0; i < count(); ++i) collect_uses(i);
    for (std::size_t s = 0; s < problem_.spans.size(); ++s) write_span(s);
    for (std::size_t r = 0; r < problem_.resources.size(); ++r) write_resource(static_cast<int>(r));
    write_goals();
    return out_;
  }

 private:
  int count() const { return static_cast<int>(problem_.activities.size()); }
  void line(const std::string& words) { out_ += words + "\n"; }
  void demand(const std::string& condition) { line("constraint " + condition + ";"); }

  static std::string of(const std::string& name, int i) { return name + "[" + text(i) + "]"; }
  static std::string start(int i) { return of("s", i); }
  static std::string end(int i) { return of("e", i); }
  static std::string time(Event e) {
    return e.side == Side::kStart ? start(e.activity) : end(e.activity);
  }
  /// Empty for what is always there: the model stays readable.
  std::string present(int i) const { return problem_.activities[at(i)].optional ? of("p", i) : ""; }

  static std::string all_of(const std::vector<std::string>& conditions) {
    std::vector<std::string> said;
    for (const std::string& c : conditions) {
      if (!c.empty()) said.push_back(c);
    }
    return said.empty() ? "true" : joined(said, " /\\ ");
  }
  static std::string when(const std::vector<std::string>& conditions, const std::string& then) {
    const std::string premise = all_of(conditions);
    return premise == "true" ? then : "(" + premise + ") -> (" + then + ")";
  }
  static std::string apart(const std::string& start_a, const std::string& end_a,
                           const std::string& start_b, const std::string& end_b, Time gap_ab = 0,
                           Time gap_ba = 0) {
    return end_a + " + " + text(gap_ab) + " <= " + start_b + " \\/ " + end_b + " + " +
           text(gap_ba) + " <= " + start_a;
  }

  void write_head(std::size_t level, const std::vector<std::int64_t>& before) {
    line("% " + text(count()) + " activities, " +
         text(static_cast<int>(problem_.resources.size())) +
         " resources. Times are in the problem's units.");
    line(
        "% s, e, p, m: start, end, presence, mode of each activity. The level to minimise, and "
        "what");
    line(weights_ ? "% the levels before it may be at most; level 0: all at once, in their order."
                  : "% the levels before it may be at most:");
    std::vector<std::string> limits;
    for (std::size_t l = 0; l + 1 < level; ++l) limits.push_back(text(before[l]));
    line("int: level = " + text(static_cast<std::int64_t>(level)) + ";");
    line("array[int] of int: at_most = " + list(limits) + ";");
    line("include \"cumulative.mzn\";");
    int modes = 1;
    for (const Activity& a : problem_.activities)
      modes = std::max(modes, static_cast<int>(a.modes.size()));
    const std::string range = "array[0.." + text(count() - 1) + "] of var ";
    line("int: horizon = " + text(problem_.horizon) + ";");
    line(range + "0..horizon: s;\n" + range + "0..horizon: e;");
    line(range + "bool: p;\n" + range + "0.." + text(modes - 1) + ": m;");
  }

  void write_activity(int i) {
    const Activity& a = problem_.activities[at(i)];
    if (!a.name.empty()) line("% " + text(i) + " " + one_line(a.name));
    const std::string p = present(i);
    if (p.empty())
      demand(of("p", i));
    else
      demand("not " + p + " -> (" + start(i) + " = 0 /\\ " + end(i) + " = 0 /\\ " + of("m", i) +
             " = 0)");
    const std::string length = end(i) + " - " + start(i);
    demand(when({p}, a.duration_min == a.duration_max
                         ? length + " = " + text(a.duration_min)
                         : length + " in " + text(a.duration_min) + ".." + text(a.duration_max)));
    demand(when({p}, start(i) + " >= " + text(a.earliest) + " /\\ " + end(i) +
                         " <= " + text(std::min(a.latest_end, problem_.horizon))));
    demand(of("m", i) + " <= " + text(static_cast<int>(a.modes.size()) - 1));
  }

  static std::string one_line(std::string words) {
    std::replace(words.begin(), words.end(), '\n', ' ');
    return words;
  }

  void write_lag(const Lag& lag) {
    const std::vector<std::string> both{present(lag.from.activity), present(lag.to.activity)};
    const std::string between = time(lag.to) + " - " + time(lag.from);
    demand(when(both, between + " >= " + text(lag.min)));
    if (lag.max != kNoLimit) demand(when(both, between + " <= " + text(lag.max)));
  }

  void write_blocked(const Blocked& blocked) {
    for (const int i : blocked.activities) {
      demand(when({present(i)}, start(i) + " = " + end(i) + " \\/ " + end(i) +
                                    " <= " + text(blocked.from) + " \\/ " + start(i) +
                                    " >= " + text(blocked.to)));
    }
  }

  void write_groups() {
    for (const auto& group : problem_.same_mode) {
      for (const int i : group) {
        for (const int j : group) {
          if (i < j) demand(when({present(i), present(j)}, of("m", i) + " = " + of("m", j)));
        }
      }
    }
    for (const auto& group : problem_.exactly_one) {
      std::vector<std::string> members;
      for (const int i : group) members.push_back("bool2int(" + of("p", i) + ")");
      demand("sum(" + list(members) + ") = 1");
    }
  }

  std::string named(const std::string& type, const std::string& name, const std::string& is) {
    line("var " + type + ": " + name + (is.empty() ? "" : " = " + is) + ";");
    return name;
  }

  void hold(int owner, const std::string& from, const std::string& to, const std::string& on,
            const Use& use, bool with_setting) {
    const std::string number = text(uses_++);
    std::string setting;
    if (with_setting && !use.settings.empty()) {
      std::vector<std::string> allowed;
      for (const int z : use.settings) allowed.push_back(text(z));
      setting = named("{" + joined(allowed, ", ") + "}", "z" + number, "");
    }
    held_[at(use.resource)].push_back(
        {owner, from, to, named("bool", "on" + number, on), setting, use.settings, &use});
  }

  void collect_uses(int i) {
    const Activity& a = problem_.activities[at(i)];
    for (std::size_t m = 0; m < a.modes.size(); ++m) {
      const std::string chosen = a.modes.size() == 1
                                     ? ""
                                     : of("m", i) + " = " + text(static_cast<std::int64_t>(m));
      const std::string lasting = a.duration_min > 0 ? "" : end(i) + " > " + start(i);
      for (const Use& use : a.modes[m].uses)
        hold(i, start(i), end(i), all_of({present(i), chosen, lasting}), use, true);
    }
  }

  void write_span(std::size_t index) {
    const Span& span = problem_.spans[index];
    const std::string from = time(span.from), to = time(span.to);
    const std::vector<std::string> both{present(span.from.activity), present(span.to.activity)};
    demand(when(both, from + " <= " + to));
    for (const int i : span.excludes) {
      demand(when({both[0], both[1], present(i)},
                  start(i) + " = " + end(i) + " \\/ " + apart(start(i), end(i), from, to)));
    }
    for (std::size_t m = 0; m < span.uses_by_mode.size(); ++m) {
      std::vector<std::string> on{both[0], both[1], from + " < " + to};
      if (span.like) {
        on.push_back(present(*span.like));
        on.push_back(of("m", *span.like) + " = " + text(static_cast<std::int64_t>(m)));
      }
      for (const Use& use : span.uses_by_mode[m]) {
        hold(count() + static_cast<int>(index), from, to, all_of(on), use, false);
        Held& held = held_[at(use.resource)].back();
        if (use.settings.size() == 1)
          held.setting = text(use.settings[0]);
        else if (span.like)
          follow(*span.like, m, held);
      }
    }
  }

  /// A span without a setting of its own holds the one chosen by the activity it is like.
  void follow(int like, std::size_t mode, Held& held) const {
    const std::vector<Use>& uses = problem_.activities[at(like)].modes[mode].uses;
    for (const Held& h : held_[at(held.use->resource)]) {
      const bool of_this_mode = h.use >= uses.data() && h.use < uses.data() + uses.size();
      if (h.owner != like || !of_this_mode || h.setting.empty()) continue;
      held.setting = h.setting;
      held.settings = h.settings;
      return;
    }
  }

  void write_resource(int index) {
    const Resource& resource = problem_.resources[at(index)];
    const std::vector<Held>& held = held_[at(index)];
    if (held.empty()) return;
    if (!resource.name.empty()) line("% resource " + text(index) + " " + one_line(resource.name));
    write_cumulative(held, -1, resource.capacity);
    for (const Limit& limit : resource.limits) write_cumulative(held, limit.hazard, limit.at_once);
    for (const Held& a : held) {
      if (resource.kind == ResourceKind::kSettings) write_initial(resource, a);
      for (const Held& b : held) {
        if (a.owner == b.owner) continue;
        if (resource.kind == ResourceKind::kSettings) write_settings(resource, a, b);
        if (resource.kind == ResourceKind::kSoiling) write_soil(index, a, b);
      }
    }
  }

  /// A span that is not held may end before it starts.
  std::string length(const Held& held) const {
    if (held.owner < count()) {
      const Activity& a = problem_.activities[at(held.owner)];
      if (a.duration_min == a.duration_max) return text(a.duration_min);
    }
    return "max(0, " + held.end + " - " + held.start + ")";
  }

  /// hazard -1: amounts; otherwise the number of uses of that hazard.
  void write_cumulative(const std::vector<Held>& held, int hazard, int capacity) {
    std::vector<std::string> starts, lengths, amounts;
    for (const Held& h : held) {
      const int amount = hazard < 0 ? h.use->amount : h.use->hazard == hazard ? 1 : 0;
      if (amount == 0) continue;
      starts.push_back(h.start);
      lengths.push_back(length(h));
      amounts.push_back(text(amount) + " * bool2int(" + h.on + ")");
    }
    if (starts.empty()) return;
    demand("cumulative(" + list(starts) + ",\n  " + list(lengths) + ",\n  " + list(amounts) + ", " +
           text(capacity) + ")");
  }

  void write_initial(const Resource& resource, const Held& a) {
    if (!resource.initial || a.setting.empty()) return;
    for (const int z : a.settings) {
      const Time gap = resource.change[at(*resource.initial)][at(z)];
      if (gap > 0) demand(when({a.on, a.setting + " = " + text(z)}, a.start + " >= " + text(gap)));
    }
  }

  void write_settings(const Resource& resource, const Held& a, const Held& b) {
    if (a.owner < b.owner && !a.setting.empty() && !b.setting.empty()) {
      for (const int x : a.settings) {
        for (const int y : b.settings) {
          if (x == y) continue;
          demand(when({a.on, b.on, a.setting + " = " + text(x), b.setting + " = " + text(y)},
                      apart(a.start, a.end, b.start, b.end, resource.change[at(x)][at(y)],
                            resource.change[at(y)][at(x)])));
        }
      }
    }
    if (a.use->door_shut == 0) return;
    for (const std::string& moment : {b.start, b.end}) {
      demand(when({a.on, b.on}, moment + " <= " + a.start + " \\/ " + moment + " >= " + a.start +
                                    " + " + text(a.use->door_shut)));
    }
  }

  void write_soil(int resource, const Held& dirty, const Held& minding) {
    if ((dirty.use->overlaps_not & minding.use->kind_bit) != 0) {
      demand(
          when({dirty.on, minding.on}, apart(dirty.start, dirty.end, minding.start, minding.end)));
    }
    const int bits = dirty.use->soil & minding.use->minds;
    if (bits == 0) return;
    std::string fine = minding.end + " <= " + dirty.start;
    for (int c = 0; c < count(); ++c) {
      const Activity& cleaner = problem_.activities[at(c)];
      if (!cleaner.cleans || *cleaner.cleans != resource || (bits & ~cleaner.cleans_bits) != 0)
        continue;
      fine += " \\/ (" +
              all_of({present(c), start(c) + " >= " + dirty.end, end(c) + " <= " + minding.start}) +
              ")";
    }
    demand(when({dirty.on, minding.on}, fine));
  }

  /// The greatest (least) time of those present; absent ones stand far out.
  std::string extreme(const std::vector<Event>& events, bool most, Time allowance) const {
    if (events.empty()) return "0";
    // Far enough that a term with a side that is absent is 0, whatever is allowed.
    const std::int64_t out = 2 * std::int64_t{problem_.horizon} +
                             std::abs(std::int64_t{allowance}) + 1;
    const std::string far = text(most ? -out : out);
    std::vector<std::string> times;
    for (const Event e : events) {
      const std::string p = present(e.activity);
      times.push_back(p.empty() ? time(e)
                                : "if " + p + " then " + time(e) + " else " + far + " endif");
    }
    return times.size() == 1 ? "(" + times[0] + ")" : (most ? "max(" : "min(") + list(times) + ")";
  }

  std::string measure(const Term& term) const {
    const int i = term.activity;
    switch (term.kind) {
      case Term::Kind::kExcess:
        if (term.high.empty()) return "0";
        return "max(0, " + extreme(term.high, true, term.allowance) + " - " +
               extreme(term.low, false, term.allowance) + " - " + text(term.allowance) + ")";
      case Term::Kind::kPresent:
        return "bool2int(" + of("p", i) + ")";
      case Term::Kind::kMoved:
        return "bool2int(" +
               all_of({present(i),
                       "abs(" + start(i) + " - " + text(term.at) + ") > " + text(term.tolerance)}) +
               ")";
      case Term::Kind::kOutOfOrder:
        return "bool2int(" +
               all_of({present(i), present(term.other), start(i) + " > " + start(term.other)}) +
               ")";
      case Term::Kind::kMode:
        return "bool2int(" + all_of({present(i), of("m", i) + " != " + text(term.at)}) + ")";
    }
    return "0";
  }

  void write_goals() {
    std::vector<std::string> levels;
    const std::vector<std::int64_t> most = most_of_levels(problem_);
    for (std::size_t l = 0; l < problem_.goals.size(); ++l) {
      const GoalLevel& goal = problem_.goals[l];
      std::vector<std::string> parts;
      for (const Term& term : goal.terms) {
        if (term.weight != 0) parts.push_back(text(term.weight) + " * " + measure(term));
      }
      line("% level " + text(static_cast<std::int64_t>(l) + 1) + " " + one_line(goal.name));
      levels.push_back(named("0.." + text(most[l]),
                             "level" + text(static_cast<std::int64_t>(l) + 1),
                             parts.empty() ? "0" : joined(parts, " +\n  ")));
    }
    // No order of search: by earliest start, the plainest one, Gecode found nothing for lessons it
    // solves in an order of its own.
    if (levels.empty()) return line("solve satisfy;");
    line("array[int] of var int: levels = " + list(levels) + ";");
    line("constraint forall (l in index_set(at_most)) (levels[l] <= at_most[l]);");
    write_sum();
    line("solve minimize goal;");
    line("output [\"levels = \\(levels)\\ns = \\(s)\\ne = \\(e)\\np = \\(p)\\nm = \\(m)\\n\"];");
  }

  void write_sum() {
    if (!weights_) return line("var int: goal = levels[level];");
    std::vector<std::string> weights;
    for (const std::int64_t weight : *weights_) weights.push_back(text(weight));
    line("array[int] of int: weight = " + list(weights) + ";");
    line("var int: goal = if level = 0 then sum (l in index_set(levels)) (weight[l] * levels[l])");
    line("  else levels[level] endif;");
  }

  const Problem& problem_;
  std::optional<std::vector<std::int64_t>> weights_;
  std::vector<std::vector<Held>> held_;  // by resource
  int uses_ = 0;
  std::string out_;
};

}  // namespace

std::string minizinc(const Problem& problem, std::size_t level,
                     const std::vector<std::int64_t>& before) {
  validate(problem);
  if (!problem.goals.empty() && level >= problem.goals.size())
    throw std::invalid_argument("there is no such goal level");
  if (problem.goals.empty()) level = 0;
  if (before.size() < level)
    throw std::invalid_argument("each level before the one to minimise needs a value");
  return Writer(problem).write(level + 1, before);
}

std::string minizinc(const Problem& problem) {
  validate(problem);
  if (!problem.goals.empty() && !level_weights(problem, kMostOfAll)) {
    throw std::invalid_argument(
        "the goal levels do not fit one number below 2^31, or one has a band: ask for them one by "
        "one");
  }
  return Writer(problem).write(0, {});
}

}  // namespace scheduler
