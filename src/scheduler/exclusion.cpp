#include "scheduler/exclusion.h"

#include <algorithm>
#include <cstdint>

#include "base/index.h"

namespace scheduler {
namespace {

using base::at;

constexpr std::size_t kFewestMembers = 4;
constexpr std::size_t kMostSets = 40;
/// Beyond, the table of pairs takes longer than it saves.
constexpr std::size_t kMostOptions = 2000;

/// A square of bits.
class Relation {
 public:
  explicit Relation(std::size_t size) : words_((size + 63) / 64), bits_(size * words_, 0) {}

  void set(std::size_t a, std::size_t b) { row(a)[b / 64] |= std::uint64_t{1} << (b % 64); }
  bool has(std::size_t a, std::size_t b) const { return (row(a)[b / 64] >> (b % 64) & 1) != 0; }
  /// a is related to all that b is related to; false when that is nothing new.
  bool join(std::size_t a, std::size_t b) {
    bool more = false;
    for (std::size_t w = 0; w < words_; ++w) {
      const std::uint64_t sum = row(a)[w] | row(b)[w];
      more = more || sum != row(a)[w];
      row(a)[w] = sum;
    }
    return more;
  }

 private:
  std::uint64_t* row(std::size_t a) { return bits_.data() + a * words_; }
  const std::uint64_t* row(std::size_t a) const { return bits_.data() + a * words_; }

  std::size_t words_;
  std::vector<std::uint64_t> bits_;
};

std::size_t node(Event event) {
  return 2 * at(event.activity) + (event.side == Side::kEnd ? 1 : 0);
}

/// Which starts and ends come no later than which others, by lags that no absence makes void.
Relation not_after(const Problem& problem) {
  Relation reach(2 * problem.activities.size());
  std::vector<std::pair<std::size_t, std::size_t>> arcs;
  for (std::size_t i = 0; i < problem.activities.size(); ++i) arcs.emplace_back(2 * i, 2 * i + 1);
  for (const Lag& lag : problem.lags) {
    const bool always = !problem.activities[at(lag.from.activity)].optional &&
                        !problem.activities[at(lag.to.activity)].optional;
    if (always && lag.min >= 0) arcs.emplace_back(node(lag.from), node(lag.to));
  }
  // From the back: most lags point forwards in the order of the activities, so few passes do.
  std::sort(arcs.begin(), arcs.end(), std::greater<>());
  for (const auto& [from, to] : arcs) reach.set(from, to);
  for (bool more = true; more;) {
    more = false;
    for (const auto& [from, to] : arcs) more = reach.join(from, to) || more;
  }
  return reach;
}

class Finder {
 public:
  explicit Finder(const Problem& problem)
      : problem_(problem), options_(all_options(problem)), apart_(options_.size()) {
    if (options_.size() > kMostOptions) options_.clear();
    if (options_.empty()) return;
    by_resources();
    by_order();
  }

  std::vector<std::vector<InMode>> sets(int fullness) const {
    std::vector<std::vector<std::size_t>> found;
    for (std::size_t r = 0; r < takers_.size(); ++r) {
      const std::vector<std::size_t> seed = exclusive_among(takers_[r],
                                                            problem_.resources[r].capacity);
      std::vector<std::size_t> grown = grow(seed);
      if (grown.size() < kFewestMembers || grown.size() == seed.size()) continue;
      std::sort(grown.begin(), grown.end());
      if (100 * work(grown) < std::int64_t{fullness} * problem_.horizon) continue;
      found.push_back(std::move(grown));
    }
    // Parts of others stand behind them.
    std::sort(found.begin(), found.end(), [&](const auto& a, const auto& b) {
      if (work(a) != work(b)) return work(a) > work(b);
      return a < b;
    });
    std::vector<std::vector<std::size_t>> kept;
    for (std::vector<std::size_t>& set : found) {
      const bool part = std::any_of(kept.begin(), kept.end(), [&](const auto& other) {
        return std::includes(other.begin(), other.end(), set.begin(), set.end());
      });
      if (!part && kept.size() < kMostSets) kept.push_back(std::move(set));
    }
    std::vector<std::vector<InMode>> result;
    for (const std::vector<std::size_t>& set : kept) {
      result.emplace_back();
      for (const std::size_t option : set) result.back().push_back(options_[option]);
    }
    return result;
  }

 private:
  /// Who takes how much of a resource.
  struct Taker {
    std::size_t option;
    int amount;
  };

  static std::vector<InMode> all_options(const Problem& problem) {
    std::vector<InMode> result;
    for (int i = 0; i < static_cast<int>(problem.activities.size()); ++i) {
      const Activity& activity = problem.activities[at(i)];
      for (int m = 0; m < static_cast<int>(activity.modes.size()); ++m) {
        if (activity.duration_min > 0 && !activity.modes[at(m)].uses.empty())
          result.push_back({i, m});
      }
    }
    return result;
  }

  const Activity& activity(std::size_t option) const {
    return problem_.activities[at(options_[option].activity)];
  }

  void keep_apart(std::size_t a, std::size_t b) {
    apart_.set(a, b);
    apart_.set(b, a);
  }

  void by_resources() {
    takers_.resize(problem_.resources.size());
    for (std::size_t o = 0; o < options_.size(); ++o) {
      for (const Use& use : activity(o).modes[at(options_[o].mode)].uses)
        takers_[at(use.resource)].push_back({o, use.amount});
    }
    for (std::size_t r = 0; r < takers_.size(); ++r) {
      const std::vector<Taker>& takers = takers_[r];
      for (std::size_t a = 0; a < takers.size(); ++a) {
        for (std::size_t b = a + 1; b < takers.size(); ++b) {
          if (takers[a].amount + takers[b].amount > problem_.resources[r].capacity)
            keep_apart(takers[a].option, takers[b].option);
        }
      }
    }
  }

  // One after the other by the lags, and one activity in two modes.
  void by_order() {
    const Relation reach = not_after(problem_);
    for (std::size_t a = 0; a < options_.size(); ++a) {
      const std::size_t i = at(options_[a].activity);
      for (std::size_t b = 0; b < options_.size(); ++b) {
        const std::size_t j = at(options_[b].activity);
        if (a != b && (i == j || reach.has(2 * i + 1, 2 * j))) keep_apart(a, b);
      }
    }
  }

  bool fits(std::size_t option, const std::vector<std::size_t>& set) const {
    return std::all_of(set.begin(), set.end(),
                       [&](std::size_t member) { return apart_.has(option, member); });
  }

  // The greatest uses of one resource, as far as each two of them are too much for it.
  std::vector<std::size_t> exclusive_among(std::vector<Taker> takers, int capacity) const {
    std::stable_sort(takers.begin(), takers.end(),
                     [](const Taker& a, const Taker& b) { return a.amount > b.amount; });
    std::vector<std::size_t> set;
    int least = capacity;
    for (const Taker& taker : takers) {
      if (!set.empty() && taker.amount + least <= capacity) break;
      set.push_back(taker.option);
      least = taker.amount;
    }
    return set;
  }

  // The longest first.
  std::vector<std::size_t> grow(std::vector<std::size_t> set) const {
    if (set.size() < 2) return set;
    std::vector<std::size_t> candidates;
    for (std::size_t o = 0; o < options_.size(); ++o) {
      if (fits(o, set)) candidates.push_back(o);
    }
    std::stable_sort(candidates.begin(), candidates.end(), [&](std::size_t a, std::size_t b) {
      return activity(a).duration_min > activity(b).duration_min;
    });
    for (const std::size_t o : candidates) {
      if (fits(o, set)) set.push_back(o);
    }
    return set;
  }

  std::int64_t work(const std::vector<std::size_t>& set) const {
    // Modes of one activity stand side by side.
    std::int64_t sum = 0;
    for (std::size_t k = 0; k < set.size(); ++k) {
      if (k == 0 || options_[set[k]].activity != options_[set[k - 1]].activity)
        sum += activity(set[k]).duration_min;
    }
    return sum;
  }

  const Problem& problem_;
  std::vector<InMode> options_;
  Relation apart_;
  std::vector<std::vector<Taker>> takers_;  // by resource
};

}  // namespace

std::vector<std::vector<InMode>> exclusive_sets(const Problem& problem, int fullness) {
  return Finder(problem).sets(fullness);
}

}  // namespace scheduler
