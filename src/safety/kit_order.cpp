#include "safety/kit_order.h"

#include <algorithm>
#include <bit>
#include <compare>
#include <map>
#include <utility>

#include "base/text.h"
#include "safety/conflict_parts.h"

namespace safety {
namespace {

constexpr std::size_t kMostKindsExact = 12;

/// Uses alike in what they leave and mind stay together: parting them never saves a clean, unless
/// each leaves what the next of them minds, so that a clean stands between them anyway and may
/// serve somebody else as well; those stay single.
struct UseKind {
  ThingUse use;
  std::vector<int> uses;
};

std::vector<UseKind> kinds_of(const std::vector<ThingUse>& uses, std::uint32_t minded) {
  std::vector<UseKind> out;
  for (std::size_t i = 0; i < uses.size(); ++i) {
    const ThingUse use{uses[i].brings & minded, uses[i].minds};
    const auto same = std::find_if(out.begin(), out.end(),
                                   [&](const UseKind& k) { return k.use == use; });
    if (same == out.end() || (use.brings & use.minds) != 0) {
      out.push_back({use, {static_cast<int>(i)}});
    } else {
      same->uses.push_back(static_cast<int>(i));
    }
  }
  return out;
}

/// What lies about after all uses of a kind, and how many cleans they needed.
std::pair<std::uint32_t, int> after(const UseKind& kind, std::uint32_t dirt) {
  int cleans = 0;
  for (std::size_t i = 0; i < kind.uses.size(); ++i) {
    if ((dirt & kind.use.minds) != 0) {
      ++cleans;
      dirt = 0;
    }
    dirt |= kind.use.brings;
  }
  return {dirt, cleans};
}

/// Cleans first; of orders with as many, those who mind come early.
struct Cost {
  int cleans = 0, waiting = 0;
  friend auto operator<=>(const Cost&, const Cost&) = default;
};

struct Reached {
  Cost cost;
  std::size_t last = 0;
  std::uint32_t dirt_before = 0;
};

// The order of kinds with the fewest cleans: by how much is done and what lies about.
std::vector<std::size_t> fewest_cleans(const std::vector<UseKind>& kinds) {
  const std::size_t n = kinds.size();
  std::vector<std::map<std::uint32_t, Reached>> reached(std::size_t{1} << n);
  reached[0][0] = {};
  for (std::size_t done = 0; done + 1 < reached.size(); ++done) {
    for (const auto& [dirt, so_far] : reached[done]) {
      for (std::size_t k = 0; k < n; ++k) {
        if ((done >> k & 1U) != 0) continue;
        const auto [left, cleans] = after(kinds[k], dirt);
        const int waits = kinds[k].use.minds == 0 ? 0 : std::popcount(done);
        const Reached here{{so_far.cost.cleans + cleans, so_far.cost.waiting + waits}, k, dirt};
        const auto [at, fresh] = reached[done | std::size_t{1} << k].emplace(left, here);
        if (!fresh && here.cost < at->second.cost) at->second = here;
      }
    }
  }
  std::size_t done = reached.size() - 1;
  auto best = reached[done].begin();
  for (auto at = best; at != reached[done].end(); ++at) {
    if (at->second.cost < best->second.cost) best = at;
  }
  std::vector<std::size_t> order;
  for (Reached step = best->second; done != 0; step = reached[done][step.dirt_before]) {
    order.push_back(step.last);
    done &= ~(std::size_t{1} << step.last);
    if (done == 0) break;
  }
  std::reverse(order.begin(), order.end());
  return order;
}

std::vector<std::size_t> by_least_left(const std::vector<UseKind>& kinds) {
  std::vector<std::size_t> order, open(kinds.size());
  for (std::size_t k = 0; k < open.size(); ++k) open[k] = k;
  std::uint32_t dirt = 0;
  while (!open.empty()) {
    const auto worth = [&](std::size_t k) {
      const auto [left, cleans] = after(kinds[k], dirt);
      return std::make_pair(cleans, std::popcount(left));
    };
    const auto next = std::min_element(open.begin(), open.end(), [&](std::size_t a, std::size_t b) {
      return worth(a) < worth(b);
    });
    dirt = after(kinds[*next], dirt).first;
    order.push_back(*next);
    open.erase(next);
  }
  return order;
}

/// Gathers the uses of one thing and turns their order into turns.
class Users {
 public:
  Users(const kitchen::Lesson& lesson, const LessonNeeds& needs, const Evidence& evidence)
      : lesson_(lesson), evidence_(evidence) {
    for (const CookNeeds& cook : needs) {
      for (const Need& need : cook.needs) {
        if (std::none_of(needs_.begin(), needs_.end(),
                         [&](const Need& n) { return n.what == need.what; }))
          needs_.push_back(need);
      }
    }
    minds_.assign(lesson.cooks.size(), 0);
    for (const CookNeeds& cook : needs) {
      for (const Need& need : cook.needs) minds_[static_cast<std::size_t>(cook.cook)] |= bit(need);
    }
  }

  std::uint32_t minds(int cook) const { return minds_[static_cast<std::size_t>(cook)]; }

  std::uint32_t brings(int dish) {
    const auto known = brings_.find(dish);
    if (known != brings_.end()) return known->second;
    std::uint32_t out = 0;
    for (const Need& need : needs_) {
      if (may_be_there(strongest(findings(dish_at(lesson_, dish), need, evidence_))))
        out |= bit(need);
    }
    brings_.emplace(dish, out);
    return out;
  }

  /// What the steps of a dish that use an item bring; nothing when none does.
  std::optional<std::uint32_t> brings_to(int dish, const std::string& item) const {
    std::optional<std::uint32_t> out;
    const kitchen::Dish& d = dish_at(lesson_, dish);
    for (std::size_t s = 0; s < d.method.size(); ++s) {
      if (std::none_of(d.method[s].kit.begin(), d.method[s].kit.end(),
                       [&](const kitchen::KitNeed& k) { return k.item == item; }))
        continue;
      out = out.value_or(0);
      for (const Need& need : needs_) {
        if (may_be_there(strongest(findings_of_step(d, static_cast<int>(s), need, evidence_))))
          *out |= bit(need);
      }
    }
    return out;
  }

  void clear() {
    uses_.clear();
    who_.clear();
  }
  /// A cook comes once, with all their dishes: what lies between their own two dishes is told as a
  /// conflict, and to send them twice would help nobody.
  void add(int cook, int dish, std::uint32_t brings) {
    if (who_.empty() || who_.back().first != cook) {
      uses_.push_back({0, minds(cook)});
      who_.push_back({cook, {}});
    }
    uses_.back().brings |= brings;
    who_.back().second.push_back(dish);
  }

  /// Somebody could meet what another cook leaves.
  bool contested() const {
    for (std::size_t a = 0; a < uses_.size(); ++a) {
      for (std::size_t b = 0; b < uses_.size(); ++b) {
        if (a != b && (uses_[a].brings & uses_[b].minds) != 0) return true;
      }
    }
    return false;
  }

  std::vector<Turn> turns() const {
    const UseOrder order = free_from_first(uses_);
    std::vector<Turn> out;
    ThingUse last{~0U, ~0U};
    for (std::size_t i = 0; i < order.order.size(); ++i) {
      const auto u = static_cast<std::size_t>(order.order[i]);
      if (out.empty() || order.clean_before[i] || !(uses_[u] == last))
        out.push_back({{}, {}, order.clean_before[i]});
      last = uses_[u];
      const auto add_once = [](std::vector<int>& list, int what) {
        if (std::find(list.begin(), list.end(), what) == list.end()) list.push_back(what);
      };
      out.back().cooks.push_back(who_[u].first);
      for (const int d : who_[u].second) add_once(out.back().dishes, d);
    }
    return out;
  }

 private:
  std::uint32_t bit(const Need& need) const {
    for (std::size_t i = 0; i < needs_.size(); ++i) {
      if (needs_[i].what == need.what) return 1U << i;  // 14 allergens and 10 diets: 24 bits
    }
    return 0;
  }

  const kitchen::Lesson& lesson_;
  const Evidence& evidence_;
  std::vector<Need> needs_;
  std::vector<std::uint32_t> minds_;
  std::map<int, std::uint32_t> brings_;
  std::vector<ThingUse> uses_;
  std::vector<std::pair<int, std::vector<int>>> who_;  ///< cook, dishes
};

}  // namespace

int UseOrder::cleans() const {
  return static_cast<int>(std::count(clean_before.begin(), clean_before.end(), true));
}

UseOrder free_from_first(const std::vector<ThingUse>& uses) {
  std::uint32_t minded = 0;
  for (const ThingUse& use : uses) minded |= use.minds;
  std::vector<UseKind> free, rest;
  for (UseKind& kind : kinds_of(uses, minded))
    (kind.use.brings == 0 ? free : rest).push_back(std::move(kind));
  std::stable_sort(free.begin(), free.end(), [](const UseKind& a, const UseKind& b) {
    return std::popcount(a.use.minds) > std::popcount(b.use.minds);
  });
  std::vector<UseKind> in_order = std::move(free);
  for (const std::size_t k :
       rest.size() <= kMostKindsExact ? fewest_cleans(rest) : by_least_left(rest))
    in_order.push_back(rest[k]);

  UseOrder out;
  std::uint32_t dirt = 0;
  for (const UseKind& kind : in_order) {
    for (const int use : kind.uses) {
      const bool clean = (dirt & kind.use.minds) != 0;
      if (clean) dirt = 0;
      dirt |= kind.use.brings;
      out.order.push_back(use);
      out.clean_before.push_back(clean);
    }
  }
  return out;
}

std::vector<ThingOrder> order_at_things(const kitchen::Lesson& lesson, const LessonNeeds& needs,
                                        const Evidence& evidence) {
  std::vector<ThingOrder> out;
  Users users(lesson, needs, evidence);
  const auto keep = [&](std::string thing) {
    if (users.contested()) out.push_back({std::move(thing), users.turns()});
  };
  // Every dish of the cooks chosen, whole.
  const auto whole = [&](const std::string& thing, const auto& chosen) {
    users.clear();
    for (std::size_t c = 0; c < lesson.cooks.size(); ++c) {
      if (!chosen(static_cast<int>(c))) continue;
      for (const int d : lesson.cooks[c].dishes) users.add(static_cast<int>(c), d, users.brings(d));
    }
    keep(thing);
  };
  if (!lesson.trays_at_places) whole("ingredients table", [](int) { return true; });
  for (const kitchen::Kit& kit : lesson.room.kit) {
    users.clear();
    for (std::size_t c = 0; c < lesson.cooks.size(); ++c) {
      for (const int d : lesson.cooks[c].dishes) {
        if (const auto brings = users.brings_to(d, kit.item))
          users.add(static_cast<int>(c), d, *brings);
      }
    }
    keep(kit.item);
  }
  for (std::size_t p = 0; p < lesson.room.places.size(); ++p) {
    whole("place " + lesson.room.places[p].name,
          [&](int c) { return cook_at(lesson, c).place == static_cast<int>(p); });
  }
  for (std::size_t b = 0; b < lesson.room.bays.size(); ++b) {
    whole("sink of bay " + lesson.room.bays[b].name,
          [&](int c) { return kitchen::bay_of(lesson, c) == static_cast<int>(b); });
  }
  return out;
}

}  // namespace safety
