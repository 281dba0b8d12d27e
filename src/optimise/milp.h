// A mixed-integer linear programme: the least cost of amounts and choices, some of them whole,
// within linear limits.
//
// "Four packs of 500 g or one of 2 kg, whichever is cheaper, and at least 1.8 kg": two whole
// variables with their prices as costs and one row. This knows nothing of food; it is not for time
// plans (scheduler/ has its own engine). Why CBC does the work:
// docs/decisions/0010-mixed-integer-solver.md.
#pragma once

#include <cstddef>
#include <limits>
#include <utility>
#include <vector>

namespace optimise {

inline constexpr double kNoLimit = std::numeric_limits<double>::infinity();

/// One thing to be decided.
struct Variable {
  double least = 0;
  double most = kNoLimit;
  double cost = 0;     ///< of one of it; negative for what is wanted
  bool whole = false;  ///< only whole numbers will do
};

struct Term {
  std::size_t variable = 0;  ///< index into Programme::variables
  double coefficient = 0;
};

/// least <= sum of coefficient * variable <= most. Terms of the same variable are added up.
struct Row {
  std::vector<Term> terms;
  double least = -kNoLimit;
  double most = kNoLimit;
};

struct Programme {
  std::vector<Variable> variables;
  std::vector<Row> rows;

  /// Adds a variable and gives its index.
  std::size_t add(Variable variable) {
    variables.push_back(variable);
    return variables.size() - 1;
  }
  void add(Row row) { rows.push_back(std::move(row)); }
};

/// When to stop. Two runs that end for the same reason other than `seconds` give the same answer.
struct Effort {
  double seconds = 1;     ///< of the wall's clock, > 0
  int nodes = 1'000'000;  ///< of the search tree, >= 1
  double gap = 0;         ///< stop when cost is within this share of the bound: 0.01 = one per cent
};

enum class Status {
  kOptimal,     ///< nothing is cheaper, up to the gap asked for
  kFeasible,    ///< stopped early; `values` keep every row but something cheaper may exist
  kImpossible,  ///< proved: no values keep every row
  kUnlimited,   ///< the cost can fall without end
  kStopped,     ///< stopped before anything was found or ruled out
};

struct Solution {
  Status status = Status::kStopped;
  std::vector<double> values;  ///< one a variable when optimal or feasible, else empty; whole ones
                               ///< exactly whole
  double cost = 0;             ///< of `values`
  double bound = -kNoLimit;    ///< no values that keep the rows cost less

  bool found() const { return status == Status::kOptimal || status == Status::kFeasible; }
};

/// The values of least cost. Rows hold to within one part in ten million of the size of their
/// figures.
/// Cost:   small programmes (tens of whole variables) take milliseconds; the worst case grows exponentially.
/// Promise: exact up to `gap` when optimal, proved when impossible; the same programme gives the same values.
/// Throws std::invalid_argument on a promise broken by the caller: an index out of range, a figure
/// that is not a number. A least above its most is no such thing: that is impossible.
Solution minimise(const Programme&, const Effort& = {});

}  // namespace optimise
