// The model is a plain reading of problem.h by reified comparisons, minute by minute for the
// resources, and shares nothing with the engine but the problem type.
#include "gecode_model.h"
#include "base/index.h"

#include <gecode/int.hh>
#include <gecode/minimodel.hh>
#include <gecode/search.hh>

#include <algorithm>
#include <memory>

namespace scheduler::testing {
namespace {

using Gecode::BoolExpr;
using Gecode::BoolVar;
using Gecode::BoolVarArgs;
using Gecode::expr;
using Gecode::IntVar;
using Gecode::IntVarArgs;
using Gecode::IntVarArray;
using Gecode::LinIntExpr;
using Gecode::rel;

using base::at;

/// A use in force over [start, end) while `on`.
struct GecodeUse {
  int owner;
  IntVar start, end;
  BoolVar on;
  const Use* use;
  std::optional<IntVar> setting;
};

class GecodeModel : public Gecode::Space {
 public:
  GecodeModel(const Problem& problem, const std::vector<std::int64_t>& before) {
    const int count = static_cast<int>(problem.activities.size());
    for (int i = 0; i < count; ++i) add_activity(problem, i);
    add_lags(problem);
    add_groups(problem);
    std::vector<std::vector<GecodeUse>> uses(problem.resources.size());
    add_uses(problem, uses);
    add_spans(problem, uses);
    for (std::size_t r = 0; r < uses.size(); ++r)
      add_resource(problem, static_cast<int>(r), uses[r]);
    add_goals(problem, before);
    IntVarArgs all;
    for (int i = 0; i < count; ++i)
      all << present_int_[at(i)] << mode_[at(i)] << start_[at(i)] << end_[at(i)];
    for (const IntVar& z : settings_) all << z;
    decisions_ = IntVarArray(*this, all);
    Gecode::branch(*this, decisions_, Gecode::INT_VAR_NONE(), Gecode::INT_VAL_MIN());
  }

  GecodeModel(GecodeModel& other) : Space(other) {
    decisions_.update(*this, other.decisions_);
    cost_.update(*this, other.cost_);
  }
  Gecode::Space* copy() override { return new GecodeModel(*this); }
  void constrain(const Gecode::Space& best) override {
    rel(*this, cost_, Gecode::IRT_LE, static_cast<const GecodeModel&>(best).cost_.val());
  }
  int cost() const { return cost_.val(); }

 private:
  BoolVar yes() { return BoolVar(*this, 1, 1); }
  IntVar time(Event e) {
    return e.side == Side::kStart ? start_[at(e.activity)] : end_[at(e.activity)];
  }
  BoolVar present(int i) { return present_[at(i)]; }

  void add_activity(const Problem& problem, int i) {
    const Activity& a = problem.activities[at(i)];
    BoolVar p(*this, a.optional ? 0 : 1, 1);
    IntVar start(*this, 0, problem.horizon), end(*this, 0, problem.horizon);
    IntVar mode(*this, 0, static_cast<int>(a.modes.size()) - 1);
    IntVar duration = expr(*this, end - start);
    rel(*this, p >> (duration >= a.duration_min && duration <= a.duration_max));
    rel(*this, p >> (start >= a.earliest && end <= std::min(a.latest_end, problem.horizon)));
    rel(*this, !p >> (start == 0 && end == 0 && mode == 0));
    IntVar as_int(*this, 0, 1);
    Gecode::channel(*this, p, as_int);
    present_.push_back(p);
    present_int_.push_back(as_int);
    start_.push_back(start);
    end_.push_back(end);
    mode_.push_back(mode);
  }

  void add_lags(const Problem& problem) {
    for (const Lag& lag : problem.lags) {
      const BoolVar on = expr(*this, present(lag.from.activity) && present(lag.to.activity));
      rel(*this, on >> (time(lag.to) - time(lag.from) >= lag.min));
      if (lag.max != kNoLimit) rel(*this, on >> (time(lag.to) - time(lag.from) <= lag.max));
    }
    for (const Blocked& blocked : problem.blocked) {
      for (const int i : blocked.activities) {
        rel(*this, !present(i) || start_[at(i)] == end_[at(i)] || end_[at(i)] <= blocked.from ||
                       start_[at(i)] >= blocked.to);
      }
    }
  }

  void add_groups(const Problem& problem) {
    for (const auto& group : problem.same_mode) {
      for (const int i : group) {
        for (const int j : group)
          rel(*this, (present(i) && present(j)) >> (mode_[at(i)] == mode_[at(j)]));
      }
    }
    for (const auto& group : problem.exactly_one) {
      IntVarArgs members;
      for (const int i : group) members << present_int_[at(i)];
      Gecode::linear(*this, members, Gecode::IRT_EQ, 1);
    }
  }

  void add_uses(const Problem& problem, std::vector<std::vector<GecodeUse>>& uses) {
    for (int i = 0; i < static_cast<int>(problem.activities.size()); ++i) {
      const Activity& a = problem.activities[at(i)];
      for (int m = 0; m < static_cast<int>(a.modes.size()); ++m) {
        const BoolVar on = expr(*this,
                                present(i) && mode_[at(i)] == m && end_[at(i)] > start_[at(i)]);
        for (const Use& use : a.modes[at(m)].uses) {
          std::optional<IntVar> z;
          if (!use.settings.empty()) {
            z = IntVar(*this,
                       Gecode::IntSet(use.settings.data(), static_cast<int>(use.settings.size())));
            settings_.push_back(*z);
          }
          uses[at(use.resource)].push_back({i, start_[at(i)], end_[at(i)], on, &use, z});
        }
      }
    }
  }

  void add_spans(const Problem& problem, std::vector<std::vector<GecodeUse>>& uses) {
    for (std::size_t s = 0; s < problem.spans.size(); ++s) {
      const Span& span = problem.spans[s];
      const BoolVar held = expr(*this, present(span.from.activity) && present(span.to.activity));
      const IntVar from = time(span.from), to = time(span.to);
      rel(*this, held >> (from <= to));
      for (const int i : span.excludes) {
        rel(*this, !held || !present(i) || start_[at(i)] == end_[at(i)] || end_[at(i)] <= from ||
                       start_[at(i)] >= to);
      }
      for (int m = 0; m < static_cast<int>(span.uses_by_mode.size()); ++m) {
        BoolVar on = expr(*this, held && from < to);
        if (span.like) on = expr(*this, on && present(*span.like) && mode_[at(*span.like)] == m);
        const int owner = static_cast<int>(problem.activities.size() + s);
        for (const Use& use : span.uses_by_mode[at(m)]) {
          uses[at(use.resource)].push_back({owner, from, to, on, &use, std::nullopt});
        }
      }
    }
  }

  void add_resource(const Problem& problem, int r, const std::vector<GecodeUse>& uses) {
    const Resource& resource = problem.resources[at(r)];
    for (Time t = 0; t < problem.horizon; ++t) {
      BoolVarArgs in;
      Gecode::IntArgs amounts;
      for (const GecodeUse& u : uses) {
        in << expr(*this, u.on && u.start <= t && u.end > t);
        amounts << u.use->amount;
      }
      if (in.size() == 0) return;
      Gecode::linear(*this, amounts, in, Gecode::IRT_LQ, resource.capacity);
      for (const Limit& limit : resource.limits) {
        BoolVarArgs hazardous;
        for (int k = 0; k < in.size(); ++k) {
          if (uses[at(k)].use->hazard == limit.hazard) hazardous << in[k];
        }
        if (hazardous.size() > 0) Gecode::linear(*this, hazardous, Gecode::IRT_LQ, limit.at_once);
      }
    }
    for (const GecodeUse& u : uses) {
      if (resource.kind == ResourceKind::kSettings) add_initial(resource, u);
      for (const GecodeUse& w : uses) {
        if (u.owner == w.owner) continue;
        if (resource.kind == ResourceKind::kSettings) add_setting_pair(resource, u, w);
        if (resource.kind == ResourceKind::kSoiling) add_soil_pair(problem, r, u, w);
      }
    }
  }

  void add_initial(const Resource& resource, const GecodeUse& u) {
    if (!resource.initial || !u.setting) return;
    for (const int z : u.use->settings) {
      const int gap = resource.change[at(*resource.initial)][at(z)];
      rel(*this, (u.on && *u.setting == z) >> (u.start >= gap));
    }
  }

  void add_setting_pair(const Resource& resource, const GecodeUse& u, const GecodeUse& w) {
    if (u.setting && w.setting) {
      for (const int x : u.use->settings) {
        for (const int y : w.use->settings) {
          if (x == y) continue;
          rel(*this, (u.on && w.on && *u.setting == x && *w.setting == y) >>
                         (u.end + resource.change[at(x)][at(y)] <= w.start ||
                          w.end + resource.change[at(y)][at(x)] <= u.start));
        }
      }
    }
    const int shut = u.use->door_shut;
    if (shut == 0) return;
    for (const IntVar& t : {w.start, w.end}) {
      rel(*this, (u.on && w.on) >> (t <= u.start || t >= u.start + shut));
    }
  }

  void add_soil_pair(const Problem& problem, int r, const GecodeUse& u, const GecodeUse& w) {
    if ((u.use->overlaps_not & w.use->kind_bit) != 0) {
      rel(*this, (u.on && w.on) >> (u.end <= w.start || w.end <= u.start));
    }
    const int bits = u.use->soil & w.use->minds;
    if (bits == 0) return;
    BoolVar fine = expr(*this, w.end <= u.start);
    for (int c = 0; c < static_cast<int>(problem.activities.size()); ++c) {
      const Activity& cleaner = problem.activities[at(c)];
      if (!cleaner.cleans || *cleaner.cleans != r || (bits & ~cleaner.cleans_bits) != 0) continue;
      fine = expr(*this, fine || (present(c) && start_[at(c)] >= u.end && end_[at(c)] <= w.start));
    }
    rel(*this, (u.on && w.on) >> fine);
  }

  IntVar excess(const Problem& problem, const Term& term) {
    IntVar value(*this, 0, 3 * problem.horizon + 10);
    const int big = 4 * problem.horizon;
    const auto extreme = [&](const std::vector<Event>& events, bool most) {
      IntVarArgs times;
      for (const Event e : events) {
        IntVar t(*this, -big, big);
        Gecode::ite(*this, present(e.activity), time(e),
                    IntVar(*this, most ? -big : big, most ? -big : big), t);
        times << t;
      }
      IntVar result(*this, -big, big);
      if (most)
        Gecode::max(*this, times, result);
      else
        Gecode::min(*this, times, result);
      return result;
    };
    if (term.high.empty()) return IntVar(*this, 0, 0);
    const IntVar high = extreme(term.high, true);
    const IntVar low = term.low.empty() ? IntVar(*this, 0, 0) : extreme(term.low, false);
    // Absent sides stand far out, so that the difference is negative and the term 0.
    const IntVar raw = expr(*this, high - low - term.allowance);
    Gecode::max(*this, raw, IntVar(*this, 0, 0), value);
    return value;
  }

  LinIntExpr unit(const Problem& problem, const Term& term) {
    const int i = term.activity;
    BoolVar b = present(i);
    switch (term.kind) {
      case Term::Kind::kMoved:
        b = expr(*this, b && (start_[at(i)] > term.at + term.tolerance ||
                              start_[at(i)] < term.at - term.tolerance));
        break;
      case Term::Kind::kOutOfOrder:
        b = expr(*this, b && present(term.other) && start_[at(i)] > start_[at(term.other)]);
        break;
      case Term::Kind::kMode:
        b = expr(*this, b && mode_[at(i)] != term.at);
        break;
      case Term::Kind::kExcess:
        return LinIntExpr(excess(problem, term));
      case Term::Kind::kPresent:
        break;
    }
    return LinIntExpr(b);
  }

  void add_goals(const Problem& problem, const std::vector<std::int64_t>& before) {
    for (std::size_t l = 0; l <= before.size(); ++l) {
      LinIntExpr sum(0);
      for (const Term& term : problem.goals[l].terms) sum = sum + term.weight * unit(problem, term);
      const IntVar value = expr(*this, sum);
      if (l < before.size())
        rel(*this, value, Gecode::IRT_EQ, static_cast<int>(before[l]));
      else
        cost_ = value;
    }
  }

  std::vector<BoolVar> present_;
  std::vector<IntVar> present_int_, start_, end_, mode_, settings_;
  IntVarArray decisions_;
  IntVar cost_;
};

}  // namespace

std::optional<std::vector<std::int64_t>> gecode_optimum(const Problem& problem) {
  std::vector<std::int64_t> values;
  for (std::size_t l = 0; l < problem.goals.size(); ++l) {
    auto root = std::make_unique<GecodeModel>(problem, values);
    Gecode::BAB<GecodeModel> engine(root.get());
    std::optional<int> best;
    while (GecodeModel* solution = engine.next()) {
      best = solution->cost();
      delete solution;
    }
    if (!best) return std::nullopt;
    values.push_back(*best);
  }
  return values;
}

}  // namespace scheduler::testing
