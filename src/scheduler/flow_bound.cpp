#include "scheduler/flow_bound.h"

#include <algorithm>
#include <map>
#include <numeric>
#include <utility>

#include "base/index.h"

namespace scheduler {
namespace {

using base::at;

constexpr Time kNone = -1;  ///< no path; lengths of paths are not negative
constexpr std::int64_t kMostCopies = 1000;

int index_of(Event event) { return 2 * event.activity + (event.side == Side::kEnd ? 1 : 0); }

std::int64_t up(std::int64_t work, std::int64_t capacity) {
  return (work + capacity - 1) / capacity;
}

}  // namespace

std::int64_t FlowBound::of(const GoalLevel& level) {
  jobs_.clear();
  std::int64_t copies = 0;
  for (const Term& term : level.terms) {
    if (term.kind != Term::Kind::kExcess || !term.low.empty() || term.weight <= 0) continue;
    Job job;
    for (const Event event : term.high) {
      if (!problem_.activities[at(event.activity)].optional) job.events.push_back(index_of(event));
    }
    if (job.events.empty()) continue;
    job.weight = term.weight;
    job.allowance = term.allowance;
    copies += job.weight;
    jobs_.push_back(std::move(job));
  }
  if (jobs_.size() < 2 || copies > kMostCopies) return 0;
  if (!prepared_) prepare();
  std::int64_t best = 0;
  allowance_ = 0;
  for (Job& job : jobs_) {
    for (const int event : job.events) job.alone = std::max(job.alone, heads_[at(event)]);
    best += job.weight * std::max(0, job.alone - job.allowance);
    allowance_ = std::max(allowance_, job.allowance);
  }
  const std::vector<ByKey> work = own_work();
  for (int key = 0; key < static_cast<int>(capacity_.size()); ++key)
    best = std::max(best, bound_of(key, work));
  return best;
}

void FlowBound::prepare() {
  list_work();
  make_graph();
  rank_events();
  find_heads();
  prepared_ = true;
}

// --- what is there ---

void FlowBound::list_work() {
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

void FlowBound::make_graph() {
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

// What is on a circle comes last, in any order: paths through it may be missed, and bounds with
// them, but never the other way round.
void FlowBound::rank_events() {
  rank_.assign(in_.size(), static_cast<int>(in_.size()));
  std::vector<std::size_t> waits(in_.size());
  std::vector<int> open;
  for (std::size_t e = 0; e < in_.size(); ++e) {
    waits[e] = in_[e].size();
    if (waits[e] == 0) open.push_back(static_cast<int>(e));
  }
  for (std::size_t i = 0; i < open.size(); ++i) {
    rank_[at(open[i])] = static_cast<int>(i);
    for (const Edge& edge : out_[at(open[i])]) {
      if (--waits[at(edge.event)] == 0) open.push_back(edge.event);
    }
  }
}

// --- when each event can be at the earliest ---

// By paths first, then, from early to late, by what each resource has to do before the event.
void FlowBound::find_heads() {
  heads_.assign(in_.size(), 0);
  tails_.assign(in_.size(), kNone);
  for (std::size_t a = 0; a < problem_.activities.size(); ++a)
    heads_[2 * a] = problem_.activities[a].earliest;
  std::vector<int> order(in_.size());
  std::iota(order.begin(), order.end(), 0);
  std::stable_sort(order.begin(), order.end(),
                   [&](int a, int b) { return rank_[at(a)] < rank_[at(b)]; });
  ByKey items(capacity_.size());
  for (const int event : order) {
    Time head = heads_[at(event)];
    for (const Edge& edge : in_[at(event)])
      head = std::max(head, heads_[at(edge.event)] + edge.length);
    heads_[at(event)] = head;
    if (in_[at(event)].size() < 2) continue;  // as late as what it follows, and no later
    work_before(event, items);
    for (std::size_t key = 0; key < items.size(); ++key) {
      if (items[key].size() > 1)
        heads_[at(event)] = std::max(heads_[at(event)], end_of(items[key], capacity_[key]));
      items[key].clear();
    }
  }
}

/// Adds to `items` the work that goes before the event.
void FlowBound::work_before(int event, ByKey& items) {
  std::vector<int> before{event};
  tails_[at(event)] = 0;
  for (std::size_t i = 0; i < before.size(); ++i) {
    for (const Edge& edge : in_[at(before[i])]) {
      if (tails_[at(edge.event)] != kNone) continue;
      tails_[at(edge.event)] = 0;
      before.push_back(edge.event);
    }
  }
  std::sort(before.begin() + 1, before.end(),
            [&](int a, int b) { return std::pair(rank_[at(a)], a) > std::pair(rank_[at(b)], b); });
  for (const int to : before) {
    for (const Edge& edge : in_[at(to)]) {
      Time& tail = tails_[at(edge.event)];
      if (edge.event != event) tail = std::max(tail, tails_[at(to)] + edge.length);
    }
  }
  for (const int other : before) {
    if (other % 2 == 1) {
      const int activity = other / 2;
      for (const Work& work : work_[at(activity)]) {
        items[at(work.key)].push_back({activity, heads_[at(2 * activity)], tails_[at(other)],
                                       problem_.activities[at(activity)].duration_min,
                                       work.amount});
      }
    }
    tails_[at(other)] = kNone;
  }
}

// All the work with at least some tail, and all that cannot start before some minute.
Time FlowBound::end_of(std::vector<Item>& items, std::int64_t capacity) const {
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

/// By job, the work that goes before it alone.
std::vector<FlowBound::ByKey> FlowBound::own_work() {
  std::vector<ByKey> result(jobs_.size(), ByKey(capacity_.size()));
  std::vector<int> job_of(problem_.activities.size(), -1);
  const int several = static_cast<int>(jobs_.size());
  for (std::size_t j = 0; j < jobs_.size(); ++j) {
    for (const int event : jobs_[j].events) work_before(event, result[j]);
    for (std::vector<Item>& items : result[j]) {
      // Of an activity before several of its events the longest tail counts.
      std::sort(items.begin(), items.end(), [](const Item& a, const Item& b) {
        return std::pair(a.activity, -a.tail) < std::pair(b.activity, -b.tail);
      });
      items.erase(
          std::unique(items.begin(), items.end(),
                      [](const Item& a, const Item& b) { return a.activity == b.activity; }),
          items.end());
      for (const Item& item : items) {
        int& of = job_of[at(item.activity)];
        of = of < 0 || of == static_cast<int>(j) ? static_cast<int>(j) : several;
      }
    }
  }
  for (ByKey& by_key : result) {
    for (std::vector<Item>& items : by_key) {
      items.erase(
          std::remove_if(items.begin(), items.end(),
                         [&](const Item& item) { return job_of[at(item.activity)] == several; }),
          items.end());
    }
  }
  return result;
}

std::int64_t FlowBound::bound_of(int key, const std::vector<ByKey>& work) const {
  std::vector<Time> tails;
  for (const ByKey& by_key : work) {
    for (const Item& item : by_key[at(key)]) tails.push_back(item.tail);
  }
  std::sort(tails.begin(), tails.end());
  tails.erase(std::unique(tails.begin(), tails.end()), tails.end());
  std::int64_t best = 0;
  for (const Time tail : tails) best = std::max(best, bound_with(key, work, tail));
  return best;
}

/// Only work that is followed by so much more counts.
std::int64_t FlowBound::bound_with(int key, const std::vector<ByKey>& work, Time tail) const {
  std::vector<std::pair<std::int64_t, std::size_t>> energies;  // of a job, its index
  Time head = kNoLimit, length = kNone;
  std::int64_t amount = -1;
  bool equal = true;  // one use each, all the same: whole uses fit beside each other, not parts
  for (std::size_t j = 0; j < work.size(); ++j) {
    std::int64_t energy = 0;
    int uses = 0;
    for (const Item& item : work[j][at(key)]) {
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

}  // namespace scheduler
