// The case before the judge: a lesson, a plan, what follows from the lesson alone, and what was
// found against the plan.
//
// "Aisha and Ben cook the second half of the pie, so they take it out of store first": such facts
// are worked out here once, from the lesson, never from the plan's tasks. Tasks are looked up by
// what they are, not by where they stand.
#pragma once

#include <compare>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "timeplan/plan.h"

namespace timeplan::judge {

using base::Seconds;

/// A length of time with both ends: `[from, to)`.
struct Span {
  Seconds from{0}, to{0};
  friend bool operator==(const Span&, const Span&) = default;
};
inline bool overlap(const Span& a, const Span& b) { return a.from < b.to && b.from < a.to; }

/// What a task is, apart from when and with what. Fields that say nothing for a kind are -1 (part:
/// 0).
struct Key {
  TaskKind kind = TaskKind::kStep;
  int cook = -1;
  int dish = -1;
  int step = -1;
  int part = 0;
  int other = -1;  ///< window, bay or kit item
  friend auto operator<=>(const Key&, const Key&) = default;
};
/// The key of a task of the plan. A kit wash is known by its dish and item, whatever step it names.
Key key_of(const Task&);

/// Which part of a dish this lesson cooks (rule C1).
struct Half {
  const kitchen::Split* split = nullptr;  ///< nothing: the whole dish
  bool second = false;
  std::vector<bool> here;    ///< for each step of the method
  std::vector<int> reading;  ///< the steps cooked here, in reading order
  bool first() const { return split != nullptr && !second; }
};

/// Everything the checks share. Facts are filled by the constructor; `find`, `clean_downs` and
/// `full_cleans` by match_tasks() (expected.h). Every later check looks only at tasks found there.
class Case {
 public:
  Case(const kitchen::Lesson&, const Plan&);

  const kitchen::Lesson& lesson;
  const Plan& plan;
  std::vector<Half> halves;  ///< one a dish
  std::vector<int> line;     ///< one a cook; equal = one timeline (rule Y1)
  std::vector<double> pace;  ///< one a cook: the slowest of its line
  std::vector<int> wave;     ///< one a cook
  std::map<Key, int> tasks;  ///< index into Plan::tasks of every task that should exist and does
  std::vector<int> clean_downs;  ///< indices into Plan::tasks
  std::vector<int> full_cleans;  ///< indices into Plan::tasks
  std::vector<Violation> found;

  /// Notes a broken rule. `from` and `to` say when.
  void report(std::string rule, std::string message, std::vector<int> which, Span when);

  const Task& task(int index) const { return plan.tasks[static_cast<std::size_t>(index)]; }
  const kitchen::Cook& cook(int c) const { return lesson.cooks[static_cast<std::size_t>(c)]; }
  const kitchen::Dish& dish(int d) const { return lesson.dishes[static_cast<std::size_t>(d)]; }
  const kitchen::Step& step(int d, int s) const {
    return dish(d).method[static_cast<std::size_t>(s)];
  }
  const kitchen::Place& place_of(int c) const;
  const Half& half(int d) const { return halves[static_cast<std::size_t>(d)]; }
  int cooks() const { return static_cast<int>(lesson.cooks.size()); }

  /// Index of the task of that key, or nothing.
  std::optional<int> find(const Key&) const;
  /// The parts there are of a step, in order (one unless P1 splits it).
  std::vector<int> parts(int cook, int dish, int step) const;
  /// From the start of its first part to the end of its last; nothing when the plan lacks the step.
  std::optional<Span> span(int cook, int dish, int step) const;
  /// When a dish of a cook is ready (rule S1).
  std::optional<Seconds> ready(int cook, int dish) const;
  /// The parts of a cook's wash-up there are, in order.
  std::vector<int> wash_up(int cook) const;
  /// Every task of a cook that should exist and does, cleaning included, in the order of the plan.
  std::vector<int> of_cook(int cook) const;
  /// Every such task of the plan, adults' ones and windows included.
  std::vector<int> all() const;
  /// When the window stands in the plan, if it does.
  std::optional<Span> window(int w) const;
  /// Does the window concern the cook?
  bool in_audience(int w, int cook) const;
  /// When a cook must have washed up (rule K5).
  Seconds due(int cook) const;

  /// "10:50".
  std::string at(Seconds) const;
  /// "10:50 to 10:56".
  std::string at(Span) const;
  /// "Dice onion of the Lentil dhal", "washing up, part 2".
  std::string what(int task) const;
  /// "Aisha and Ben: Dice onion of the Lentil dhal, 10:50 to 10:56".
  std::string label(int task) const;

 private:
  void cut_halves();
  void draw_lines();
};

inline Span when(const Task& t) { return {t.start, t.end}; }
/// Whole minutes, for messages: "6 min".
std::string minutes_text(Seconds);

}  // namespace timeplan::judge
