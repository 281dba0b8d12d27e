#include "optimise/milp.h"

#include <CbcHeuristic.hpp>
#include <CbcModel.hpp>
#include <CglGomory.hpp>
#include <CglKnapsackCover.hpp>
#include <CglMixedIntegerRounding2.hpp>
#include <CglProbing.hpp>
#include <CoinPackedMatrix.hpp>
#include <OsiClpSolverInterface.hpp>
#include <algorithm>
#include <cmath>
#include <map>
#include <stdexcept>

namespace optimise {

namespace {

// How far a row or a whole number may be off inside the solver; values are made whole and solved
// again afterwards.
constexpr double kTolerance = 1e-8;

void promised(bool kept, const char* what) {
  if (!kept) throw std::invalid_argument(what);
}

void check(const Programme& programme) {
  for (const Variable& v : programme.variables) {
    promised(!std::isnan(v.least) && !std::isnan(v.most) && std::isfinite(v.cost),
             "a variable's limits and cost must be numbers");
  }
  for (const Row& row : programme.rows) {
    promised(!std::isnan(row.least) && !std::isnan(row.most), "a row's limits must be numbers");
    for (const Term& term : row.terms) {
      promised(term.variable < programme.variables.size(),
               "a row names a variable that is not there");
      promised(std::isfinite(term.coefficient), "a row's figures must be numbers");
    }
  }
}

// Some limits contradict each other before any row is looked at.
bool contradicts_itself(const Programme& programme) {
  const auto empty = [](const auto& each) { return each.least > each.most + 1e-9; };
  const auto none_whole = [](const Variable& v) {
    return v.whole && std::ceil(v.least - 1e-9) > std::floor(v.most + 1e-9);
  };
  return std::any_of(programme.variables.begin(), programme.variables.end(), empty) ||
         std::any_of(programme.variables.begin(), programme.variables.end(), none_whole) ||
         std::any_of(programme.rows.begin(), programme.rows.end(), empty);
}

double within_solver(double limit) {
  return std::isfinite(limit) ? limit : std::copysign(COIN_DBL_MAX, limit);
}

void load(const Programme& programme, OsiClpSolverInterface& solver) {
  solver.messageHandler()->setLogLevel(0);
  solver.getModelPtr()->setLogLevel(0);
  CoinPackedMatrix matrix(false, 0, 0);
  matrix.setDimensions(0, static_cast<int>(programme.variables.size()));
  std::vector<double> row_least, row_most, least, most, cost;
  for (const Row& row : programme.rows) {
    std::map<int, double> sums;
    for (const Term& term : row.terms) sums[static_cast<int>(term.variable)] += term.coefficient;
    CoinPackedVector packed;
    for (const auto& [index, coefficient] : sums) {
      if (coefficient != 0) packed.insert(index, coefficient);
    }
    matrix.appendRow(packed);
    row_least.push_back(within_solver(row.least));
    row_most.push_back(within_solver(std::max(row.least, row.most)));
  }
  for (const Variable& v : programme.variables) {
    least.push_back(within_solver(v.whole ? std::ceil(v.least - 1e-9) : v.least));
    most.push_back(within_solver(v.whole ? std::floor(v.most + 1e-9) : std::max(v.least, v.most)));
    cost.push_back(v.cost);
  }
  solver.loadProblem(matrix, least.data(), most.data(), cost.data(), row_least.data(),
                     row_most.data());
  for (std::size_t i = 0; i < programme.variables.size(); ++i) {
    if (programme.variables[i].whole) solver.setInteger(static_cast<int>(i));
  }
  solver.setDblParam(OsiPrimalTolerance, kTolerance);
  solver.setDblParam(OsiDualTolerance, kTolerance);
}

void add_cuts(CbcModel& model) {
  CglProbing probing;
  probing.setUsingObjective(1);
  CglGomory gomory;
  CglKnapsackCover knapsack;
  CglMixedIntegerRounding2 rounding;
  model.addCutGenerator(&probing, -1, "probing");
  model.addCutGenerator(&gomory, -1, "gomory");
  model.addCutGenerator(&knapsack, -1, "knapsack");
  model.addCutGenerator(&rounding, -1, "rounding");
}

double cost_of(const Programme& programme, const std::vector<double>& values) {
  double cost = 0;
  for (std::size_t i = 0; i < values.size(); ++i) cost += programme.variables[i].cost * values[i];
  return cost;
}

bool keeps(const Programme& programme, const std::vector<double>& values) {
  for (const Row& row : programme.rows) {
    double sum = 0, size = 1;
    for (const Term& term : row.terms) {
      sum += term.coefficient * values[term.variable];
      size = std::max(size, std::abs(term.coefficient * values[term.variable]));
    }
    if (sum < row.least - 1e-7 * size || sum > row.most + 1e-7 * size) return false;
  }
  return true;
}

// The solver calls 2.00000001 whole. Whole variables are set to their numbers and the rest is
// solved again, so that a limit of the kind "changed at most if chosen" is not stretched by the
// error.
std::vector<double> made_whole(const Programme& programme, OsiClpSolverInterface& solver,
                               const double* best) {
  std::vector<double> values(best, best + programme.variables.size());
  bool parts = false;
  for (std::size_t i = 0; i < values.size(); ++i) {
    if (!programme.variables[i].whole) {
      parts = true;
      continue;
    }
    values[i] = std::round(values[i]) + 0.0;  // never minus nothing
    solver.setColBounds(static_cast<int>(i), values[i], values[i]);
  }
  if (parts) {
    solver.resolve();
    if (solver.isProvenOptimal()) {
      for (std::size_t i = 0; i < values.size(); ++i) {
        if (!programme.variables[i].whole) values[i] = solver.getColSolution()[i];
      }
    }
  }
  for (std::size_t i = 0; i < values.size(); ++i) {
    values[i] = std::clamp(values[i], programme.variables[i].least,
                           std::max(programme.variables[i].least, programme.variables[i].most));
  }
  return values;
}

}  // namespace

Solution minimise(const Programme& programme, const Effort& effort) {
  check(programme);
  promised(effort.seconds > 0 && effort.nodes >= 1 && effort.gap >= 0,
           "an effort must be above nothing");
  Solution solution;
  solution.status = Status::kImpossible;
  if (contradicts_itself(programme)) return solution;

  OsiClpSolverInterface solver;
  load(programme, solver);
  solver.initialSolve();
  if (solver.isProvenPrimalInfeasible()) return solution;
  if (solver.isProvenDualInfeasible()) {
    solution.status = Status::kUnlimited;
    return solution;
  }

  CbcModel model(solver);
  model.setLogLevel(0);
  model.messageHandler()->setLogLevel(0);
  model.solver()->messageHandler()->setLogLevel(0);  // the model works on a copy with a voice of
                                                     // its own
  model.setUseElapsedTime(true);  // before the limit, which else means processor time
  model.setMaximumSeconds(effort.seconds);
  model.setMaximumNodes(effort.nodes);
  model.setAllowableFractionGap(effort.gap);
  model.setAllowableGap(1e-10);
  model.setIntegerTolerance(1e-7);
  add_cuts(model);
  CbcRounding rounding(model);
  model.addHeuristic(&rounding);
  model.branchAndBound();

  if (model.bestSolution() != nullptr) {
    solution.values = made_whole(programme, solver, model.bestSolution());
    solution.cost = cost_of(programme, solution.values);
    if (!keeps(programme, solution.values)) {
      // Never seen; a figure that cannot be trusted is not handed on.
      solution.values.clear();
      solution.status = Status::kStopped;
      return solution;
    }
    const bool proved = model.isProvenOptimal() || model.status() == 0;
    solution.status = proved ? Status::kOptimal : Status::kFeasible;
    solution.bound = std::min(
        solution.cost, proved && effort.gap == 0 ? solution.cost : model.getBestPossibleObjValue());
    return solution;
  }
  solution.status = model.isProvenInfeasible() ? Status::kImpossible : Status::kStopped;
  return solution;
}

}  // namespace optimise
