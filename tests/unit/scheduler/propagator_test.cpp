// Every propagator against its plain reading on tiny spaces, see tiny.h.
#include <gtest/gtest.h>

#include <algorithm>
#include <memory>

#include "scheduler/edge_finding.h"
#include "scheduler/energy.h"
#include "scheduler/linear.h"
#include "scheduler/random.h"
#include "scheduler/timetable.h"
#include "tiny.h"

namespace scheduler::testing {
namespace {

constexpr std::uint64_t kSpaces = 300;

int value_of(Point p, const std::vector<int>& values) {
  return p.offset + (p.variable < 0 ? 0 : values[static_cast<std::size_t>(p.variable)]);
}

bool holds(Literal literal, const std::vector<int>& values) {
  const int value = values[static_cast<std::size_t>(literal.side / 2)];
  return (literal.side % 2 == 0 ? value : -value) >= literal.value;
}

// --- cumulative resource ---

enum class Shape { kPlain, kElastic, kOptional, kAnything };

/// Uses of one resource; `always` of them means that a use has no literal of its own.
struct Cumulative {
  std::vector<std::pair<int, int>> domains;
  std::vector<TableItem> items;
  std::vector<int> background;
  int capacity = 2;

  bool satisfied(const std::vector<int>& values) const {
    for (const TableItem& item : items) {
      if (value_of(item.end, values) < value_of(item.start, values) + item.least) return false;
    }
    for (int t = 0; t < static_cast<int>(background.size()); ++t) {
      int sum = background[static_cast<std::size_t>(t)];
      for (const TableItem& item : items) {
        if (holds(item.active, values) && value_of(item.start, values) <= t &&
            t < value_of(item.end, values))
          sum += item.amount;
      }
      if (sum > capacity) return false;
    }
    return true;
  }

  /// What the model says besides: a use lasts at least so long.
  void post_lengths(Core& core) const {
    for (const TableItem& item : items) {
      if (item.start.variable < 0 || item.end.variable < 0) continue;
      if (item.start.variable == item.end.variable) continue;
      core.add_arc(2 * item.start.variable, 2 * item.end.variable,
                   item.start.offset + item.least - item.end.offset, {});
    }
  }
};

class CumulativeMaker {
 public:
  CumulativeMaker(std::uint64_t seed, Shape shape) : random_(seed), shape_(shape) {}

  Cumulative make(bool alike) {
    Cumulative result;
    result.capacity = 2 + random_.below(3);
    const int length = 1 + random_.below(3), amount = 1 + random_.below(2);
    const int always = add(result, 1, 1);
    while (result.domains.size() < 6 && result.items.size() < 5) {
      TableItem item;
      item.amount = alike ? amount : 1 + random_.below(result.capacity);
      item.least = alike ? length : 1 + random_.below(4);
      item.active = at_least(always, 1);
      add_times(result, item);
      if ((shape_ == Shape::kOptional || shape_ == Shape::kAnything) && random_.below(2) == 0 &&
          result.domains.size() < 6) {
        const int choice = add(result, 0, 1);
        item.active = random_.below(3) == 0 ? at_most(choice, 0) : at_least(choice, 1);
      }
      result.items.push_back(item);
    }
    if (shape_ == Shape::kAnything) add_span(result, at_least(always, 1));
    int end = 0;
    for (const TableItem& item : result.items) {
      const int variable = item.end.variable;
      end = std::max(
          end, item.end.offset +
                   (variable < 0 ? 0 : result.domains[static_cast<std::size_t>(variable)].second));
    }
    for (int t = 0; t <= end; ++t) result.background.push_back(random_.below(5) == 0 ? 1 : 0);
    return result;
  }

 private:
  static int add(Cumulative& to, int low, int high) {
    to.domains.push_back({low, high});
    return static_cast<int>(to.domains.size()) - 1;
  }

  void add_times(Cumulative& to, TableItem& item) {
    const int from = random_.below(3);
    const bool elastic = (shape_ == Shape::kElastic || shape_ == Shape::kAnything) &&
                         random_.below(2) == 0 && to.domains.size() + 2 <= 5;
    if (shape_ == Shape::kAnything && random_.below(6) == 0) {
      item.start = {-1, from};
      item.end = {-1, from + item.least};
      return;
    }
    const int start = add(to, from, from + 2 + random_.below(4));
    item.start = {start, random_.below(4) == 0 ? 1 : 0};
    item.end = {start, item.start.offset + item.least};
    if (elastic) item.end = {add(to, from + item.least, from + item.least + 3), 1};
  }

  /// From the end of one use to the end of another: may be empty or the wrong way round.
  void add_span(Cumulative& to, Literal always) {
    TableItem span;
    span.start = to.items.front().end;
    span.end = to.items.back().end;
    span.active = always;
    span.least = -100;
    to.items.push_back(span);
  }

  Random random_;
  Shape shape_;
};

/// The propagators to be looked at, added to the core.
using Post = std::function<void(Core&, const Cumulative&)>;

std::function<Tiny(std::uint64_t)> cumulative(Shape shape, bool alike, bool decides, int watched,
                                              const Post& post) {
  return [=](std::uint64_t seed) {
    const Cumulative uses = CumulativeMaker(seed, shape).make(alike);
    Tiny tiny;
    tiny.domains = uses.domains;
    tiny.decides = decides;
    tiny.watched = watched;
    tiny.satisfied = [uses](const std::vector<int>& values) { return uses.satisfied(values); };
    tiny.post = [uses, post](Core& core) {
      uses.post_lengths(core);
      post(core, uses);
    };
    return tiny;
  };
}

std::vector<TableItem> with_least_of_nothing(std::vector<TableItem> items) {
  for (TableItem& item : items) item.least = std::max(0, item.least);
  return items;
}

void post_table(Core& core, const Cumulative& uses) {
  auto table = std::make_unique<Timetable>(with_least_of_nothing(uses.items), uses.background,
                                           uses.capacity);
  const std::vector<int> sides = table->sides();
  core.add_propagator(std::move(table), sides);
}

void post_edges(Core& core, const Cumulative& uses) {
  auto table = std::make_unique<Timetable>(with_least_of_nothing(uses.items), uses.background,
                                           uses.capacity);
  auto edges = std::make_unique<EdgeFinding>(*table);
  const std::vector<int> sides = table->sides();
  core.add_propagator(std::move(table), sides);
  core.add_propagator(std::move(edges), sides, true);
}

void post_energy(Core& core, const Cumulative& uses, bool alike) {
  auto energy = std::make_unique<Energy>(with_least_of_nothing(uses.items), uses.background,
                                         uses.capacity, alike);
  const std::vector<int> sides = energy->sides();
  core.add_propagator(std::move(energy), sides);
}

class cumulative_of : public ::testing::TestWithParam<Shape> {};

TEST_P(cumulative_of, time_table_says_what_every_minute_says) {
  const TinyCount count = compare_all("time table",
                                      cumulative(GetParam(), false, true, 0, post_table), kSpaces);
  EXPECT_GT(count.prunings, 3000);
  EXPECT_GT(count.learnt, 1000);
}

TEST_P(cumulative_of, edge_finding_says_nothing_that_a_minute_denies) {
  const TinyCount count = compare_all(
      "edge finding", cumulative(GetParam(), false, true, 1, post_edges), 3 * kSpaces);
  EXPECT_GT(count.watched, 500);
  EXPECT_GT(count.learnt, 1000);
}

TEST_P(cumulative_of, overload_check_says_nothing_that_a_minute_denies) {
  const Post post = [](Core& core, const Cumulative& uses) { post_energy(core, uses, false); };
  const TinyCount count = compare_all("overload", cumulative(GetParam(), false, false, 0, post),
                                      kSpaces);
  EXPECT_GT(count.conflicts, 300);
}

TEST_P(cumulative_of, overload_check_of_whole_uses_says_nothing_that_a_minute_denies) {
  if (GetParam() == Shape::kAnything) return;  // spans are not alike
  const Post post = [](Core& core, const Cumulative& uses) { post_energy(core, uses, true); };
  const TinyCount count = compare_all("overload, whole uses",
                                      cumulative(GetParam(), true, false, 0, post), kSpaces);
  EXPECT_GT(count.conflicts, 300);
}

INSTANTIATE_TEST_SUITE_P(shapes, cumulative_of,
                         ::testing::Values(Shape::kPlain, Shape::kElastic, Shape::kOptional,
                                           Shape::kAnything),
                         [](const auto& info) -> std::string {
                           switch (info.param) {
                             case Shape::kPlain:
                               return "plain";
                             case Shape::kElastic:
                               return "elastic";
                             case Shape::kOptional:
                               return "optional";
                             case Shape::kAnything:
                               break;
                           }
                           return "anything";
                         });

// --- sums ---

Tiny weighted_sum(std::uint64_t seed) {
  Random random(seed);
  Tiny tiny;
  std::vector<Summand> summands;
  std::int64_t least = 0, most = 0;
  // Few wide variables or many narrow ones.
  const bool narrow = seed % 3 == 0;
  const int count = narrow ? 7 : 3 + random.below(3);
  for (int variable = 0; variable < count; ++variable) {
    const int low = random.below(5) - 2, high = low + random.below(narrow ? 3 : 6);
    tiny.domains.push_back({low, high});
    const Summand summand{1 + random.below(4), 2 * variable + random.below(2)};
    summands.push_back(summand);
    least += summand.weight * (summand.side % 2 == 0 ? low : -high);
    most += summand.weight * (summand.side % 2 == 0 ? high : -low);
  }
  const std::int64_t limit = least + random.below(static_cast<int>(most - least) + 1) - 1;
  tiny.satisfied = [=](const std::vector<int>& values) {
    std::int64_t sum = 0;
    for (const Summand& summand : summands) {
      const int value = values[static_cast<std::size_t>(summand.side / 2)];
      sum += summand.weight * (summand.side % 2 == 0 ? value : -value);
    }
    return sum <= limit;
  };
  tiny.post = [=](Core& core) {
    auto sum = std::make_unique<Linear>(summands, limit);
    const std::vector<int> sides = sum->sides();
    core.add_propagator(std::move(sum), sides);
  };
  return tiny;
}

TEST(linear, says_what_the_sum_says) {
  const TinyCount count = compare_all("linear sum", weighted_sum, kSpaces);
  EXPECT_GT(count.prunings, 3000);
  EXPECT_GT(count.learnt, 1000);
}

// --- arcs and clauses ---

struct Rules {
  struct Arc {
    int from, to, distance;
    std::vector<Literal> guards;
  };
  std::vector<Arc> arcs;
  std::vector<std::vector<Literal>> clauses;

  bool satisfied(const std::vector<int>& values) const {
    const auto side = [&](int s) {
      const int value = values[static_cast<std::size_t>(s / 2)];
      return s % 2 == 0 ? value : -value;
    };
    for (const Arc& arc : arcs) {
      const bool on = std::all_of(arc.guards.begin(), arc.guards.end(),
                                  [&](Literal guard) { return holds(guard, values); });
      if (on && side(arc.to) < side(arc.from) + arc.distance) return false;
    }
    return std::all_of(clauses.begin(), clauses.end(), [&](const std::vector<Literal>& clause) {
      return std::any_of(clause.begin(), clause.end(),
                         [&](Literal literal) { return holds(literal, values); });
    });
  }
  void post(Core& core) const {
    for (const Arc& arc : arcs) core.add_arc(arc.from, arc.to, arc.distance, arc.guards);
    for (const std::vector<Literal>& clause : clauses) core.add_clause(clause);
  }
};

Tiny with_rules(std::vector<std::pair<int, int>> domains, const Rules& rules) {
  Tiny tiny;
  tiny.domains = std::move(domains);
  tiny.satisfied = [rules](const std::vector<int>& values) { return rules.satisfied(values); };
  tiny.post = [rules](Core& core) { rules.post(core); };
  return tiny;
}

Tiny guarded_arcs(std::uint64_t seed) {
  Random random(seed);
  Rules rules;
  for (int k = 2 + random.below(5); k > 0; --k) {
    const int from = random.below(3), to = (from + 1 + random.below(2)) % 3;
    const int mirror = random.below(8) == 0 ? 1 : 0;  // of a sum: to - (-from)
    Rules::Arc arc{2 * from + mirror, 2 * to, random.below(6) - 2, {}};
    if (mirror == 1) arc.distance += 2;
    for (int g = random.below(3); g > 0; --g)
      arc.guards.push_back(random.below(3) == 0 ? at_most(2 + g, 0) : at_least(2 + g, 1));
    rules.arcs.push_back(arc);
  }
  return with_rules({{0, 5}, {0, 5}, {1, 5}, {0, 1}, {0, 1}}, rules);
}

TEST(arcs, with_guards_say_what_the_difference_says) {
  const TinyCount count = compare_all("guarded arcs", guarded_arcs, 2 * kSpaces);
  EXPECT_GT(count.prunings, 10000);
  EXPECT_GT(count.learnt, 1000);
}

/// Three uses that are never together: a Boolean each way, arcs switched by it, and a clause a
/// pair.
Tiny ordered_pairs(std::uint64_t seed) {
  Random random(seed);
  Rules rules;
  const int uses = 2, first = uses;
  std::vector<std::pair<int, int>> domains;
  for (int i = 0; i < uses; ++i) domains.push_back({random.below(2), 3 + random.below(3)});
  const int length_a = 1 + random.below(3), length_b = 1 + random.below(3);
  rules.arcs.push_back({0, 2, length_a + random.below(2), {at_least(first, 1)}});
  rules.arcs.push_back({2, 0, length_b + random.below(2), {at_least(first + 1, 1)}});
  rules.clauses.push_back({at_least(first, 1), at_least(first + 1, 1)});
  domains.insert(domains.end(), 2, {0, 1});
  if (random.below(2) == 0) {  // one of them may be absent
    rules.clauses.back().push_back(at_most(first + 2, 0));
    domains.push_back({0, 1});
  }
  return with_rules(domains, rules);
}

TEST(pairs, one_after_the_other_say_what_the_order_says) {
  const TinyCount count = compare_all("ordered pairs", ordered_pairs, kSpaces);
  EXPECT_GT(count.prunings, 1000);
}

Tiny random_clauses(std::uint64_t seed) {
  Random random(seed);
  Rules rules;
  const std::vector<std::pair<int, int>> domains{{0, 5}, {-2, 3}, {0, 3}, {0, 1}, {0, 1}};
  for (int k = 6 + random.below(14); k > 0; --k) {
    std::vector<Literal> clause;
    for (int n = 1 + random.below(4); n > 0; --n) {
      const int variable = random.below(5);
      const auto [low, high] = domains[static_cast<std::size_t>(variable)];
      const int value = low + random.below(high - low + 1);
      clause.push_back(random.below(2) == 0 ? at_least(variable, value) : at_most(variable, value));
    }
    rules.clauses.push_back(clause);
  }
  return with_rules(domains, rules);
}

TEST(clauses, say_what_their_literals_say) {
  const TinyCount count = compare_all("clauses", random_clauses, kSpaces);
  EXPECT_GT(count.learnt, 1000);
  EXPECT_GT(count.solutions, 10000);
}

}  // namespace
}  // namespace scheduler::testing
