// A lazy-clause-generation core: integer bounds, clauses over bound literals, guarded difference
// arcs, further propagators that explain themselves, first-UIP learning, and search under
// assumptions.
//
// The root holds the model only. Goal bounds and tests are assumptions (decisions on the first
// levels), so every learnt clause follows from the model and stays valid from one call of search()
// to the next.
#pragma once

#include <algorithm>
#include <cstdint>
#include <memory>
#include <vector>

#include "scheduler/budget.h"
#include "scheduler/cuts.h"
#include "scheduler/literal.h"
#include "scheduler/proof.h"

namespace scheduler {

class Core;

/// A constraint that watches sides and is run after the clauses and arcs have come to rest.
class Propagator {
 public:
  virtual ~Propagator() = default;
  /// Prunes through Core::imply and Core::fail; false after a conflict.
  virtual bool propagate(Core& core) = 0;
};

/// What the activity-list branching has to know of one activity.
struct BranchItem {
  Literal present;               ///< decided first, absent by choice
  std::vector<Literal> choices;  ///< mode and setting literals, taken in order of the saved phase
  int start_side = -1;           ///< side 2i of the start variable, -1 = constant
  int end_side = -1;             ///< of the end variable when the length is free
  bool hub = false;              ///< many others wait for it
};

enum class Verdict : std::int8_t { kSolution, kRefuted, kGaveUp };

class Core {
 public:
  /// `proof`: told every step, when not null; must outlive the core.
  explicit Core(Budget& budget, ProofSink* proof = nullptr);
  ~Core();
  Core(const Core&) = delete;
  Core& operator=(const Core&) = delete;

  // --- model ---
  int new_variable(int low, int high, bool decide);
  int variable_count() const { return static_cast<int>(low_.size() / 2); }
  /// Only at the root. Sets broken() when the clause set becomes unsatisfiable.
  void add_clause(std::vector<Literal> literals);
  /// While all guards hold: value(to) >= value(from) + distance. Both directions are propagated,
  /// and a guard is refuted when the rest of the arc cannot hold. At most kMaxGuards guards.
  void add_arc(int from, int to, int distance, const std::vector<Literal>& guards);
  static constexpr int kMaxGuards = 4;
  /// `late`: runs only when all others have come to rest.
  /// Returns its number, which is the source of its steps in a proof.
  int add_propagator(std::unique_ptr<Propagator> propagator, const std::vector<int>& sides,
                     bool late = false);
  /// The variable matters only while `owner` is not false (start of an absent activity).
  void set_owner(int variable, Literal owner) {
    owner_[static_cast<std::size_t>(variable)] = owner;
  }
  /// In a solution the variable takes its upper bound (the least of some times), not its lower.
  void prefer_high(int variable) { high_[static_cast<std::size_t>(variable)] = 1; }
  void set_branching(std::vector<BranchItem> items);
  void set_phase(int variable, int value);
  /// The next search follows the phases before it tries the list rule.
  void begin_with_phases() { earliest_first_ = false; }
  bool broken() const { return broken_; }

  // --- state ---
  int low(int side) const { return low_[static_cast<std::size_t>(side)]; }
  int high(int side) const { return -low_[static_cast<std::size_t>(side ^ 1)]; }
  bool is_true(Literal l) const { return low(l.side) >= l.value; }
  bool is_false(Literal l) const { return low(l.side ^ 1) >= 1 - l.value; }
  bool fixed(int variable) const { return low(2 * variable) == high(2 * variable); }
  /// True for ever: such literals are left out of explanations.
  bool true_at_root(Literal l) const {
    return root_low_[static_cast<std::size_t>(l.side)] >= l.value;
  }
  int root_low(int side) const { return root_low_[static_cast<std::size_t>(side)]; }

  // --- for propagators ---
  /// `literal` follows from the conjunction of `reason` (all true now).
  bool imply(Literal literal, const std::vector<Literal>& reason);
  /// The conjunction of `reason` is impossible.
  bool fail(const std::vector<Literal>& reason);
  void spend(std::int64_t ticks) { budget_.spend(ticks); }
  std::int64_t ticks() const { return budget_.ticks(); }

  // --- search ---
  /// Looks for a solution under the assumptions. kRefuted: none exists; core() names assumptions
  /// that cause it.
  Verdict search(const std::vector<Literal>& assumptions, std::int64_t conflict_limit);
  /// After kRefuted: a subset of the assumptions that cannot hold together (empty: the model itself
  /// is impossible).
  const std::vector<Literal>& core() const { return core_; }
  /// After kSolution: the value of each variable.
  const std::vector<int>& solution() const { return solution_; }
  bool solution_holds(Literal l) const;
  /// Propagates assumptions without search; true if no conflict. Bounds can then be read until
  /// retract().
  bool probe(const std::vector<Literal>& assumptions);
  void retract() { backtrack(0); }
  std::int64_t conflicts() const { return conflicts_; }

  /// Property tests: every learnt clause must hold in every planted solution, else
  /// std::logic_error.
  void plant(std::vector<int> solution) { planted_.push_back(std::move(solution)); }
  void plant_found_solutions() { plant_found_ = true; }

 private:
  enum class Why : std::int8_t { kNone, kClause, kArc, kStored };
  struct Reason {
    Why why = Why::kNone;
    int index = -1;
  };
  struct Step {
    int side, before, after;
    int previous;  // trail position of the side's step before this one
    int level;
    Reason reason;
  };
  struct Clause {
    int begin, size, lbd;
    bool learnt;
    std::int64_t used;  // conflict number of the last use, for cleaning
  };
  struct Watch {
    int threshold, clause;
    Literal blocker;
  };
  /// Watches of a side, in buckets of neighbouring thresholds: a step visits what it crosses only.
  /// Made with the first watch: most sides never have one, and touching their memory is what takes
  /// longest when a model is made.
  struct Buckets {
    std::unique_ptr<std::vector<Watch>[]> lists;
    int low, last;  // least threshold, number of buckets less one
    int shift;
    int of(int threshold) const { return std::clamp((threshold - low) >> shift, 0, last); }
  };
  struct Arc {
    int from, to, distance;
    int guard_count;
    Literal guards[kMaxGuards];
  };
  struct Guarded {
    int threshold, arc;
  };

  int level() const { return static_cast<int>(level_start_.size()); }
  void push_level();
  void backtrack(int level);
  bool enqueue(Literal literal, Reason reason);
  bool propagate();
  void watch(Literal literal, int clause, Literal blocker);
  bool visit_watches(const Step& step);
  bool visit_bucket(const Step& step, std::vector<Watch>& list);
  bool visit_clause(Watch& watch, int side, bool& keep);
  bool visit_arc(int arc);
  void wake(int side);
  void explain(const Step& step, int value, std::vector<Literal>& out) const;
  int position(Literal literal) const;
  int attach(const std::vector<Literal>& literals, bool learnt, int lbd, int name);

  // conflict analysis (core_analyze.cpp)
  void mark(Literal literal, int at_level);
  void analyze();
  void minimise();
  bool redundant(Literal literal, int depth);
  void assemble(int uip);
  void analyze_final(Literal refuted);
  bool resolve_conflict();
  void check_planted(const std::vector<Literal>& clause) const;
  void bump(Literal literal);
  /// What a learnt clause costs: its literals, its entry and its two watches, with room to grow.
  static std::int64_t bytes(int size) { return 8 * std::int64_t{size} + 96; }
  void clean_clauses();

  // what a proof sink is told (core_proof.cpp)
  void tell_explained(const Step& step, int value, const std::vector<Literal>& reason) const;
  void tell_lemma(int source, const std::vector<Literal>& reason, Literal consequence) const;
  void tell_root(Literal literal, Reason reason);
  void tell_pruned(Literal literal, Reason reason);
  void tell_refuted(const std::vector<Literal>& conflict, const Literal* assumption);
  void tell_core();

  // branching (core_search.cpp)
  Literal pick();
  Literal pick_earliest();
  Literal pick_active();
  Literal pick_overlooked();
  Literal towards(int variable, int value) const;
  Literal pick_hub();
  Literal undecided_choice(const BranchItem& item) const;
  void store_solution();

  Budget& budget_;
  ProofSink* const proof_;
  int source_ = ProofSink::kArc;  // the propagator that runs
  int next_name_ = 1;             // of a clause in the proof
  std::vector<int> names_;        // by clause, only with a proof
  bool broken_ = false;
  std::vector<int> low_, root_low_, last_;
  std::vector<Step> trail_;
  std::size_t head_ = 0;
  std::vector<int> level_start_, stored_start_;
  std::vector<Literal> stored_;  // reasons given by propagators; (length, source) before each

  std::vector<Clause> clauses_;
  std::vector<Literal> clause_literals_;
  std::vector<Buckets> buckets_;  // by side
  std::vector<Arc> arcs_;
  std::vector<std::vector<int>> arcs_from_;
  std::vector<std::vector<Guarded>> guarded_;

  std::vector<std::unique_ptr<Propagator>> propagators_;
  std::vector<std::vector<int>> wakes_;
  std::vector<char> queued_;
  struct Queue {
    std::vector<int> list;
    std::size_t head = 0;
    bool empty() const { return head == list.size(); }
    int take();
    void clear(std::vector<char>& queued);
  };
  Queue early_, late_;
  std::vector<char> is_late_;  // by propagator

  std::vector<Literal> conflict_, scratch_, learnt_, core_;
  std::vector<int> marked_, need_, lower_, proven_, hopeless_;
  int stamp_ = 0, counter_ = 0, newest_ = 0, learnt_lbd_ = 0, back_level_ = 0;

  std::vector<Literal> owner_;
  std::vector<char> decide_, high_;
  std::vector<BranchItem> items_;
  std::vector<int> hubs_;  // their start sides
  bool hubs_first_ = false;
  CutOrder cuts_;
  struct Overlooked {
    int level;     // that decided it
    int variable;  // all of lower number are fixed then
  };
  std::vector<Overlooked> overlooked_;
  std::vector<std::vector<int>> closed_;  // cuts taken out of the order, by the level that did it
  std::vector<int> phase_, solution_;
  bool have_solution_ = false, earliest_first_ = true;
  std::int64_t held_ = 0;  // bytes of learnt clauses
  std::int64_t conflicts_ = 0, next_clean_ = 2000;
  std::int64_t restarts_ = 0;
  std::size_t assumption_count_ = 0;

  std::vector<std::vector<int>> planted_;
  bool plant_found_ = false;
};

}  // namespace scheduler
