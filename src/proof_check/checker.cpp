// One pass over the lines. A lemma is true of the instance by itself; a derived clause follows from
// the lemmas since the derivation before and from older clauses that it names: its opposite,
// assumed, is driven to a contradiction by filling in the last open literal again and again.
#include "proof_check/checker.h"

#include <algorithm>
#include <map>
#include <optional>
#include <sstream>
#include <stdexcept>
#include <utility>
#include <vector>

#include "proof_check/semantics.h"

namespace proof_check {
namespace {

std::size_t at(int index) { return static_cast<std::size_t>(index); }

/// No time lies so far out; keeps sums of a few from overflowing.
constexpr int kFar = 100000000;

/// [value >= bound] or [value <= bound].
struct Literal {
  int value = 0;
  bool least = true;
  int bound = 0;
};
using Clause = std::vector<Literal>;

/// A 0-1 value that is 1 exactly when start(second) >= start(first) + gap.
struct Order {
  int value, first, second, gap;
};

class Checker {
 public:
  explicit Checker(const Instance& instance)
      : instance_(instance), semantics_(instance), jobs_(static_cast<int>(instance.jobs.size())) {}

  Result run(std::istream& in) {
    int number = 0;
    try {
      for (std::string line; !finished_ && std::getline(in, line);) {
        ++number;
        read(line);
      }
      if (!finished_) throw std::runtime_error("the proof ends without a bound");
      result_.accepted = true;
    } catch (const std::exception& fault) {
      result_.fault = "line " + std::to_string(number) + ": " + fault.what();
    }
    return result_;
  }

 private:
  static void demand(bool holds, const char* otherwise) {
    if (!holds) throw std::runtime_error(otherwise);
  }

  void read(const std::string& line) {
    std::istringstream words(line);
    std::string kind;
    if (!(words >> kind)) return;
    if (kind == "horizon") return start(number(words));
    demand(!low_.empty(), "the horizon comes first");
    if (kind == "var") return define(words);
    if (kind == "l") return lemma(words);
    if (kind == "g") return given(words);
    if (kind == "d") return derive(words);
    if (kind == "f") {
      clauses_.erase(number(words));
      return;
    }
    if (kind == "bound") return conclude(words);
    throw std::runtime_error("a line of no known kind");
  }

  static int number(std::istream& words) {
    int value = 0;
    demand(static_cast<bool>(words >> value), "a whole number is missing");
    return value;
  }

  // Values 0 .. jobs - 1 are the starts; definitions add more.
  void start(int horizon) {
    demand(low_.empty(), "a second horizon");
    demand(horizon >= 0 && horizon < kFar, "a horizon far from every time");
    result_.horizon = horizon;
    for (const Job& job : instance_.jobs) {
      low_.push_back(0);
      high_.push_back(horizon - job.duration);
      refuted_ = refuted_ || horizon < job.duration;
    }
    refuted_ = refuted_ || semantics_.hopeless();
  }

  void define(std::istream& words) {
    const int name = number(words);
    std::string meaning;
    words >> meaning;
    demand(values_.count(name) == 0, "a variable defined twice");
    if (meaning == "start") {
      const int job = number(words);
      demand(job >= 0 && job < jobs_, "a start of no job");
      values_[name] = job;
    } else if (meaning == "above" || meaning == "sum") {
      // The goal of a project is the start of its sink: one time under several names.
      values_[name] = value_of(number(words));
      int more = 0;
      demand(!(words >> more) || (meaning == "above" && more == 0), "a goal other than one time");
      demand(values_[name] < jobs_, "a goal that is not a start");
    } else if (meaning == "one") {
      values_[name] = fresh(1, 1);
    } else {
      demand(meaning == "order", "a variable of a kind that projects do not have");
      const int first = value_of(number(words)), second = value_of(number(words));
      const int gap = number(words);
      demand(gap > -kFar && gap < kFar && first < jobs_ && second < jobs_,
             "an order of what are not starts");
      values_[name] = fresh(0, 1);
      orders_[{std::min(first, second), std::max(first, second)}].push_back(
          {values_[name], first, second, gap});
    }
  }

  int fresh(int low, int high) {
    low_.push_back(low);
    high_.push_back(high);
    return static_cast<int>(low_.size()) - 1;
  }

  int value_of(int name) const {
    const auto found = values_.find(name);
    demand(found != values_.end(), "a variable that was not defined");
    return found->second;
  }

  /// Literals such as 12>=3 and 7<=0, up to the end or a colon.
  Clause literals(std::istream& words) const {
    Clause clause;
    for (std::string word; words >> word && word != ":";) {
      const std::size_t sign = word.find_first_of("<>");
      demand(sign != std::string::npos && sign > 0 && sign + 2 < word.size(), "not a literal");
      const int bound = std::stoi(word.substr(sign + 2));
      demand(bound > -kFar && bound < kFar, "a bound far from every time");
      clause.push_back({value_of(std::stoi(word)), word[sign] == '>', bound});
    }
    return clause;
  }

  /// Makes the literal hold; false when the bounds then cross.
  bool require(Literal literal) {
    int& bound = literal.least ? low_[at(literal.value)] : high_[at(literal.value)];
    if (literal.least ? bound >= literal.bound : bound <= literal.bound) return true;
    undo_.push_back({literal.value, literal.least, bound});
    bound = literal.bound;
    return low_[at(literal.value)] <= high_[at(literal.value)];
  }
  static Literal opposite(Literal literal) {
    return {literal.value, !literal.least, literal.least ? literal.bound - 1 : literal.bound + 1};
  }
  bool impossible(Literal literal) const {
    return literal.least ? high_[at(literal.value)] < literal.bound
                         : low_[at(literal.value)] > literal.bound;
  }
  bool certain(Literal literal) const { return impossible(opposite(literal)); }
  void take_back() {
    for (; !undo_.empty(); undo_.pop_back()) {
      const Literal& before = undo_.back();
      (before.least ? low_ : high_)[at(before.value)] = before.bound;
    }
  }

  /// Assumes that no literal of the clause holds; true when bounds cross by that alone.
  bool oppose(const Clause& clause) {
    bool crossed = refuted_;
    for (const Literal literal : clause) crossed = !require(opposite(literal)) || crossed;
    return crossed;
  }

  std::vector<int> jobs_in(const Clause& clause) const {
    std::vector<int> jobs;
    for (const Literal literal : clause) {
      if (literal.value < jobs_) jobs.push_back(literal.value);
    }
    std::sort(jobs.begin(), jobs.end());
    jobs.erase(std::unique(jobs.begin(), jobs.end()), jobs.end());
    return jobs;
  }

  void lemma(std::istream& words) {
    std::string source;
    words >> source;
    int resource = 0;
    if (source == "use") resource = number(words);
    demand(resource >= 0 && at(resource) < instance_.capacities.size(), "a use of no resource");
    std::string colon;
    demand(words >> colon && colon == ":", "a lemma without a colon");
    const Clause clause = literals(words);
    bool holds = oppose(clause);
    if (!holds) {
      const Starts starts{low_, high_};
      if (source == "use")
        holds = semantics_.overfull(starts, at(resource), jobs_in(clause));
      else if (source == "arc")
        holds = semantics_.lag_broken(starts, jobs_in(clause)) || order_broken(jobs_in(clause));
    }
    take_back();
    demand(holds, "a lemma that the instance does not bear out");
    lemmas_.push_back(clause);
    ++result_.lemmas;
  }

  /// The definition of some order between two of the jobs cannot hold.
  bool order_broken(const std::vector<int>& jobs) const {
    for (const int i : jobs) {
      for (const int j : jobs) {
        const auto found = orders_.find({i, j});
        if (found == orders_.end()) continue;
        for (const Order& order : found->second) {
          const int least = low_[at(order.first)] + order.gap, most = high_[at(order.second)];
          if (low_[at(order.value)] >= 1 && least > most) return true;
          if (high_[at(order.value)] <= 0 &&
              low_[at(order.second)] >= high_[at(order.first)] + order.gap)
            return true;
        }
      }
    }
    return false;
  }

  /// No schedule within the bounds runs `first` to its end before `second` starts.
  bool cannot_precede(int first, int second) const {
    const int duration = instance_.jobs[at(first)].duration;
    if (low_[at(first)] + duration > high_[at(second)]) return true;
    const auto found = orders_.find({std::min(first, second), std::max(first, second)});
    return found != orders_.end() &&
           std::any_of(found->second.begin(), found->second.end(), [&](const Order& order) {
             return order.first == first && order.gap <= duration && high_[at(order.value)] <= 0;
           });
  }

  /// A clause of the model itself: two jobs that are never together come one after the other.
  void given(std::istream& words) {
    const int name = number(words);
    const Clause clause = literals(words);
    bool holds = oppose(clause);
    for (auto pair = orders_.begin(); !holds && pair != orders_.end(); ++pair) {
      const auto [a, b] = pair->first;
      holds = semantics_.never_together(a, b) && cannot_precede(a, b) && cannot_precede(b, a);
    }
    take_back();
    demand(holds, "a clause that the instance does not bear out");
    keep(name, clause);
  }

  void derive(std::istream& words) {
    const int name = number(words);
    const Clause clause = literals(words);
    std::vector<const Clause*> premises;
    for (int other = 0; words >> other;) {
      const auto found = clauses_.find(other);
      demand(found != clauses_.end(), "a premise that is not there");
      premises.push_back(&found->second);
    }
    demand(words.eof(), "not the name of a clause");
    for (const Clause& lemma : lemmas_) premises.push_back(&lemma);
    const bool holds = oppose(clause) || contradiction(std::move(premises));
    take_back();
    demand(holds, "a clause that does not follow");
    lemmas_.clear();
    keep(name, clause);
    ++result_.derived;
  }

  bool contradiction(std::vector<const Clause*> premises) {
    // Conflicts are explained backwards, so the last premise often comes into force first.
    std::reverse(premises.begin(), premises.end());
    for (bool moved = true; moved;) {
      moved = false;
      std::size_t open = 0;
      for (const Clause* premise : premises) {
        const Literal* last = nullptr;
        bool idle = false;  // holds already, or has two open literals
        bool keep = true;
        for (const Literal& literal : *premise) {
          if (impossible(literal)) continue;
          if (certain(literal)) keep = false;
          if (last != nullptr) idle = true;
          last = &literal;
        }
        if (!keep) continue;
        if (last == nullptr) return true;
        if (idle) {
          premises[open++] = premise;
          continue;
        }
        if (!require(*last)) return true;
        moved = true;
      }
      premises.resize(open);
    }
    return false;
  }

  /// A clause of one literal is true for ever, an empty one ends everything.
  void keep(int name, const Clause& clause) {
    if (clause.empty() || (clause.size() == 1 && !require(clause[0]))) refuted_ = true;
    undo_.clear();
    demand(clauses_.emplace(name, clause).second, "a name given twice");
  }

  void conclude(std::istream& words) {
    std::string claim;
    words >> claim;
    finished_ = true;
    result_.none = claim == "none";
    if (result_.none) return demand(refuted_, "that there is no schedule was not derived");
    result_.bound = std::stoi(claim);
    demand(refuted_ || low_[at(jobs_ - 1)] >= result_.bound, "the bound was not derived");
  }

  const Instance& instance_;
  const Semantics semantics_;
  const int jobs_;
  std::vector<int> low_, high_;  // by value: the starts, then what was defined
  std::map<int, int> values_;    // name in the proof -> value
  std::map<std::pair<int, int>, std::vector<Order>> orders_;
  std::map<int, Clause> clauses_;
  std::vector<Clause> lemmas_;  // since the last derivation
  std::vector<Literal> undo_;
  bool refuted_ = false, finished_ = false;
  Result result_;
};

}  // namespace

Result check(const Instance& instance, std::istream& proof) {
  if (instance.jobs.empty()) return {};
  return Checker(instance).run(proof);
}

}  // namespace proof_check
