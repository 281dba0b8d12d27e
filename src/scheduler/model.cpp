// Activities, lags and groups of a Model.
#include "scheduler/model.h"

#include <algorithm>
#include <stdexcept>
#include <string>

#include "base/index.h"

namespace scheduler {
namespace {
using base::at;

// Activities many others wait for: four times the lags of the mean, and ten at least.
std::vector<char> hubs_of(const Problem& problem) {
  std::vector<std::size_t> lags(problem.activities.size(), 0);
  for (const Lag& lag : problem.lags) {
    ++lags[at(lag.from.activity)];
    ++lags[at(lag.to.activity)];
  }
  std::vector<char> hubs;
  for (const std::size_t count : lags)
    hubs.push_back(count >= 10 && count * lags.size() >= 8 * problem.lags.size());
  return hubs;
}

}  // namespace

Model::Model(const Problem& problem, const Scope& scope, Budget& budget, ProofSink* proof)
    : problem_(problem), scope_(scope), budget_(budget), proof_(proof), core_(budget, proof) {
  true_ = at_least(core_.new_variable(1, 1, false), 1);
  tell(true_.side / 2, "one", {});
  activities_.resize(problem.activities.size());
  items_.resize(problem.resources.size());
  add_activities();
  add_lags();
  add_groups();
  find_order();
  collect_items();
  add_spans();
  add_resources();
  // A proof would have to say why no two of them overlap; it does without.
  if (scope.apart != nullptr && proof == nullptr) {
    for (const std::vector<InMode>& set : *scope.apart) add_exclusive(set);
  }
  add_goals();
}

void Model::clause(std::vector<Literal> literals, Site site) {
  spoil(site, literals);
  budget_.spend(1);
  core_.add_clause(std::move(literals));
}

void Model::tell(int variable, const char* meaning, std::initializer_list<int> numbers) const {
  if (proof_ == nullptr) return;
  std::string text = meaning;
  for (const int number : numbers) text += ' ' + std::to_string(number);
  proof_->variable(variable, text);
}

void Model::tell_propagator(int source, const std::string& constraint) const {
  if (proof_ != nullptr) proof_->propagator(source, constraint);
}

Literal Model::not_before(Point p, int value) const {
  if (p.variable >= 0) return at_least(p.variable, value - p.offset);
  return p.offset >= value ? true_ : !true_;
}

Literal Model::not_after(Point p, int value) const { return !not_before(p, value + 1); }

Literal Model::before(Point first, Point second, int gap) {
  if (first.variable < 0) return not_before(second, first.offset + gap);
  if (second.variable < 0) return not_after(first, second.offset - gap);
  const int distance = first.offset + gap - second.offset;
  if (first.variable == second.variable) return distance <= 0 ? true_ : !true_;
  const auto [entry, fresh] = order_index_.try_emplace({first.variable, second.variable, distance},
                                                       0);
  if (fresh) {
    entry->second = core_.new_variable(0, 1, true);
    tell(entry->second, "order", {first.variable, second.variable, distance});
    orders_.push_back({first, second, gap, entry->second});
    core_.add_arc(2 * first.variable, 2 * second.variable, distance, {at_least(entry->second, 1)});
  }
  return at_least(entry->second, 1);
}

void Model::require_order(Point first, Point second, int gap, std::vector<Literal> guards,
                          Site site) {
  if (first.variable >= 0 && second.variable >= 0 && first.variable != second.variable) {
    spoil(site, guards);
    core_.add_arc(2 * first.variable, 2 * second.variable, first.offset + gap - second.offset,
                  guards);
    return;
  }
  for (Literal& guard : guards) guard = !guard;
  guards.push_back(before(first, second, gap));
  clause(std::move(guards), site);
}

Literal Model::both(Literal a, Literal b) {
  if (core_.true_at_root(a) || a == b) return b;
  if (core_.true_at_root(b)) return a;
  const Literal result = at_least(core_.new_variable(0, 1, true), 1);
  clause({!a, !b, result}, Site::kBoth);
  clause({!result, a}, Site::kBoth);
  clause({!result, b}, Site::kBoth);
  return result;
}

Literal Model::nonempty(Point start, Point end, Time least) {
  if (least > 0) return true_;
  const auto [entry, fresh] = nonempty_.try_emplace({start, end}, true_);
  if (fresh) {
    entry->second = at_least(core_.new_variable(0, 1, true), 1);
    require_order(end, start, 0, {!entry->second}, Site::kNonempty);
  }
  return entry->second;
}

std::vector<Literal> Model::choose_one(std::size_t count, Literal parent) {
  if (count == 1) return {parent};
  std::vector<Literal> chosen;
  if (count == 2 && core_.true_at_root(parent)) {
    const Literal second = at_least(core_.new_variable(0, 1, true), 1);
    return {!second, second};
  }
  for (std::size_t k = 0; k < count; ++k) {
    chosen.push_back(at_least(core_.new_variable(0, 1, true), 1));
    clause({!chosen[k], parent});
    for (std::size_t j = 0; j < k; ++j) clause({!chosen[j], !chosen[k]});
  }
  std::vector<Literal> some = chosen;
  some.push_back(!parent);
  clause(std::move(some));
  return chosen;
}

void Model::add_activities() {
  const std::vector<char> hubs = hubs_of(problem_);
  std::vector<BranchItem> branching;
  for (int i = 0; i < static_cast<int>(activities_.size()); ++i) {
    ActivityModel& model = activities_[at(i)];
    model.role = scope_.roles[at(i)];
    model.present = model.nonempty = !true_;
    if (model.role == Role::kIgnored) continue;
    if (model.role == Role::kFixed) {
      add_fixed(i);
      add_windows(i);
      continue;
    }
    add_free(i);
    add_windows(i);
    BranchItem item;
    item.hub = hubs[at(i)] != 0;
    item.present = model.present;
    if (model.modes.size() > 1) item.choices = model.modes;
    for (const auto& uses : model.settings) {
      for (const auto& choices : uses) {
        if (choices.size() > 1)
          item.choices.insert(item.choices.end(), choices.begin(), choices.end());
      }
    }
    item.start_side = 2 * model.start.variable;
    if (model.end.variable != model.start.variable) item.end_side = 2 * model.end.variable;
    branching.push_back(std::move(item));
  }
  core_.set_branching(std::move(branching));
}

void Model::add_free(int index) {
  const Activity& activity = problem_.activities[at(index)];
  ActivityModel& model = activities_[at(index)];
  model.present = activity.optional ? at_least(core_.new_variable(0, 1, true), 1) : true_;
  Time low = std::max(0, activity.earliest);
  Time high = std::min(problem_.horizon, activity.latest_end);
  if (high - low < activity.duration_min) {
    // No room at all: absent, or no schedule.
    clause({!model.present});
    low = 0;
    high = std::max(problem_.horizon, activity.duration_min);
  } else if (activity.optional) {
    low = 0;  // windows bind the present activity only, see add_windows
    high = problem_.horizon;
  }
  const int start = core_.new_variable(low, high - activity.duration_min, true);
  tell(start, "start", {index});
  core_.set_owner(start, model.present);
  model.start = {start, 0};
  model.end = {start, activity.duration_min};
  if (activity.duration_max > activity.duration_min) {
    const int end = core_.new_variable(low + activity.duration_min, high, true);
    tell(end, "end", {index});
    core_.set_owner(end, model.present);
    model.end = {end, 0};
    core_.add_arc(2 * start, 2 * end, activity.duration_min, {});
    core_.add_arc(2 * end, 2 * start, -activity.duration_max, {});
  }
  model.nonempty = activity.duration_max == 0
                       ? !true_
                       : nonempty(model.start, model.end, activity.duration_min);
  model.modes = choose_one(activity.modes.size(), model.present);
  for (std::size_t m = 0; m < activity.modes.size(); ++m) {
    auto& of_mode = model.settings.emplace_back();
    for (const Use& use : activity.modes[m].uses) {
      of_mode.push_back(use.settings.empty() ? std::vector<Literal>{}
                                             : choose_one(use.settings.size(), model.modes[m]));
    }
  }
}

void Model::add_fixed(int index) {
  const Activity& activity = problem_.activities[at(index)];
  const Placement& placement = (*scope_.fixed)[at(index)];
  ActivityModel& model = activities_[at(index)];
  model.present = placement.present ? true_ : !true_;
  model.start = {-1, placement.start};
  model.end = {-1, placement.start + placement.duration};
  model.nonempty = placement.duration > 0 ? true_ : !true_;
  model.settings.resize(activity.modes.size());
  for (std::size_t m = 0; m < activity.modes.size(); ++m) {
    const bool chosen = placement.present && at(placement.mode) == m;
    model.modes.push_back(chosen ? true_ : !true_);
    for (std::size_t u = 0; u < activity.modes[m].uses.size(); ++u) {
      auto& choices = model.settings[m].emplace_back();
      for (const int setting : activity.modes[m].uses[u].settings) {
        choices.push_back(chosen && placement.settings[u] == setting ? true_ : !true_);
      }
    }
  }
}

void Model::add_windows(int index) {
  const Activity& activity = problem_.activities[at(index)];
  const ActivityModel& model = activities_[at(index)];
  if (!activity.optional && model.role == Role::kFree) return;  // in the domains
  if (model.role == Role::kFixed && scope_.trust_fixed) return;
  clause({!model.present, not_before(model.start, std::max(0, activity.earliest))}, Site::kWindow);
  clause({!model.present, not_after(model.end, std::min(problem_.horizon, activity.latest_end))},
         Site::kWindow);
}

Point Model::point(Event event) const {
  const ActivityModel& model = activities_[at(event.activity)];
  return event.side == Side::kStart ? model.start : model.end;
}

bool Model::ignored(Event event) const {
  return activities_[at(event.activity)].role == Role::kIgnored;
}

Literal Model::present(Event event) const { return activities_[at(event.activity)].present; }

void Model::add_lags() {
  for (const Lag& lag : problem_.lags) {
    if (ignored(lag.from) || ignored(lag.to)) continue;
    const Point from = point(lag.from), to = point(lag.to);
    if (from.variable < 0 && to.variable < 0 && scope_.trust_fixed) continue;
    const std::vector<Literal> guards{present(lag.from), present(lag.to)};
    require_order(from, to, lag.min, guards, Site::kLag);
    if (lag.max != kNoLimit) require_order(to, from, -lag.max, guards, Site::kLag);
  }
}

void Model::add_groups() {
  for (const std::vector<int>& group : problem_.same_mode) {
    std::vector<Literal> shared;  // [the group uses mode k]
    for (const int member : group) {
      const std::vector<Literal>& modes = activities_[at(member)].modes;
      while (shared.size() < modes.size()) {
        const Literal fresh = at_least(core_.new_variable(0, 1, true), 1);
        for (const Literal other : shared) clause({!other, !fresh}, Site::kSameMode);
        shared.push_back(fresh);
      }
      for (std::size_t k = 0; k < modes.size(); ++k)
        clause({!modes[k], shared[k]}, Site::kSameMode);
    }
  }
  for (const std::vector<int>& group : problem_.exactly_one) {
    std::vector<Literal> some;
    bool open = false;
    for (const int member : group) {
      const ActivityModel& model = activities_[at(member)];
      if (model.role == Role::kIgnored) open = open || scope_.relax;
      for (const Literal other : some) clause({!other, !model.present}, Site::kExactlyOne);
      some.push_back(model.present);
    }
    if (!open) clause(std::move(some), Site::kExactlyOne);
  }
  for (const Blocked& blocked : problem_.blocked) {
    for (const int i : blocked.activities) {
      const ActivityModel& model = activities_[at(i)];
      if (model.role == Role::kIgnored) continue;
      clause({!model.present, !model.nonempty, not_after(model.end, blocked.from),
              not_before(model.start, blocked.to)},
             Site::kBlocked);
    }
  }
}

Schedule Model::decode() const {
  Schedule schedule(activities_.size());
  const std::vector<int>& values = core_.solution();
  for (std::size_t i = 0; i < activities_.size(); ++i) {
    const ActivityModel& model = activities_[i];
    Placement& placement = schedule[i];
    if (model.role == Role::kFixed) {
      placement = (*scope_.fixed)[i];
      continue;
    }
    placement.present = model.role == Role::kFree && core_.solution_holds(model.present);
    if (!placement.present) continue;
    placement.start = values[at(model.start.variable)] + model.start.offset;
    placement.duration = values[at(model.end.variable)] + model.end.offset - placement.start;
    for (std::size_t m = 0; m < model.modes.size(); ++m) {
      if (core_.solution_holds(model.modes[m])) placement.mode = static_cast<int>(m);
    }
    const std::vector<Use>& uses = problem_.activities[i].modes[at(placement.mode)].uses;
    for (std::size_t u = 0; u < uses.size(); ++u) {
      int chosen = -1;
      for (std::size_t k = 0; k < uses[u].settings.size(); ++k) {
        if (core_.solution_holds(model.settings[at(placement.mode)][u][k]))
          chosen = uses[u].settings[k];
      }
      placement.settings.push_back(chosen);
    }
  }
  return schedule;
}

void Model::guide(const Schedule& schedule) {
  const auto suggest = [&](Literal literal, bool truth) {
    // Only Booleans are guided here; a literal's variable may also be a constant.
    if (truth == (literal.side % 2 == 0))
      core_.set_phase(literal.side / 2, 1);
    else
      core_.set_phase(literal.side / 2, 0);
  };
  std::vector<int> value(at(core_.variable_count()), 0);
  for (std::size_t i = 0; i < activities_.size(); ++i) {
    const ActivityModel& model = activities_[i];
    if (model.role != Role::kFree) continue;
    const Placement& placement = schedule[i];
    suggest(model.present, placement.present);
    value[at(model.start.variable)] = placement.start;
    if (model.end.variable != model.start.variable)
      value[at(model.end.variable)] = placement.start + placement.duration;
    for (std::size_t m = 0; m < model.modes.size(); ++m) {
      const bool used = placement.present && at(placement.mode) == m;
      suggest(model.modes[m], used);
      const std::vector<Use>& uses = problem_.activities[i].modes[m].uses;
      for (std::size_t u = 0; u < uses.size(); ++u) {
        for (std::size_t k = 0; k < uses[u].settings.size(); ++k) {
          suggest(model.settings[m][u][k], used && u < placement.settings.size() &&
                                               placement.settings[u] == uses[u].settings[k]);
        }
      }
    }
    core_.set_phase(model.start.variable, placement.start);
    if (model.end.variable != model.start.variable) {
      core_.set_phase(model.end.variable, placement.start + placement.duration);
    }
  }
  for (const Order& order : orders_) {
    const int first = value[at(order.first.variable)] + order.first.offset;
    const int second = value[at(order.second.variable)] + order.second.offset;
    core_.set_phase(order.variable, first + order.gap <= second ? 1 : 0);
  }
}

}  // namespace scheduler
