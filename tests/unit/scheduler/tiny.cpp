#include "tiny.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <iostream>
#include <limits>

#include "scheduler/random.h"

namespace scheduler::testing {
namespace {

constexpr int kWalks = 25;

bool holds(Literal literal, const std::vector<int>& values) {
  const int value = values[static_cast<std::size_t>(literal.side / 2)];
  return (literal.side % 2 == 0 ? value : -value) >= literal.value;
}

std::vector<std::vector<int>> satisfying(const Tiny& tiny) {
  std::vector<std::vector<int>> found;
  std::vector<int> values(tiny.domains.size());
  const std::function<void(std::size_t)> choose = [&](std::size_t variable) {
    if (variable == values.size()) {
      if (tiny.satisfied(values)) found.push_back(values);
      return;
    }
    const auto [low, high] = tiny.domains[variable];
    for (int value = low; value <= high; ++value) {
      values[variable] = value;
      choose(variable + 1);
    }
  };
  choose(0);
  return found;
}

/// Holds every step against the assignments that satisfy the constraint.
class Witness : public ProofSink {
 public:
  Witness(std::vector<std::vector<int>> solutions, int watched)
      : solutions_(std::move(solutions)), watched_(watched) {}

  void watch(const Core* core) { core_ = core; }
  const std::vector<std::vector<int>>& solutions() const { return solutions_; }
  const TinyCount& count() const { return count_; }

  /// An assignment that a clause added later excludes.
  void take_out(const std::vector<int>& values) {
    const auto place = std::find(solutions_.begin(), solutions_.end(), values);
    ASSERT_NE(place, solutions_.end()) << "found twice, or not a solution";
    solutions_.erase(place);
    ++count_.solutions;
  }

  void pruned(int source, const std::vector<Literal>& reason, const Literal* consequence) override {
    for (const Literal literal : reason)
      EXPECT_TRUE(core_->is_true(literal)) << "a reason that is not true yet";
    std::vector<Literal> clause;
    for (const Literal literal : reason) clause.push_back(!literal);
    if (consequence != nullptr) {
      EXPECT_FALSE(core_->is_true(*consequence)) << "a consequence that was there before";
      clause.push_back(*consequence);
    }
    ++(consequence != nullptr ? count_.prunings : count_.conflicts);
    if (source == watched_) ++count_.watched;
    expect_true(clause, "pruning");
  }
  void lemma(int /*source*/, const std::vector<Literal>& clause) override {
    ++count_.lemmas;
    expect_true(clause, "explanation");
  }
  void derived(int /*name*/, const std::vector<Literal>& clause) override {
    ++count_.learnt;
    expect_true(clause, "learnt clause");
  }

  /// A clause under the root bounds, which explanations leave out, must be true of each solution.
  void expect_true(const std::vector<Literal>& clause, const char* what) const {
    for (const std::vector<int>& values : solutions_) {
      const bool fine = std::any_of(clause.begin(), clause.end(),
                                    [&](Literal literal) { return holds(literal, values); });
      ASSERT_TRUE(fine) << "a " << what << " excludes " << ::testing::PrintToString(values);
    }
  }

 private:
  std::vector<std::vector<int>> solutions_;
  int watched_;
  const Core* core_ = nullptr;
  TinyCount count_;
};

Literal random_literal(const Tiny& tiny, Random& random) {
  const int variable = random.below(static_cast<int>(tiny.domains.size()));
  const auto [low, high] = tiny.domains[static_cast<std::size_t>(variable)];
  const int value = low + random.below(high - low + 1);
  return random.below(2) == 0 ? at_least(variable, value) : at_most(variable, value);
}

bool all_hold(const std::vector<Literal>& literals, const std::vector<int>& values) {
  return std::all_of(literals.begin(), literals.end(),
                     [&](Literal literal) { return holds(literal, values); });
}

/// Assumptions one after the other, until everything is fixed or nothing is left.
void walk(const Tiny& tiny, Core& core, const Witness& witness, Random& random) {
  const int count = static_cast<int>(tiny.domains.size());
  std::vector<Literal> assumed;
  for (int k = 0; k < 3 * count; ++k) assumed.push_back(random_literal(tiny, random));
  for (int variable = 0; variable < count; ++variable) {
    const auto [low, high] = tiny.domains[static_cast<std::size_t>(variable)];
    const int value = low + random.below(high - low + 1);
    assumed.push_back(at_least(variable, value));
    assumed.push_back(at_most(variable, value));
  }
  // Where one literal contradicts another there is nothing to see: only what some value allows.
  std::vector<Literal> possible;
  for (const Literal literal : assumed) {
    int low = std::numeric_limits<int>::min(), high = std::numeric_limits<int>::max();
    possible.push_back(literal);
    for (const Literal other : possible) {
      if (other.side / 2 != literal.side / 2) continue;
      if (other.side % 2 == 0)
        low = std::max(low, other.value);
      else
        high = std::min(high, -other.value);
    }
    if (low > high) possible.pop_back();
  }
  const bool fine = core.probe(possible);
  std::vector<int> values;
  for (int variable = 0; fine && variable < count; ++variable) {
    for (const std::vector<int>& solution : witness.solutions()) {
      if (!all_hold(possible, solution)) continue;
      const int value = solution[static_cast<std::size_t>(variable)];
      EXPECT_TRUE(core.low(2 * variable) <= value && value <= core.high(2 * variable));
    }
    if (core.fixed(variable)) values.push_back(core.low(2 * variable));
  }
  core.retract();
  if (!fine) {
    for (const std::vector<int>& solution : witness.solutions())
      EXPECT_FALSE(all_hold(possible, solution)) << "a solution is refused";
  } else if (tiny.decides && static_cast<int>(values.size()) == count) {
    EXPECT_TRUE(tiny.satisfied(values)) << "accepts " << ::testing::PrintToString(values);
  }
}

/// Searches under random assumptions; then, where the core decides, finds every solution once.
void search(const Tiny& tiny, Core& core, Witness& witness, Random& random) {
  const int count = static_cast<int>(tiny.domains.size());
  for (int k = 0; k < kWalks; ++k) {
    std::vector<Literal> assumed;
    for (int n = 2 + k % 4; n > 0; --n) assumed.push_back(random_literal(tiny, random));
    const Verdict verdict = core.search(assumed, 10000);
    ASSERT_NE(verdict, Verdict::kGaveUp);
    if (verdict != Verdict::kRefuted) continue;
    for (const std::vector<int>& solution : witness.solutions())
      EXPECT_FALSE(all_hold(core.core(), solution)) << "a core that a solution satisfies";
  }
  while (tiny.decides && core.search({}, 100000) == Verdict::kSolution) {
    const std::vector<int> found(core.solution().begin(), core.solution().begin() + count);
    witness.take_out(found);
    if (::testing::Test::HasFatalFailure()) return;
    std::vector<Literal> other;
    for (int variable = 0; variable < count; ++variable) {
      const int value = found[static_cast<std::size_t>(variable)];
      other.push_back(at_least(variable, value + 1));
      other.push_back(at_most(variable, value - 1));
    }
    // A clause has one literal a side at most, and these are of two sides each.
    core.add_clause(other);
  }
  if (tiny.decides) {
    EXPECT_TRUE(witness.solutions().empty()) << "solutions that were never found";
  }
}

}  // namespace

TinyCount& TinyCount::operator+=(const TinyCount& other) {
  problems += other.problems;
  prunings += other.prunings;
  conflicts += other.conflicts;
  watched += other.watched;
  lemmas += other.lemmas;
  learnt += other.learnt;
  solutions += other.solutions;
  return *this;
}

TinyCount compare_with_brute_force(const Tiny& tiny, std::uint64_t seed) {
  Random random(seed);
  Witness witness(satisfying(tiny), tiny.watched);
  Budget budget(1000.0, -1, {});
  Core core(budget, &witness);
  witness.watch(&core);
  for (const auto& [low, high] : tiny.domains) core.new_variable(low, high, true);
  tiny.post(core);
  for (int k = 0; k < kWalks; ++k) walk(tiny, core, witness, random);
  search(tiny, core, witness, random);
  TinyCount count = witness.count();
  count.problems = 1;
  return count;
}

TinyCount compare_all(const char* name, const std::function<Tiny(std::uint64_t seed)>& make,
                      std::uint64_t count) {
  TinyCount sum;
  for (std::uint64_t seed = 1; seed <= count; ++seed) {
    SCOPED_TRACE(std::string(name) + ", seed " + std::to_string(seed));
    sum += compare_with_brute_force(make(seed), seed);
    if (::testing::Test::HasFailure()) break;  // one seed is enough to mend it by
  }
  std::cout << name << ": " << sum.problems << " spaces, " << sum.prunings << " prunings, "
            << sum.conflicts << " conflicts (" << sum.watched << " of these by it), " << sum.lemmas
            << " explanations, " << sum.learnt << " learnt clauses, " << sum.solutions
            << " solutions\n";
  return sum;
}

}  // namespace scheduler::testing
