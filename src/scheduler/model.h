// Turns a Problem, or a part of it, into variables and constraints of a Core, and solutions back
// into placements. Activities are free, fixed (constants) or ignored (left out, with every rule
// that needs them).
#pragma once

#include <cstdint>
#include <initializer_list>
#include <map>
#include <string>
#include <tuple>
#include <vector>

#include "scheduler/core.h"
#include "scheduler/exclusion.h"
#include "scheduler/mutant.h"
#include "scheduler/problem.h"
#include "scheduler/timetable.h"

namespace scheduler {

enum class Role : std::int8_t { kFree, kFixed, kIgnored };

struct Scope {
  std::vector<Role> roles;          ///< one an activity
  const Schedule* fixed = nullptr;  ///< placements of the kFixed ones
  bool relax = false;               ///< bounds: drop rules that an ignored activity could satisfy
  bool trust_fixed = false;         ///< the fixed part is known to satisfy the rules among itself
  /// level_bounds() of the problem; null = not known. Of use when nothing is ignored.
  const std::vector<std::int64_t>* least = nullptr;
  bool decide_pairs = true;  ///< as in Options
  /// exclusive_sets() of the problem; null = not looked for. Holds whatever is fixed or ignored.
  const std::vector<std::vector<InMode>>* apart = nullptr;
};

/// One summand of a level as the core sees it: weight * variable.
struct Soft {
  int term = -1;  ///< index in the level
  int weight = 1;
  int variable = 0;
};

struct LevelModel {
  std::int64_t constant = 0;  ///< value = constant + sum of softs
  std::vector<Soft> softs;
  int objective = -1;  ///< variable with objective >= value - constant; -1 = the level is constant
};

class Model {
 public:
  /// `proof`: told what variables and propagators mean, and every step; may be null.
  Model(const Problem& problem, const Scope& scope, Budget& budget, ProofSink* proof = nullptr);

  Core& core() { return core_; }
  const std::vector<LevelModel>& levels() const { return levels_; }
  /// The solution the core found last. Fixed activities as given, ignored ones absent.
  Schedule decode() const;
  /// Makes the core try this schedule's decisions first.
  void guide(const Schedule& schedule);
  /// Adds variable >= sum of the parts and returns it (goal bounds).
  int add_sum(const std::vector<int>& parts);
  /// [level value <= limit].
  Literal at_most_value(std::size_t level, std::int64_t limit) const;

 private:
  struct ActivityModel {
    Role role = Role::kIgnored;
    Point start, end;
    Literal present;
    Literal nonempty;
    std::vector<Literal> modes;
    std::vector<std::vector<std::vector<Literal>>> settings;  // [mode][use][choice]
  };
  /// A use of a resource by an activity or a span.
  struct Item {
    int owner = 0;  // activity, or number of activities + span
    Point start, end;
    Literal active, nonempty;
    const Use* use = nullptr;
    std::vector<int> settings;
    std::vector<Literal> setting_chosen;  // same order
    bool constant = false;
    Time least = 0;  // shortest length
  };
  struct Order {
    Point first, second;
    int gap;
    int variable;
  };

  // model.cpp
  void add_activities();
  void add_free(int index);
  void add_fixed(int index);
  void add_windows(int index);
  std::vector<Literal> choose_one(std::size_t count, Literal parent);
  void add_lags();
  void add_groups();
  Point point(Event event) const;
  bool ignored(Event event) const;
  Literal present(Event event) const;
  Literal both(Literal a, Literal b);
  Literal not_before(Point p, int value) const;
  Literal not_after(Point p, int value) const;
  Literal before(Point first, Point second, int gap = 0);
  void require_order(Point first, Point second, int gap, std::vector<Literal> guards, Site site);
  Literal nonempty(Point start, Point end, Time least);
  void clause(std::vector<Literal> literals, Site site = Site::kChoice);
  /// Tells the proof what a variable stands for, in words with numbers.
  void tell(int variable, const char* meaning, std::initializer_list<int> numbers) const;
  void tell_propagator(int source, const std::string& constraint) const;

  // model_resources.cpp
  void add_spans();
  void add_span_uses(int index, Literal present);
  std::vector<int> span_settings(const Span& span, const Use& use, int mode,
                                 std::vector<Literal>& chosen, Literal active) const;
  void collect_items();
  void add_item(Item item);
  void add_resources();
  void add_cumulative(const std::vector<const Item*>& items, int capacity, bool count_only);
  void add_exclusive(const std::vector<InMode>& set);
  void add_energy(const std::vector<TableItem>& table, const std::vector<int>& background,
                  int capacity, const std::string& name);
  void add_pairs(const Resource& resource, const std::vector<const Item*>& items);
  void add_pair(const Resource& resource, const Item& a, const Item& b);
  void add_setting_pair(const Resource& resource, const Item& a, const Item& b, bool never);
  void keep_apart(const Item& a, const Item& b, Literal when_a, Literal when_b, int gap_ab,
                  int gap_ba);
  void add_initial(const Resource& resource, const Item& item);
  void add_door(const Item& item, const Item& other);
  void add_soil(int resource, const Item& dirty, const Item& minding);
  Literal cleaned_between(int cleaner, const Item& dirty, const Item& minding);
  void find_order();
  bool known_before(Point first, Point second) const;

  // model_goals.cpp
  void add_goals();
  void add_term(LevelModel& level, int index, const Term& term);
  void add_excess(LevelModel& level, int index, const Term& term);
  void add_unit(LevelModel& level, int index, int weight, const std::vector<Literal>& unless);
  Point extreme(const std::vector<Event>& events, bool most, int allowance);

  const Problem& problem_;
  const Scope& scope_;
  Budget& budget_;
  ProofSink* const proof_;
  Core core_;
  Literal true_{};
  std::vector<ActivityModel> activities_;
  std::vector<std::vector<Item>> items_;  // by resource
  std::vector<Order> orders_;
  std::map<std::tuple<int, int, int>, int> order_index_;
  std::map<std::pair<Point, Point>, Literal> nonempty_;
  std::vector<int> node_of_;  // by variable, for known_before
  std::vector<std::vector<int>> reach_;
  std::vector<LevelModel> levels_;
};

}  // namespace scheduler
