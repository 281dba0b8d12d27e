// Hands, places, breaks, adults and oven knobs in the engine's terms.
#include <algorithm>

#include "timeplan/brief_maker.h"
#include "timeplan/network_methods.h"

namespace timeplan {

// A stretch that is always there: an adult out of the room, a pupil away.
int BriefMaker::fixed_block(std::string name, Seconds from, Seconds to,
                            std::vector<scheduler::Use> uses) {
  const int start = as_units(base::grid_down(from));
  const int end = std::min(as_units(base::grid_up(to)), brief_.problem.horizon);
  if (end <= start) return -1;
  scheduler::Activity a;
  a.name = std::move(name);
  a.duration_min = a.duration_max = end - start;
  a.earliest = start;
  a.latest_end = end;
  a.team = -1;
  a.modes = {scheduler::Mode{std::move(uses)}};
  brief_.problem.activities.push_back(std::move(a));
  brief_.way_of_mode.push_back({0});
  nodes_of_.emplace_back();
  return static_cast<int>(brief_.problem.activities.size()) - 1;
}

// Attention, as two sums (rule A3); equal cooks share one resource.
void BriefMaker::add_hands() {
  struct Hands {
    std::vector<std::pair<int, int>> tenths, halves;  // (activity, amount)
  };
  std::set<std::pair<std::vector<std::pair<int, int>>, int>> known;
  const auto add = [&](const std::vector<std::pair<int, int>>& uses, int capacity,
                       const kitchen::Cook& cook, int away_amount) {
    long long total = 0;
    for (const auto& [a, amount] : uses) total += amount;
    if (total <= capacity && cook.away.empty()) return;
    if (cook.away.empty() && !known.emplace(uses, capacity).second) return;
    const int resource = add_resource("hands of " + cook.name, scheduler::ResourceKind::kCumulative,
                                      capacity);
    for (const auto& [a, amount] : uses) {
      scheduler::Use use;
      use.resource = resource;
      use.amount = amount;
      add_use(a, use);
    }
    if (away_amount == 0 || left_out({Reason::Kind::kPresence})) return;
    for (const kitchen::Away& away : cook.away) {
      scheduler::Use use;
      use.resource = resource;
      use.amount = away_amount;
      fixed_block("away", away.from, away.to, {use});
    }
  };
  for (int c = 0; c < static_cast<int>(lesson_.cooks.size()); ++c) {
    const kitchen::Cook& cook = cook_of(c);
    Hands work, windows;
    for (int i = 0; i < static_cast<int>(net_.nodes.size()); ++i) {
      const Node& n = node(i);
      if (activity_of(i) < 0) continue;
      if (n.task.kind == TaskKind::kWindow) {
        const kitchen::Window& w = lesson_.windows[static_cast<std::size_t>(n.task.window)];
        if (w.kind == kitchen::WindowKind::kBreak || !covers(w, c)) continue;
        windows.tenths.emplace_back(activity_of(i), 10 * cook.people);
        windows.halves.emplace_back(activity_of(i), 2 * cook.people);
      }
      if (n.task.cook != c || n.attention == 0) continue;
      work.tenths.emplace_back(activity_of(i), n.attention);
      if (n.busy > 0) work.halves.emplace_back(activity_of(i), n.busy);
    }
    if (cook.away.empty()) {
      work.tenths.insert(work.tenths.end(), windows.tenths.begin(), windows.tenths.end());
      work.halves.insert(work.halves.end(), windows.halves.begin(), windows.halves.end());
    } else {
      // Windows shut out all work of those who are there; somebody away does not count against
      // them.
      std::vector<std::pair<int, int>> apart = work.tenths;
      apart.insert(apart.end(), windows.tenths.begin(), windows.tenths.end());
      std::sort(apart.begin(), apart.end());
      add(apart, 10 * cook.people, kitchen::Cook{}, 0);
    }
    std::sort(work.tenths.begin(), work.tenths.end());
    std::sort(work.halves.begin(), work.halves.end());
    add(work.tenths, 10 * cook.people, cook, 10);
    // The sum alone is exact for one or two people (rule A3).
    if (cook.people >= 3) add(work.halves, 2 * cook.people, cook, 2);
  }
}

// Board and bench: classes never overlap, and going down the list needs a clean-down between (H2,
// H3).
void BriefMaker::add_places() {
  constexpr int kWhole = 100;
  // Where two cooks share a place each cleans up after their own work: soil bits two by two, a pair
  // for each cook.
  std::map<int, int> slot_of_cook;
  std::map<int, int> cooks_at;
  for (int c = 0; c < static_cast<int>(lesson_.cooks.size()); ++c)
    slot_of_cook[c] = cooks_at[cook_of(c).place]++;
  std::map<std::pair<int, int>, std::vector<int>> nodes_at;  // (place, line when all are in step)
                                                             // -> nodes
  for (int i = 0; i < static_cast<int>(net_.nodes.size()); ++i) {
    const Node& n = node(i);
    if (n.task.cook < 0 || (!n.hygiene && n.task.kind != TaskKind::kCleanDown)) continue;
    const bool in_step = alone_at_place(n.task.cook) &&
                         !lines_with_queued_hygiene_.contains(line_of(n.task.cook));
    const int place = in_step ? -1 : cook_of(n.task.cook).place;
    nodes_at[{place, in_step ? line_of(n.task.cook) : -1}].push_back(i);
  }
  for (const auto& [where, nodes] : nodes_at) {
    int classes = 0;
    for (const int i : nodes) {
      if (node(i).hygiene) classes |= 1 << static_cast<int>(*node(i).hygiene);
    }
    const bool one_class = (classes & (classes - 1)) == 0;
    if (one_class || left_out({Reason::Kind::kHygiene})) {
      // Nothing to clean: the candidates are simply not asked for.
      for (const int i : nodes) {
        if (node(i).task.kind == TaskKind::kCleanDown)
          brief_.activity_of_node[static_cast<std::size_t>(i)] = -1;
      }
      continue;
    }
    const int resource = add_resource("place", scheduler::ResourceKind::kSoiling, kWhole);
    std::set<int> done;
    for (const int i : nodes) {
      const int a = activity_of(i);
      if (a < 0 || !done.insert(a).second) continue;
      scheduler::Use use;
      use.resource = resource;
      const int slots = where.first < 0 ? 1 : cooks_at[where.first];
      const int shift = where.first < 0 ? 0 : 2 * slot_of_cook[node(i).task.cook];
      if (node(i).task.kind == TaskKind::kCleanDown) {
        use.amount = kWhole;
        activity(a).cleans = resource;
        activity(a).cleans_bits = (node(i).cleans == kitchen::Hygiene::kRaw ? 3 : 1) << shift;
      } else {
        const int level = static_cast<int>(*node(i).hygiene);
        use.soil = level << shift;
        for (int s = 0; s < slots; ++s)
          use.minds |= (level == 0 ? 3 : level == 1 ? 2 : 0) << (2 * s);
        use.kind_bit = 1 << level;
        use.overlaps_not = classes & ~(1 << level);
      }
      add_use(a, use);
    }
  }
  for (int i = 0; i < static_cast<int>(net_.nodes.size()); ++i) {
    const Node& n = node(i);
    if (n.task.kind != TaskKind::kFullClean || activity_of(i) < 0) continue;
    const auto found = resource_.find({PoolKind::kKit, n.allergen_kit, 0});
    if (found == resource_.end()) {
      brief_.activity_of_node[static_cast<std::size_t>(i)] = -1;
      continue;
    }
    activity(activity_of(i)).cleans = found->second;
    activity(activity_of(i)).cleans_bits = (1 << 14) - 1;
  }
}

// Breaks: only what waits by itself, unheated and unwatched, goes on; ovens are off (W3, O6, Y10).
void BriefMaker::add_breaks() {
  for (std::size_t w = 0; w < lesson_.windows.size(); ++w) {
    const kitchen::Window& window = lesson_.windows[w];
    if (window.kind != kitchen::WindowKind::kBreak ||
        left_out({Reason::Kind::kWindows, static_cast<int>(w)}))
      continue;
    scheduler::Blocked blocked;
    blocked.from = as_units(base::grid_up(window.earliest));
    blocked.to = blocked.from + as_units(base::grid_up(window.length));
    for (int i = 0; i < static_cast<int>(net_.nodes.size()); ++i) {
      const Node& n = node(i);
      if (activity_of(i) < 0 || n.least.count() == 0) continue;
      if (n.task.kind == TaskKind::kWindow) {
        const kitchen::Window& other = lesson_.windows[static_cast<std::size_t>(n.task.window)];
        if (other.kind != kitchen::WindowKind::kBreak) blocked.activities.push_back(activity_of(i));
        continue;
      }
      const bool away = n.task.cook >= 0 && !covers(window, n.task.cook);
      bool watched = false, oven_only = n.heated;
      for (const Way& way : n.ways) {
        for (const Need& need : way) watched = watched || need.pool.kind == PoolKind::kAdult;
      }
      for (const int h : n.heldby) {
        for (const Way& way : net_.held[static_cast<std::size_t>(h)].ways) {
          oven_only = oven_only && way.front().pool.kind == PoolKind::kOven;
        }
      }
      const bool heat_stops = n.heated && !(window.ovens_stay_on && oven_only);
      if ((n.attention > 0 && !away) || heat_stops || watched)
        blocked.activities.push_back(activity_of(i));
    }
    for (std::size_t h = 0; h < net_.held.size(); ++h) {
      const int a = brief_.activity_of_held[h];
      if (a < 0) continue;
      const PoolKind kind = net_.held[h].ways.front().front().pool.kind;
      const bool oven = kind == PoolKind::kOven && !window.ovens_stay_on;
      if (oven || kind == PoolKind::kRings || kind == PoolKind::kGrill)
        blocked.activities.push_back(a);
    }
    std::sort(blocked.activities.begin(), blocked.activities.end());
    blocked.activities.erase(std::unique(blocked.activities.begin(), blocked.activities.end()),
                             blocked.activities.end());
    brief_.problem.blocked.push_back(std::move(blocked));
    const Seconds from = base::grid_up(window.earliest), to = from + base::grid_up(window.length);
    for (const auto& [pool, resource] : resource_) {
      scheduler::Use use;
      use.resource = resource;
      use.amount = capacity(lesson_, pool);
      if (pool.kind == PoolKind::kAdult) fixed_block("break", from, to, {use});
      if (pool.kind != PoolKind::kOven || window.ovens_stay_on) continue;
      use.settings = {0};
      fixed_block("break", from, to, {use});
    }
  }
}

void BriefMaker::add_adult_limits() {
  for (const auto& [pool, resource] : resource_) {
    if (pool.kind != PoolKind::kAdult) continue;
    const kitchen::Adult& adult = lesson_.adults[static_cast<std::size_t>(pool.index)];
    for (const auto& [hazard, watch] : lesson_.rules.watch) {
      brief_.problem.resources[static_cast<std::size_t>(resource)].limits.push_back(
          {static_cast<int>(hazard), watch.at_once});
    }
    scheduler::Use all;
    all.resource = resource;
    all.amount = 100;
    if (adult.from.count() > 0) fixed_block("not yet in", Seconds{0}, adult.from, {all});
    // Who stays to the bell stays on when the bell is let go to measure an overrun.
    if (adult.to < lesson_.bell)
      fixed_block("gone", adult.to, Seconds{brief_.problem.horizon * 60}, {all});
  }
  // Bays out of sight of each other: what one adult watches in them never overlaps (V4).
  if (!lesson_.room.seen_together.empty()) {
    std::map<int, int> sight;  // adult -> resource
    const auto together = [&](int a, int b) {
      return a == b ||
             std::any_of(lesson_.room.seen_together.begin(), lesson_.room.seen_together.end(),
                         [&](const std::vector<int>& set) {
                           return std::find(set.begin(), set.end(), a) != set.end() &&
                                  std::find(set.begin(), set.end(), b) != set.end();
                         });
    };
    std::set<std::pair<int, int>> done;
    for (int i = 0; i < static_cast<int>(net_.nodes.size()); ++i) {
      const Node& n = node(i);
      const int a = activity_of(i);
      if (a < 0 || n.task.cook < 0 || n.task.kind != TaskKind::kStep) continue;
      const int bay = bay_of(lesson_, n.task.cook);
      for (std::size_t m = 0; m < activity(a).modes.size(); ++m) {
        const auto uses = activity(a).modes[m].uses;
        for (const scheduler::Use& watch : uses) {
          if (watch.hazard < 0) continue;
          for (const auto& [pool, resource] : resource_) {
            if (pool.kind != PoolKind::kAdult || resource != watch.resource ||
                !done.emplace(a * 64 + bay, resource).second)
              continue;
            if (!sight.contains(pool.index))
              sight[pool.index] = add_resource("sight", scheduler::ResourceKind::kSoiling, 1000);
            scheduler::Use use;
            use.resource = sight[pool.index];
            use.kind_bit = 1 << bay;
            for (int other = 0; other < static_cast<int>(lesson_.room.bays.size()); ++other) {
              if (!together(bay, other)) use.overlaps_not |= 1 << other;
            }
            activity(a).modes[m].uses.push_back(use);
          }
        }
      }
    }
  }
  if (!lesson_.rules.second_adult_for_frying) return;
  std::vector<int> frying;
  for (int i = 0; i < static_cast<int>(net_.nodes.size()); ++i) {
    for (const Way& way : node(i).ways) {
      const bool oil = std::any_of(way.begin(), way.end(), [](const Need& n) {
        return n.hazard == kitchen::Hazard::kHotOil;
      });
      if (oil && activity_of(i) >= 0) frying.push_back(activity_of(i));
    }
  }
  std::sort(frying.begin(), frying.end());
  frying.erase(std::unique(frying.begin(), frying.end()), frying.end());
  if (frying.empty()) return;
  for (int t = 0; t < brief_.problem.horizon; ++t) {
    const Seconds from = base::minutes(t), to = base::minutes(t + 1);
    const auto here = std::count_if(lesson_.adults.begin(), lesson_.adults.end(),
                                    [&](const kitchen::Adult& a) {
                                      return a.from <= from && (a.to >= to || a.to >= lesson_.bell);
                                    });
    if (here >= 2) continue;
    if (!brief_.problem.blocked.empty() && brief_.problem.blocked.back().to == t &&
        brief_.problem.blocked.back().activities == frying) {
      brief_.problem.blocked.back().to = t + 1;
    } else {
      brief_.problem.blocked.push_back({t, t + 1, frying, -1});
    }
  }
}

// The knob: change-over between all settings an oven may see; 0 is cold, also after a break.
void BriefMaker::finish_settings() {
  for (const auto& [pool, resource] : resource_) {
    if (pool.kind != PoolKind::kOven) continue;
    for (const kitchen::OvenAtOpening& o : lesson_.ovens) {
      if (o.cooker == pool.index) setting_id(pool.index, o.setting);
    }
    const auto& known = settings_[pool.index];
    const std::size_t count = known.size() + 1;
    scheduler::Resource& r = brief_.problem.resources[static_cast<std::size_t>(resource)];
    r.change.assign(count, std::vector<scheduler::Time>(count, 0));
    r.initial = 0;
    for (const auto& [from, i] : known) {
      brief_.setting_of[{resource, i}] = from;
      r.change[0][static_cast<std::size_t>(i)] = as_units(
          base::grid_up(kitchen::heat_up(lesson_.room.change_over, from)));
      for (const auto& [to, j] : known) {
        r.change[static_cast<std::size_t>(i)][static_cast<std::size_t>(j)] = as_units(
            base::grid_up(kitchen::change_over(lesson_.room.change_over, from, to)));
      }
    }
    for (const kitchen::OvenAtOpening& o : lesson_.ovens) {
      if (o.cooker == pool.index) r.initial = known.at(o.setting);
    }
  }
}

}  // namespace timeplan
