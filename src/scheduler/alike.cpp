#include "scheduler/alike.h"

#include <algorithm>
#include <cstdint>
#include <limits>
#include <map>

#include "base/index.h"
#include "scheduler/description.h"

namespace scheduler {
namespace {

constexpr std::int64_t kUnknown = std::numeric_limits<std::int64_t>::max();

using base::at;

/// Writes all that matters of one cluster as numbers; two clusters are alike if the numbers are.
class ClusterDescription {
 public:
  ClusterDescription(const Problem& problem, const Clusters& clusters, int cluster)
      : problem_(problem), local_(problem.activities.size(), -1) {
    // A shared activity of this cluster alone (a look round its bay) takes the place another
    // cluster's has there.
    for (const int i : clusters.members(cluster)) take(i);
    const std::vector<char> joined = joined_to_members();
    for (const bool first : {true, false}) {
      for (const int i : clusters.shared()) {
        if ((joined[at(i)] != 0) == first) take(i);
      }
    }
  }

  Description write() {
    for (const int i : order_) write_activity(problem_.activities[at(i)]);
    write_lags();
    for (const Span& span : problem_.spans) write_span(span);
    for (const Blocked& blocked : problem_.blocked) {
      const Description inside = local_ones(blocked.activities);
      if (inside.empty()) continue;
      put(text_, {blocked.from, blocked.to});
      put_list(text_, inside);
    }
    for (const auto& same : problem_.same_mode) put_list(text_, local_ones(same));
    for (const auto& one : problem_.exactly_one) {
      const Description inside = local_ones(one);
      if (inside.empty()) continue;
      put(text_, {inside.size() == one.size() ? 1 : 0});
      put_list(text_, inside);
    }
    for (std::size_t l = 0; l < problem_.goals.size(); ++l) write_level(l);
    return text_;
  }

 private:
  void take(int activity) {
    local_[at(activity)] = static_cast<int>(order_.size());
    order_.push_back(activity);
  }
  std::vector<char> joined_to_members() const {
    std::vector<char> joined(problem_.activities.size(), 0);
    const auto join = [&](Event a, Event b) {
      if (local(a)) joined[at(b.activity)] = 1;
      if (local(b)) joined[at(a.activity)] = 1;
    };
    for (const Lag& lag : problem_.lags) join(lag.from, lag.to);
    for (const Span& span : problem_.spans) join(span.from, span.to);
    return joined;
  }
  Description local_ones(const std::vector<int>& activities) const {
    Description inside;
    for (const int i : activities) {
      if (local_[at(i)] >= 0) inside.push_back(local_[at(i)]);
    }
    return inside;
  }
  bool local(Event event) const { return local_[at(event.activity)] >= 0; }
  std::int64_t number(Event event) const {
    return 2 * local_[at(event.activity)] + (event.side == Side::kEnd ? 1 : 0);
  }

  std::int64_t known_number(int index) const {
    const auto found = resource_.find(index);
    return found == resource_.end() ? kUnknown : found->second;
  }

  /// Resources are numbered as they are first used, and described then.
  std::int64_t resource(int index) {
    const auto [entry, fresh] = resource_.try_emplace(index,
                                                      static_cast<std::int64_t>(resource_.size()));
    if (fresh) put_resource(text_, problem_.resources[at(index)]);
    return entry->second;
  }

  /// Resources known already come first: a register that holds the hands of the whole class names
  /// them in the order of the class.
  void write_uses(const std::vector<Use>& uses) {
    std::vector<Use> sorted = uses;
    std::stable_sort(sorted.begin(), sorted.end(), [&](const Use& a, const Use& b) {
      return known_number(a.resource) < known_number(b.resource);
    });
    put(text_, {static_cast<std::int64_t>(sorted.size())});
    for (const Use& use : sorted) {
      const std::int64_t which = resource(use.resource);
      put(text_, {which});
      put_use(text_, use);
    }
  }

  void write_activity(const Activity& a) {
    const std::int64_t cleans = a.cleans ? resource(*a.cleans) : -1;
    put(text_, {cleans});
    put_activity(text_, a);
    for (const Mode& mode : a.modes) write_uses(mode.uses);
  }

  void write_lags() {
    std::vector<Description> lags;
    for (const Lag& lag : problem_.lags) {
      if (local(lag.from) && local(lag.to))
        lags.push_back({number(lag.from), number(lag.to), lag.min, lag.max});
    }
    std::sort(lags.begin(), lags.end());
    for (const Description& lag : lags) put_list(text_, lag);
  }

  void write_span(const Span& span) {
    if (!local(span.from) || !local(span.to)) return;
    put(text_, {number(span.from), number(span.to), span.like ? local_[at(*span.like)] : -1});
    for (const auto& uses : span.uses_by_mode) write_uses(uses);
    put_list(text_, local_ones(span.excludes));
  }

  void write_level(std::size_t level) {
    put(text_, {static_cast<std::int64_t>(level)});
    for (const Term& term : problem_.goals[level].terms) {
      Description high, low;
      for (const Event e : term.high) {
        if (local(e)) high.push_back(number(e));
      }
      for (const Event e : term.low) {
        if (local(e)) low.push_back(number(e));
      }
      const bool excess = term.kind == Term::Kind::kExcess;
      const bool pair = term.kind == Term::Kind::kOutOfOrder;
      const std::int64_t first = excess ? -1 : local_[at(term.activity)];
      const std::int64_t second = pair ? local_[at(term.other)] : -1;
      if (excess ? high.empty() && low.empty() : first < 0 && second < 0) continue;
      put(text_, {first, second, term.low.empty() ? 1 : 0});
      put_term(text_, term);
      put_list(text_, high);
      put_list(text_, low);
    }
  }

  const Problem& problem_;
  std::vector<int> local_, order_;
  std::map<int, std::int64_t> resource_;
  Description text_;
};

}  // namespace

std::vector<int> first_alike(const Problem& problem, const Clusters& clusters) {
  std::map<Description, int> known;
  std::vector<int> first;
  for (int cluster = 0; cluster < clusters.count(); ++cluster) {
    first.push_back(
        known.try_emplace(ClusterDescription(problem, clusters, cluster).write(), cluster)
            .first->second);
  }
  return first;
}

}  // namespace scheduler
