// A genetic search over activity lists of a plain project, each child justified to and fro (ideas
// of S. Hartmann 1998 "A competitive genetic algorithm for resource-constrained project scheduling"
// and 2002 "A self-adapting genetic algorithm", V. Valls, F. Ballestin, S. Quintanilla 2008 "A
// hybrid genetic algorithm for the RCPSP"; from memory, own code). Which scheme decodes a child is
// one of its genes.
#pragma once

#include <cstdint>
#include <vector>

#include "scheduler/justification.h"
#include "scheduler/random.h"

namespace scheduler {

class Population {
 public:
  /// `list` must be plain and outlive this.
  Population(const ListProblem& list, std::uint64_t seed);

  /// Makes children until about `ticks` are spent or the lags alone allow no better end. Returns
  /// the ticks spent; may be called again and again.
  std::int64_t run(std::int64_t ticks);
  /// A schedule from elsewhere joins the population.
  void join(const std::vector<Time>& starts);

  bool has_best() const { return !best_.empty(); }
  const std::vector<Time>& best() const { return best_; }
  Time best_value() const { return best_[static_cast<std::size_t>(list_.goal)]; }
  /// The least end the lags allow is reached.
  bool closed() const { return has_best() && best_value() <= bound_; }
  std::int64_t schedules() const { return schedules_; }

 private:
  struct Member {
    std::vector<Time> starts;
    std::vector<int> order;
    Time value = 0;
    std::uint64_t mark = 0;  // of the start times: unequal marks, unequal members
    bool parallel = false;
  };

  void found();
  void sample_order(std::vector<int>& order);
  void child_of(const Member& mother, const Member& father);
  void mutate(std::vector<int>& order);
  void decode();
  void order_of(const std::vector<Time>& starts, std::vector<int>& order);
  bool known(const Member& member) const;
  void put(int place);
  void accept();
  int pick();
  void next_population();
  bool before(int i, int j) const;

  const ListProblem& list_;
  const ListProblem backwards_;
  Justification justification_;
  Random random_;
  Time bound_;
  std::vector<Member> members_;
  std::vector<std::uint64_t> known_;  // the members' marks
  Member child_;
  std::vector<Time> best_;
  std::vector<int> marks_, begin_, missing_, ready_;
  int stamp_ = 0;
  std::int64_t schedules_ = 0;
  std::vector<Member> waiting_;  // the population before this one
  std::size_t size_;             // of this population at its beginning
  int growths_ = 0;
  std::int64_t children_ = 0;  // since it was last joined
  bool grown_ = false;         // it has all its first members
};

}  // namespace scheduler
