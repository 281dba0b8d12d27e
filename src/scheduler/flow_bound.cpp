#include "scheduler/flow_bound.h"

#include <algorithm>
#include <map>
#include <numeric>
#include <vector>

#include "base/index.h"

namespace scheduler {
namespace {

using base::at;

constexpr Time kNone = -1;  ///< no path; lengths of paths are not negative
constexpr std::int64_t kMostCopies = 1000;

/// What an activity takes of a resource, or of a hazard's limit on one, for its least length.
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

/// Terms that want one of their events early, `weight` times.
struct Job {
  std::vector<int> events;
  std::int64_t weight = 1;
  Time allowance = 0;
  Time alone = 0;  ///< its end, were nobody else there
};

int index_of(Event event) { return 2 * event.activity + (event.side == Side::kEnd ? 1 : 0); }

std::int64_t up(std::int64_t work, std::int64_t capacity) {
  return (work + capacity - 1) / capacity;
}

class FlowBound {
 public:
  FlowBound(const Problem& problem, const GoalLevel& level) : problem_(problem) {
    for (const Term& term : level.terms) {
      if (term.kind != Term::Kind::kExcess || !term.low.empty() || term.weight <= 0) continue;
      Job job;
      for (const Event event : term.high) {
        if (!problem.activities[at(event.activity)].optional) job.events.push_back(index_of(event));
      }
      job.weight = term.weight;
      job.allowance = term.allowance;
      if (!job.events.empty()) jobs_.push_back(std::move(job));
    }
  }

  std::int64_t run() {
    std::int64_t copies = 0;
    for (const Job& job : jobs_) copies += job.weight;
    if (jobs_.size() < 2 || copies > kMostCopies) return 0;
    list_work();
    make_graph();
    find_heads();
    std::int64_t best = 0;
    for (Job& job : jobs_) {
      for (const int event : job.events) job.alone = std::max(job.alone, heads_[at(event)]);
      best += job.weight * std::max(0, job.alone - job.allowance);
    }
    for (Job& job : jobs_) allowance_ = std::max(allowance_, job.allowance);
    for (int key = 0; key < static_cast<int>(capacity_.size()); ++key)
      best = std::max(best, bound_of(key));
    return best;
  }

 private:
  struct Edge {
    int event;
    Time length;
  };

  // --- what is there ---

  void list_work() {
    std::map<std::pair<int, int>, int> keys;  // (resource, hazard or -1)
    const auto key_of = [&](int resource, int hazard, int capacity) {
      const auto [entry, fresh] = keys.emplace(std::pair{resource, hazard},
                                               static_cast<int>(capacity_.size()));
      if (fresh) capacity_.push_back(capacity);
      return entry->second;
    };
    work_.resize(problem_.activities.size());
    for (std::size_t a = 0; a < problem_.activities.size(); ++a) {
      const Activity& activity = problem_.activities[a];
      if (activity.optional || activity.duration_min == 0) continue;
      std::map<int, std::int64_t> least;  // over all modes
      for (std::size_t m = 0; m < activity.modes.size(); ++m) {
        std::map<int, std::int64_t> taken;
        for (const Use& use : activity.modes[m].uses) {
          const Resource& resource = problem_.resources[at(use.resource)];
          taken[key_of(use.resource, -1, resource.capacity)] += use.amount;
          for (const Limit& limit : resource.limits) {
            if (limit.hazard == use.hazard)
              taken[key_of(use.resource, limit.hazard, limit.at_once)] += 1;
          }
        }
        if (m == 0) least = taken;
        for (auto& [key, amount] : least) {
          const auto found = taken.find(key);
          amount = found == taken.end() ? 0 : std::min(amount, found->second);
        }
      }
      for (const auto& [key, amount] : least) {
        if (amount > 0 && capacity_[at(key)] > 0) work_[a].push_back({key, amount});
      }
    }
  }

  void make_graph() {
    in_.resize(2 * problem_.activities.size());
    out_.resize(in_.size());
    const auto add = [&](Event from, Event to, Time length) {
      if (problem_.activities[at(from.activity)].optional ||
          problem_.activities[at(to.activity)].optional || length < 0)
        return;
      in_[at(index_of(to))].push_back({index_of(from), length});
      out_[at(index_of(from))].push_back({index_of(to), length});
    };
    for (int a = 0; a < static_cast<int>(problem_.activities.size()); ++a)
      add({a, Side::kStart}, {a, Side::kEnd}, problem_.activities[at(a)].duration_min);
    for (const Lag& lag : problem_.lags) add(lag.from, lag.to, lag.min);
    for (const Span& span : problem_.spans) add(span.from, span.to, 0);
  }

  // --- when each event can be at the earliest ---

  // By paths first, then, from early to late, by what each resource has to do before the event.
  void find_heads() {
    heads_.assign(in_.size(), 0);
    for (std::size_t a = 0; a < problem_.activities.size(); ++a)
      raise(static_cast<int>(2 * a), problem_.activities[a].earliest);
    std::vector<int> order(in_.size());
    std::iota(order.begin(), order.end(), 0);
    std::stable_sort(order.begin(), order.end(),
                     [&](int a, int b) { return heads_[at(a)] < heads_[at(b)]; });
    for (const int event : order) {
      if (in_[at(event)].size() < 2) continue;  // as late as what it follows, and no later
      std::map<int, std::vector<Item>> by_key;
      for (const auto& [key, item] : work_before(event)) by_key[key].push_back(item);
      for (auto& [key, items] : by_key) raise(event, end_of(items, capacity_[at(key)]));
    }
  }

  // And all that follows. Lags may form circles, but none of positive length; the count keeps a
  // contradiction from going round for ever.
  void raise(int event, Time head) {
    if (head <= heads_[at(event)]) return;
    heads_[at(event)] = head;
    std::vector<int> open{event};
    for (std::size_t i = 0; i < open.size() && i < 20 * in_.size(); ++i) {
      const int from = open[i];
      for (const Edge& edge : out_[at(from)]) {
        const Time reached = heads_[at(from)] + edge.length;
        if (reached <= heads_[at(edge.event)]) continue;
        heads_[at(edge.event)] = reached;
        open.push_back(edge.event);
      }
    }
  }

  std::vector<std::pair<int, Item>> work_before(int event) const {
    std::vector<std::pair<int, Item>> result;
    std::map<int, Time> tails{{event, 0}};
    std::vector<int> open{event};
    for (std::size_t i = 0; i < open.size() && i < 20 * in_.size(); ++i) {
      const Time tail = tails.at(open[i]);
      for (const Edge& edge : in_[at(open[i])]) {
        const auto [entry, fresh] = tails.emplace(edge.event, kNone);
        if (tail + edge.length <= entry->second) continue;
        entry->second = tail + edge.length;
        open.push_back(edge.event);
      }
    }
    for (const auto& [other, tail] : tails) {
      if (other % 2 == 0) continue;
      const int activity = other / 2;
      for (const Work& work : work_[at(activity)]) {
        result.push_back({work.key,
                          {activity, heads_[at(2 * activity)], tail,
                           problem_.activities[at(activity)].duration_min, work.amount}});
      }
    }
    return result;
  }

  // All the work with at least some tail, and all that cannot start before some minute.
  static Time end_of(std::vector<Item>& items, std::int64_t capacity) {
    Time latest = 0;
    const auto sweep = [&] {
      Time head = kNoLimit, tail = kNoLimit;
      std::int64_t energy = 0;
      for (const Item& item : items) {
        head = std::min(head, item.head);
        tail = std::min(tail, item.tail);
        energy += item.energy();
        latest = std::max(latest, head + static_cast<Time>(up(energy, capacity)) + tail);
      }
    };
    std::sort(items.begin(), items.end(),
              [](const Item& a, const Item& b) { return a.tail > b.tail; });
    sweep();
    std::sort(items.begin(), items.end(),
              [](const Item& a, const Item& b) { return a.head > b.head; });
    sweep();
    return latest;
  }

  // --- what many jobs together have to wait for ---

  /// Work of a key that goes before one job only.
  std::vector<std::vector<Item>> own_work(int key) const {
    std::vector<std::vector<Item>> result(jobs_.size());
    std::map<int, std::size_t> job_of;  // by activity; jobs_.size(): several
    for (std::size_t j = 0; j < jobs_.size(); ++j) {
      std::map<int, Item> mine;
      for (const int event : jobs_[j].events) {
        for (const auto& [of, item] : work_before(event)) {
          if (of != key) continue;
          const auto [entry, fresh] = mine.emplace(item.activity, item);
          entry->second.tail = std::max(entry->second.tail, item.tail);
        }
      }
      for (const auto& [activity, item] : mine) {
        result[j].push_back(item);
        const auto [entry, fresh] = job_of.emplace(activity, j);
        if (!fresh) entry->second = jobs_.size();
      }
    }
    for (std::vector<Item>& items : result) {
      items.erase(std::remove_if(
                      items.begin(), items.end(),
                      [&](const Item& item) { return job_of.at(item.activity) == jobs_.size(); }),
                  items.end());
    }
    return result;
  }

  std::int64_t bound_of(int key) const {
    const std::vector<std::vector<Item>> work = own_work(key);
    std::vector<Time> tails;
    for (const std::vector<Item>& items : work) {
      for (const Item& item : items) tails.push_back(item.tail);
    }
    std::sort(tails.begin(), tails.end());
    tails.erase(std::unique(tails.begin(), tails.end()), tails.end());
    std::int64_t best = 0;
    for (const Time tail : tails) best = std::max(best, bound_with(key, work, tail));
    return best;
  }

  /// Only work that is followed by so much more counts.
  std::int64_t bound_with(int key, const std::vector<std::vector<Item>>& work, Time tail) const {
    std::vector<std::pair<std::int64_t, std::size_t>> energies;  // of a job, its index
    Time head = kNoLimit, length = kNone;
    std::int64_t amount = -1;
    bool equal = true;  // one use each, all the same: whole uses fit beside each other, not parts
    for (std::size_t j = 0; j < work.size(); ++j) {
      std::int64_t energy = 0;
      int uses = 0;
      for (const Item& item : work[j]) {
        if (item.tail < tail) continue;
        head = std::min(head, item.head);
        energy += item.energy();
        equal = equal && (amount < 0 || (amount == item.amount && length == item.length));
        amount = item.amount;
        length = item.length;
        ++uses;
      }
      equal = equal && uses <= 1 && jobs_[j].weight == 1;
      energies.emplace_back(energy, j);
    }
    if (head == kNoLimit) return 0;
    std::sort(energies.begin(), energies.end(), [&](const auto& a, const auto& b) {
      return a.first * jobs_[b.second].weight < b.first * jobs_[a.second].weight;
    });
    const std::int64_t capacity = capacity_[at(key)];
    const std::int64_t lanes = std::max<std::int64_t>(1, equal ? capacity / amount : 1);
    std::vector<Time> shared, alone;
    std::int64_t before = 0, uses = 0;
    for (const auto& [energy, j] : energies) {
      const std::int64_t weight = jobs_[j].weight;
      for (std::int64_t copy = 1; copy <= weight; ++copy) {
        alone.push_back(jobs_[j].alone);
        if (energy == 0) {
          shared.push_back(0);
          continue;
        }
        // Of a term counted several times only part is through when a part of its work is done.
        const std::int64_t so_far = before + up(energy * copy, weight);
        const std::int64_t time = equal ? up(++uses, lanes) * length : up(so_far, capacity);
        shared.push_back(head + static_cast<Time>(time) + tail);
      }
      before += energy;
    }
    std::sort(alone.begin(), alone.end());
    std::int64_t sum = 0;
    for (std::size_t i = 0; i < shared.size(); ++i)
      sum += std::max(0, std::max(shared[i], alone[i]) - allowance_);
    return sum;
  }

  const Problem& problem_;
  std::vector<Job> jobs_;
  Time allowance_ = 0;
  std::vector<std::int64_t> capacity_;   // by key
  std::vector<std::vector<Work>> work_;  // by activity
  std::vector<std::vector<Edge>> in_, out_;
  std::vector<Time> heads_;
};

}  // namespace

std::int64_t flow_bound(const Problem& problem, const GoalLevel& level) {
  return FlowBound(problem, level).run();
}

}  // namespace scheduler
