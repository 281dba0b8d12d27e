// Goal levels of a Model: each term becomes a variable bounded from below by what it measures, each
// level a sum.
#include <algorithm>
#include <stdexcept>

#include "base/index.h"
#include "scheduler/linear.h"
#include "scheduler/model.h"

namespace scheduler {
namespace {
using base::at;
constexpr std::int64_t kMaxValue = 1000000000;
}  // namespace

void Model::add_goals() {
  // The bounds speak of all uses of a resource, so nothing may be left out.
  const bool whole = std::none_of(
      activities_.begin(), activities_.end(),
      [](const ActivityModel& model) { return model.role == Role::kIgnored; });
  for (const GoalLevel& goal : problem_.goals) {
    LevelModel& level = levels_.emplace_back();
    for (std::size_t k = 0; k < goal.terms.size(); ++k) {
      if (goal.terms[k].weight != 0) add_term(level, static_cast<int>(k), goal.terms[k]);
    }
    if (level.softs.empty()) continue;
    std::vector<Summand> summands;
    std::int64_t most = 0;
    for (const Soft& soft : level.softs) {
      summands.push_back({soft.weight, 2 * soft.variable});
      most += static_cast<std::int64_t>(soft.weight) * core_.high(2 * soft.variable);
    }
    if (most > kMaxValue) throw std::invalid_argument("goal level too large: " + goal.name);
    level.objective = core_.new_variable(0, static_cast<int>(most), false);
    if (level.softs.size() == 1 && level.softs[0].weight == 1 && level.constant == 0)
      tell(level.objective, "sum", {level.softs[0].variable});
    summands.push_back({1, 2 * level.objective + 1});
    auto sum = std::make_unique<Linear>(std::move(summands), 0);
    const std::vector<int> sides = sum->sides();
    tell_propagator(core_.add_propagator(std::move(sum), sides), "sum");
    if (whole && scope_.least != nullptr) {
      const std::int64_t least = (*scope_.least)[levels_.size() - 1];
      clause({at_least(level.objective,
                       static_cast<int>(std::min(least, kMaxValue) - level.constant))});
    }
  }
}

void Model::add_term(LevelModel& level, int index, const Term& term) {
  if (term.kind == Term::Kind::kExcess) {
    add_excess(level, index, term);
    return;
  }
  const ActivityModel& model = activities_[at(term.activity)];
  if (model.role == Role::kIgnored) return;
  switch (term.kind) {
    case Term::Kind::kPresent:
      add_unit(level, index, term.weight, {!model.present});
      break;
    case Term::Kind::kMoved: {
      const Literal early = !not_before(model.start, term.at - term.tolerance);
      const Literal late = !not_after(model.start, term.at + term.tolerance);
      const Literal moved = at_least(core_.new_variable(0, 1, true), 1);
      clause({!model.present, !early, moved}, Site::kMoved);
      clause({!model.present, !late, moved}, Site::kMoved);
      add_unit(level, index, term.weight, {!moved});
      break;
    }
    case Term::Kind::kOutOfOrder: {
      const ActivityModel& other = activities_[at(term.other)];
      if (other.role == Role::kIgnored) return;
      add_unit(level, index, term.weight,
               {!model.present, !other.present, before(model.start, other.start)});
      break;
    }
    case Term::Kind::kMode: {
      const bool exists = term.at >= 0 && at(term.at) < model.modes.size();
      add_unit(level, index, term.weight,
               {!model.present, exists ? model.modes[at(term.at)] : !true_});
      break;
    }
    case Term::Kind::kExcess:
      break;
  }
}

// Costs `weight` unless one of the literals holds.
void Model::add_unit(LevelModel& level, int index, int weight, const std::vector<Literal>& unless) {
  bool all_false = true;
  for (const Literal literal : unless) {
    if (core_.is_true(literal)) return;
    all_false = all_false && core_.is_false(literal);
  }
  if (all_false) {
    level.constant += weight;
    return;
  }
  const int variable = core_.new_variable(0, 1, false);
  std::vector<Literal> literals = unless;
  literals.push_back(at_least(variable, 1));
  clause(std::move(literals), Site::kUnit);
  level.softs.push_back({index, weight, variable});
}

// The greatest (or least) of the present events: a bound of it, tight where the goal presses.
Point Model::extreme(const std::vector<Event>& events, bool most, int allowance) {
  std::vector<Event> seen;
  for (const Event event : events) {
    if (!ignored(event) && !core_.is_false(present(event))) seen.push_back(event);
  }
  if (seen.size() == 1 && core_.true_at_root(present(seen[0]))) return point(seen[0]);
  // With nobody present the term is 0, so the bound must be able to go where even a negative
  // allowance leaves no excess.
  const int beyond = std::abs(allowance);
  const int variable = core_.new_variable(most ? -beyond : 0,
                                          problem_.horizon + (most ? 0 : beyond), false);
  if (!most) core_.prefer_high(variable);
  for (const Event event : seen) {
    if (most)
      require_order(point(event), {variable, 0}, 0, {present(event)}, Site::kExtreme);
    else
      require_order({variable, 0}, point(event), 0, {present(event)}, Site::kExtreme);
  }
  return {variable, 0};
}

void Model::add_excess(LevelModel& level, int index, const Term& term) {
  const auto counts = [&](const std::vector<Event>& events) {
    return std::any_of(events.begin(), events.end(), [&](Event event) {
      return !ignored(event) && !core_.is_false(present(event));
    });
  };
  if (!counts(term.high) || (!term.low.empty() && !counts(term.low))) return;
  const Point high = extreme(term.high, true, term.allowance);
  const Point low = term.low.empty() ? Point{-1, 0} : extreme(term.low, false, term.allowance);
  if (high.variable == low.variable) {
    level.constant += static_cast<std::int64_t>(term.weight) *
                      std::max(0, high.offset - low.offset - term.allowance);
    return;
  }
  const int gap = high.offset - low.offset - term.allowance;
  const int variable = core_.new_variable(0, 3 * problem_.horizon + 3 * std::abs(gap) + 1, false);
  level.softs.push_back({index, term.weight, variable});
  if (low.variable < 0) {
    if (low.offset == 0) tell(variable, "above", {high.variable, gap});
    core_.add_arc(2 * high.variable, 2 * variable, gap, {});
  } else if (high.variable < 0) {
    core_.add_arc(2 * low.variable + 1, 2 * variable, gap, {});
  } else {
    // high - low - variable <= -gap
    auto sum = std::make_unique<Linear>(
        std::vector<Summand>{
            {1, 2 * high.variable}, {1, 2 * low.variable + 1}, {1, 2 * variable + 1}},
        -gap);
    const std::vector<int> sides = sum->sides();
    tell_propagator(core_.add_propagator(std::move(sum), sides), "sum");
  }
}

int Model::add_sum(const std::vector<int>& parts) {
  std::vector<Summand> summands;
  int most = 0;
  for (const int part : parts) {
    summands.push_back({1, 2 * part});
    most += core_.high(2 * part);
  }
  const int variable = core_.new_variable(0, most, false);
  summands.push_back({1, 2 * variable + 1});
  auto sum = std::make_unique<Linear>(std::move(summands), 0);
  const std::vector<int> sides = sum->sides();
  tell_propagator(core_.add_propagator(std::move(sum), sides), "sum");
  return variable;
}

Literal Model::at_most_value(std::size_t level, std::int64_t limit) const {
  const LevelModel& model = levels_[level];
  const std::int64_t rest = limit - model.constant;
  if (model.objective < 0) return rest >= 0 ? true_ : !true_;
  return at_most(model.objective, static_cast<int>(std::clamp<std::int64_t>(rest, -1, kMaxValue)));
}

}  // namespace scheduler
