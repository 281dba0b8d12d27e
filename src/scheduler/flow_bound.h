// A bound for sums of ends when many need the same resource: whoever is j-th to be through cannot
// be so before the resource has done the work of the j shortest, one behind the other (the rule of
// the shortest job first, W. Smith 1956, "Various optimizers for single-stage production"; from
// memory). Example: 24 cooks fry for 8 minutes, two at a time, and wash up for 6 minutes after it:
// the ends of washing up come to 2 * (14 + 22 + ... + 102) minutes at least. Bounds of single terms
// do not see this: each cook alone could be first.
#pragma once

#include <cstdint>
#include <vector>

#include "scheduler/problem.h"

namespace scheduler {

/// What all levels of a problem share is worked out once, when the first level asks for it: about
/// activities * their ancestors. Keeps the problem.
class FlowBound {
 public:
  explicit FlowBound(const Problem& problem) : problem_(problem) {}

  /// A value no schedule of the whole problem goes below at this level; 0 where fewer than two
  /// terms ask for an early end.
  std::int64_t of(const GoalLevel& level);

 private:
  /// What an activity takes of a key: a resource, or a hazard's limit on one.
  struct Work {
    int key = 0;
    std::int64_t amount = 0;
  };
  /// Work that has to be done before some event.
  struct Item {
    int activity = 0;
    Time head = 0;  ///< it cannot start sooner
    Time tail = 0;  ///< from its end to the event at least
    Time length = 0;
    std::int64_t amount = 0;
    std::int64_t energy() const { return amount * length; }
  };
  using ByKey = std::vector<std::vector<Item>>;
  /// Terms that want one of their events early, `weight` times.
  struct Job {
    std::vector<int> events;
    std::int64_t weight = 1;
    Time allowance = 0;
    Time alone = 0;  ///< its end, were nobody else there
  };
  struct Edge {
    int event;
    Time length;
  };

  void prepare();
  void list_work();
  void make_graph();
  void rank_events();
  void find_heads();
  void work_before(int event, ByKey& items);
  Time end_of(std::vector<Item>& items, std::int64_t capacity) const;
  std::vector<ByKey> own_work();
  std::int64_t bound_of(int key, const std::vector<ByKey>& work) const;
  std::int64_t bound_with(int key, const std::vector<ByKey>& work, Time tail) const;

  const Problem& problem_;
  bool prepared_ = false;
  std::vector<std::int64_t> capacity_;   // by key
  std::vector<std::vector<Work>> work_;  // by activity
  std::vector<std::vector<Edge>> in_, out_;
  std::vector<int> rank_;  // by event: what it waits for has a lower one, circles apart
  std::vector<Time> heads_;
  std::vector<Time> tails_;  // of the search that goes on, kNone outside it
  std::vector<Job> jobs_;    // of the level that asks
  Time allowance_ = 0;       // the greatest of them
};

}  // namespace scheduler
