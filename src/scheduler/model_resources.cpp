// Resources and spans of a Model: time tables, pairs that cannot overlap, settings, doors, soil.
#include <algorithm>
#include <stdexcept>
#include <string>

#include "base/index.h"
#include "scheduler/edge_finding.h"
#include "scheduler/energy.h"
#include "scheduler/model.h"

namespace scheduler {
namespace {

using base::at;

/// Longest paths between start variables are worth their cubic cost up to here.
constexpr int kMaxOrderNodes = 160;
/// Ordering Booleans for a plain cumulative resource; beyond, its time table alone decides.
constexpr std::size_t kMaxPairItems = 130;
constexpr std::size_t kLeastEnergyItems = 4;
constexpr std::size_t kMostEnergyItems = 70;
constexpr int kUnreached = -1000000000;

}  // namespace

// Longest paths over lags that always hold: pairs ordered by them need no Booleans.
void Model::find_order() {
  node_of_.assign(at(core_.variable_count()), -1);
  std::vector<int> variables;
  for (std::size_t i = 0; i < activities_.size(); ++i) {
    const ActivityModel& model = activities_[i];
    if (model.role != Role::kFree || problem_.activities[i].optional) continue;
    for (const Point p : {model.start, model.end}) {
      if (node_of_[at(p.variable)] >= 0) continue;
      node_of_[at(p.variable)] = static_cast<int>(variables.size());
      variables.push_back(p.variable);
    }
  }
  const int count = static_cast<int>(variables.size());
  if (count > kMaxOrderNodes) return;
  reach_.assign(at(count), std::vector<int>(at(count), kUnreached));
  for (int n = 0; n < count; ++n) reach_[at(n)][at(n)] = 0;
  const auto note = [&](Point from, Point to, int gap) {
    if (from.variable < 0 || to.variable < 0) return;
    const int a = node_of_[at(from.variable)], b = node_of_[at(to.variable)];
    if (a < 0 || b < 0 || a == b) return;
    reach_[at(a)][at(b)] = std::max(reach_[at(a)][at(b)], from.offset + gap - to.offset);
  };
  for (std::size_t i = 0; i < activities_.size(); ++i) {
    if (activities_[i].role != Role::kFree) continue;
    note(activities_[i].start, activities_[i].end, problem_.activities[i].duration_min);
    note(activities_[i].end, activities_[i].start, -problem_.activities[i].duration_max);
  }
  for (const Lag& lag : problem_.lags) {
    if (ignored(lag.from) || ignored(lag.to)) continue;
    note(point(lag.from), point(lag.to), lag.min);
    if (lag.max != kNoLimit) note(point(lag.to), point(lag.from), -lag.max);
  }
  for (int k = 0; k < count; ++k) {
    budget_.spend(count);
    for (int i = 0; i < count; ++i) {
      const int head = reach_[at(i)][at(k)];
      if (head == kUnreached) continue;
      for (int j = 0; j < count; ++j) {
        const int tail = reach_[at(k)][at(j)];
        if (tail != kUnreached && head + tail > reach_[at(i)][at(j)])
          reach_[at(i)][at(j)] = head + tail;
      }
    }
  }
}

bool Model::known_before(Point first, Point second) const {
  if (first.variable < 0 || second.variable < 0 || reach_.empty()) return false;
  if (at(first.variable) >= node_of_.size() || at(second.variable) >= node_of_.size()) return false;
  const int a = node_of_[at(first.variable)], b = node_of_[at(second.variable)];
  if (a < 0 || b < 0 || reach_[at(a)][at(b)] == kUnreached) return false;
  return first.offset - second.offset <= reach_[at(a)][at(b)];
}

void Model::add_item(Item item) {
  item.constant = item.start.variable < 0 && item.end.variable < 0 &&
                  core_.true_at_root(item.active);
  if (item.constant && item.end.offset <= item.start.offset) return;
  items_[at(item.use->resource)].push_back(std::move(item));
}

void Model::collect_items() {
  for (int i = 0; i < static_cast<int>(activities_.size()); ++i) {
    const ActivityModel& model = activities_[at(i)];
    const Activity& activity = problem_.activities[at(i)];
    if (model.role == Role::kIgnored || activity.duration_max == 0) continue;
    for (std::size_t m = 0; m < model.modes.size(); ++m) {
      if (core_.is_false(model.modes[m])) continue;
      const std::vector<Use>& uses = activity.modes[m].uses;
      for (std::size_t u = 0; u < uses.size(); ++u) {
        add_item({i, model.start, model.end, model.modes[m], model.nonempty, &uses[u],
                  uses[u].settings, model.settings[m][u], false, activity.duration_min});
      }
    }
  }
}

void Model::add_spans() {
  const int activity_count = static_cast<int>(activities_.size());
  for (int s = 0; s < static_cast<int>(problem_.spans.size()); ++s) {
    const Span& span = problem_.spans[at(s)];
    if (ignored(span.from) || ignored(span.to)) continue;
    const Point from = point(span.from), to = point(span.to);
    const Literal held = both(present(span.from), present(span.to));
    if (core_.is_false(held)) continue;
    require_order(from, to, 0, {held}, Site::kSpan);
    const Item hull{activity_count + s, from, to, held, true_, nullptr, {}, {}, false, 0};
    for (const int other : span.excludes) {
      const ActivityModel& model = activities_[at(other)];
      if (model.role == Role::kIgnored || problem_.activities[at(other)].duration_max == 0)
        continue;
      const Item excluded{other,   model.start, model.end, model.present, model.nonempty,
                          nullptr, {},          {},        false,         0};
      keep_apart(hull, excluded, held, model.present, 0, 0);
    }
    add_span_uses(s, held);
  }
}

void Model::add_span_uses(int index, Literal held) {
  const Span& span = problem_.spans[at(index)];
  const Point from = point(span.from), to = point(span.to);
  Time least = 0;
  if (span.from.activity == span.to.activity && span.from.side == Side::kStart &&
      span.to.side == Side::kEnd) {
    least = problem_.activities[at(span.from.activity)].duration_min;
  } else if (from.variable < 0 && to.variable < 0) {
    least = to.offset - from.offset;
  } else if (known_before({from.variable, from.offset + 1}, to)) {
    least = 1;
  }
  for (std::size_t m = 0; m < span.uses_by_mode.size(); ++m) {
    Literal active = held;
    if (span.like) {
      const ActivityModel& model = activities_[at(*span.like)];
      if (model.role == Role::kIgnored || m >= model.modes.size() || core_.is_false(model.modes[m]))
        continue;
      active = both(held, model.modes[m]);
    }
    for (const Use& use : span.uses_by_mode[m]) {
      std::vector<Literal> chosen;
      const std::vector<int> settings = span_settings(span, use, static_cast<int>(m), chosen,
                                                      active);
      add_item({static_cast<int>(activities_.size()) + index, from, to, active,
                nonempty(from, to, least), &use, settings, chosen, false, least});
    }
  }
}

// A placement has no room for a span's own choice: it holds the setting its `like` chose on the
// same resource, or its only one.
std::vector<int> Model::span_settings(const Span& span, const Use& use, int mode,
                                      std::vector<Literal>& chosen, Literal active) const {
  if (span.like && use.settings.size() != 1) {
    const std::vector<Use>& uses = problem_.activities[at(*span.like)].modes[at(mode)].uses;
    for (std::size_t u = 0; u < uses.size(); ++u) {
      if (uses[u].resource != use.resource || uses[u].settings.empty()) continue;
      chosen = activities_[at(*span.like)].settings[at(mode)][u];
      return uses[u].settings;
    }
  }
  chosen.assign(use.settings.size(), active);
  return use.settings;
}

void Model::add_resources() {
  for (int r = 0; r < static_cast<int>(problem_.resources.size()); ++r) {
    const Resource& resource = problem_.resources[at(r)];
    std::vector<const Item*> all;
    bool open = !scope_.trust_fixed;
    for (const Item& item : items_[at(r)]) {
      all.push_back(&item);
      open = open || !item.constant;
    }
    for (std::size_t c = 0; c < activities_.size() && !open; ++c)
      open = problem_.activities[c].cleans == r && activities_[c].role == Role::kFree;
    if (!open || all.empty()) continue;
    budget_.spend(static_cast<std::int64_t>(all.size()));
    add_cumulative(all, resource.capacity, false);
    for (const Limit& limit : resource.limits) {
      std::vector<const Item*> hazardous;
      for (const Item* item : all) {
        if (item->use->hazard == limit.hazard) hazardous.push_back(item);
      }
      add_cumulative(hazardous, limit.at_once, true);
    }
    add_pairs(resource, all);
    if (resource.kind == ResourceKind::kSettings) {
      for (const Item* item : all) {
        add_initial(resource, *item);
        if (item->use->door_shut < 2) continue;
        for (const Item* other : all) {
          if (other->owner != item->owner) add_door(*item, *other);
        }
      }
    }
    if (resource.kind != ResourceKind::kSoiling) continue;
    for (const Item* dirty : all) {
      for (const Item* minding : all) {
        if (dirty->owner != minding->owner) add_soil(r, *dirty, *minding);
      }
    }
  }
}

void Model::add_cumulative(const std::vector<const Item*>& items, int capacity, bool count_only) {
  std::vector<TableItem> table;
  std::int64_t sum = 0;
  int end = 0;
  for (const Item* item : items) {
    const int amount = count_only ? 1 : item->use->amount;
    if (amount <= 0) continue;
    sum += amount;
    end = std::max(end, item->end.variable < 0
                            ? item->end.offset
                            : core_.high(2 * item->end.variable) + item->end.offset);
    if (amount > capacity) clause({!item->active, !item->nonempty});
    if (!item->constant)
      table.push_back({item->start, item->end, amount, item->active, item->least});
  }
  if (sum <= capacity) return;
  std::vector<int> background(at(end + 1), 0);
  for (const Item* item : items) {
    const int amount = count_only ? 1 : item->use->amount;
    if (!item->constant || amount <= 0) continue;
    for (int t = std::max(0, item->start.offset); t < item->end.offset; ++t)
      background[at(t)] += amount;
  }
  const std::string name = (count_only ? "limit " : "use ") +
                           std::to_string(items.front()->use->resource);
  add_energy(table, background, capacity, name);
  const bool overfull = std::any_of(background.begin(), background.end(),
                                    [&](int h) { return h > capacity; });
  if (overfull) clause({});
  if (table.empty() || overfull) return;
  auto propagator = std::make_unique<Timetable>(std::move(table), std::move(background), capacity);
  const std::vector<int> sides = propagator->sides();
  auto edges = std::make_unique<EdgeFinding>(*propagator);
  tell_propagator(core_.add_propagator(std::move(propagator), sides), name);
  tell_propagator(core_.add_propagator(std::move(edges), sides, true), name);
}

// Members of an exclusive set as uses of one machine. That no two overlap is known to the resources
// and lags it was found from; this adds what they do not see together.
void Model::add_exclusive(const std::vector<InMode>& set) {
  static const Use machine;
  std::vector<Item> items;
  for (const InMode& member : set) {
    const ActivityModel& model = activities_[at(member.activity)];
    if (model.role == Role::kIgnored || core_.is_false(model.modes[at(member.mode)])) continue;
    Item item{member.activity,
              model.start,
              model.end,
              model.modes[at(member.mode)],
              true_,
              &machine,
              {},
              {},
              false,
              problem_.activities[at(member.activity)].duration_min};
    item.constant = item.start.variable < 0 && item.end.variable < 0 &&
                    core_.true_at_root(item.active);
    items.push_back(std::move(item));
  }
  std::vector<const Item*> all;
  bool open = false;
  for (const Item& item : items) {
    all.push_back(&item);
    open = open || !item.constant;
  }
  if (open) add_cumulative(all, machine.amount, false);
}

void Model::add_energy(const std::vector<TableItem>& table, const std::vector<int>& background,
                       int capacity, const std::string& name) {
  // Few items rarely fill an interval that the time table does not see filled; many cost too much.
  const auto add = [&](const std::vector<TableItem>& items, bool alike) {
    if (items.size() < kLeastEnergyItems || items.size() > kMostEnergyItems) return;
    auto propagator = std::make_unique<Energy>(items, background, capacity, alike);
    const std::vector<int> sides = propagator->sides();
    tell_propagator(core_.add_propagator(std::move(propagator), sides), name);
  };
  std::map<std::pair<int, int>, std::vector<TableItem>> kinds;
  for (const TableItem& item : table) {
    if (item.least > 1) kinds[{item.amount, item.least}].push_back(item);
  }
  for (const auto& [kind, items] : kinds) add(items, true);
}

void Model::add_pairs(const Resource& resource, const std::vector<const Item*>& items) {
  const bool plain = resource.kind == ResourceKind::kCumulative;
  if (plain && (!scope_.decide_pairs || items.size() > kMaxPairItems)) return;
  for (std::size_t a = 0; a < items.size(); ++a) {
    budget_.spend(static_cast<std::int64_t>(items.size() - a));
    for (std::size_t b = a + 1; b < items.size(); ++b) {
      if (items[a]->owner == items[b]->owner) continue;
      if (items[a]->constant && items[b]->constant && scope_.trust_fixed) continue;
      add_pair(resource, *items[a], *items[b]);
    }
  }
}

void Model::add_pair(const Resource& resource, const Item& a, const Item& b) {
  bool never = a.use->amount + b.use->amount > resource.capacity;
  for (const Limit& limit : resource.limits) {
    never = never ||
            (limit.at_once == 1 && a.use->hazard == limit.hazard && b.use->hazard == limit.hazard);
  }
  if (resource.kind == ResourceKind::kSoiling) {
    never = never || (a.use->overlaps_not & b.use->kind_bit) != 0 ||
            (b.use->overlaps_not & a.use->kind_bit) != 0;
  }
  if (resource.kind == ResourceKind::kSettings && !a.settings.empty() && !b.settings.empty()) {
    add_setting_pair(resource, a, b, never);
    return;
  }
  if (never) keep_apart(a, b, a.active, b.active, 0, 0);
}

void Model::add_setting_pair(const Resource& resource, const Item& a, const Item& b, bool never) {
  if (never) keep_apart(a, b, a.active, b.active, 0, 0);
  for (std::size_t i = 0; i < a.settings.size(); ++i) {
    for (std::size_t j = 0; j < b.settings.size(); ++j) {
      const int x = a.settings[i], y = b.settings[j];
      if (x == y) continue;
      keep_apart(a, b, a.setting_chosen[i], b.setting_chosen[j], resource.change[at(x)][at(y)],
                 resource.change[at(y)][at(x)]);
    }
  }
}

void Model::keep_apart(const Item& a, const Item& b, Literal when_a, Literal when_b, int gap_ab,
                       int gap_ba) {
  if (core_.is_false(when_a) || core_.is_false(when_b)) return;
  if (known_before({a.end.variable, a.end.offset + gap_ab}, b.start)) return;
  if (known_before({b.end.variable, b.end.offset + gap_ba}, a.start)) return;
  clause({!when_a, !when_b, !a.nonempty, !b.nonempty, before(a.end, b.start, gap_ab),
          before(b.end, a.start, gap_ba)},
         Site::kApart);
}

void Model::add_initial(const Resource& resource, const Item& item) {
  if (!resource.initial) return;
  for (std::size_t k = 0; k < item.settings.size(); ++k) {
    const int gap = resource.change[at(*resource.initial)][at(item.settings[k])];
    if (gap > 0)
      clause({!item.setting_chosen[k], !item.nonempty, not_before(item.start, gap)},
             Site::kInitial);
  }
}

void Model::add_door(const Item& item, const Item& other) {
  if (core_.is_false(item.active) || core_.is_false(other.active)) return;
  if (item.constant && other.constant && scope_.trust_fixed) return;
  const int shut = item.use->door_shut;
  for (const Point moment : {other.start, other.end}) {
    if (known_before(moment, item.start)) continue;
    if (known_before({item.start.variable, item.start.offset + shut}, moment)) continue;
    clause({!item.active, !other.active, !item.nonempty, !other.nonempty,
            before(moment, item.start), before(item.start, moment, shut)},
           Site::kDoor);
  }
}

void Model::add_soil(int resource, const Item& dirty, const Item& minding) {
  const int bits = dirty.use->soil & minding.use->minds;
  if (bits == 0 || core_.is_false(dirty.active) || core_.is_false(minding.active)) return;
  // Two that are fixed keep the rule, unless what cleans between them may move away.
  bool open = !scope_.trust_fixed || !dirty.constant || !minding.constant;
  if (known_before(minding.end, dirty.start)) return;
  std::vector<Literal> ways{!dirty.active, !minding.active, !dirty.nonempty, !minding.nonempty,
                            before(minding.end, dirty.start)};
  for (int c = 0; c < static_cast<int>(activities_.size()); ++c) {
    const Activity& cleaner = problem_.activities[at(c)];
    if (!cleaner.cleans || *cleaner.cleans != resource || (bits & ~cleaner.cleans_bits) != 0)
      continue;
    if (activities_[at(c)].role == Role::kIgnored) {
      if (scope_.relax) return;
      continue;
    }
    if (c == dirty.owner || c == minding.owner) continue;
    open = open || activities_[at(c)].role == Role::kFree;
    ways.push_back(cleaned_between(c, dirty, minding));
  }
  if (open) clause(std::move(ways), Site::kSoil);
}

Literal Model::cleaned_between(int cleaner, const Item& dirty, const Item& minding) {
  const ActivityModel& model = activities_[at(cleaner)];
  const Literal after = both(model.present, before(dirty.end, model.start));
  return both(after, before(model.end, minding.start));
}

}  // namespace scheduler
